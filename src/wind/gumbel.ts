import { cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';

/** Euler's constant [-]. @source gumbel-1958 */
export const EULER = 0.5772156649015329;

/** A Gumbel law of the largest value of a year. */
export interface GumbelFit {
  /** Most likely yearly maximum [m/s]. */
  readonly location: number;
  /** [m/s], above 0. */
  readonly scale: number;
}

const gust = variable('v', '3-second gust', 'speed', 5, 90);
const location = variable('mu', 'location', 'speed', 5, 60);
const scale = variable('beta', 'scale', 'speed', 1, 15);
const period = variable('T', 'mean time between such years, in years', 'one', 1.01, 10_000);
const euler = variable('gamma_E', "Euler's constant", 'one', EULER, EULER);

export const reducedVariateOfPeriod = defineFormula({
  id: 'gumbel-reduced-variate-of-period',
  title: 'Gumbel variate of a return period',
  symbol: 'y',
  unit: 'one',
  expression: '-log(-log(1 - 1 / T))',
  variables: [period],
  cite: cite('gumbel-1958', 'reduced variate of the first asymptotic law', 'memory'),
  of: (T: number) => -Math.log(-Math.log(1 - 1 / T)),
});

export const speedOfPeriod = defineFormula({
  id: 'gumbel-speed-of-period',
  title: 'Gust reached once in T years on the average',
  symbol: 'v_T',
  unit: 'speed',
  expression: 'mu - beta * log(-log(1 - 1 / T))',
  variables: [location, scale, period],
  cite: cite('wind-energy-2011', 'chapter 8, p. 150, one event a year', 'published'),
  of: (mu: number, beta: number, T: number) => mu - beta * Math.log(-Math.log(1 - 1 / T)),
});

/** How chances are written so that a very small one does not come out as none. */
export const SMALL_CHANCES = 'expm1(x) is e^x - 1 and log1p(x) is ln(1 + x), kept exact where x is small';

export const chanceInYear = defineFormula({
  id: 'gumbel-chance-in-year',
  title: 'Chance that the strongest gust of a year reaches a speed',
  symbol: 'p',
  unit: 'one',
  expression: '-expm1(-exp((mu - v) / beta))',
  variables: [gust, location, scale],
  cite: cite('gumbel-1958', 'first asymptotic law of the largest value', 'memory'),
  of: (v: number, mu: number, beta: number) => -Math.expm1(-Math.exp((mu - v) / beta)),
});

export const chanceOverYears = defineFormula({
  id: 'chance-over-years',
  title: 'Chance of it at least once in so many years',
  symbol: 'p_n',
  unit: 'one',
  expression: '-expm1(n * log1p(-p))',
  variables: [variable('p', 'chance in a year', 'one', 0, 1), variable('n', 'years', 'one', 1, 1000)],
  cite: cite('derived', 'years that know nothing of each other', 'derived'),
  of: (p: number, years: number) => -Math.expm1(years * Math.log1p(-p)),
});

export const speedStandardError = defineFormula({
  id: 'gumbel-speed-standard-error',
  title: 'Standard error of the gust at a Gumbel variate, maximum likelihood, many years',
  symbol: 's_v',
  unit: 'speed',
  expression: 'beta * sqrt((1 + 6 / pi^2 * (1 - gamma_E + y)^2) / n)',
  variables: [
    scale,
    euler,
    variable('y', 'Gumbel variate', 'one', -2, 12),
    variable('n', 'years of record', 'one', 5, 200),
  ],
  cite: cite(
    'johnson-kotz-balakrishnan',
    'chapter 22: var mu 1.1087, var beta 0.6079, covariance 0.2570, all times beta²/n',
    'derived',
  ),
  of: (beta: number, gamma: number, y: number, n: number) =>
    beta * Math.sqrt((1 + (6 / Math.PI ** 2) * (1 - gamma + y) ** 2) / n),
});

/**
 * Gust reached once in T years on the average.
 *
 * v_T = μ − β·ln(−ln(1 − 1/T))
 *
 * @param years T, above 1 [years]
 * @returns the gust [m/s]
 * @example gustOfPeriod({ location: 95.075597, scale: 10.841244 }, 50) // 137.3775
 * @source wind-energy-2011
 */
export function gustOfPeriod(fit: GumbelFit, years: number, trace?: Trace): number {
  return evaluate(trace, speedOfPeriod, [fit.location, fit.scale, years]);
}

/**
 * Standard error of the T-year gust of a fit by maximum likelihood.
 *
 * s = β·√((1 + 6/π²·(1 − γ + y)²)/n), y = −ln(−ln(1 − 1/T))
 *
 * @param count years of record [-]
 * @param years T, above 1 [years]
 * @returns the standard error [m/s]
 * @example errorOfPeriod({ location: 40, scale: 10 }, 100, 50) // 3.5171
 * @source johnson-kotz-balakrishnan
 */
export function errorOfPeriod(fit: GumbelFit, count: number, years: number, trace?: Trace): number {
  const y = evaluate(trace, reducedVariateOfPeriod, [years]);
  return evaluate(trace, speedStandardError, [fit.scale, EULER, y, count]);
}
