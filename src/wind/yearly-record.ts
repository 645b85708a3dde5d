import { cite, defineFormula, evaluate, listVariable, type Trace, variable } from '../foundation/index.ts';
import { type Climate, climateGusts } from './climate.ts';
import { gumbelByLikelihood } from './gumbel-fits.ts';

/** What of a record of yearly maxima is hard to believe, or too little. */
export type RecordDoubt = 'too-short' | 'too-even' | 'low' | 'high' | 'not-gumbel';

/** Years under which no law is fitted: only what was counted is said. @source common-practice */
export const SHORTEST_RECORD = 10;
/** Standard deviation over mean under which yearly maxima are hardly those of a place. @source common-practice */
export const EVENEST_RECORD = 0.04;
/** Between these lies the mean of the yearly strongest gusts, 10 m over open ground, of nearly every place [m/s]. @source common-practice */
export const MEAN_OF_MAXIMA = { least: 17, most: 50 } as const;
/** Of true Gumbel records one in twenty passes this. @source stephens-1977 */
export const GUMBEL_MISFIT = 0.757;

export const gumbelMisfit = defineFormula({
  id: 'anderson-darling-gumbel',
  title: "Anderson and Darling's distance of a record from the Gumbel law fitted to it by likelihood",
  symbol: 'A',
  unit: 'one',
  expression: '(-n - sum(o .* (a + b)) / n) * (1 + 0.2 / sqrt(n))',
  variables: [
    variable('n', 'years of record', 'one', 5, 200),
    listVariable('o', 'odd numbers 1, 3, 5 and so on', 'one', 1, 399),
    listVariable('a', 'logarithm of the chance of less than each maximum, the least first', 'one', -20, 0),
    listVariable('b', 'logarithm of the chance of more than each maximum, the largest first', 'one', -20, 0),
  ],
  cite: cite('stephens-1977', 'location and scale estimated: A2·(1 + 0.2/√n), 0.757 at 5 %', 'memory'),
  of: (n: number, odd: readonly number[], below: readonly number[], above: readonly number[]) =>
    (-n - odd.reduce((sum, each, index) => sum + each * ((below[index] as number) + (above[index] as number)), 0) / n) *
    (1 + 0.2 / Math.sqrt(n)),
});

/**
 * How far a record lies from the Gumbel law that fits it best.
 *
 * A² = −n − Σ(2i − 1)(ln F_i + ln(1 − F_(n+1−i)))/n, times 1 + 0.2/√n
 *
 * @param maxima strongest gust of each year, not all alike [m/s]
 * @returns the distance [-]; above `GUMBEL_MISFIT` one true Gumbel record in twenty
 * @example misfitOfGumbel([52, 53, 54, 55, 56, 57, 58, 59, 60, 112]) > GUMBEL_MISFIT // true
 * @source stephens-1977
 */
export function misfitOfGumbel(maxima: readonly number[], trace?: Trace): number {
  const { location, scale } = gumbelByLikelihood(maxima, trace);
  const inOrder = [...maxima].sort((a, b) => a - b);
  const below = inOrder.map((each) => -Math.exp((location - each) / scale));
  const above = below.map((each) => Math.log(-Math.expm1(each))).reverse();
  return evaluate(trace, gumbelMisfit, [maxima.length, inOrder.map((_, index) => 2 * index + 1), below, above]);
}

/**
 * What of a record of yearly maxima is to be doubted; a chart has none of this.
 *
 * fewer than 10 years; s/x̄ < 0.04; mean outside 17 to 50 m/s; Anderson and Darling's distance above 0.757
 *
 * @param climate what is known of the place's strongest winds
 * @example recordDoubts({ kind: 'record', basis: 'gust3-nominal', yearlyMax: [22.35, 22.35, 22.35, 22.35, 22.8] }) // ['too-short', 'too-even']
 * @source common-practice
 */
export function recordDoubts(climate: Climate): readonly RecordDoubt[] {
  if (climate.kind === 'chart') return [];
  const maxima = climateGusts(climate, climate.yearlyMax);
  const n = maxima.length;
  const mean = maxima.reduce((sum, each) => sum + each, 0) / n;
  const deviation = Math.sqrt(maxima.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (n - 1));
  const even = deviation < EVENEST_RECORD * mean;
  const holds: Readonly<Record<RecordDoubt, boolean>> = {
    'too-short': n < SHORTEST_RECORD,
    'too-even': even,
    low: mean < MEAN_OF_MAXIMA.least,
    high: mean > MEAN_OF_MAXIMA.most,
    'not-gumbel': n >= SHORTEST_RECORD && !even && misfitOfGumbel(maxima) > GUMBEL_MISFIT,
  };
  return (Object.keys(holds) as RecordDoubt[]).filter((doubt) => holds[doubt]);
}

/**
 * Whether doubts are such that no law is fitted.
 *
 * @returns true where only the count is said
 * @example tellsNoLaw(['low']) // false
 */
export function tellsNoLaw(doubts: readonly RecordDoubt[]): boolean {
  return doubts.includes('too-short') || doubts.includes('too-even');
}
