import { cite, defineFormula, evaluate, listVariable, Refusal, type Trace, variable } from '../foundation/index.ts';
import type { ChartValue } from './climate.ts';
import { EULER, type GumbelFit, reducedVariateOfPeriod } from './gumbel.ts';

const sumOf = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0);

const maxima = listVariable('x', 'strongest gust of each year', 'speed', 5, 90);
const mean = variable('x_m', 'their mean', 'speed', 5, 90);
const count = variable('n', 'how many', 'one', 5, 200);
const euler = variable('gamma_E', "Euler's constant", 'one', EULER, EULER);
const scale = variable('beta', 'scale', 'speed', 1, 15);
const least = variable('x_1', 'the least of them', 'speed', 5, 90);

export const meanGust = defineFormula({
  id: 'mean-gust',
  title: 'Mean of gusts',
  symbol: 'x_m',
  unit: 'speed',
  expression: 'sum(x) / n',
  variables: [listVariable('x', 'gusts', 'speed', 5, 90), variable('n', 'how many', 'one', 2, 200)],
  cite: cite('derived', 'arithmetic mean', 'derived'),
  of: (gusts: readonly number[], n: number) => sumOf(gusts) / n,
});

export const meanVariate = defineFormula({
  id: 'mean-variate',
  title: 'Mean of Gumbel variates',
  symbol: 'y_m',
  unit: 'one',
  expression: 'sum(y) / n',
  variables: [listVariable('y', 'Gumbel variates', 'one', -1.6, 9.3), variable('n', 'how many', 'one', 2, 200)],
  cite: cite('derived', 'arithmetic mean', 'derived'),
  of: (variates: readonly number[], n: number) => sumOf(variates) / n,
});

export const scaleOfLine = defineFormula({
  id: 'gumbel-scale-of-line',
  title: 'Gumbel scale: slope of the least-squares line of gust over variate',
  symbol: 'beta',
  unit: 'speed',
  expression: 'sum((y - y_m) .* (x - x_m)) / sum((y - y_m).^2)',
  variables: [
    listVariable('x', 'gusts of the chart', 'speed', 5, 90),
    listVariable('y', 'Gumbel variates of their return periods', 'one', -1.6, 9.3),
    variable('x_m', 'mean gust', 'speed', 5, 90),
    variable('y_m', 'mean variate', 'one', -1.6, 9.3),
  ],
  cite: cite('sprogo-lecture', 'speeds regressed on -ln(-ln p)', 'published'),
  of: (gusts: readonly number[], variates: readonly number[], gustMean: number, variateMean: number) =>
    variates.reduce((sum, y, index) => sum + (y - variateMean) * ((gusts[index] as number) - gustMean), 0) /
    variates.reduce((sum, y) => sum + (y - variateMean) ** 2, 0),
});

export const locationOfLine = defineFormula({
  id: 'gumbel-location-of-line',
  title: 'Gumbel location: where the least-squares line has the variate 0',
  symbol: 'mu',
  unit: 'speed',
  expression: 'x_m - beta * y_m',
  variables: [variable('x_m', 'mean gust', 'speed', 5, 90), scale, variable('y_m', 'mean variate', 'one', -1.6, 9.3)],
  cite: cite('sprogo-lecture', 'speeds regressed on -ln(-ln p)', 'published'),
  of: (gustMean: number, beta: number, variateMean: number) => gustMean - beta * variateMean,
});

export const secondLMoment = defineFormula({
  id: 'second-l-moment',
  title: 'Second L-moment of yearly maxima set in order, the least first',
  symbol: 'l_2',
  unit: 'speed',
  expression: 'sum(w .* x) / (n * (n - 1))',
  variables: [
    listVariable('x', 'strongest gusts of the years, in order', 'speed', 5, 90),
    listVariable('w', 'twice the rank of each, less n + 1', 'one', -199, 199),
    count,
  ],
  cite: cite('hosking-wallis', 'section 2.7, l2 = 2 b1 - b0', 'memory'),
  of: (gusts: readonly number[], weights: readonly number[], n: number) =>
    gusts.reduce((sum, each, index) => sum + (weights[index] as number) * each, 0) / (n * (n - 1)),
});

export const scaleByLMoments = defineFormula({
  id: 'gumbel-scale-by-l-moments',
  title: 'Gumbel scale by L-moments',
  symbol: 'beta',
  unit: 'speed',
  expression: 'l_2 / log(2)',
  variables: [variable('l_2', 'second L-moment', 'speed', 0.5, 15)],
  cite: cite('hosking-wallis', 'appendix, Gumbel distribution', 'memory'),
  of: (second: number) => second / Math.log(2),
});

export const locationByMean = defineFormula({
  id: 'gumbel-location-by-mean',
  title: 'Gumbel location from the mean and the scale, by moments and by L-moments',
  symbol: 'mu',
  unit: 'speed',
  expression: 'x_m - gamma_E * beta',
  variables: [mean, euler, scale],
  cite: cite('wind-energy-2011', 'chapter 8, p. 150', 'published'),
  of: (first: number, gamma: number, beta: number) => first - gamma * beta,
});

export const scaleByMoments = defineFormula({
  id: 'gumbel-scale-by-moments',
  title: 'Gumbel scale by moments: from the standard deviation',
  symbol: 'beta',
  unit: 'speed',
  expression: 'sqrt(6) / pi * sqrt(sum((x - x_m).^2) / (n - 1))',
  variables: [maxima, mean, count],
  cite: cite('wind-energy-2011', 'chapter 8, p. 150, deviation with n - 1', 'published'),
  of: (gusts: readonly number[], first: number, n: number) =>
    (Math.sqrt(6) / Math.PI) * Math.sqrt(gusts.reduce((sum, each) => sum + (each - first) ** 2, 0) / (n - 1)),
});

export const scaleByLikelihood = defineFormula({
  id: 'gumbel-scale-by-likelihood',
  title: 'Gumbel scale by maximum likelihood: the scale that this gives back',
  symbol: 'beta',
  unit: 'speed',
  expression: 'x_m - sum(x .* map((x_1 - x) / beta, exp)) / sum(map((x_1 - x) / beta, exp))',
  variables: [maxima, least, mean, scale],
  cite: cite('johnson-kotz-balakrishnan', 'chapter 22, likelihood equation of the scale', 'memory'),
  of: (gusts: readonly number[], lowest: number, first: number, beta: number) => {
    const weights = gusts.map((each) => Math.exp((lowest - each) / beta));
    return first - gusts.reduce((sum, each, index) => sum + each * (weights[index] as number), 0) / sumOf(weights);
  },
});

export const locationByLikelihood = defineFormula({
  id: 'gumbel-location-by-likelihood',
  title: 'Gumbel location by maximum likelihood',
  symbol: 'mu',
  unit: 'speed',
  expression: 'x_1 - beta * log(sum(map((x_1 - x) / beta, exp)) / n)',
  variables: [maxima, least, scale, count],
  cite: cite('johnson-kotz-balakrishnan', 'chapter 22, likelihood equation of the location', 'memory'),
  of: (gusts: readonly number[], lowest: number, beta: number, n: number) =>
    lowest - beta * Math.log(sumOf(gusts.map((each) => Math.exp((lowest - each) / beta))) / n),
});

function mustSpread(ok: boolean): void {
  if (!ok) throw new Refusal('no-spread', 'Speeds that are all alike tell nothing of rarer winds.', '/site/climate');
}

/**
 * Gumbel law of chart values: the least-squares line of speed over −ln(−ln(1 − 1/T)); exact through two.
 *
 * β = Σ(y − ȳ)(v − v̄)/Σ(y − ȳ)², μ = v̄ − β·ȳ
 *
 * @param returns at least two return periods [years] and their gusts [m/s]
 * @returns location and scale [m/s]
 * @throws Refusal `no-spread` when speeds do not rise with the period
 * @example gumbelThroughChart([{ years: 10, speed: 34 }, { years: 50, speed: 41 }]).scale // 4.24
 * @source sprogo-lecture
 */
export function gumbelThroughChart(returns: readonly ChartValue[], trace?: Trace): GumbelFit {
  mustSpread(new Set(returns.map((value) => value.years)).size > 1);
  const gusts = returns.map((value) => value.speed);
  const variates = returns.map((value) => evaluate(trace, reducedVariateOfPeriod, [value.years]));
  const gustMean = evaluate(trace, meanGust, [gusts, gusts.length]);
  const variateMean = evaluate(trace, meanVariate, [variates, variates.length]);
  const slope = evaluate(trace, scaleOfLine, [gusts, variates, gustMean, variateMean]);
  mustSpread(slope > 0);
  return { location: evaluate(trace, locationOfLine, [gustMean, slope, variateMean]), scale: slope };
}

/**
 * Gumbel law of yearly maxima by L-moments; steady in short records.
 *
 * β = l₂/ln 2, μ = l₁ − γβ
 *
 * @param yearlyMax strongest gust of each year [m/s]
 * @returns location and scale [m/s]
 * @throws Refusal `no-spread` when all are alike
 * @example gumbelByLMoments([30, 31, 33, 36, 41]).scale // 3.895
 * @source hosking-wallis
 */
export function gumbelByLMoments(yearlyMax: readonly number[], trace?: Trace): GumbelFit {
  const inOrder = [...yearlyMax].sort((a, b) => a - b);
  const n = inOrder.length;
  mustSpread(n > 1 && (inOrder[0] as number) < (inOrder[n - 1] as number));
  const weights = inOrder.map((_, index) => 2 * (index + 1) - n - 1);
  const first = evaluate(trace, meanGust, [yearlyMax, n]);
  const second = evaluate(trace, secondLMoment, [inOrder, weights, n]);
  const beta = evaluate(trace, scaleByLMoments, [second]);
  return { location: evaluate(trace, locationByMean, [first, EULER, beta]), scale: beta };
}

/**
 * Gumbel law of yearly maxima by moments; one wild year weighs heavily.
 *
 * β = √6/π·s, μ = x̄ − γβ
 *
 * @param yearlyMax strongest gust of each year [m/s]
 * @returns location and scale [m/s]
 * @throws Refusal `no-spread` when all are alike
 * @example gumbelByMoments([30, 31, 33, 36, 41]).scale // 3.4607
 * @source wind-energy-2011
 */
export function gumbelByMoments(yearlyMax: readonly number[], trace?: Trace): GumbelFit {
  const n = yearlyMax.length;
  mustSpread(new Set(yearlyMax).size > 1);
  const first = evaluate(trace, meanGust, [yearlyMax, n]);
  const beta = evaluate(trace, scaleByMoments, [yearlyMax, first, n]);
  return { location: evaluate(trace, locationByMean, [first, EULER, beta]), scale: beta };
}

/**
 * Gumbel law of yearly maxima by maximum likelihood.
 *
 * β = x̄ − Σx·e^(−x/β)/Σe^(−x/β), μ = −β·ln(Σe^(−x/β)/n)
 *
 * @param yearlyMax strongest gust of each year [m/s]
 * @returns location and scale [m/s]
 * @throws Refusal `no-spread` when all are alike
 * @example gumbelByLikelihood([30, 31, 33, 36, 41]).scale // 2.9308
 * @source johnson-kotz-balakrishnan
 */
export function gumbelByLikelihood(yearlyMax: readonly number[], trace?: Trace): GumbelFit {
  const n = yearlyMax.length;
  mustSpread(new Set(yearlyMax).size > 1);
  const lowest = Math.min(...yearlyMax);
  const first = evaluate(trace, meanGust, [yearlyMax, n]);
  const root = likelihoodScale(yearlyMax, lowest, first);
  const beta = evaluate(trace, scaleByLikelihood, [yearlyMax, lowest, first, root]);
  return { location: evaluate(trace, locationByLikelihood, [yearlyMax, lowest, beta, n]), scale: beta };
}

/**
 * The one root of β − x̄ + Σx·w/Σw, w = e^(−x/β): it rises from x₁ − x̄ at β = 0 and is not below 0 at x̄ − x₁.
 * Newton's steps, halved between the ends where they leave them.
 */
function likelihoodScale(gusts: readonly number[], lowest: number, first: number): number {
  let [low, high] = [0, first - lowest];
  let beta = high / 2;
  for (let turn = 0; turn < 200; turn += 1) {
    let [weight, weighted, squared] = [0, 0, 0];
    for (const each of gusts) {
      const above = each - lowest;
      const w = Math.exp(-above / beta);
      weight += w;
      weighted += w * above;
      squared += w * above * above;
    }
    const average = weighted / weight;
    const miss = beta - (first - lowest) + average;
    if (miss > 0) high = beta;
    else low = beta;
    const newton = beta - miss / (1 + (squared / weight - average * average) / beta ** 2);
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - beta) <= 1e-15 * high) return next;
    beta = next;
  }
  return beta;
}
