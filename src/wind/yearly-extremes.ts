import { evaluate, type Trace, under } from '../foundation/index.ts';
import { type ChartValue, type Climate, climateGusts } from './climate.ts';
import {
  chanceInYear,
  chanceInYearWithError,
  chanceOverYears,
  EULER,
  errorOfPeriod,
  type GumbelFit,
  gustOfPeriod,
  reducedVariateOfSpeed,
  SMALL_CHANCES,
  speedStandardError,
} from './gumbel.ts';
import { gumbelByLikelihood, gumbelByLMoments, gumbelByMoments, gumbelThroughChart } from './gumbel-fits.ts';

export const EXTREMES_METHODS = ['l-moments', 'likelihood', 'moments', 'chart-line', 'chart-pair'] as const;
export type ExtremesMethod = (typeof EXTREMES_METHODS)[number];

/** What one way of fitting the climate makes of a gust. */
export interface ChanceByMethod {
  readonly method: ExtremesMethod;
  /** Of a pair: its two return periods [years]. */
  readonly through?: readonly [number, number];
  readonly fit: GumbelFit;
  /** Gust reached once in 50 years on the average [m/s]. */
  readonly fiftyYears: number;
  /** Its standard error, where the way of fitting gives one [m/s]. */
  readonly fiftyYearsError?: number;
  /** Lowest and highest chance in a year. */
  readonly perYear: readonly [number, number];
  /** Whether the band counts it; else it stands for comparison. */
  readonly inBand: boolean;
}

/** Chance of reaching a gust, always between two ends. */
export interface ChanceOfReaching {
  readonly perYear: readonly [number, number];
  readonly overYears: readonly [number, number];
  readonly byMethod: readonly ChanceByMethod[];
}

/** The return period by which fits are compared: that of most charts. @source common-practice */
const COMPARED_AT = 50;

const HEADINGS: Readonly<Record<ExtremesMethod, string>> = {
  'l-moments': 'by L-moments',
  likelihood: 'by maximum likelihood',
  moments: 'by moments, for comparison',
  'chart-line': 'line through the chart',
  'chart-pair': 'line through two values of the chart',
};

/**
 * Chance in a year, and in so many, that an actual gust reaches a speed: by Gumbel's law, from chart values or from
 * yearly maxima, as a band. Yearly maxima: L-moments, and maximum likelihood one standard error either way; by moments
 * for comparison. Chart: the least-squares line and, from three values on, the line through every two of them.
 *
 * p = 1 − exp(−exp((μ − v)/β)), p_n = 1 − (1 − p)^n
 *
 * @param climate what is known of the place's strongest winds
 * @param gust the actual 3-second gust at 10 m over open ground [m/s]
 * @param years for how many years, 1 or more [years]
 * @returns lowest and highest chance in a year and in all, and each method's own
 * @throws Refusal `no-spread` when the climate's speeds are all alike
 * @example chanceOfReaching({ kind: 'chart', basis: 'gust3-nominal', returns: [{ years: 10, speed: 34 }, { years: 50, speed: 41 }] }, 41, 50).overYears[0] // 0.6358
 * @source gumbel-1958
 */
export function chanceOfReaching(climate: Climate, gust: number, years: number, trace?: Trace): ChanceOfReaching {
  const byMethod = climate.kind === 'chart' ? ofChart(climate, gust, trace) : ofRecord(climate, gust, trace);
  const counted = byMethod.filter((each) => each.inBand);
  const low = Math.min(...counted.map((each) => each.perYear[0]));
  const high = Math.max(...counted.map((each) => each.perYear[1]));
  const over = (chance: number) => evaluate(trace, chanceOverYears, [chance, years], SMALL_CHANCES);
  return { perYear: [low, high], overYears: [over(low), over(high)], byMethod };
}

function ofRecord(
  climate: Extract<Climate, { kind: 'record' }>,
  gust: number,
  trace: Trace | undefined,
): readonly ChanceByMethod[] {
  const gusts = climateGusts(climate, climate.yearlyMax, trace);
  return [
    plainly('l-moments', (at) => gumbelByLMoments(gusts, at), gust, true, trace),
    withError(gusts, gust, trace),
    plainly('moments', (at) => gumbelByMoments(gusts, at), gust, false, trace),
  ];
}

function plainly(
  method: ExtremesMethod,
  fitted: (trace: Trace | undefined) => GumbelFit,
  gust: number,
  inBand: boolean,
  trace: Trace | undefined,
): ChanceByMethod {
  return under(trace, HEADINGS[method], () => {
    const fit = fitted(trace);
    const fiftyYears = gustOfPeriod(fit, COMPARED_AT, trace);
    const chance = evaluate(trace, chanceInYear, [gust, fit.location, fit.scale], SMALL_CHANCES);
    return { method, fit, fiftyYears, perYear: [chance, chance], inBand };
  });
}

function withError(gusts: readonly number[], gust: number, trace: Trace | undefined): ChanceByMethod {
  return under(trace, HEADINGS.likelihood, () => {
    const fit = gumbelByLikelihood(gusts, trace);
    const { location, scale } = fit;
    const fiftyYears = gustOfPeriod(fit, COMPARED_AT, trace);
    const fiftyYearsError = errorOfPeriod(fit, gusts.length, COMPARED_AT, trace);
    const y = evaluate(trace, reducedVariateOfSpeed, [gust, location, scale]);
    const error = evaluate(trace, speedStandardError, [scale, EULER, y, gusts.length]);
    const moved = (k: number) =>
      evaluate(trace, chanceInYearWithError, [gust, location, scale, k, error], SMALL_CHANCES);
    return { method: 'likelihood', fit, fiftyYears, fiftyYearsError, perYear: [moved(-1), moved(1)], inBand: true };
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
