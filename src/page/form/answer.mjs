/** What follows from what is given: the verdict, what gives first, what to find out, the drawings, the ledger. */
import { askWithKey, drawingsWanted } from './ask-service.mjs';
import { html } from './html.mjs';
import { Mark } from './mark.mjs';
import { Proposals } from './proposals.mjs';
import { figures, ratioFigures } from './quantity.mjs';
import * as store from './store.mjs';
import { trusted } from './trusted.mjs';

const WORDS = /** @type {Record<string, string>} */ ({
  within: 'within',
  'low-margin': 'low margin',
  over: 'over',
  open: 'not shown',
});

/** The sentence with its verdicts strong and its winds in the voice of the wind. @param {{ check: any }} props */
export function Says({ check }) {
  const main = check.soFar ?? check.verdict;
  const pieces = check.says.split(
    /((?:^|(?<=[.?] ))(?:Within|Thin|Over|Not shown)(?: so far| yet)?(?=[ :.,]))|(?<=in your )([^,]+?)(?= the |,|\. )|((?<= )gusts? of [\d.,]+ (?:mph|m\/s))/,
  );
  let first = true;
  return html`<p class="says">${pieces.map((/** @type {string | undefined} */ piece, /** @type {number} */ index) => {
    if (piece === undefined || piece === '') return null;
    if (index % 4 === 1) {
      const verdict = piece.startsWith('Not shown') ? 'open' : first ? main : piece.toLowerCase().split(' ')[0];
      first = false;
      return html`<span class=${`verdict${verdict === 'over' ? ' over' : ''}`}><${Mark} verdict=${verdict} />${piece}</span>`;
    }
    return index % 4 === 0 ? piece : html`<span class="wind">${piece}</span>`;
  })}</p>`;
}

/** @param {any} quantity */
const shown = (quantity) => `${figures(quantity.value)} ${quantity.unit}`;

/** A place of the document as a link to its entry. @param {{ at: string, children?: any }} props */
function ToField({ at, children }) {
  const place = store.placeOf.value(at);
  const id = store.idOf(store.fieldFor(place));
  const go = (/** @type {Event} */ event) => {
    event.preventDefault();
    store.goTo(place);
  };
  return html`<a class="act" href=${`#${id}`} onClick=${go}>${children}</a>`;
}

/** What the last change did to the weakest link. */
function Moved() {
  const says = store.lastChange.value;
  const now = store.weakestOf(store.answer.value);
  const was = store.before.value;
  if (!store.scripted.value || says === '') return html`<p class="moved" />`;
  const moved = now && was && (was.title !== now.title || ratioFigures(was.ratio) !== ratioFigures(now.ratio));
  return html`<p class="moved"><span>Last change: ${says}${
    moved
      ? html`, ${was.title === now.title ? html`${now.title} ${ratioFigures(was.ratio)} → ${ratioFigures(now.ratio)}` : html`weakest ${was.title} ${ratioFigures(was.ratio)} → ${now.title} ${ratioFigures(now.ratio)}`}.`
      : '.'
  }</span>
    <button type="button" class="act" onClick=${store.undo}>Undo it</button></p>`;
}

/** @param {{ check: any }} props */
function Figures({ check }) {
  const weakest = store.weakestOf(check);
  const room = check.roomLeft[0];
  return html`<dl class="figures">
    ${
      weakest?.holdsTo &&
      html`<div><dt>The ${weakest.title} holds to</dt><dd class="wind">${shown(weakest.holdsTo.gust)}</dd>
      <dd class="note">actual 3-second gust in the open; ${figures(weakest.holdsTo.design.value)} ${weakest.holdsTo.design.unit} on the site’s own scale. Reaching it is not failing.</dd></div>`
    }
    ${
      check.lowerAt?.gust &&
      html`<div><dt>Lower it at a forecast of</dt><dd class="wind">${shown(check.lowerAt.gust)} gust</dd>
      <dd class="note">then it keeps the margin you want, forecast error off${check.lowerAt.without.length > 0 ? `; ${check.lowerAt.without.length === 1 ? 'one link is' : `${check.lowerAt.without.length} links are`} not counted, since not shown` : ''}</dd></div>`
    }
    ${
      room &&
      html`<div><dt>Room left at ${shown(room.height)}</dt><dd>${room.area.value > 0 ? shown(room.area) : 'none'}</dd>
      <dd class="note">${room.area.value > 0 ? 'effective area that still leaves the margin you want' : `${figures(-room.area.value)} ${room.area.unit} too much for the margin you want`}${room.without.length > 0 ? `; ${room.without.length === 1 ? 'one link is' : `${room.without.length} links are`} not counted` : ''}</dd></div>`
    }
    <div><dt>At the foot</dt><dd>${shown(check.reactions.allowable.moment)}</dd>
      <dd class="note">overturning, and ${shown(check.reactions.allowable.shear)} shear, at allowable level${check.reactions.supportedAbove ? ', as if nothing held it above' : ''}${check.reactions.withoutOwnWind ? ', without the wind on the tower itself, which is not known' : ''}</dd></div>
  </dl>`;
}

/** A drawing; it carries its own head. @param {{ name: string, title: string }} props */
function Drawing({ name, title }) {
  const svg = store.answer.value?.drawings?.[name];
  return html`<figure class="plate drawing" aria-label=${title}>
    ${svg ? html`<div class="drawn" dangerouslySetInnerHTML=${{ __html: trusted(svg) }} />` : html`<div class="drawn"><p class="note">being drawn</p></div>`}</figure>`;
}

/** @param {{ answer: any }} props */
function ToFindOut({ answer }) {
  /** Links that lack the same thing are named together. @type {Map<string, any[]>} */
  const missing = new Map();
  for (const check of answer.checks) {
    if (check.needs.length === 0) continue;
    const why = check.says.replace(/^[^:]*: not shown\. /, '');
    missing.set(why, [...(missing.get(why) ?? []), check]);
  }
  return html`<section class="plate" aria-labelledby="find-out"><h3 class="head" id="find-out">To find out</h3>
    ${answer.toFindOut.length + missing.size === 0 && html`<p>Nothing is open.</p>`}
    <ol class="ask">
      ${answer.toFindOut.map((/** @type {any} */ question) => html`<li><div><b>${question.ask}</b><span class="may">${question.says}</span><${ToField} at=${question.at}>go to it<span class="unseen">: ${question.ask}</span><//></div></li>`)}
      ${[...missing].map(([why, checks]) => html`<li><div><b>${sentence(named(checks))} not shown.</b><span class="may">${why}</span><${ToField} at=${checks[0].needs[0]}>go to it<span class="unseen">: ${checks[0].title}</span><//></div></li>`)}
    </ol>
    ${answer.alsoOpen > 0 && html`<p class="note">The kind of area of ${answer.alsoOpen} more loads is open as well.</p>`}
  </section>`;
}

/** A few links by name. @param {readonly any[]} checks */
function named(checks) {
  const titles = checks.map(({ title }) => title);
  if (titles.length === 1) return titles[0];
  if (titles.length <= 4) return `${titles.slice(0, -1).join(', ')} and ${titles.at(-1)}`;
  return `${titles.slice(0, 3).join(', ')} and ${titles.length - 3} more`;
}

/** @param {{ check: any }} props */
function Cautions({ check }) {
  const changing = check.cautions.filter((/** @type {any} */ caution) => caution.severity === 'verdict');
  const lines = check.cautions.filter((/** @type {any} */ caution) => caution.severity === 'line');
  const item = (/** @type {any} */ caution) =>
    html`<li>${caution.says} <span class="note">${caution.action}</span></li>`;
  return html`<section class="plate" aria-labelledby="changes"><h3 class="head" id="changes">What changes the verdict</h3>
      <ul class="cautions">${changing.map(item)}</ul>
      ${changing.length === 0 && html`<p>Nothing beyond what stands at the foot of this sheet.</p>`}
      ${lines.length > 0 && html`<details class="more"><summary>${lines.length} more, each of one line or thing</summary><ul class="cautions">${lines.map(item)}</ul></details>`}
    </section>`;
}

/** Two speeds beside each other have their kind beside them. @param {any} quantity @param {any} check */
const compared = (quantity, check) =>
  quantity ? `${shown(quantity)}${check.demand?.of === 'gust' ? ' nominal gust' : ''}` : '–';

/** @param {{ check: any }} props */
function Links({ check }) {
  return html`<section class="plate" aria-labelledby="links"><h3 class="head" id="links">Every link<small>demand over capacity is the use${check.checks.some((/** @type {any} */ check) => check.demand?.of === 'gust') ? '; of two gusts, its square' : ''}</small></h3>
    <div class="scroll" tabindex="0" role="region" aria-label="Table of links"><table class="ledger fold">
      <thead><tr><th scope="col">link</th><th scope="col" class="word">verdict</th><th scope="col">demand</th><th scope="col">capacity</th><th scope="col">use</th><th scope="col">margin</th><th scope="col">holds to<small>actual gust</small></th></tr></thead>
      <tbody>${check.checks.map(
        (/** @type {any} */ check) => html`<tr>
        <th scope="row">${check.title}${check.id === check.weakest ? ', weakest' : ''}</th>
        <td class="word" data-h="verdict"><span class=${check.verdict === 'over' ? 'nowrap over' : 'nowrap'}><${Mark} verdict=${check.verdict} />${WORDS[check.verdict]}</span></td>
        ${
          check.ratio === undefined
            ? html`<td class="word why-not" colspan="5">${check.says.replace(/^[^:]*: not shown\. /, '')}</td>`
            : html`<td data-h="demand">${compared(check.demand, check)}</td><td data-h="capacity">${compared(check.capacity, check)}</td>
            <td data-h="use"><b class=${check.ratio > 1 ? 'over' : ''}>${ratioFigures(check.ratio)}</b>${check.ratioRange && check.ratioRange[0] !== check.ratioRange[1] ? html`<small class="note"> from ${ratioFigures(check.ratioRange[0])}</small>` : ''}</td>
            <td data-h="margin">${figures(check.margin)}</td><td data-h="holds to" class="wind">${check.holdsTo ? shown(check.holdsTo.gust) : '–'}</td>`
        }
      </tr>`,
      )}</tbody></table></div></section>`;
}

/** @param {{ check: any }} props */
function WindLoads({ check }) {
  const { rows, total, units } = check.windLoads;
  const span = (/** @type {any} */ row) =>
    row.low === row.high ? figures(row.low) : `${figures(row.low)} to ${figures(row.high)}`;
  return html`<details class="more ledgers"><summary>Ledger: everything the wind touches</summary>
    <div class="scroll" tabindex="0" role="region" aria-label="Ledger"><table class="ledger fold">
      <caption class="note">Forces at allowable level, at the worst heading for the tower.</caption>
      <thead><tr><th scope="col">what</th><th scope="col">height<small>${units.height}</small></th><th scope="col">front<small>${units.area}</small></th><th scope="col">side<small>${units.area}</small></th><th scope="col">coefficient</th><th scope="col" class="wind">pressure<small>${units.pressure}</small></th><th scope="col" class="wind">force<small>${units.force}</small></th><th scope="col">moment<small>foot, ${units.moment}</small></th></tr></thead>
      <tbody>${rows.map((/** @type {any} */ row) => html`<tr><th scope="row">${row.name}</th><td data-h=${`height ${units.height}`}>${span(row)}</td><td data-h=${`front ${units.area}`}>${figures(row.front)}</td><td data-h=${`side ${units.area}`}>${figures(row.side)}</td><td data-h="coefficient">${figures(row.coefficient)}</td><td class="wind" data-h=${`pressure ${units.pressure}`}>${figures(row.pressure)}</td><td class="wind" data-h=${`force ${units.force}`}>${figures(row.force)}</td><td data-h=${`moment ${units.moment}`}>${figures(row.momentAtBase)}</td></tr>`)}</tbody>
      <tfoot><tr><th scope="row">together</th><td></td><td></td><td></td><td></td><td></td><td class="wind" data-h=${`force ${units.force}`}>${figures(total.force)}</td><td data-h=${`moment ${units.moment}`}>${figures(total.momentAtBase)}</td></tr></tfoot>
    </table></div></details>`;
}

/** @param {{ check: any }} props */
function Further({ check }) {
  const { reactions, mast, design } = check;
  const pair = (/** @type {any} */ forces) => `${shown(forces.moment)} and ${shown(forces.shear)} shear`;
  return html`<details class="more"><summary>What went in, and what comes out at the foot</summary>
    <dl class="facts">
      <dt>Standard</dt><dd>${design.title}</dd>
      <dt>Speed</dt><dd class="wind">${shown(design.speed)}</dd>
      <dt>Gust effect, direction, importance</dt><dd>${figures(design.gustEffect)}, ${figures(design.directionFactor)}, ${figures(design.importance)}</dd>
      <dt>Overall height</dt><dd>${shown(check.heights.overall)}</dd>
      <dt>At the foot, allowable level</dt><dd>${pair(reactions.allowable)}</dd>
      ${reactions.strength && html`<dt>At the foot, strength level</dt><dd>${pair(reactions.strength)}</dd>`}
      ${reactions.weight && html`<dt>Weight</dt><dd>${shown(reactions.weight)}</dd>`}
      ${mast && html`<dt>The mast at its foot${mast.atBearing ? ' and bearing' : ''}</dt><dd>${shown(mast.atFoot)}${mast.atBearing ? ` and ${shown(mast.atBearing)}` : ''}${mast.clampMoment ? ` and, held there alone, ${shown(mast.clampMoment)}` : ''}</dd>`}
      ${mast?.tipMovement && html`<dt>Its tip moves by</dt><dd>${shown(mast.tipMovement)}</dd>`}
    </dl>
    ${check.hill && html`<p>${check.hill.says} ${check.hill.conditions.map((/** @type {any} */ one) => one.says).join(' ')}</p>`}
    ${check.foundation?.says && html`<p>${check.foundation.says}</p>`}
    ${check.raising?.says && html`<p>${check.raising.says}</p>`}
    ${check.lowerAt && html`<p>${check.lowerAt.says}</p>`}
    ${check.lowered?.says && html`<p>${check.lowered.says}</p>`}
    ${check.chance?.map((/** @type {any} */ one) => html`<p>${one.says}</p>`)}
  </details>`;
}

const MORE_DRAWINGS = /** @type {const} */ ([
  ['moment', 'Moment and shear by height'],
  ['rose', 'From above'],
  ['ratio', 'Ratio against gust'],
  ['pressure', 'Pressure by height'],
]);

function MoreDrawings() {
  const opened = drawingsWanted.value.length > 2;
  const open = (/** @type {any} */ event) => {
    if (event.currentTarget.open && !opened)
      drawingsWanted.value = ['ladder', 'elevation', ...MORE_DRAWINGS.map(([name]) => name)];
  };
  return html`<details class="more" onToggle=${open}><summary>More drawings: moment and shear, from above, use against gust, pressure</summary>
    ${opened && html`<div class="pair">${MORE_DRAWINGS.map(([name, title]) => html`<${Drawing} name=${name} title=${title} />`)}</div>`}</details>`;
}

/** Nothing can be answered yet: what the first answer waits for, and a ghost of the drawing. */
function Empty() {
  const numbers = store.firstNumbers.value;
  const given = numbers.filter(([, , isGiven]) => isGiven).length;
  const hard = store.troubles.value.filter(({ soft }) => !soft).length;
  const says =
    store.wanted.value.length > 0
      ? 'Give ten numbers, and the first answer stands here. Every further one moves it.'
      : hard > 0
        ? `The answer stands here once ${hard === 1 ? 'the entry' : `the ${hard} entries`} to mend ${hard === 1 ? 'is' : 'are'} mended.`
        : 'The first answer is on its way.';
  return html`<p class="says empty">${says}</p>
    <ol class="ten" aria-label=${`${given} of ${numbers.length} given`}>${numbers.map(
      ([pointer, what, isGiven]) => html`<li class=${isGiven ? 'given-one' : ''}>
      <a href=${`#${store.idOf(pointer)}`} onClick=${(/** @type {Event} */ event) => {
        event.preventDefault();
        store.goTo(pointer);
      }}>${what}</a>${isGiven && html`<span class="unseen">, given</span>`}</li>`,
    )}</ol>
    <svg class="ghosts" viewBox="0 0 440 250" aria-hidden="true">
      <path class="line" d="M40 20v200" /><path class="line" d="M36 220h4M36 170h4M36 120h4M36 70h4" />
      <path class="ground" d="M30 220h390" /><path class="line" d="${Array.from({ length: 38 }, (_, index) => `M${36 + index * 10} 220l-5 6`).join('')}" />
      <path class="ghost" d="M210 220V80h26v140M223 80V46M176 62h94" />
      <text x="256" y="132">Your tower will stand here,</text><text x="256" y="148">to scale.</text>
    </svg>`;
}

/** What waits, what is out of reach, what is old. */
function Standing() {
  const { state, answeredAt, troubles, answer } = store;
  const hard = troubles.value.filter(({ soft }) => !soft).length;
  const says =
    state.value === 'slow'
      ? 'Working on your last change. The figures are those before it.'
      : state.value === 'unreachable'
        ? `The service does not answer. What you type is kept${answer.value ? `; the figures are those of ${answeredAt.value}` : ''}. It is asked again every few seconds.`
        : state.value === 'busy'
          ? 'The service asks for a pause; it is asked again in a moment. The figures are those before your last change.'
          : state.value === 'locked'
            ? `This service wants a key: ask whoever runs it. The browser asks for it; any name will do, the key is the password.${answer.value ? ` The figures are those of ${answeredAt.value}.` : ''}`
            : hard > 0 && answer.value
              ? 'The answer stands as it was before the entries that are to be mended.'
              : '';
  return html`<p class="waiting" role="status">${says}</p>
    ${state.value === 'locked' && html`<p class="acts"><button type="button" class="act" onClick=${askWithKey}>Give the key</button></p>`}`;
}

export function Answer() {
  const check = store.answer.value;
  const { given, unknown } = store.counts.value;
  return html`<section class="answer" id="answer" data-state=${store.state.value} aria-labelledby="so-far">
    <h2 class="head" id="so-far">${check && check.verdict !== 'open' ? 'The answer' : 'So far'}${given > 0 && html`<small>from ${given} answers${unknown > 0 ? `, ${unknown} not known` : ''}</small>`}</h2>
    <${Standing} />
    ${
      check
        ? html`<${Says} check=${check} />
        <${Moved} />
        <${Figures} check=${check} />
        <div class="beside"><${Drawing} name="ladder" title="What gives first" /><${ToFindOut} answer=${check} /></div>
        <div class="beside"><${Drawing} name="elevation" title="Elevation" /><${Cautions} check=${check} /></div>
        <${Links} check=${check} />
        <${MoreDrawings} />
        <${WindLoads} check=${check} />
        <${Further} check=${check} />
        ${store.scripted.value && html`<${Proposals} />`}`
        : html`<${Empty} />`
    }
  </section>`;
}

/** The verdict at the lower edge, wherever one is on the sheet. */
export function VerdictStrip() {
  const check = store.answer.value;
  const weakest = store.weakestOf(check);
  const was = store.before.value;
  const verdict = check?.soFar ?? check?.verdict;
  const hard = store.troubles.value.filter(({ soft }) => !soft).length;
  return html`<nav aria-label="Verdict"><a class="strip-verdict" href="#answer">
    ${
      check
        ? html`<span><span class=${`verdict${verdict === 'over' ? ' over' : ''}`}><${Mark} verdict=${verdict} />${sentence(WORDS[verdict] ?? '')}${check.soFar && check.verdict === 'open' && verdict !== 'open' ? ' so far' : ''}</span>${weakest ? html`<span class="weakest">${weakest.verdict === verdict ? ': ' : '; weakest: '}${weakest.title} ${was && ratioFigures(was.ratio) !== ratioFigures(weakest.ratio) ? html`${ratioFigures(was.ratio)} → ` : ''}<b>${ratioFigures(weakest.ratio)}</b>${weakest.verdict === verdict ? '' : `, ${WORDS[weakest.verdict]}`}</span>` : ''}</span>
        ${weakest?.holdsTo && html`<span class="wind held">holds to ${shown(weakest.holdsTo.gust)} gust</span>`}`
        : html`<span>${store.firstNumbers.value.filter(([, , isGiven]) => isGiven).length} of ten numbers given</span>`
    }
    ${hard > 0 && html`<span class="over">${hard} to mend</span>`}
    <span class="go">see why</span></a></nav>`;
}

/** @param {string} text */
const sentence = (text) => text.charAt(0).toUpperCase() + text.slice(1);
