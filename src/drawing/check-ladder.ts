import { displayValue } from '../foundation/index.ts';
import { type Assessment, actualSpeedHoldsTo, type Check } from '../margins/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import { drawnName, figures, inWords, ratioFigures, VERDICT_WORDS } from '../words/index.ts';
import { scaleOf, uprightAxis } from './axes.ts';
import { LINE, lettering, pen, run, sheet, WIDTH } from './ink.ts';
import { placed } from './lane.ts';
import { element, group, type Point, type Svg, through } from './svg.ts';
import { planSpeedWords, unitOf, wrapped } from './words.ts';

const TOP = 58;
const FOOT = 458;
const LEFT = 74;
const RIGHT = 164;
const LANE = 200;
const LANE_WIDTH = WIDTH - LANE - 8;
/** Of more rungs than this the stronger ones are named beneath. */
const MOST_NAMED = 9;

/**
 * The actual gust in the open whose own force is that of the site's design wind.
 *
 * The method's speed times √(λ·K_d·I), as an actual gust [m/s].
 */
export function siteGust({ input, site, wind }: Assessment): number {
  const method = METHOD_BY_ID[input.method];
  return method.actualGust(
    actualSpeedHoldsTo.of(site.speed, wind.toAllowableFactor, wind.directionFactor, wind.importance),
  );
}

/** Every check as a rung at the actual gust it holds to, the site's gust across the rails like a water line. */
export function checkLadder(assessment: Assessment): string {
  const { input, checks, weakest } = assessment;
  const { units } = input.station;
  const water = siteGust(assessment);
  const rungs = checks
    .flatMap((check) =>
      check.result?.holdsTo ? [{ check, gust: check.result.holdsTo.gust, ratio: check.result.ratio }] : [],
    )
    .sort((one, other) => other.gust - one.gust);
  const speed = (value: number) => displayValue(value, 'speed', units);
  const gusts = [water, ...rungs.map(({ gust }) => gust)];
  // A check that holds to far more than the rest would press the others together.
  const most = Math.min(Math.max(...gusts), 2.4 * Math.min(...gusts.filter((each) => each > 0.5 * water)));
  const least = Math.min(...gusts);
  const pad = Math.max(0.08 * most, 0.12 * (most - least));
  const scale = scaleOf([Math.max(0, speed(least - pad)), speed(most + pad)], [FOOT, TOP], 44);
  const y = (gust: number) => Math.max(scale.at(speed(gust)), TOP + 4);
  const waterY = y(water);
  const waterWords = wrapped(
    `site wind, ${inWords(water, 'speed', units)} actual gust, from the ${inWords(input.site.speed, 'speed', units)} ${planSpeedWords(assessment)}`,
    LANE_WIDTH,
  );
  const blocks = rungs.slice(-MOST_NAMED).map((rung) => ({ ...rung, lines: wordsOf(rung.check, assessment) }));
  const unnamed = rungs.slice(0, -MOST_NAMED);
  const wishes = [
    ...blocks.map((block) => ({ anchor: y(block.gust), height: (block.lines.length + 1) * LINE + 5, block })),
    { anchor: waterY, height: waterWords.length * LINE + 8, block: undefined },
  ].sort((one, other) => one.anchor - other.anchor || (one.block ? -1 : 1));
  const tall = wishes.reduce((sum, wish) => sum + wish.height, 0);
  const foot = Math.max(FOOT, TOP - 14 + tall);
  const middles = placed(wishes, TOP - 14, foot);
  const beneath = beneathOf(assessment, unnamed, foot + 34);
  return sheet(
    `Checks by gust at ${input.title}`,
    describe(assessment, water),
    beneath.foot,
    lettering(14, 18, 'Checks by gust', { bold: true }),
    lettering(14, 34, `${unitOf('speed', units)}, actual 3-second gust, open country, 10 m up`, {
      ink: 'wind',
      italic: true,
    }),
    uprightAxis(46, scale, TOP, FOOT, ''),
    [LEFT, RIGHT].map((x) =>
      element('path', {
        d: through([
          [x, TOP - 6],
          [x, FOOT],
        ]),
        ...pen({ line: 'ink', width: 2.2 }),
      }),
    ),
    unnamed.map(({ check, gust }) =>
      element('path', {
        d: through([
          [LEFT, y(gust)],
          [check.verdict === 'over' ? (LEFT + RIGHT) / 2 - 7 : RIGHT, y(gust)],
        ]),
        ...pen({
          line: check.verdict === 'over' ? 'over' : 'ink',
          width: 1,
          ...(check.verdict === 'open' ? { dash: '6 4' } : {}),
        }),
      }),
    ),
    waterOf(waterY),
    wishes.map((wish, index) => {
      const middle = middles[index] as number;
      if (!wish.block) {
        const first = middle - ((waterWords.length - 1) * LINE) / 2 + 4.3;
        return group(
          {},
          leader([RIGHT + 14, waterY], [LANE - 4, middle], 'wind'),
          waterWords.map((line, number) =>
            lettering(LANE, first + number * LINE, line, { ink: 'wind', italic: true, halo: true }),
          ),
        );
      }
      return rungOf(wish.block, wish.anchor, middle, wish.block.check.id === weakest, units, water, y);
    }),
    beneath.svg,
  );
}

function wordsOf(check: Check, { weakest }: Assessment): readonly string[] {
  const ratio = check.result ? ratioFigures(check.result.ratio) : '';
  const tail = `${ratio} ${VERDICT_WORDS[check.verdict]}${check.id === weakest ? ', weakest' : ''}`;
  return wrapped(`${drawnName(check)} ${tail}`, LANE_WIDTH, 3);
}

function rungOf(
  { check, gust, lines }: { readonly check: Check; readonly gust: number; readonly lines: readonly string[] },
  anchor: number,
  middle: number,
  weakest: boolean,
  units: Assessment['input']['station']['units'],
  water: number,
  y: (gust: number) => number,
): Svg {
  const over = check.verdict === 'over';
  const ink = over ? 'over' : 'ink';
  const width = weakest ? 4.5 : 2.3;
  const shown = check.verdict === 'open' ? '6 4' : undefined;
  // Over: the rung is broken in the middle.
  const pieces = over
    ? [
        [LEFT, (LEFT + RIGHT) / 2 - 7],
        [(LEFT + RIGHT) / 2 + 7, RIGHT],
      ]
    : [[LEFT, RIGHT]];
  const first = middle - (lines.length * LINE) / 2 + 4.3;
  const ratio = check.result?.ratio ?? 0;
  // A maker's own wind has no direction factor: such a check meets the site at a gust of its own.
  const own = check.kind === 'antenna' && ratio > 0 ? gust * Math.sqrt(ratio) : water;
  return group(
    {},
    pieces.map(([from, to]) =>
      element('path', {
        d: through([
          [from as number, anchor],
          [to as number, anchor],
        ]),
        ...pen({ line: ink, width, ...(shown === undefined ? {} : { dash: shown }) }),
      }),
    ),
    ...(over
      ? [
          element('path', {
            d: `M${LEFT + 38} ${(anchor + 5).toFixed(2)}l4 -10m6 10l4 -10`,
            ...pen({ line: 'over', width: 1.4 }),
          }),
        ]
      : []),
    ...(Math.abs(own - water) > 0.01 * water
      ? [
          element('path', {
            d: through([
              [LEFT + 8, y(own)],
              [RIGHT - 8, y(own)],
            ]),
            ...pen({ line: 'wind', width: 1.3, dash: '5 3' }),
          }),
          element('path', {
            d: through([
              [LEFT + 16, y(own)],
              [LEFT + 16, anchor],
            ]),
            ...pen({ line: 'wind', width: 0.9, dash: '1 3' }),
          }),
        ]
      : []),
    leader([RIGHT + 2, anchor], [LANE - 4, middle], 'rule-firm'),
    lines.map((line, number) =>
      lettering(LANE, first + number * LINE, line, { halo: true, ink, bold: weakest || over }),
    ),
    lettering(
      LANE,
      first + lines.length * LINE,
      [
        run(inWords(gust, 'speed', units), { ink: 'wind', italic: true }),
        ...(Math.abs(own - water) > 0.01 * water
          ? [run(`, against ${figures(displayValue(own, 'speed', units))}`, { ink: 'wind', italic: true })]
          : []),
      ],
      { halo: true },
    ),
  );
}

function leader(from: Point, to: Point, ink: 'wind' | 'rule-firm'): Svg {
  return element('path', {
    d: through([from, [from[0] + 8, from[1]], [to[0] - 4, to[1]], to]),
    ...pen({ line: ink, width: 0.7 }),
  });
}

function waterOf(y: number): Svg {
  const strokes = [8, 15, 22].map((down, row) =>
    Array.from({ length: 6 - row }, (_, index) => `M${62 + row * 9 + index * 20} ${(y + down).toFixed(2)}h9`).join(''),
  );
  return group(
    {},
    element('path', {
      d: through([
        [56, y],
        [RIGHT + 14, y],
      ]),
      ...pen({ line: 'wind', width: 2.6 }),
    }),
    element('path', { d: strokes.join(''), ...pen({ line: 'wind', width: 0.8 }) }),
  );
}

/** What is no matter of a gust, and what is not shown: no rung, but a line beneath. */
function beneathOf(
  { checks, input }: Assessment,
  unnamed: readonly { readonly check: Check; readonly gust: number }[],
  top: number,
): { readonly svg: Svg; readonly foot: number } {
  const rest = checks.filter((check) => !check.result?.holdsTo);
  let y = top;
  const drawn = rest.map((check) => {
    const shown = check.verdict !== 'open';
    const ratio = check.result && Number.isFinite(check.result.ratio) ? ` ${ratioFigures(check.result.ratio)}` : '';
    const lines = wrapped(`${drawnName(check)}${ratio} ${VERDICT_WORDS[check.verdict]}`, WIDTH - 56, 2);
    const at = y;
    y += lines.length * LINE + 3;
    return group(
      {},
      element('path', {
        d: through([
          [16, at - 4],
          [34, at - 4],
        ]),
        ...pen({ line: check.verdict === 'over' ? 'over' : 'ink', width: 1.6, ...(shown ? {} : { dash: '3 3' }) }),
      }),
      lines.map((line, index) =>
        lettering(42, at + index * LINE, line, { ink: check.verdict === 'over' ? 'over' : 'ink' }),
      ),
    );
  });
  const stronger = unnamed.map(
    ({ check, gust }) =>
      `${drawnName(check)} ${ratioFigures(check.result?.ratio ?? 0)} ${VERDICT_WORDS[check.verdict]}, ${inWords(gust, 'speed', input.station.units)}`,
  );
  const list = stronger.length > 0 ? wrapped(`Fine rungs, from the top: ${stronger.join('; ')}.`, WIDTH - 28) : [];
  const notes = [
    'Rung: gust at which a check reaches ratio 1. That is its capacity, not where it fails. Beneath: checks without a gust; open ones dashed.',
    ...(checks.some((check) => check.kind === 'antenna' && check.result?.holdsTo)
      ? ['“against” and the dashed mark between the rails: site wind as the antenna’s manufacturer counts it.']
      : []),
  ].flatMap((note) => wrapped(note, WIDTH - 28));
  const svg = group(
    {},
    drawn,
    list.map((line, index) => lettering(14, y + 6 + index * LINE, line)),
    notes.map((line, index) => lettering(14, y + 6 + (list.length + index) * LINE, line, { ink: 'ink-soft' })),
  );
  return { svg, foot: y + (list.length + notes.length) * LINE + 6 };
}

function describe({ input, checks }: Assessment, water: number): string {
  const { units } = input.station;
  const told = checks.map((check) => {
    const holds = check.result?.holdsTo;
    const ratio =
      check.result && Number.isFinite(check.result.ratio) ? `, ratio ${ratioFigures(check.result.ratio)}` : '';
    return `${drawnName(check)}: ${VERDICT_WORDS[check.verdict]}${ratio}${holds ? `, holds to a gust of ${inWords(holds.gust, 'speed', units)}` : ''}`;
  });
  return `The site wind has the force of an actual gust of ${inWords(water, 'speed', units)}. ${told.join('; ')}.`;
}
