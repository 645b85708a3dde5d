import { cite, defineFormula, evaluate, MILE_PER_HOUR, Refusal, type Trace, variable } from '../foundation/index.ts';

/** What "wind speed" means: the averaging and, for the first two, the level. */
export const SPEED_BASES = [
  'gust3-strength',
  'gust3-nominal',
  'fastest-mile',
  'mean-1min',
  'mean-10min',
  'mean-hour',
] as const;
export type SpeedBasis = (typeof SPEED_BASES)[number];

/** The constant of the fastest-mile equation [m/s]: 10.5 mph. @source ibc-2003 */
export const FASTEST_MILE_OFFSET = 10.5 * MILE_PER_HOUR;

const speed = (symbol: string, meaning: string) => variable(symbol, meaning, 'speed', 6, 180);

export const nominalFromStrength = defineFormula({
  id: 'speed-nominal-from-strength',
  title: 'Nominal 3-second gust from a strength-level one',
  symbol: 'V_asd',
  unit: 'speed',
  expression: 'V_ult * sqrt(0.6)',
  variables: [speed('V_ult', '3-second gust, strength level')],
  cite: cite('ibc-2018', '1609.3.1, Eq. 16-33', 'published'),
  of: (strength: number) => strength * Math.sqrt(0.6),
});

export const strengthFromNominal = defineFormula({
  id: 'speed-strength-from-nominal',
  title: 'Strength-level 3-second gust from a nominal one',
  symbol: 'V_ult',
  unit: 'speed',
  expression: 'V_asd / sqrt(0.6)',
  variables: [speed('V_asd', '3-second gust, nominal')],
  cite: cite('ibc-2018', '1609.3.1, Eq. 16-33, turned round', 'published'),
  of: (nominal: number) => nominal / Math.sqrt(0.6),
});

export const fastestMileFromNominal = defineFormula({
  id: 'speed-fastest-mile-from-nominal',
  title: 'Fastest mile from a nominal 3-second gust',
  symbol: 'V_fm',
  unit: 'speed',
  expression: '(V_asd - v_0) / 1.05',
  variables: [
    speed('V_asd', '3-second gust, nominal'),
    variable('v_0', 'constant, 10.5 mph', 'speed', 4.69392, 4.69392),
  ],
  cite: cite('ibc-2003', '1609.3.1, Eq. 16-34 (number varies by edition)', 'memory'),
  of: (nominal: number, offset: number) => (nominal - offset) / 1.05,
});

export const nominalFromFastestMile = defineFormula({
  id: 'speed-nominal-from-fastest-mile',
  title: 'Nominal 3-second gust from a fastest mile',
  symbol: 'V_asd',
  unit: 'speed',
  expression: '1.05 * V_fm + v_0',
  variables: [speed('V_fm', 'fastest mile'), variable('v_0', 'constant, 10.5 mph', 'speed', 4.69392, 4.69392)],
  cite: cite('ibc-2003', '1609.3.1, Eq. 16-34 turned round (number varies by edition)', 'memory'),
  of: (fastestMile: number, offset: number) => 1.05 * fastestMile + offset,
});

export const gustFromMean = defineFormula({
  id: 'speed-gust-from-mean',
  title: '3-second gust from a mean over a longer time',
  symbol: 'V_3s',
  unit: 'speed',
  expression: 'g_T * V_T',
  variables: [variable('g_T', 'gust over mean, for this averaging time', 'one', 1, 2), speed('V_T', 'mean wind speed')],
  cite: cite('durst', 'ratios to the hourly mean; WMO/TD-1555 Table 1.1 where larger', 'second-hand'),
  of: (ratio: number, mean: number) => ratio * mean,
});

export const meanFromGust = defineFormula({
  id: 'speed-mean-from-gust',
  title: 'Mean over a longer time from a 3-second gust',
  symbol: 'V_T',
  unit: 'speed',
  expression: 'V_3s / g_T',
  variables: [variable('g_T', 'gust over mean, for this averaging time', 'one', 1, 2), speed('V_3s', '3-second gust')],
  cite: cite('durst', 'ratios to the hourly mean; WMO/TD-1555 Table 1.1 where larger', 'second-hand'),
  of: (ratio: number, gust: number) => gust / ratio,
});

export const meanFromMean = defineFormula({
  id: 'speed-mean-from-mean',
  title: 'Mean over one time from a mean over another',
  symbol: 'V_T2',
  unit: 'speed',
  expression: 'V_T1 * g_T1 / g_T2',
  variables: [
    speed('V_T1', 'mean wind speed'),
    variable('g_T1', 'gust over mean, for its averaging time', 'one', 1, 2),
    variable('g_T2', 'gust over mean, for the averaging time wanted', 'one', 1, 2),
  ],
  cite: cite('durst', 'ratios to the hourly mean; WMO/TD-1555 Table 1.1 where it gives more to a site', 'second-hand'),
  of: (mean: number, given: number, wanted: number) => (mean * given) / wanted,
});

type Mean = 'mean-1min' | 'mean-10min' | 'mean-hour';

/**
 * Whether a basis is a mean over a minute or more.
 *
 * 1 min, 10 min, 1 h
 *
 * @example isMeanBasis('mean-hour') // true
 * @source durst
 */
export function isMeanBasis(basis: SpeedBasis): basis is Mean {
  return basis === 'mean-1min' || basis === 'mean-10min' || basis === 'mean-hour';
}

/** Gust over mean in open terrain, non-tropical wind. @source durst */
const DURST: Readonly<Record<Mean, number>> = {
  'mean-1min': 1.53 / 1.25,
  'mean-10min': 1.53 / 1.07,
  'mean-hour': 1.53,
};

/** Gust over mean, in-land. @source wmo-td-1555 */
const WMO_IN_LAND: Readonly<Record<Mean, number>> = { 'mean-1min': 1.49, 'mean-10min': 1.66, 'mean-hour': 1.75 };

/** A speed a site must bear takes the larger reading of a conversion, a maker's rating the smaller. */
export type SpeedRole = 'site' | 'rating';

/**
 * Gust over mean for an averaging time: the larger of the two published ratios for a site, the smaller for a rating.
 *
 * g = V₃ₛ / V_T
 *
 * @returns the ratio [-], 1.2 to 1.75
 * @example gustOverMean('mean-hour', 'rating') // 1.53
 * @source wmo-td-1555
 */
export function gustOverMean(basis: Mean, role: SpeedRole): number {
  return role === 'site' ? Math.max(DURST[basis], WMO_IN_LAND[basis]) : Math.min(DURST[basis], WMO_IN_LAND[basis]);
}

/**
 * A speed in another basis, by way of the nominal 3-second gust.
 *
 * V_asd = √0.6·V_ult = 1.05·V_fm + 10.5 mph = g_T·V_T
 *
 * @param speed the speed [m/s], above 0
 * @param role whose speed it is: decides the ratio of a mean
 * @returns the speed in the other basis [m/s]
 * @throws Refusal `speed-too-low` when a gust under 10.5 mph is asked for as a fastest mile
 * @example convertSpeed(100, 'gust3-strength', 'gust3-nominal', 'site') // 77.4597
 * @source ibc-2018
 */
export function convertSpeed(speed: number, from: SpeedBasis, to: SpeedBasis, role: SpeedRole, trace?: Trace): number {
  if (from === to) return speed;
  if (isMeanBasis(from) && isMeanBasis(to)) return meanToMean(speed, from, to, role, trace);
  return fromNominal(toNominal(speed, from, role, trace), to, role, trace);
}

/** Both ratios from one table: a site takes the table that gives it more, a rating the one that gives it less. */
function meanToMean(mean: number, from: Mean, to: Mean, role: SpeedRole, trace: Trace | undefined): number {
  const [durst, wmo] = [DURST, WMO_IN_LAND].map((table) => [table[from], table[to]] as const) as [Pair, Pair];
  const wmoGivesMore = wmo[0] / wmo[1] > durst[0] / durst[1];
  const [given, wanted] = wmoGivesMore === (role === 'site') ? wmo : durst;
  return evaluate(trace, meanFromMean, [mean, given, wanted]);
}

type Pair = readonly [number, number];

function toNominal(speed: number, from: SpeedBasis, role: SpeedRole, trace: Trace | undefined): number {
  switch (from) {
    case 'gust3-nominal':
      return speed;
    case 'gust3-strength':
      return evaluate(trace, nominalFromStrength, [speed]);
    case 'fastest-mile':
      return evaluate(trace, nominalFromFastestMile, [speed, FASTEST_MILE_OFFSET]);
    case 'mean-1min':
    case 'mean-10min':
    case 'mean-hour':
      return evaluate(trace, gustFromMean, [gustOverMean(from, role), speed]);
  }
}

function fromNominal(nominal: number, to: SpeedBasis, role: SpeedRole, trace: Trace | undefined): number {
  switch (to) {
    case 'gust3-nominal':
      return nominal;
    case 'gust3-strength':
      return evaluate(trace, strengthFromNominal, [nominal]);
    case 'fastest-mile': {
      if (nominal <= FASTEST_MILE_OFFSET) {
        throw new Refusal(
          'speed-too-low',
          'A 3-second gust of 10.5 mph or less has no fastest mile: give a higher speed.',
        );
      }
      return evaluate(trace, fastestMileFromNominal, [nominal, FASTEST_MILE_OFFSET]);
    }
    case 'mean-1min':
    case 'mean-10min':
    case 'mean-hour':
      // The larger mean is the harsher reading for a site, so here it takes the smaller ratio.
      return evaluate(trace, meanFromGust, [gustOverMean(to, role === 'site' ? 'rating' : 'site'), nominal]);
  }
}
