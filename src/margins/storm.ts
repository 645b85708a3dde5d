import { MILE_PER_HOUR, type UnitSystem } from '../foundation/index.ts';
import { convertSpeed } from '../wind/index.ts';
import { type Assessment, assess } from './assess.ts';
import type { Check, OpenBecause } from './checks/check.ts';
import { crankHeightsOf, standing } from './crank-heights.ts';
import { lowerAtGust } from './formulas.ts';
import { canBeLowered } from './holds-to-ratio.ts';
import { loweredOf } from './lowered.ts';
import { comparedIn, couldBeOver, type Part, partsOf } from './parts.ts';
import { SAME_HEIGHT } from './stated-for.ts';

/** What a forecast states: an actual 3-second gust, or a mean over a time, both at 10 m in open country. */
export const FORECAST_BASES = ['gust3', 'mean-1min', 'mean-10min', 'mean-hour'] as const;
export type ForecastBasis = (typeof FORECAST_BASES)[number];

/** A wind that is forecast. */
export interface Forecast {
  /** [m/s] */
  readonly speed: number;
  /** Where it is not stated, the mean with the largest gusts is taken. */
  readonly basis?: ForecastBasis;
}

/** From the highest down. */
export const STORM_POSTURES = ['as-it-stands', 'part-way', 'nested', 'flat'] as const;

/** How far a part keeps the margin: up to a gust, in every wind, in none, or nobody can tell. */
export const STORM_STATES = ['to-a-gust', 'in-any-wind', 'in-none', 'open'] as const;

export interface StormPart {
  readonly part: Part;
  readonly state: (typeof STORM_STATES)[number];
  /** Forecast gust up to which the margin is kept by what is known of it, the error of a forecast taken off [m/s]. */
  readonly keepsTo?: number;
  /** Open, and above 1 at worst in the site's wind with no gust known that it bears. */
  readonly couldBeOver: boolean;
}

export interface StormPosture {
  readonly posture: (typeof STORM_POSTURES)[number];
  /** Its top above ground, unless it lies flat [m]. */
  readonly top?: number;
  readonly parts: readonly StormPart[];
  /** Forecast gust up to which all its decided parts keep the margin, in whole steps; absent where none can be given [m/s]. */
  readonly keepsTo?: number;
  /** The part that keeps it the least far. */
  readonly governs?: StormPart;
  /** Loads that keep the tower from going down there. */
  readonly clashes: readonly string[];
}

/** What a forecast asks for. */
export const STORM_ACTS = ['as-it-stands', 'crank-down', 'nest', 'lower-flat', 'not-known'] as const;

export interface StormRow {
  /** Above this forecast gust, if it is not the first row [m/s]. */
  readonly above?: number;
  /** Up to this one, if it is not the last [m/s]. */
  readonly upTo?: number;
  readonly act: (typeof STORM_ACTS)[number];
  readonly posture?: StormPosture;
}

export interface StormCard {
  readonly assessment: Assessment;
  readonly postures: readonly StormPosture[];
  /** What to do by the forecast, from calm up: whole, without gaps. */
  readonly rows: readonly StormRow[];
  /** Of a telescoping tower: the highest top with which it keeps the margin in the site's wind, as with all lower ones [m]. */
  readonly highestInSiteWind?: number;
  readonly forecast?: {
    readonly given: Forecast;
    /** As an actual 3-second gust [m/s]. */
    readonly gust: number;
    readonly row: StormRow;
  };
}

/** Forecasts are given in whole miles an hour or metres a second; what is kept is rounded down to one. @source common-practice */
const STEP: Readonly<Record<UnitSystem, number>> = { us: MILE_PER_HOUR, si: 1 };

/**
 * What to do with a tower by the gust that is forecast.
 *
 * v = (1 − a)·min v_m over the decided parts, by posture, from the highest down
 *
 * A posture has no such gust where its tower is open, where an open part could be over, where a part is beyond the margin
 * without wind, or where it cannot be reached.
 *
 * @param forecast in the open at 10 m [m/s]
 * @throws Refusal where its sections do not nest as low as the plan says
 * @source common-practice
 */
export function stormCardOf(own: Assessment, forecast?: Forecast): StormCard {
  const assessment = canBeLowered(own.input.station) ? own : assess({ ...own.input, gustsAtMargin: true });
  const lowered = loweredOf(assessment);
  const postures = [
    postureOf('as-it-stands', assessment, []),
    ...partWay(assessment),
    ...(lowered ? [postureOf('nested', lowered.assessment, lowered.clashes)] : []),
    ...(assessment.input.station.tower.hingeHeight === undefined ? [] : [flat(assessment)]),
  ];
  const rows = rowsOf(postures);
  const highest = crankHeightsOf(assessment)?.highest?.top;
  const card = { assessment, postures, rows, ...(highest === undefined ? {} : { highestInSiteWind: highest }) };
  if (forecast === undefined) return card;
  const gust = forecastGust(forecast);
  const row = rows.find(({ upTo }) => upTo === undefined || gust <= upTo * (1 + 1e-9)) as StormRow;
  return { ...card, forecast: { given: forecast, gust, row } };
}

/**
 * A forecast as an actual 3-second gust.
 *
 * V_3s = g_T·V_T, g_T the larger of the published ratios; of a mean over an unknown time that of an hour
 *
 * @returns the gust [m/s]
 * @source wmo-td-1555
 */
function forecastGust({ speed, basis = 'mean-hour' }: Forecast): number {
  return basis === 'gust3' ? speed : convertSpeed(speed, basis, 'gust3-nominal', 'site');
}

function postureOf(
  posture: 'as-it-stands' | 'part-way' | 'nested',
  { checks, input }: Pick<Assessment, 'checks' | 'input'>,
  clashes: readonly string[],
): StormPosture {
  const { station, wanted } = input;
  const parts = partsOf(standing(checks)).flatMap((part) =>
    part.verdict === undefined ? [] : [stormPart(part, wanted.forecast)],
  );
  const found = { posture, top: station.tower.top, parts, clashes };
  const tower = parts.find(({ part }) => part.kind === 'tower');
  const forbidden = parts.some(({ state, couldBeOver }) => state === 'in-none' || couldBeOver);
  if (clashes.length > 0 || forbidden || !tower || tower.state === 'open') return found;
  const governs = parts.reduce<StormPart | undefined>(
    (least, part) => (reaches(part) < reaches(least) ? part : least),
    undefined,
  );
  const step = STEP[station.units];
  const steps = Math.floor(reaches(governs) / step + 1e-9);
  return governs && steps > 0 ? { ...found, keepsTo: steps * step, governs } : found;
}

const reaches = (part: StormPart | undefined) => part?.keepsTo ?? Number.POSITIVE_INFINITY;

/** Lying on the ground or its rests: what the wind does to it there is not worked out, only whether it comes down to them. */
function flat({ parts }: Assessment): StormPosture {
  const onTheWay = parts.filter(
    ({ kind, verdict }) => (kind === 'tower-lowered' || kind === 'raising-gear') && verdict !== undefined,
  );
  return {
    posture: 'flat',
    parts: onTheWay.map((part) => ({
      part,
      state: part.verdict === 'open' ? 'open' : part.verdict === 'over' ? 'in-none' : 'in-any-wind',
      couldBeOver: couldBeOver(part),
    })),
    clashes: [],
  };
}

/** Open in the site's wind, yet with a ratio at worst that counts all it is compared for. */
const READ_AT_WORST: ReadonlySet<OpenBecause | undefined> = new Set([
  undefined,
  'readings-disagree',
  'not-given',
  'beyond-rating',
]);

function stormPart(part: Part, error: number): StormPart {
  const compared = comparedIn(part);
  const states = compared.map(stateOf);
  const state = (['in-none', 'open', 'to-a-gust'] as const).find((each) => states.includes(each)) ?? 'in-any-wind';
  const couldBeOver = compared.some((check, index) => states[index] === 'open' && (check.result?.ratio ?? 0) > 1);
  // What is known of an open part bounds it as well.
  const gusts = compared.flatMap(({ result }) => result?.keepsMarginTo ?? []);
  const keepsTo = gusts.length === 0 ? {} : { keepsTo: lowerAtGust.of(Math.min(...gusts), error) };
  return { part, state, couldBeOver, ...(state === 'in-none' ? {} : keepsTo) };
}

function stateOf({ verdict, because, result }: Check): StormPart['state'] {
  if (result?.ratioWithoutWind !== undefined) return 'in-none';
  if (verdict === 'open' && !(READ_AT_WORST.has(because) && result)) return 'open';
  if (result?.keepsMarginTo !== undefined) return 'to-a-gust';
  if (verdict === 'within') return 'in-any-wind';
  return verdict === 'open' ? 'open' : 'in-none';
}

const ACT = {
  'as-it-stands': 'as-it-stands',
  'part-way': 'crank-down',
  nested: 'nest',
  flat: 'lower-flat',
} as const satisfies Readonly<Record<StormPosture['posture'], StormRow['act']>>;

/**
 * Between as it stands and nested, at quarters of the travel: each keeps the margin no farther than all that is looked at below
 * it, where it can stand.
 */
function partWay(own: Assessment): readonly StormPosture[] {
  const { top } = own.input.station.tower;
  const heights = crankHeightsOf(own)?.at.filter((each) => each.clashes.length === 0 && each.top < top - SAME_HEIGHT);
  const found: StormPosture[] = [];
  let least: StormPosture | undefined;
  for (const each of heights ?? []) {
    const here = postureOf('part-way', each, []);
    if (least === undefined || (here.keepsTo ?? 0) < (least.keepsTo ?? 0)) least = here;
    if (!QUARTERS.some((share) => Math.abs(share - each.share) < 1e-9)) continue;
    const { keepsTo, governs } = least;
    const { keepsTo: _, governs: __, ...posture } = here;
    found.unshift({ ...posture, ...(keepsTo === undefined || governs === undefined ? {} : { keepsTo, governs }) });
  }
  return found;
}

const QUARTERS = [0.25, 0.5, 0.75] as const;

/** A height part of the way is a row of its own where it keeps the margin so much farther: 3 mph [m/s]. @source common-practice */
const WORTH_CRANKING = 2.99 * MILE_PER_HOUR;

/** Each posture as far as it keeps the margin farther than what stands higher; beyond the last, flat or nobody can tell. */
function rowsOf(postures: readonly StormPosture[]): readonly StormRow[] {
  const rows: StormRow[] = [];
  let above: number | undefined;
  for (const posture of postures) {
    const { keepsTo } = posture;
    const least = posture.posture === 'part-way' && above !== undefined ? WORTH_CRANKING : 0;
    if (keepsTo === undefined || keepsTo <= (above ?? 0) + least) continue;
    const act = ACT[posture.posture];
    rows.push({ ...(above === undefined ? {} : { above }), upTo: keepsTo, act, posture });
    above = keepsTo;
  }
  const last = postures.find(
    ({ posture, parts }) => posture === 'flat' && !parts.some((part) => part.state === 'in-none' || part.couldBeOver),
  );
  const beyond = above === undefined ? {} : { above };
  return [...rows, last ? { ...beyond, act: 'lower-flat', posture: last } : { ...beyond, act: 'not-known' }];
}
