import {
  cite,
  defineFormula,
  evaluate,
  fromTable,
  MILE_PER_HOUR,
  Refusal,
  type Table,
  type Trace,
  variable,
} from '../foundation/index.ts';

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

const MILE = 3600 * MILE_PER_HOUR;

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
  expression: 'V_T1 * r_T',
  variables: [
    speed('V_T1', 'mean wind speed'),
    variable('r_T', 'the mean wanted over the mean given', 'one', 0.7, 1.3),
  ],
  cite: cite('wmo-td-1555', 'Table 1.1, in-land, or the ratios of Durst, whichever is harsher', 'second-hand'),
  of: (mean: number, ratio: number) => mean * ratio,
});

export const fastestMileTime = defineFormula({
  id: 'fastest-mile-averaging-time',
  title: 'Time over which a fastest mile is averaged: that in which the wind runs a mile',
  symbol: 't_m',
  unit: 'period',
  expression: 'l_m / V_fm',
  variables: [variable('l_m', 'a mile', 'length', MILE, MILE), speed('V_fm', 'fastest mile')],
  cite: cite('ibc-2003', 'meaning of the term', 'published'),
  of: (mile: number, fastestMile: number) => mile / fastestMile,
});

export const decadesOfTime = defineFormula({
  id: 'decades-of-averaging-time',
  title: 'Decimal logarithm of an averaging time in seconds',
  symbol: 'd_t',
  unit: 'one',
  expression: 'log10(t_m / t_1)',
  variables: [variable('t_m', 'averaging time', 'period', 3, 3600), variable('t_1', 'one second', 'period', 1, 1)],
  cite: cite('derived', 'the ratios are read straight in the logarithm of the time', 'derived'),
  of: (time: number, second: number) => Math.log10(time / second),
});

export const gustFromFastestMile = defineFormula({
  id: 'speed-gust-from-fastest-mile-by-time',
  title: '3-second gust from a fastest mile by its averaging time',
  symbol: 'V_3s',
  unit: 'speed',
  expression: 'V_fm * d_3 / d_T',
  variables: [
    speed('V_fm', 'fastest mile'),
    variable('d_3', '3-second gust over hourly mean', 'one', 1.53, 1.53),
    variable('d_T', 'its own averaging time over hourly mean', 'one', 1, 1.53),
  ],
  cite: cite('durst', 'ratios to the hourly mean by averaging time', 'memory'),
  of: (fastestMile: number, gust: number, own: number) => (fastestMile * gust) / own,
});

export const fastestMileFromGust = defineFormula({
  id: 'speed-fastest-mile-from-gust-by-time',
  title: 'Fastest mile from a 3-second gust by its averaging time, which this gives back',
  symbol: 'V_fm',
  unit: 'speed',
  expression: 'V_3s * d_T / d_3',
  variables: [
    speed('V_3s', '3-second gust'),
    variable('d_3', '3-second gust over hourly mean', 'one', 1.53, 1.53),
    variable('d_T', 'its own averaging time over hourly mean', 'one', 1, 1.53),
  ],
  cite: cite('durst', 'ratios to the hourly mean by averaging time', 'memory'),
  of: (nominal: number, gust: number, own: number) => (nominal * own) / gust,
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

/** Over the hourly mean by the decimal logarithm of the averaging time in s: 3, 30, 60, 600, 3600 s. @source durst */
export const DURST_BY_TIME: Table = [
  [Math.log10(3), 1.53],
  [Math.log10(30), 1.32],
  [Math.log10(60), 1.25],
  [Math.log10(600), 1.07],
  [Math.log10(3600), 1],
];

/** Gust over mean in open terrain, non-tropical wind. @source durst */
const DURST: Readonly<Record<Mean, number>> = {
  'mean-1min': 1.53 / 1.25,
  'mean-10min': 1.53 / 1.07,
  'mean-hour': 1.53,
};

/** Gust over mean, in-land. @source wmo-td-1555 */
const WMO_IN_LAND: Readonly<Record<Mean, number>> = { 'mean-1min': 1.49, 'mean-10min': 1.66, 'mean-hour': 1.75 };

/** The highest shorter mean within a longer one, over that one, in-land. @source wmo-td-1555 */
const WMO_MEAN_IN_MEAN: Readonly<Record<Mean, Partial<Readonly<Record<Mean, number>>>>> = {
  'mean-hour': { 'mean-10min': 1.08, 'mean-1min': 1.28 },
  'mean-10min': { 'mean-1min': 1.21 },
  'mean-1min': {},
};

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
 * V_asd = √0.6·V_ult = g_T·V_T = 1.05·V_fm + 10.5 mph, of a site by its averaging time where that gives more
 *
 * @param speed the speed [m/s], above 0
 * @param role whose speed it is: decides the ratio of a mean and of a fastest mile
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

/** Of the ratios that either table has, printed or as a quotient, a site takes the largest, a rating the least. */
function meanToMean(mean: number, from: Mean, to: Mean, role: SpeedRole, trace: Trace | undefined): number {
  const shorter = WMO_MEAN_IN_MEAN[from][to];
  const longer = WMO_MEAN_IN_MEAN[to][from];
  const ratios = [
    DURST[from] / DURST[to],
    WMO_IN_LAND[from] / WMO_IN_LAND[to],
    ...(shorter === undefined ? [] : [shorter]),
    ...(longer === undefined ? [] : [1 / longer]),
  ];
  return evaluate(trace, meanFromMean, [mean, role === 'site' ? Math.max(...ratios) : Math.min(...ratios)]);
}

/** Over the hourly mean, at the averaging time of a fastest mile. */
function ownOverHour(fastestMile: number, trace: Trace | undefined): number {
  const time = evaluate(trace, fastestMileTime, [MILE, fastestMile]);
  return fromTable(DURST_BY_TIME, evaluate(trace, decadesOfTime, [time, 1]), trace);
}

const BY_TIME = 'harsher here than 1.05·V + 10.5 mph';

const gustByTime = (fastestMile: number, trace?: Trace) =>
  evaluate(trace, gustFromFastestMile, [fastestMile, DURST['mean-hour'], ownOverHour(fastestMile, trace)], BY_TIME);

/** A site takes the larger of the formula and what the averaging time gives; a rating stays with the formula. */
function gustOfFastestMile(fastestMile: number, role: SpeedRole, trace: Trace | undefined): number {
  const byFormula = nominalFromFastestMile.of(fastestMile, FASTEST_MILE_OFFSET);
  if (role === 'site' && gustByTime(fastestMile) > byFormula) return gustByTime(fastestMile, trace);
  return evaluate(trace, nominalFromFastestMile, [fastestMile, FASTEST_MILE_OFFSET]);
}

/** The other way round a site takes the formula, and a rating the lower of the two. */
function fastestMileOfGust(nominal: number, role: SpeedRole, trace: Trace | undefined): number {
  if (nominal <= FASTEST_MILE_OFFSET) {
    throw new Refusal('speed-too-low', 'A 3-second gust of 10.5 mph or less has no fastest mile: give a higher speed.');
  }
  const byFormula = fastestMileFromNominal.of(nominal, FASTEST_MILE_OFFSET);
  if (role === 'site' || gustByTime(byFormula) <= nominal) {
    return evaluate(trace, fastestMileFromNominal, [nominal, FASTEST_MILE_OFFSET]);
  }
  let [low, high] = [nominal / 2, byFormula];
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (low + high) / 2;
    if (gustByTime(middle) > nominal) high = middle;
    else low = middle;
  }
  return evaluate(trace, fastestMileFromGust, [nominal, DURST['mean-hour'], ownOverHour(low, trace)], BY_TIME);
}

function toNominal(speed: number, from: SpeedBasis, role: SpeedRole, trace: Trace | undefined): number {
  switch (from) {
    case 'gust3-nominal':
      return speed;
    case 'gust3-strength':
      return evaluate(trace, nominalFromStrength, [speed]);
    case 'fastest-mile':
      return gustOfFastestMile(speed, role, trace);
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
    case 'fastest-mile':
      return fastestMileOfGust(nominal, role, trace);
    case 'mean-1min':
    case 'mean-10min':
    case 'mean-hour':
      // The larger mean is the harsher reading for a site, so here it takes the smaller ratio.
      return evaluate(trace, meanFromGust, [gustOverMean(to, role === 'site' ? 'rating' : 'site'), nominal]);
  }
}
