import { cite, defineFormula, evaluate, listVariable, type Trace, variable } from '../foundation/index.ts';
import { meanGust, secondLMoment } from './gumbel-fits.ts';

/** A law of the largest value of a year with a shape: above 0 its tail is heavier than Gumbel's, below 0 it ends. */
export interface ExtremesFit {
  /** [m/s] */
  readonly location: number;
  /** [m/s], above 0. */
  readonly scale: number;
  /** ξ; Gumbel's law has 0. */
  readonly shape: number;
}

const second = variable('l_2', 'second L-moment', 'speed', 0.5, 15);
const location = variable('mu', 'location', 'speed', 5, 60);
const scale = variable('sigma', 'scale', 'speed', 1, 15);
const shape = variable('xi', 'shape', 'one', 0.01, 0.4);
const gammaOfShape = variable('g_xi', 'gamma function of 1 - xi', 'one', 1, 1.5);

export const thirdLMoment = defineFormula({
  id: 'third-l-moment',
  title: 'Third L-moment of yearly maxima set in order, the least first',
  symbol: 'l_3',
  unit: 'speed',
  expression: 'sum(w .* x) / (n * (n - 1) * (n - 2))',
  variables: [
    listVariable('x', 'strongest gusts of the years, in order', 'speed', 5, 90),
    listVariable('w', '6(i-1)(i-2) - 6(i-1)(n-2) + (n-1)(n-2) by rank i', 'one', -1e4, 1e4),
    variable('n', 'how many', 'one', 5, 200),
  ],
  cite: cite('hosking-wallis', 'section 2.7, l3 = 6 b2 - 6 b1 + b0', 'memory'),
  of: (gusts: readonly number[], weights: readonly number[], n: number) =>
    gusts.reduce((sum, each, index) => sum + (weights[index] as number) * each, 0) / (n * (n - 1) * (n - 2)),
});

export const shapeByLMoments = defineFormula({
  id: 'extremes-shape-by-l-moments',
  title: 'Shape of the generalised law by L-moments',
  symbol: 'xi',
  unit: 'one',
  expression: '-7.8590 * (2 / (3 + l_3 / l_2) - log(2) / log(3)) - 2.9554 * (2 / (3 + l_3 / l_2) - log(2) / log(3))^2',
  variables: [variable('l_3', 'third L-moment', 'speed', -1, 5), second],
  cite: cite('hosking-wallis', 'appendix, generalised extreme-value distribution; there k = -xi', 'memory'),
  of: (l3: number, l2: number) => {
    const c = 2 / (3 + l3 / l2) - Math.log(2) / Math.log(3);
    return -7.859 * c - 2.9554 * c * c;
  },
});

export const scaleWithShape = defineFormula({
  id: 'extremes-scale-by-l-moments',
  title: 'Scale of the generalised law by L-moments',
  symbol: 'sigma',
  unit: 'speed',
  expression: 'l_2 * xi / ((2^xi - 1) * g_xi)',
  variables: [second, shape, gammaOfShape],
  cite: cite('hosking-wallis', 'appendix, generalised extreme-value distribution', 'memory'),
  of: (l2: number, xi: number, gamma: number) => (l2 * xi) / ((2 ** xi - 1) * gamma),
});

export const locationWithShape = defineFormula({
  id: 'extremes-location-by-l-moments',
  title: 'Location of the generalised law by L-moments',
  symbol: 'mu',
  unit: 'speed',
  expression: 'x_m - sigma * (g_xi - 1) / xi',
  variables: [variable('x_m', 'mean of the yearly maxima', 'speed', 5, 90), scale, gammaOfShape, shape],
  cite: cite('hosking-wallis', 'appendix, generalised extreme-value distribution', 'memory'),
  of: (mean: number, sigma: number, gamma: number, xi: number) => mean - (sigma * (gamma - 1)) / xi,
});

export const speedOfPeriodWithShape = defineFormula({
  id: 'extremes-speed-of-period',
  title: 'Gust reached once in T years on the average, by the generalised law',
  symbol: 'v_T',
  unit: 'speed',
  expression: 'mu + sigma / xi * ((-log(1 - 1 / T))^(-xi) - 1)',
  variables: [location, scale, shape, variable('T', 'mean time between such years, in years', 'one', 1.01, 10_000)],
  cite: cite('evd-lisbon', 'return levels of a generalised extreme-value fit', 'published'),
  of: (mu: number, sigma: number, xi: number, T: number) => mu + (sigma / xi) * ((-Math.log(1 - 1 / T)) ** -xi - 1),
});

/** The nearest to Gumbel's shape that the expressions are used with. */
const LEAST_SHAPE = 1e-6;

/**
 * ln Γ(x) for x above 0, by Stirling's series from 10 on.
 *
 * ln Γ(x) = ln Γ(x + k) − ln(x(x + 1)…(x + k − 1))
 */
function logGamma(x: number): number {
  let [at, product] = [x, 1];
  while (at < 10) {
    product *= at;
    at += 1;
  }
  const series = 1 / (12 * at) - 1 / (360 * at ** 3) + 1 / (1260 * at ** 5) - 1 / (1680 * at ** 7);
  return (at - 0.5) * Math.log(at) - at + 0.5 * Math.log(2 * Math.PI) + series - Math.log(product);
}

/**
 * Generalised law of yearly maxima by L-moments; with a shape above 0 its tail is heavier than Gumbel's.
 *
 * c = 2/(3 + l₃/l₂) − ln 2/ln 3, ξ = −7.8590c − 2.9554c², σ = l₂ξ/((2^ξ − 1)Γ(1 − ξ)), μ = l₁ − σ(Γ(1 − ξ) − 1)/ξ
 *
 * @param yearlyMax strongest gust of each year, five or more and not all alike [m/s]
 * @returns location and scale [m/s], shape [-]
 * @example extremesByLMoments([30, 31, 33, 36, 41, 32, 35]).shape // 0.1751
 * @source hosking-wallis
 */
export function extremesByLMoments(yearlyMax: readonly number[], trace?: Trace): ExtremesFit {
  const inOrder = [...yearlyMax].sort((a, b) => a - b);
  const n = inOrder.length;
  const ofSecond = inOrder.map((_, i) => 2 * (i + 1) - n - 1);
  const ofThird = inOrder.map((_, i) => 6 * i * (i - 1) - 6 * i * (n - 2) + (n - 1) * (n - 2));
  const l2 = evaluate(trace, secondLMoment, [inOrder, ofSecond, n]);
  const found = evaluate(trace, shapeByLMoments, [evaluate(trace, thirdLMoment, [inOrder, ofThird, n]), l2]);
  const xi = Math.abs(found) < LEAST_SHAPE ? LEAST_SHAPE : found;
  const gamma = Math.exp(logGamma(1 - xi));
  const sigma = evaluate(trace, scaleWithShape, [l2, xi, gamma]);
  const mean = evaluate(trace, meanGust, [yearlyMax, n]);
  return { location: evaluate(trace, locationWithShape, [mean, sigma, gamma, xi]), scale: sigma, shape: xi };
}
