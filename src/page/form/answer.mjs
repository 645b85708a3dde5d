/** What follows from what is given: the verdict, the weakest check, what to find out, the drawings, the wind loads. */
import { figures, ratioFigures, VERDICT_WORDS } from '../../words/index.mjs';
import { askWithKey, drawingsWanted } from './ask-service.mjs';
import { Board, Progress, sentence } from './board.mjs';
import { Candidates } from './candidates-view.mjs';
import { html } from './html.mjs';
import { openPrinted } from './kept-plan.mjs';
import { Mark } from './mark.mjs';
import * as store from './store.mjs';
import { trusted } from './trusted.mjs';

/**
 * @typedef {import('../../answer/index.ts').Answer} Plan
 * @typedef {import('../../answer/index.ts').CheckAnswer} Check
 * @typedef {import('../../answer/index.ts').Quantity} Quantity
 */

/** The headline with its verdict strong and its wind in the voice of the wind. @param {{ headline: Plan['headline'] }} props */
export function Says({ headline }) {
  const said = headline.filter(({ as }) => as !== 'scope');
  return html`<p class="says">${said.map(({ text, as, verdict }) => {
    if (verdict)
      return html`<span class=${`verdict${verdict === 'over' ? ' over' : ''}`}><${Mark} verdict=${verdict} />${text}</span>`;
    return as === 'wind' ? html`<span class="wind">${text}</span>` : text;
  })}</p>`;
}

/** @param {{ readonly value: number, readonly unit: string }} quantity */
const shown = (quantity) => `${figures(quantity.value)} ${quantity.unit}`;

/** A place of the document as a link to its entry. @param {{ at: string, children?: import('preact').ComponentChildren }} props */
function ToField({ at, children }) {
  const place = store.placeOf.value(at);
  const id = store.idOf(store.fieldFor(place));
  const go = (/** @type {Event} */ event) => {
    event.preventDefault();
    store.goTo(place);
  };
  return html`<a class="act" href=${`#${id}`} onClick=${go}>${children}</a>`;
}

/** What the last change did to the weakest check. */
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

/** Open checks that are not in a figure. @param {readonly string[]} without */
const notIncluded = (without) =>
  without.length === 0 ? '' : `; not included (open): ${without.length} ${without.length === 1 ? 'check' : 'checks'}`;

/** Decided checks that a room would load and does not cover. @param {readonly string[]} ids */
const notCovered = (ids) =>
  ids.length === 0 ? '' : `; does not cover ${ids.length} ${ids.length === 1 ? 'check' : 'checks'} it would load`;

/** Checks above 1 of which no gust is known. @param {readonly string[]} over */
const aboveOne = (over) =>
  over.length === 0 ? '' : `; ${over.length} above 1 with no gust known, which may need a lower one`;

/** How the forces at the base are computed, where that is not the whole of it. @param {Plan['reactions']} reactions */
const computedAs = ({ supportedAbove, withoutOwnWind }) =>
  `${supportedAbove ? ', supports above ignored' : ''}${withoutOwnWind ? ', wind on the tower itself not included' : ''}`;

/** Nothing of the wind at the base is known. @param {Plan['reactions']} reactions */
const notKnown = ({ withoutOwnWind, atLargestShear }) => withoutOwnWind && atLargestShear.allowable.shear.value === 0;

/** @param {{ answer: Plan }} props */
export function Figures({ answer }) {
  const { lowerAt, reactions } = answer;
  const weakest = store.weakestOf(answer);
  const [room] = answer.roomLeft;
  return html`<dl class="figures">
    ${
      weakest?.holdsTo &&
      html`<div><dt>The ${weakest.title} holds to</dt><dd class="wind">${shown(weakest.holdsTo.gust)}${weakest.holdsTo.atBest && html` <span class="at-best">to about ${shown(weakest.holdsTo.atBest)}</span>`}</dd>
      <dd class="note">actual 3-second gust in open country; ${shown(weakest.holdsTo.design)} as the type of speed of the site. Reaching it is not failing.</dd></div>`
    }
    ${
      lowerAt?.gust &&
      html`<div><dt>Lower it at a forecast of</dt><dd class="wind">${shown(lowerAt.gust)} gust</dd>
      <dd class="note">keeps the margin set, forecast error included${notIncluded(lowerAt.without)}${aboveOne(lowerAt.overWithoutGust)}</dd></div>`
    }
    ${
      room &&
      html`<div><dt>Room left at ${shown(room.height)}</dt><dd>${room.area.value > 0 ? shown(room.area) : 'none'}</dd>
      <dd class="note">${room.area.value > 0 ? 'effective area with the margin set' : `exceeded by ${figures(-room.area.value)} ${room.area.unit}`}${notIncluded(room.without)}${notCovered(room.notCovered)}</dd></div>`
    }
    <div><dt>At the base</dt>${
      notKnown(reactions)
        ? html`<dd>not known</dd><dd class="note">${reactions.says}</dd>`
        : html`<dd>${shown(reactions.allowable.moment)}</dd>
      <dd class="note">overturning moment; shear up to ${shown(reactions.atLargestShear.allowable.shear)}, allowable level${computedAs(reactions)}</dd>`
    }</div>
  </dl>`;
}

/** A drawing; it carries its own head. @param {{ name: string, title: string }} props */
export function Drawing({ name, title }) {
  const svg = store.answer.value?.drawings?.[name];
  return html`<figure class="plate drawing" aria-label=${title}>
    ${svg ? html`<div class="drawn" dangerouslySetInnerHTML=${{ __html: trusted(svg) }} />` : html`<div class="drawn"><p class="note">being drawn</p></div>`}</figure>`;
}

/** @typedef {{ ask: string, says: string, at: string | undefined, of: string }} Next */

/** What is asked next: what decides an open part first, then what moves a ratio. @param {Plan} answer @returns {readonly Next[]} */
function questionsLeft({ toFindOut, checks, governs }) {
  /** Checks that lack the same thing are named together. @type {Map<string, Check[]>} */
  const missing = new Map();
  for (const check of checks) {
    if (check.needs.length > 0) missing.set(check.why, [...(missing.get(check.why) ?? []), check]);
  }
  const moving = toFindOut.map(({ ask, says, at }) => ({ ask, says, at, of: ask }));
  const closing = [...missing].map(([why, of]) => ({
    ask: `Open: ${named(of)}.`,
    says: why,
    at: of[0]?.needs[0],
    of: of[0]?.title ?? '',
  }));
  const isOpen = checks.find(({ id }) => id === governs)?.verdict === 'open';
  return isOpen ? [...moving, ...closing] : [...closing, ...moving];
}

/** One question; the rest behind it. @param {{ answer: Plan }} props */
function ToFindOut({ answer }) {
  const [next, ...rest] = questionsLeft(answer);
  const item = (/** @type {Next} */ { ask, says, at, of }) =>
    html`<b>${ask}</b><span class="may">${says}</span>${at !== undefined && html`<${ToField} at=${at}>go to it<span class="unseen">: ${of}</span><//>`}`;
  if (!next)
    return html`<section class="plate next" aria-labelledby="find-out"><h3 id="find-out">To find out</h3><p>Nothing is open.</p></section>`;
  return html`<section class="plate next" aria-labelledby="find-out"><h3 id="find-out">Next question</h3>
    <div class="boxed">${item(next)}</div>
    ${rest.length > 0 && html`<details class="more"><summary>${rest.length} more to find out</summary><ol class="ask">${rest.map((each) => html`<li><div>${item(each)}</div></li>`)}</ol></details>`}
  </section>`;
}

const FORECASTS = [
  ['gust3', '3-second gust'],
  ['mean-1min', 'mean of 1 minute'],
  ['mean-10min', 'mean of 10 minutes'],
  ['mean-hour', 'mean of an hour'],
];

/** A wind that is forecast, and the card that says what to do by it. */
function Forecast() {
  if (!store.scripted.value) return null;
  const ask = (/** @type {SubmitEvent} */ event) => {
    event.preventDefault();
    const given = new FormData(/** @type {HTMLFormElement} */ (event.currentTarget));
    const speed = String(given.get('speed')).trim();
    const forecast = speed === '' ? {} : { 'forecast[speed]': speed, 'forecast[basis]': String(given.get('basis')) };
    openPrinted('v1/storm-cards?as=html', forecast);
  };
  return html`<form class="forecast" onSubmit=${ask}>
    <label>A wind is forecast: <input class="field short" name="speed" inputmode="decimal" autocomplete="off" /> ${store.units.value === 'us' ? 'mph' : 'm/s'}</label>
    <select class="field" name="basis" aria-label="Type of the speed that is forecast">${FORECASTS.map(([value, words]) => html`<option value=${value}>${words}</option>`)}</select>
    <button type="submit" class="act">What to do, on a card</button></form>`;
}

/** What to measure, and what to write to the manufacturer. @param {{ answer: Plan }} props */
function Inquiries({ answer: { inquiries } }) {
  if (!inquiries) return null;
  const { measure, letter } = inquiries;
  return html`<section class="plate asking" aria-label="To measure and to ask">
    ${measure.length > 0 && html`<details class="more"><summary>What to measure, in this order</summary><ol>${measure.map((/** @type {string} */ each) => html`<li>${each}</li>`)}</ol></details>`}
    ${letter !== undefined && html`<details class="more"><summary>Letter to the tower’s manufacturer</summary><p class="note">Copy it and send it: these answers would decide most.</p><textarea class="letter" readonly rows=${letter.split('\n').length + 3} aria-label="Letter to the tower’s manufacturer">${letter}</textarea></details>`}
  </section>`;
}

/** What governs, with demand and capacity. @param {{ answer: Plan }} props */
function Governs({ answer: { checks, governs } }) {
  const check = checks.find(({ id }) => id === governs);
  return check && html`<p class="decides-here"><b>${sentence(check.title)}.</b> ${check.why}</p>`;
}

/** A few checks by name. @param {readonly Check[]} checks */
function named(checks) {
  const titles = checks.map(({ title }) => title);
  if (titles.length === 1) return titles[0];
  if (titles.length <= 4) return `${titles.slice(0, -1).join(', ')} and ${titles.at(-1)}`;
  return `${titles.slice(0, 3).join(', ')} and ${titles.length - 3} more`;
}

/** @param {{ answer: Plan }} props */
function Cautions({ answer }) {
  const changing = answer.cautions.filter(({ severity }) => severity === 'verdict');
  const lines = answer.cautions.filter(({ severity }) => severity === 'line');
  const item = (/** @type {Plan['cautions'][number]} */ { says, action }) =>
    html`<li>${says} <span class="note">${action}</span></li>`;
  return html`<section class="plate" aria-labelledby="changes"><h3 class="head" id="changes">What changes the verdict</h3>
      <ul class="cautions">${changing.map(item)}</ul>
      ${changing.length === 0 && html`<p>Nothing beyond the cautions at the end of this sheet.</p>`}
      ${lines.length > 0 && html`<details class="more"><summary>${lines.length} more, each of one line or item</summary><ul class="cautions">${lines.map(item)}</ul></details>`}
    </section>`;
}

/** Two speeds beside each other have their type beside them. @param {Quantity | undefined} quantity @param {boolean} ofGusts */
const compared = (quantity, ofGusts) => (quantity ? `${shown(quantity)}${ofGusts ? ' nominal gust' : ''}` : '–');

/** @param {Check} check */
const isOfGusts = ({ demand }) => demand?.of === 'gust';

/** A check that has a ratio. @param {{ check: Check, ratio: number }} props */
function Compared({ check, ratio }) {
  const { ratioRange, margin, demand, capacity, holdsTo } = check;
  const [least = ratio, most = ratio] = ratioRange ?? [];
  return html`<td data-h="demand">${compared(demand, isOfGusts(check))}</td><td data-h="capacity">${compared(capacity, isOfGusts(check))}</td>
    <td data-h="ratio"><b class=${ratio > 1 ? 'over' : ''}>${ratioFigures(ratio)}</b>${least === most ? '' : html`<small class="note"> ${ratioFigures(least)} at best</small>`}</td>
    <td data-h="margin">${figures(margin ?? 0)}</td><td data-h="holds to" class="wind">${holdsTo ? shown(holdsTo.gust) : '–'}</td>`;
}

/** @param {{ answer: Plan }} props */
function Checks({ answer }) {
  const { checks, weakest } = answer;
  return html`<section class="plate" aria-labelledby="checks"><h3 class="head" id="checks">Every check<small>ratio: demand over capacity${checks.some(isOfGusts) ? '; of two gusts, its square' : ''}</small></h3>
    <div class="scroll" tabindex="0" role="region" aria-label="Table of checks"><table class="ledger fold">
      <thead><tr><th scope="col">check</th><th scope="col" class="word">verdict</th><th scope="col">demand</th><th scope="col">capacity</th><th scope="col">ratio</th><th scope="col">margin</th><th scope="col">holds to<small>actual gust</small></th></tr></thead>
      <tbody>${checks.map(
        (check) => html`<tr>
        <th scope="row">${check.title}${check.id === weakest ? ', weakest' : ''}</th>
        <td class="word" data-h="verdict"><span class=${check.verdict === 'over' ? 'nowrap over' : 'nowrap'}><${Mark} verdict=${check.verdict} />${VERDICT_WORDS[check.verdict]}</span></td>
        ${check.ratio === undefined ? html`<td class="word why-not" colspan="5">${check.why}</td>` : html`<${Compared} check=${check} ratio=${check.ratio} />`}
      </tr>`,
      )}</tbody></table></div></section>`;
}

/** @param {{ windLoads: Plan['windLoads'] }} props */
function WindLoads({ windLoads: { rows, total, units } }) {
  const span = (/** @type {number} */ low, /** @type {number} */ high) =>
    low === high ? figures(low) : `${figures(low)} to ${figures(high)}`;
  return html`<details class="more ledgers"><summary>Wind loads by item</summary>
    <div class="scroll" tabindex="0" role="region" aria-label="Wind loads"><table class="ledger fold">
      <caption class="note">Allowable level, at the worst heading for the tower.</caption>
      <thead><tr><th scope="col">item</th><th scope="col">height<small>${units.height}</small></th><th scope="col">front<small>${units.area}</small></th><th scope="col">side<small>${units.area}</small></th><th scope="col">coefficient</th><th scope="col" class="wind">pressure<small>${units.pressure}</small></th><th scope="col" class="wind">force<small>${units.force}</small></th><th scope="col">moment<small>at base, ${units.moment}</small></th></tr></thead>
      <tbody>${rows.map((row) => html`<tr><th scope="row">${row.name}</th><td data-h=${`height ${units.height}`}>${span(row.low, row.high)}</td><td data-h=${`front ${units.area}`}>${figures(row.front)}</td><td data-h=${`side ${units.area}`}>${figures(row.side)}</td><td data-h="coefficient">${figures(row.coefficient)}</td><td class="wind" data-h=${`pressure ${units.pressure}`}>${figures(row.pressure)}</td><td class="wind" data-h=${`force ${units.force}`}>${figures(row.force)}</td><td data-h=${`moment ${units.moment}`}>${figures(row.momentAtBase)}</td></tr>`)}</tbody>
      <tfoot><tr><th scope="row">total</th><td></td><td></td><td></td><td></td><td></td><td class="wind" data-h=${`force ${units.force}`}>${figures(total.force)}</td><td data-h=${`moment ${units.moment}`}>${figures(total.momentAtBase)}</td></tr></tfoot>
    </table></div></details>`;
}

/** What the mast asks of its supports. @param {NonNullable<Plan['mast']>} mast */
const atItsSupports = ({ atLowerEnd, atBearing, clampMoment }) =>
  `${shown(atLowerEnd)}${atBearing ? ` and ${shown(atBearing)}` : ''}${clampMoment ? ` and, all of it there, ${shown(clampMoment)}` : ''}`;

/** @param {{ answer: Plan }} props */
function Further({ answer }) {
  const { reactions, mast, design, hill, chance, heights } = answer;
  const pair = (/** @type {Plan['reactions']['allowable']} */ { moment, shear }) =>
    `${shown(moment)} and ${shown(shear)} shear`;
  const said = [answer.foundation, answer.raising, answer.lowerAt, answer.lowered, ...(chance ?? [])];
  return html`<details class="more"><summary>What went in, and the forces at the base</summary>
    <dl class="facts">
      <dt>Standard</dt><dd>${design.title}</dd>
      <dt>Speed</dt><dd class="wind">${shown(design.speed)}</dd>
      <dt>Gust effect, direction, importance</dt><dd>${figures(design.gustEffect)}, ${figures(design.directionFactor)}, ${figures(design.importance)}</dd>
      <dt>Overall height</dt><dd>${shown(heights.overall)}</dd>
      <dt>At the base, allowable level</dt><dd>${notKnown(reactions) ? 'not known' : pair(reactions.allowable)}</dd>
      ${!notKnown(reactions) && reactions.strength && html`<dt>At the base, strength level</dt><dd>${pair(reactions.strength)}</dd>`}
      ${reactions.weight && html`<dt>Weight</dt><dd>${shown(reactions.weight)}</dd>`}
      ${mast && html`<dt>Mast at its lower end${mast.atBearing ? ' and bearing' : ''}</dt><dd>${atItsSupports(mast)}</dd>`}
      ${mast?.tipMovement && html`<dt>Movement of its tip</dt><dd>${shown(mast.tipMovement)}</dd>`}
    </dl>
    ${hill && html`<p>${[hill, ...hill.conditions].map(({ says }) => says).join(' ')}</p>`}
    ${said.map((each) => each && html`<p>${each.says}</p>`)}
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
  const open = (/** @type {import('preact').TargetedEvent<HTMLDetailsElement>} */ event) => {
    if (event.currentTarget.open && !opened)
      drawingsWanted.value = ['ladder', 'elevation', ...MORE_DRAWINGS.map(([name]) => name)];
  };
  return html`<details class="more" onToggle=${open}><summary>More drawings: moment and shear, from above, ratio against gust, pressure</summary>
    ${opened && html`<div class="pair">${MORE_DRAWINGS.map(([name, title]) => html`<${Drawing} name=${name} title=${title} />`)}</div>`}</details>`;
}

/** Where the tower will be drawn. */
export function Ghost() {
  return html`<svg class="ghosts" viewBox="0 0 440 250" aria-hidden="true">
      <path class="line" d="M40 20v200" /><path class="line" d="M36 220h4M36 170h4M36 120h4M36 70h4" />
      <path class="ground" d="M30 220h390" /><path class="line" d="${Array.from({ length: 38 }, (_, index) => `M${36 + index * 10} 220l-5 6`).join('')}" />
      <path class="ghost" d="M210 220V80h26v140M223 80V46M176 62h94" />
      <text x="256" y="132">Your tower will be drawn here,</text><text x="256" y="148">to scale.</text>
    </svg>`;
}

/** Nothing can be answered yet: what the first answer waits for, and a ghost of the drawing. */
function Empty() {
  const numbers = store.firstNumbers.value;
  const given = numbers.filter(([, , isGiven]) => isGiven).length;
  const says =
    store.wanted.value.length > 0
      ? 'Give ten numbers, and the first answer stands here. Every further one moves it.'
      : store.entriesLeft.value;
  return html`<p class="says empty">${says}</p>
    <ol class="ten" aria-label=${`${given} of ${numbers.length} given`}>${numbers.map(
      ([pointer, what, isGiven]) => html`<li class=${isGiven ? 'given-one' : ''}>
      <a href=${`#${store.idOf(pointer)}`} onClick=${(/** @type {Event} */ event) => {
        event.preventDefault();
        store.goTo(pointer);
      }}>${what}</a>${isGiven && html`<span class="unseen">, given</span>`}</li>`,
    )}</ol>
    <${Ghost} />`;
}

/** Why the service has not answered yet. */
const WAITING = /** @type {const} */ ({
  rest: '',
  asked: '',
  slow: 'Working on your last change.',
  unreachable: 'The service does not answer. What you type is kept. It is asked again every few seconds.',
  busy: 'The service asks for a pause; it is asked again in a moment.',
  locked:
    'This service requires a key. Ask its operator. The browser asks for it; any name will do, the key is the password.',
});

/** What waits, what is out of reach, what is old. */
export function Standing() {
  const { state, answeredAt, earlier } = store;
  const at = answeredAt.value === '' ? '' : ` of ${answeredAt.value}`;
  const belongs = earlier.value ? `The answer below belongs to an earlier plan${at}.` : '';
  return html`<p class="waiting" role="status">${`${WAITING[state.value]} ${belongs}`.trim()}</p>
    ${state.value === 'locked' && html`<p class="acts"><button type="button" class="act" onClick=${askWithKey}>Give the key</button></p>`}`;
}

export function Answer() {
  const answer = store.answer.value;
  const { given, unknown } = store.counts.value;
  const earlier = store.earlier.value;
  return html`<section class="answer" id="answer" data-state=${store.state.value} data-earlier=${earlier ? 'yes' : undefined} aria-labelledby="the-answer">
    <h2 class="head" id="the-answer">${earlier ? 'Answer to an earlier plan' : 'The answer'}${given > 0 && !earlier && html`<small>from ${given} answers${unknown > 0 ? `, ${unknown} not known` : ''}</small>`}</h2>
    <${Standing} />
    ${
      answer
        ? html`<${Says} headline=${answer.headline} />
        <${Progress} answer=${answer} />
        <${Moved} />
        <${Board} answer=${answer} target=${answer.target} />
        <${Governs} answer=${answer} />
        <${ToFindOut} answer=${answer} />
        <${Inquiries} answer=${answer} />
        <${Figures} answer=${answer} />
        <${Forecast} />
        <div class="beside"><${Drawing} name="elevation" title="Elevation" /><${Cautions} answer=${answer} /></div>
        <${Drawing} name="ladder" title="Holds to, check by check" />
        <${Checks} answer=${answer} />
        <${MoreDrawings} />
        <${WindLoads} windLoads=${answer.windLoads} />
        <${Further} answer=${answer} />
        <${Candidates} />`
        : html`<${Empty} />`
    }
  </section>`;
}

/** What may be said of the whole of it. @param {Plan} answer */
const verdictOf = ({ decided }) => decided.verdict ?? 'open';

/** The verdict of what is decided. @param {{ answer: Plan }} props */
function Whole({ answer }) {
  const verdict = verdictOf(answer);
  return html`<span class=${`verdict${verdict === 'over' ? ' over' : ''}`}><${Mark} verdict=${verdict} />${sentence(VERDICT_WORDS[verdict])}</span>`;
}

/** The verdict at the lower edge, wherever one is on the sheet. */
export function VerdictStrip() {
  const answer = store.answer.value;
  const weakest = store.weakestOf(answer);
  const was = store.before.value;
  const hard = store.toCorrect.value.length;
  const earlier = store.earlier.value;
  return html`<nav aria-label="Verdict"><a class="strip-verdict" data-earlier=${earlier ? 'yes' : undefined} href="#answer">
    ${
      answer
        ? html`<span>${earlier && html`<span class="of-earlier">Earlier plan: </span>`}<${Whole} answer=${answer} />${weakest ? html`<span class="weakest">${weakest.verdict === verdictOf(answer) ? ': ' : '; weakest: '}${weakest.title} ${was && ratioFigures(was.ratio) !== ratioFigures(weakest.ratio) ? html`${ratioFigures(was.ratio)} → ` : ''}<b>${ratioFigures(weakest.ratio)}</b>${weakest.verdict === verdictOf(answer) ? '' : `, ${VERDICT_WORDS[weakest.verdict]}`}</span>` : ''}</span>
        ${answer.decided.parts < answer.decided.of && html`<span class="of-parts">${answer.decided.parts} of ${answer.decided.of} parts decided</span>`}
        ${weakest?.holdsTo && html`<span class="wind held">holds to ${shown(weakest.holdsTo.gust)} gust</span>`}`
        : html`<span>${store.guided.value < 0 ? `${store.firstNumbers.value.filter(([, , isGiven]) => isGiven).length} of ten numbers given` : store.entriesLeft.value}</span>`
    }
    ${hard > 0 && html`<span class="over to-correct">${hard} to correct</span>`}
    <span class="go">see why</span></a></nav>`;
}
