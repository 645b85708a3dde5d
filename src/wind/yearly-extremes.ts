import {
  cite,
  defineFormula,
  evaluate,
  listVariable,
  Refusal,
  type Trace,
  under,
  variable,
} from '../foundation/index.ts';
import { type ChartValue, type Climate, climateGusts } from './climate.ts';
import { type ExtremesFit, extremesByLMoments, speedOfPeriodWithShape } from './generalised-extremes.ts';
import { chanceInYear, chanceOverYears, errorOfPeriod, type GumbelFit, gustOfPeriod, SMALL_CHANCES } from './gumbel.ts';
import { gumbelByLikelihood, gumbelByLMoments, gumbelByMoments, gumbelThroughChart } from './gumbel-fits.ts';
import {
  type EndOfBand,
  type PlausibleLaws,
  plausibleExtremes,
  plausibleTwoKinds,
  rateBand,
} from './plausible-laws.ts';
import { type RecordDoubt, recordDoubts, tellsNoLaw } from './yearly-record.ts';

export const EXTREMES_METHODS = [
  'gumbel',
  'heavier-tail',
  'two-kinds',
  'likelihood',
  'moments',
  'chart-line',
  'chart-pair',
] as const;
export type ExtremesMethod = (typeof EXTREMES_METHODS)[number];

/** What one way of fitting the climate makes of a gust. */
export interface ChanceByMethod {
  readonly method: ExtremesMethod;
  /** Of a pair: its two return periods [years]. */
  readonly through?: readonly [number, number];
  /** Absent where no single law was fitted. */
  readonly fit?: GumbelFit & Partial<ExtremesFit>;
  /** Gust reached once in 50 years on the average, by the law fitted [m/s]. */
  readonly fiftyYears?: number;
  /** Its standard error, where the way of fitting gives one [m/s]. */
  readonly fiftyYearsError?: number;
  /** Lowest and highest chance in a year: 5 % and 95 % of the plausible laws, or twice the one of the law fitted. */
  readonly perYear: readonly [number, number];
  /** Whether the band counts it; else it stands for comparison. */
  readonly inBand: boolean;
}

/** Chance of reaching a gust, always between two ends. */
export interface ChanceOfReaching {
  readonly perYear: readonly [number, number];
  readonly overYears: readonly [number, number];
  /** Of a record: in how many of its years the gust was reached. */
  readonly counted?: { readonly reached: number; readonly years: number };
  readonly byMethod: readonly ChanceByMethod[];
}

/** The return period by which fits are compared: that of most charts. @source common-practice */
const COMPARED_AT = 50;

const HEADINGS: Readonly<Record<ExtremesMethod, string>> = {
  gumbel: "Gumbel's law, by L-moments and as a band",
  'heavier-tail': 'a law with a tail that may be heavier, by L-moments and as a band',
  'two-kinds': 'storms of two kinds, as a band',
  likelihood: "Gumbel's law by maximum likelihood, for comparison",
  moments: "Gumbel's law by moments, for comparison",
  'chart-line': 'line through the chart',
  'chart-pair': 'line through two values of the chart',
};

/**
 * Shapes that the law with a heavier tail tries, weighed by (0.5 + ξ)⁸·(0.5 − ξ)⁵: 0.10 on the average, give or take
 * 0.12. @source martins-stedinger-2000
 */
const SHAPES = Array.from({ length: 13 }, (_, index) => (index - 4) / 20).map((shape) => ({
  shape,
  weight: (0.5 + shape) ** 8 * (0.5 - shape) ** 5,
}));

export const shareOfLaws = defineFormula({
  id: 'share-of-plausible-laws',
  title: 'Share of the laws that the record leaves plausible by which the chance is lower than this',
  symbol: 'F',
  unit: 'one',
  expression: 'sum(w .* f)',
  variables: [
    listVariable('w', 'weight of each shape', 'one', 0, 1),
    listVariable('f', 'share of the laws of that shape', 'one', 0, 1),
  ],
  cite: cite('derived', 'likelihood of the record with the measure dμ·dσ/σ', 'derived'),
  of: (weights: readonly number[], shares: readonly number[]) =>
    weights.reduce((sum, each, index) => sum + each * (shares[index] as number), 0),
});

export const chanceOfRate = defineFormula({
  id: 'chance-of-rate',
  title: 'Chance that the strongest gust of a year reaches a speed, from how often it is expected to be exceeded',
  symbol: 'p',
  unit: 'one',
  expression: '-expm1(-exp(ln_t))',
  variables: [variable('ln_t', 'logarithm of the times a year', 'one', -30, 1)],
  cite: cite('gumbel-1958', 'laws of the largest value, F = exp(-t)', 'memory'),
  of: (logRate: number) => -Math.expm1(-Math.exp(logRate)),
});

/**
 * Chance in a year, and in so many, that an actual gust reaches a speed, as a band. Yearly maxima: the 90 % bands of
 * Gumbel's law where the record does not contradict it, of a law whose tail may be heavier, and of storms of two kinds,
 * together and never without what was counted; Gumbel by likelihood and by moments for comparison. Chart: the
 * least-squares line and, from three values on, the line through every two of them.
 *
 * p = 1 − exp(−t), p_n = 1 − (1 − p)^n
 *
 * @param climate what is known of the place's strongest winds
 * @param gust the actual 3-second gust at 10 m over open ground [m/s]
 * @param years for how many years, 1 or more [years]
 * @returns lowest and highest chance in a year and in all, and each method's own
 * @throws Refusal `record-tells-no-law` when a record is too short or too even; `no-spread` when a chart does not rise
 * @example chanceOfReaching({ kind: 'chart', basis: 'gust3-nominal', returns: [{ years: 10, speed: 34 }, { years: 50, speed: 41 }] }, 41, 50).overYears[0] // 0.6358
 * @source gumbel-1958
 */
export function chanceOfReaching(climate: Climate, gust: number, years: number, trace?: Trace): ChanceOfReaching {
  const ofRecord = climate.kind === 'record' ? chanceByRecord(climate, gust, trace) : undefined;
  const byMethod = climate.kind === 'chart' ? ofChart(climate, gust, trace) : (ofRecord?.byMethod ?? []);
  const ends = byMethod.filter((each) => each.inBand).flatMap((each) => each.perYear);
  const counted = ofRecord?.counted;
  // No law may say less than what happened.
  if (counted && counted.reached > 0) ends.push(counted.reached / counted.years);
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const over = (chance: number) => evaluate(trace, chanceOverYears, [chance, years], SMALL_CHANCES);
  return {
    perYear: [low, high],
    overYears: [over(low), over(high)],
    ...(counted ? { counted } : {}),
    byMethod,
  };
}

type YearlyRecord = Extract<Climate, { kind: 'record' }>;

/** What of a record does not change with the gust asked for. */
interface FittedRecord {
  readonly gusts: readonly number[];
  readonly doubts: readonly RecordDoubt[];
  readonly laws: Readonly<Record<'gumbel' | 'heavier-tail' | 'two-kinds', PlausibleLaws>>;
}

/** Fits are kept as long as the record they are of. */
const fitted = new WeakMap<YearlyRecord, FittedRecord>();

function fittedRecord(climate: YearlyRecord): FittedRecord {
  const kept = fitted.get(climate);
  if (kept) return kept;
  const doubts = recordDoubts(climate);
  if (tellsNoLaw(doubts)) {
    throw new Refusal(
      'record-tells-no-law',
      'So few years, or years so alike, tell nothing of rarer winds.',
      '/site/climate',
    );
  }
  const gusts = climateGusts(climate, climate.yearlyMax);
  const made: FittedRecord = {
    gusts,
    doubts,
    laws: {
      gumbel: plausibleExtremes(gusts, [{ shape: 0, weight: 1 }]),
      'heavier-tail': plausibleExtremes(gusts, SHAPES),
      'two-kinds': plausibleTwoKinds(gusts),
    },
  };
  fitted.set(climate, made);
  return made;
}

function chanceByRecord(
  climate: YearlyRecord,
  gust: number,
  trace: Trace | undefined,
): Required<Pick<ChanceOfReaching, 'byMethod' | 'counted'>> {
  const { gusts, doubts, laws } = fittedRecord(climate);
  if (trace) climateGusts(climate, climate.yearlyMax, trace);
  const band = (method: keyof typeof laws): readonly [number, number] => {
    const [low, high] = rateBand(laws[method], gust);
    return [chanceAt(low, trace), chanceAt(high, trace)];
  };
  const byMethod: ChanceByMethod[] = [
    under(trace, HEADINGS.gumbel, () => {
      const fit = gumbelByLMoments(gusts, trace);
      const fiftyYears = gustOfPeriod(fit, COMPARED_AT, trace);
      return { method: 'gumbel', fit, fiftyYears, perYear: band('gumbel'), inBand: !doubts.includes('not-gumbel') };
    }),
    under(trace, HEADINGS['heavier-tail'], () => {
      const fit = extremesByLMoments(gusts, trace);
      const { location, scale, shape } = fit;
      const fiftyYears = evaluate(trace, speedOfPeriodWithShape, [location, scale, shape, COMPARED_AT]);
      return { method: 'heavier-tail', fit, fiftyYears, perYear: band('heavier-tail'), inBand: true };
    }),
    under(trace, HEADINGS['two-kinds'], () => ({ method: 'two-kinds', perYear: band('two-kinds'), inBand: true })),
    {
      ...plainly('likelihood', (at) => gumbelByLikelihood(gusts, at), gust, false, trace),
      fiftyYearsError: under(trace, HEADINGS.likelihood, () =>
        errorOfPeriod(gumbelByLikelihood(gusts), gusts.length, COMPARED_AT, trace),
      ),
    },
    plainly('moments', (at) => gumbelByMoments(gusts, at), gust, false, trace),
  ];
  const reached = gusts.filter((each) => each >= gust).length;
  return { byMethod, counted: { reached, years: gusts.length } };
}

function chanceAt({ logRate, byShape }: EndOfBand, trace: Trace | undefined): number {
  if (trace) evaluate(trace, shareOfLaws, [byShape.map(({ weight }) => weight), byShape.map(({ below }) => below)]);
  return evaluate(trace, chanceOfRate, [logRate], SMALL_CHANCES);
}

function plainly(
  method: ExtremesMethod,
  lawBy: (trace: Trace | undefined) => GumbelFit,
  gust: number,
  inBand: boolean,
  trace: Trace | undefined,
): ChanceByMethod {
  return under(trace, HEADINGS[method], () => {
    const law = lawBy(trace);
    const fiftyYears = gustOfPeriod(law, COMPARED_AT, trace);
    const chance = evaluate(trace, chanceInYear, [gust, law.location, law.scale], SMALL_CHANCES);
    return { method, fit: law, fiftyYears, perYear: [chance, chance], inBand };
  });
}

function ofChart(
  climate: Extract<Climate, { kind: 'chart' }>,
  gust: number,
  trace: Trace | undefined,
): readonly ChanceByMethod[] {
  const speeds = climateGusts(
    climate,
    climate.returns.map((value) => value.speed),
    trace,
  );
  const returns = climate.returns.map(({ years }, index) => ({ years, speed: speeds[index] as number }));
  const line = plainly('chart-line', (at) => gumbelThroughChart(returns, at), gust, true, trace);
  if (returns.length < 3) return [line];
  const pairs = everyTwo(returns).map((two) => ({ two, ...ofPair(two, gust, undefined) }));
  const lowest = pairs.reduce((least, each) => (each.perYear[0] < least.perYear[0] ? each : least));
  const highest = pairs.reduce((most, each) => (each.perYear[1] > most.perYear[1] ? each : most));
  return [line, ...[...new Set([lowest, highest])].map(({ two }) => ofPair(two, gust, trace))];
}

function ofPair(two: readonly [ChartValue, ChartValue], gust: number, trace: Trace | undefined): ChanceByMethod {
  const through = [two[0].years, two[1].years] as const;
  return { ...plainly('chart-pair', (at) => gumbelThroughChart(two, at), gust, true, trace), through };
}

function everyTwo(returns: readonly ChartValue[]): readonly (readonly [ChartValue, ChartValue])[] {
  return returns.flatMap((one, index) => returns.slice(index + 1).map((other) => [one, other] as const));
}
