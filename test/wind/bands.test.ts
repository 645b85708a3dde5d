import { createRequire } from 'node:module';
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { Refusal, Trace } from '../../src/foundation/index.ts';
import {
  type Climate,
  chanceOfReaching,
  EVENEST_RECORD,
  extremesByLMoments,
  GUMBEL_MISFIT,
  misfitOfGumbel,
  plausibleExtremes,
  rateBand,
  recordDoubts,
  tellsNoLaw,
} from '../../src/wind/index.ts';

/*
 * Records are drawn by a library of general use; the laws they are drawn from, and their true chances, are written down
 * here from their definitions.
 */
interface Drawing {
  seed(value: number): Drawing;
  sample(count: number): number[];
}
const { dist } = createRequire(import.meta.url)('ranjs') as {
  dist: { Gumbel: new (location: number, scale: number) => Drawing };
};
const MPH = 0.44704;
const record = (yearlyMax: readonly number[]): Climate => ({ kind: 'record', basis: 'gust3-nominal', yearlyMax });
const inMph = (maxima: readonly number[]) => record(maxima.map((mph) => mph * MPH));

/** Standard Gumbel variates, `count` at a time. */
function gumbels(seed: number): (count: number) => readonly number[] {
  const drawing = new dist.Gumbel(0, 1).seed(seed);
  return (count) => drawing.sample(count);
}

interface TrueLaw {
  readonly records: (seed: number, years: number, how: number) => readonly (readonly number[])[];
  readonly chance: (gust: number) => number;
}

/** μ = 27 m/s, scale 3.1 m/s; x = μ + σ(e^(ξy) − 1)/ξ, chance 1 − exp(−(1 + ξz)^(−1/ξ)). */
const withShape = (xi: number): TrueLaw => ({
  records: (seed, years, how) => {
    const draw = gumbels(seed);
    const of = (y: number) => 27 + 3.1 * (xi === 0 ? y : Math.expm1(xi * y) / xi);
    return Array.from({ length: how }, () => draw(years).map(of));
  },
  chance: (gust) => {
    const z = (gust - 27) / 3.1;
    return -Math.expm1(-(xi === 0 ? Math.exp(-z) : (1 + xi * z) ** (-1 / xi)));
  },
});

/** The larger of a common kind of storm and of one with `ratio` times its scale that is its equal once in `years`. */
const twoKinds = (ratio: number, years: number): TrueLaw => {
  const crossing = -Math.log(-Math.log(1 - 1 / years));
  const rare = { location: 27 + 3.1 * crossing * (1 - ratio), scale: 3.1 * ratio };
  return {
    records: (seed, count, how) => {
      const [common, other] = [gumbels(seed), gumbels(seed + 1)];
      return Array.from({ length: how }, () => {
        const second = other(count);
        return common(count).map((y, index) =>
          Math.max(27 + 3.1 * y, rare.location + rare.scale * (second[index] as number)),
        );
      });
    },
    chance: (gust) => -Math.expm1(-Math.exp(-(gust - 27) / 3.1) - Math.exp(-(gust - rare.location) / rare.scale)),
  };
};

/** The gust of which a law says one in so many years. */
function gustOf({ chance }: TrueLaw, years: number): number {
  let [low, high] = [0, 500];
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (low + high) / 2;
    if (chance(middle) > 1 / years) low = middle;
    else high = middle;
  }
  return low;
}

const RECORDS = 1500;

describe.each([
  ['Gumbel’s law', withShape(0), 24],
  ['a slightly heavier tail', withShape(0.1), 24],
  ['storms of two kinds', twoKinds(2.7, 12), 24],
  ['a heavier tail, from twelve years', withShape(0.15), 12],
] as const)('90 %% bands of %s', (_, law, years) => {
  it('hold the true chance in 90 of 100 records or more', { timeout: 600_000 }, () => {
    const gusts = [50, 300].map((period) => gustOf(law, period));
    const outside = gusts.map(() => 0);
    for (const maxima of law.records(20_261, years, RECORDS)) {
      const of = record(maxima);
      for (const [index, gust] of gusts.entries()) {
        const { perYear } = chanceOfReaching(of, gust, 30);
        const truth = law.chance(gust);
        if (truth < perYear[0] || truth > perYear[1]) outside[index] = (outside[index] as number) + 1;
      }
    }
    for (const count of outside) expect(count / RECORDS).toBeLessThan(0.1);
  });
});

describe('the band of one law', () => {
  it('holds a true chance of that law in 90 of 100 records, in short ones as in long', { timeout: 120_000 }, () => {
    for (const [shape, years] of [
      [0, 10],
      [0, 40],
      [0.1, 20],
    ] as const) {
      const law = withShape(shape);
      const gust = gustOf(law, 100);
      let [below, above] = [0, 0];
      for (const maxima of law.records(77, years, RECORDS)) {
        const [low, high] = rateBand(plausibleExtremes(maxima, [{ shape, weight: 1 }]), gust);
        const truth = Math.log(-Math.log1p(-law.chance(gust)));
        if (truth < low.logRate) below += 1;
        if (truth > high.logRate) above += 1;
      }
      // Of 1,500 a twentieth is 75, give or take 8.4.
      for (const count of [below, above]) expect(Math.abs(count - 75), `${shape}, ${years}`).toBeLessThan(30);
    }
  });
});

describe('the test of Gumbel’s law', () => {
  it('rejects one true Gumbel record in twenty', () => {
    for (const years of [15, 40, 100]) {
      const rejected = withShape(0)
        .records(5, years, RECORDS)
        .filter((maxima) => misfitOfGumbel(maxima) > GUMBEL_MISFIT).length;
      expect(rejected / RECORDS).toBeGreaterThan(0.03);
      expect(rejected / RECORDS).toBeLessThan(0.07);
    }
  });

  it('is the sum over the record that its definition has', () => {
    const maxima = [30, 31, 33, 36, 41, 29, 30.5, 34, 32, 38];
    const trace = new Trace();
    const found = misfitOfGumbel(maxima, trace);
    const of = (id: string) => trace.steps.find(({ formula }) => formula.id === id)?.value as number;
    const [beta, mu] = [of('gumbel-scale-by-likelihood'), of('gumbel-location-by-likelihood')];
    const F = (x: number) => Math.exp(-Math.exp(-(x - mu) / beta));
    const sorted = [...maxima].sort((a, b) => a - b);
    const sum = sorted.reduce(
      (total, x, i) => total + (2 * i + 1) * (Math.log(F(x)) + Math.log(1 - F(sorted[9 - i] as number))),
      0,
    );
    expect(found).toBeCloseTo((-10 - sum / 10) * (1 + 0.2 / Math.sqrt(10)), 10);
  });
});

describe('the law with a heavier tail', () => {
  it('is found again in a long record by L-moments', () => {
    for (const shape of [-0.1, 0.05, 0.2]) {
      const [maxima] = withShape(shape).records(9, 60_000, 1);
      const fit = extremesByLMoments(maxima as readonly number[]);
      expect(fit.shape).toBeCloseTo(shape, 1.7);
      expect(fit.location).toBeCloseTo(27, 0.9);
      expect(fit.scale).toBeCloseTo(3.1, 1);
    }
  });
});

describe('a record', () => {
  it('with a wild year among 23 says no less than was counted, and not by Gumbel’s law', () => {
    const even = Array.from({ length: 22 }, (_, index) => 52 + (10 * index) / 21);
    const of = inMph([...even, 112]);
    const { perYear, counted, byMethod } = chanceOfReaching(of, 89.6 * MPH, 30);
    expect(counted).toEqual({ reached: 1, years: 23 });
    expect(perYear[1]).toBeCloseTo(1 / 23, 12);
    expect(perYear[0]).toBeLessThan(0.01);
    expect(recordDoubts(of)).toEqual(['not-gumbel']);
    expect(byMethod.find(({ method }) => method === 'gumbel')?.inBand).toBe(false);
    // The law with a heavier tail alone holds several times what Gumbel's said at most.
    expect(byMethod.find(({ method }) => method === 'heavier-tail')?.perYear[1]).toBeGreaterThan(0.01);
  });

  it('that is too short or too even tells no law', () => {
    const odd = inMph([50, 50, 50, 50, 51]);
    expect(recordDoubts(odd)).toEqual(['too-short', 'too-even']);
    expect(() => chanceOfReaching(odd, 90 * MPH, 30)).toThrow(Refusal);
    const even = inMph([50, 50, 51, 50, 51, 50, 50, 51, 50, 50, 51, 50]);
    expect(recordDoubts(even)).toEqual(['too-even']);
    const plain = [58, 61, 70, 66, 59, 83, 64, 62, 75, 68, 60, 57];
    expect(tellsNoLaw(recordDoubts(inMph(plain)))).toBe(false);
    expect(sampleStandardDeviation(plain) / mean(plain)).toBeGreaterThan(EVENEST_RECORD);
  });

  it('is asked about its unit where its mean is that of no place, in both units', () => {
    // 26 to 36, as m/s a windy coast; read as mph, 12 to 16 m/s.
    const typed = [26, 28, 30, 31, 33, 36, 27, 29, 30, 34, 32, 28];
    expect(recordDoubts(record(typed))).toEqual([]);
    expect(recordDoubts(inMph(typed))).toEqual(['low']);
    // 58 to 81, as mph a windy coast; read as m/s, more than any.
    const inUs = typed.map((each) => each / MPH);
    expect(recordDoubts(inMph(inUs))).toEqual([]);
    expect(recordDoubts(record(inUs))).toEqual(['high']);
  });
});
