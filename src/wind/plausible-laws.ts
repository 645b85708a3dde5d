import { remember } from '../foundation/index.ts';

/**
 * Laws of yearly maxima that a record leaves plausible, each with its weight. Of a law with fixed shape the weights are
 * the likelihood with the measure dμ·dσ/σ: the ends of such a band hold the true chance as often as they say, in a record
 * of any length, if the law is of that shape.
 */
export interface PlausibleLaws {
  readonly weights: readonly number[];
  /** Which shape each is of; the weights of one shape stand together. */
  readonly shapes: readonly number[];
  /** ln t of a gust by each law, t = −ln(chance that a year stays below it). */
  readonly logRates: (gust: number) => readonly number[];
}

/** Ends of the band: of the weights 5 % lie below and 5 % above. @source common-practice */
const BAND_ENDS = [0.05, 0.95] as const;

/** Middles of ten equally likely parts of the normal law. @source derived */
const NORMAL_MIDDLES = [
  -1.644854, -1.036433, -0.67449, -0.38532, -0.125661, 0.125661, 0.38532, 0.67449, 1.036433, 1.644854,
] as const;
const PARTS = 20;
/** Weights below this share of the largest are left out. */
const NEGLIGIBLE = 1e-5;
/** ln t no farther than this from once a year. */
const FARTHEST = 700;
/** The steps between the laws are smoothed by this much of ln t either way. */
const SMOOTHED = 0.1;

/**
 * ln of the middles of equally likely parts of a gamma law with a scale of 1, by Wilson and Hilferty's cube.
 *
 * w = n·(1 − 1/(9n) + z/(3√n))³
 */
const logGammaMiddles = (n: number) =>
  NORMAL_MIDDLES.map((z) => Math.log(n) + 3 * Math.log(1 - 1 / (9 * n) + z / (3 * Math.sqrt(n))));

interface Weighed<T> {
  readonly of: T;
  readonly logWeight: number;
}

function normalised<T>(all: readonly Weighed<T>[]): readonly { readonly of: T; readonly weight: number }[] {
  const most = Math.max(...all.map(({ logWeight }) => logWeight));
  const kept = all
    .map(({ of, logWeight }) => ({ of, weight: Math.exp(logWeight - most) }))
    .filter(({ weight }) => weight > NEGLIGIBLE);
  const sum = kept.reduce((total, { weight }) => total + weight, 0);
  return kept.map(({ of, weight }) => ({ of, weight: weight / sum }));
}

/** Where a function of one number is largest on a coarse row. */
function coarseBest(from: number, to: number, of: (x: number) => number): number {
  let [best, most] = [from, Number.NEGATIVE_INFINITY];
  for (let index = 0; index <= PARTS; index += 1) {
    const x = from + ((to - from) * index) / PARTS;
    const here = of(x);
    if (here > most) [best, most] = [x, here];
  }
  return best;
}

const middles = (from: number, to: number) =>
  Array.from({ length: PARTS }, (_, index) => from + ((to - from) * (index + 0.5)) / PARTS);

interface Centred {
  /** Gusts less their mean [m/s]. */
  readonly away: readonly number[];
  readonly mean: number;
  /** Gumbel scale by moments [m/s]: where the search starts. */
  readonly scale: number;
}

function centred(maxima: readonly number[]): Centred {
  const n = maxima.length;
  const mean = maxima.reduce((sum, each) => sum + each, 0) / n;
  const away = maxima.map((each) => each - mean);
  const square = away.reduce((sum, each) => sum + each * each, 0) / (n - 1);
  return { away, mean, scale: (Math.sqrt(6) / Math.PI) * Math.sqrt(square) };
}

/** y of the standard form: z where the shape is 0, ln(1 + ξz)/ξ else; NaN beyond its end. */
const standardForm = (shape: number, z: number) => (shape === 0 ? z : Math.log(1 + shape * z) / shape);

/**
 * Laws of generalised extremes of some shapes that a record leaves plausible; shape 0 alone is Gumbel's.
 *
 * weight ∝ s^(1−n)·Π e^(−(1+ξ)y_i)·(Σe^(−y_i))^(−n), y = ln(1 + ξ(x − x̄)/s)/ξ; t(v) = w·e^(−y_v)/Σe^(−y_i), w a gamma of n
 *
 * @param maxima strongest gust of each year [m/s]
 * @param shapes shapes ξ, above 0 with a heavier tail, and the weight of each
 * @source derived
 */
export function plausibleExtremes(
  maxima: readonly number[],
  shapes: readonly { readonly shape: number; readonly weight: number }[],
): PlausibleLaws {
  const n = maxima.length;
  const { away, mean, scale } = centred(maxima);
  const spread = 1 / Math.sqrt(n) + 0.3 / n;
  const weighed: Weighed<{ shape: number; s: number; logSum: number }>[] = [];
  for (const { shape, weight } of shapes) {
    const at = (logS: number) => {
      const s = scale * Math.exp(logS);
      let [sum, total] = [0, 0];
      for (const each of away) {
        const y = standardForm(shape, each / s);
        total += y;
        sum += Math.exp(-y);
      }
      const logSum = Math.log(sum);
      const logWeight = (1 - n) * logS - (1 + shape) * total - n * logSum + Math.log(weight);
      return { of: { shape, s, logSum }, logWeight: Number.isFinite(logWeight) ? logWeight : Number.NEGATIVE_INFINITY };
    };
    const best = coarseBest(-2, 2, (logS) => at(logS).logWeight);
    for (const logS of middles(best - 5 * spread, best + 6 * spread)) weighed.push(at(logS));
  }
  const kept = normalised(weighed);
  const gammas = logGammaMiddles(n);
  return {
    weights: kept.flatMap(({ weight }) => gammas.map(() => weight / gammas.length)),
    shapes: kept.flatMap(({ of }) => gammas.map(() => of.shape)),
    logRates: (gust) =>
      kept.flatMap(({ of: { shape, s, logSum } }) => {
        const z = (gust - mean) / s;
        const end = 1 + shape * z <= 0;
        const y = end ? (shape < 0 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY) : standardForm(shape, z);
        return gammas.map((w) => w - y - logSum);
      }),
  };
}

/** Scale of the rarer kind of storm over that of the common one, and the years from which on it decides. @source derived */
const TWO_KINDS = [
  { ratio: 2, years: 5 },
  { ratio: 2, years: 20 },
  { ratio: 3.5, years: 5 },
  { ratio: 3.5, years: 20 },
] as const;

/**
 * Laws of storms of two kinds that a record leaves plausible: the larger of two Gumbel maxima, one of a rarer kind with a
 * larger scale, which decides from some return period on.
 *
 * t = e^(−z) + r·e^(−z/k), z = (x − μ)/s, r = e^(z_T/k − z_T)
 *
 * @param maxima strongest gust of each year [m/s]
 * @returns the laws; their shapes are numbers of the forms tried
 * @source rossi-1984
 */
export function plausibleTwoKinds(maxima: readonly number[]): PlausibleLaws {
  const n = maxima.length;
  const { away, mean, scale } = centred(maxima);
  const spread = 1 / Math.sqrt(n) + 0.3 / n;
  const weighed: Weighed<{ shape: number; ratio: number; s: number; common: number; rare: number }>[] = [];
  for (const [shape, { ratio, years }] of TWO_KINDS.entries()) {
    const crossing = -Math.log(-Math.log(1 - 1 / years));
    const logR = crossing / ratio - crossing;
    const row = (logS: number) => {
      const s = scale * Math.exp(logS);
      const ofCommon = away.map((each) => Math.exp(-each / s));
      const ofRare = away.map((each) => Math.exp(-each / (ratio * s)));
      const sumOfCommon = ofCommon.reduce((sum, each) => sum + each, 0);
      const sumOfRare = ofRare.reduce((sum, each) => sum + each, 0);
      const at = (place: number) => {
        const common = Math.exp(place);
        const rare = Math.exp(logR + place / ratio);
        let [logDensity, product] = [0, 1];
        for (let index = 0; index < n; index += 1) {
          product *= common * (ofCommon[index] as number) + (rare / ratio) * (ofRare[index] as number);
          if (index % 8 === 7) [logDensity, product] = [logDensity + Math.log(product), 1];
        }
        logDensity += Math.log(product);
        const logWeight = logDensity - common * sumOfCommon - rare * sumOfRare + (1 - n) * logS;
        return {
          of: { shape, ratio, s, common, rare },
          logWeight: Number.isFinite(logWeight) ? logWeight : Number.NEGATIVE_INFINITY,
        };
      };
      // Near the likeliest place both kinds together are expected about as often as there are years.
      let place = Math.log(n / sumOfCommon);
      for (let turn = 0; turn < 8; turn += 1) {
        const common = Math.exp(place) * sumOfCommon;
        const rare = (Math.exp(logR + place / ratio) * sumOfRare) / ratio;
        place -= ((common + rare) * Math.log((common + rare) / n)) / (common + rare / ratio);
      }
      return { at, place };
    };
    const best = coarseBest(-2.5, 1, (logS) => {
      const { at, place } = row(logS);
      return at(place).logWeight;
    });
    for (const logS of middles(best - 5 * spread, best + 6 * spread)) {
      const { at, place } = row(logS);
      for (const here of middles(place - 6 * spread, place + 6 * spread)) weighed.push(at(here));
    }
  }
  const kept = normalised(weighed);
  return {
    weights: kept.map(({ weight }) => weight),
    shapes: kept.map(({ of }) => of.shape),
    logRates: (gust) =>
      kept.map(({ of: { ratio, s, common, rare } }) => {
        const z = (gust - mean) / s;
        return Math.log(common * Math.exp(-z) + rare * Math.exp(-z / ratio));
      }),
  };
}

/** One end of a band: the rate, and of each shape its weight and how much of it lies below. */
export interface EndOfBand {
  readonly logRate: number;
  readonly byShape: readonly ShareBelow[];
}

export interface ShareBelow {
  readonly weight: number;
  readonly below: number;
}

const ramp = (logRate: number, end: number) => Math.min(1, Math.max(0, (end - logRate) / (2 * SMOOTHED) + 0.5));

/**
 * The rates below which 5 % and 95 % of the plausible laws lie, at a gust.
 *
 * Σ w_i·[ln t_i < ln t] = 0.05, 0.95
 *
 * @param gust the gust [m/s]
 * @example rateBand(plausibleExtremes([22, 25, 24, 30, 27, 23], [{ shape: 0, weight: 1 }]), 35)[0].logRate // -7.9383
 * @source derived
 */
export function rateBand(laws: PlausibleLaws, gust: number): readonly [EndOfBand, EndOfBand] {
  const rates = laws.logRates(gust);
  const { weights } = laws;
  let [least, most] = [Number.POSITIVE_INFINITY, -FARTHEST];
  for (const each of rates) {
    if (each < least) least = Math.max(each, -FARTHEST);
    if (each > most) most = Math.min(each, FARTHEST);
  }
  const endAt = (share: number): EndOfBand => {
    let [low, high] = [least - SMOOTHED, most + SMOOTHED];
    while (high - low > 1e-9) {
      const middle = (low + high) / 2;
      let below = 0;
      for (let index = 0; index < rates.length; index += 1) {
        below += (weights[index] as number) * ramp(rates[index] as number, middle);
      }
      if (below < share) low = middle;
      else high = middle;
    }
    return { logRate: high, byShape: sharesBelow(laws, rates, high) };
  };
  return [endAt(BAND_ENDS[0]), endAt(BAND_ENDS[1])];
}

function sharesBelow({ weights, shapes }: PlausibleLaws, rates: readonly number[], end: number): readonly ShareBelow[] {
  const byShape = new Map<number, { weight: number; below: number }>();
  for (const [index, shape] of shapes.entries()) {
    const sum = remember(byShape, shape, () => ({ weight: 0, below: 0 }));
    const weight = weights[index] as number;
    sum.weight += weight;
    sum.below += weight * ramp(rates[index] as number, end);
  }
  return [...byShape.values()].map(({ weight, below }) => ({ weight, below: below / weight }));
}
