import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { Refusal, Trace } from '../../src/foundation/index.ts';
import {
  type Climate,
  type ClimateBasis,
  chanceOfReaching,
  convertSpeed,
  errorOfPeriod,
  type GumbelFit,
  gumbelByLikelihood,
  gumbelByLMoments,
  gumbelByMoments,
  gumbelThroughChart,
  gustOfPeriod,
  recordDoubts,
  tellsNoLaw,
} from '../../src/wind/index.ts';
import fc from '../fast-check.ts';
import { examplesOf, list } from '../published/example-reader.ts';

const math = createRequire(import.meta.url)('mathjs/lib/browser/math.js') as typeof import('mathjs');

const FITS: Readonly<Record<string, (maxima: readonly number[]) => GumbelFit>> = {
  moments: gumbelByMoments,
  'L-moments': gumbelByLMoments,
  likelihood: gumbelByLikelihood,
};

/** Yearly maxima [m/s] that are not all alike. */
const record = fc
  .array(fc.double({ min: 12, max: 60, noNaN: true }), { minLength: 5, maxLength: 60 })
  .filter((maxima) => Math.max(...maxima) - Math.min(...maxima) > 0.5);
/** Return periods that rise, and speeds that rise with them. */
const chart = fc
  .array(fc.tuple(fc.double({ min: 1.2, max: 3, noNaN: true }), fc.double({ min: 0.3, max: 5, noNaN: true })), {
    minLength: 2,
    maxLength: 6,
  })
  .map((steps) => {
    let [years, speed] = [3, 20];
    return steps.map(([factor, more]) => {
      years *= factor;
      speed += more;
      return { years, speed };
    });
  });
const aGust = fc.double({ min: 5, max: 80, noNaN: true });
const climate = fc.oneof(
  record
    .map((yearlyMax): Climate => ({ kind: 'record', basis: 'gust3-nominal', yearlyMax }))
    .filter((of) => !tellsNoLaw(recordDoubts(of))),
  chart.map((returns): Climate => ({ kind: 'chart', basis: 'gust3-nominal', returns })),
);

const stations = examplesOf('extremes').flatMap(({ id, inputs }) => {
  const values = inputs['values_mph'] ?? inputs['values_km_h'] ?? inputs['values_m_s'];
  return values === undefined ? [] : [[id, list(values)] as const];
});

describe.each(Object.entries(FITS))('the Gumbel law by %s', (_, fitted) => {
  it('moves with the speeds and stretches with them', () => {
    fc.assert(
      fc.property(
        record,
        fc.double({ min: -10, max: 30, noNaN: true }),
        fc.double({ min: 0.3, max: 4, noNaN: true }),
        (maxima, shift, factor) => {
          const { location, scale } = fitted(maxima);
          const other = fitted(maxima.map((speed) => factor * speed + shift));
          expect(other.scale / (factor * scale)).toBeCloseTo(1, 9);
          expect((other.location - (factor * location + shift)) / (factor * scale)).toBeCloseTo(0, 8);
        },
      ),
    );
  });

  it('takes years in any order', () => {
    fc.assert(
      fc.property(record, (maxima) => {
        const [one, other] = [fitted(maxima), fitted([...maxima].reverse())];
        expect(other.scale / one.scale).toBeCloseTo(1, 10);
        expect((other.location - one.location) / one.scale).toBeCloseTo(0, 9);
      }),
    );
  });

  it('refuses years that are all alike', () => {
    expect(() => fitted([30, 30, 30, 30, 30])).toThrow(Refusal);
  });
});

describe('the second L-moment', () => {
  it('is half the mean difference of two years', () => {
    fc.assert(
      fc.property(record, (maxima) => {
        const pairs = maxima.flatMap((one, index) => maxima.slice(index + 1).map((other) => Math.abs(one - other)));
        const half = pairs.reduce((sum, each) => sum + each, 0) / pairs.length / 2;
        expect((gumbelByLMoments(maxima).scale * Math.LN2) / half).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('maximum likelihood', () => {
  /** What one year adds to minus the logarithm of the likelihood; its derivatives are taken by the evaluator. */
  const NEGATIVE = 'log(b) + (x - m) / b + exp(-(x - m) / b)';
  const derived = (...by: string[]) =>
    by.reduce((node, symbol) => math.derivative(node, symbol), math.parse(NEGATIVE)).compile();
  const gradient = [derived('m'), derived('b')] as const;
  const curvature = [derived('m', 'm'), derived('m', 'b'), derived('b', 'b')] as const;
  const total = (part: { evaluate: (scope: object) => number }, maxima: readonly number[], fit: GumbelFit) =>
    maxima.reduce((sum, x) => sum + part.evaluate({ x, m: fit.location, b: fit.scale }), 0);

  it('leaves no slope of the likelihood', () => {
    fc.assert(
      fc.property(record, (maxima) => {
        const fit = gumbelByLikelihood(maxima);
        for (const part of gradient) {
          expect((total(part, maxima, fit) * fit.scale) / maxima.length).toBeCloseTo(0, 8);
        }
      }),
      { numRuns: 40 },
    );
  });

  it.each(stations)('is where a search over both parameters ends: %s', (_, maxima) => {
    let fit = gumbelByMoments(maxima);
    for (let turn = 0; turn < 50; turn += 1) {
      const [mm, mb, bb] = curvature.map((part) => total(part, maxima, fit)) as [number, number, number];
      const slope = gradient.map((part) => total(part, maxima, fit)) as [number, number];
      const step = math.lusolve(
        [
          [mm, mb],
          [mb, bb],
        ],
        slope,
      ) as number[][];
      fit = { location: fit.location - (step[0]?.[0] as number), scale: fit.scale - (step[1]?.[0] as number) };
    }
    const ours = gumbelByLikelihood(maxima);
    expect(ours.location / fit.location).toBeCloseTo(1, 10);
    expect(ours.scale / fit.scale).toBeCloseTo(1, 10);
  });

  it('has the standard errors of its own information', () => {
    // Expected curvature for one year of the law with location 0 and scale 1, integrated over its density.
    const information = curvature.map((part) => {
      let sum = 0;
      const width = 0.002;
      for (let x = -5; x < 45; x += width) {
        const density = Math.exp(-x - Math.exp(-x));
        sum += part.evaluate({ x, m: 0, b: 1 }) * density * width;
      }
      return sum;
    }) as [number, number, number];
    const inverse = math.inv([
      [information[0], information[1]],
      [information[1], information[2]],
    ]) as [[number, number], [number, number]];
    // From memory of the literature: 1.1087, 0.2570, 0.6079.
    expect(inverse[0][0]).toBeCloseTo(1.1087, 4);
    expect(inverse[0][1]).toBeCloseTo(0.257, 4);
    expect(inverse[1][1]).toBeCloseTo(0.6079, 4);
    const [scale, count] = [7, 30];
    const share = 6 / Math.PI ** 2;
    const above = 1 - 0.5772156649015329;
    const each = scale ** 2 / count;
    const closed = { location: 1 + share * above ** 2, scale: share, covariance: share * above };
    expect(Math.sqrt(each * closed.location)).toBeCloseTo(Math.sqrt(each * inverse[0][0]), 6);
    expect(Math.sqrt(each * closed.scale)).toBeCloseTo(Math.sqrt(each * inverse[1][1]), 6);
    expect(each * closed.covariance).toBeCloseTo(each * inverse[0][1], 6);
    for (const years of [2, 10, 50, 300]) {
      const y = -Math.log(-Math.log(1 - 1 / years));
      const variance = each * (closed.location + y * y * closed.scale + 2 * y * closed.covariance);
      expect(errorOfPeriod({ location: 40, scale }, count, years)).toBeCloseTo(Math.sqrt(variance), 10);
    }
  });
});

describe('the line through a chart', () => {
  it('goes through two values', () => {
    fc.assert(
      fc.property(chart, (returns) => {
        const two = returns.slice(0, 2);
        const fit = gumbelThroughChart(two);
        for (const { years, speed } of two) expect(gustOfPeriod(fit, years)).toBeCloseTo(speed, 7);
      }),
    );
  });

  it('solves the normal equations', () => {
    fc.assert(
      fc.property(chart, (returns) => {
        const rows = returns.map(({ years }) => [1, -Math.log(-Math.log(1 - 1 / years))]);
        const turned = math.transpose(rows);
        const wanted = math.lusolve(
          math.multiply(turned, rows) as number[][],
          math.multiply(
            turned,
            returns.map(({ speed }) => speed),
          ) as number[],
        ) as number[][];
        const { location, scale } = gumbelThroughChart(returns);
        expect(location).toBeCloseTo(wanted[0]?.[0] as number, 6);
        expect(scale).toBeCloseTo(wanted[1]?.[0] as number, 6);
      }),
    );
  });

  it('refuses one value, and speeds that do not rise', () => {
    expect(() => gumbelThroughChart([{ years: 10, speed: 30 }])).toThrow(Refusal);
    const falling = [
      { years: 10, speed: 30 },
      { years: 50, speed: 30 },
    ];
    expect(() => gumbelThroughChart(falling)).toThrow(Refusal);
  });
});

describe('the chance of reaching a gust', () => {
  it('is one in T for the T-year gust', () => {
    fc.assert(
      fc.property(chart, fc.double({ min: 2, max: 1000, noNaN: true }), (returns, years) => {
        const two = returns.slice(0, 2);
        const gust = gustOfPeriod(gumbelThroughChart(two), years);
        const { perYear } = chanceOfReaching({ kind: 'chart', basis: 'gust3-nominal', returns: two }, gust, 1);
        expect(perYear[0] * years).toBeCloseTo(1, 8);
      }),
    );
  });

  it('falls with the gust and grows with the years, its band the right way round', () => {
    fc.assert(
      fc.property(climate, aGust, fc.double({ min: 0.1, max: 20, noNaN: true }), (of, gust, more) => {
        const here = chanceOfReaching(of, gust, 30);
        const faster = chanceOfReaching(of, gust + more, 30);
        const longer = chanceOfReaching(of, gust, 60);
        for (const end of [0, 1] as const) {
          expect(faster.perYear[end]).toBeLessThanOrEqual(here.perYear[end]);
          expect(here.overYears[end]).toBeGreaterThanOrEqual(here.perYear[end]);
          expect(longer.overYears[end]).toBeGreaterThanOrEqual(here.overYears[end]);
          expect(longer.perYear[end]).toBe(here.perYear[end]);
        }
        expect(here.perYear[0]).toBeLessThanOrEqual(here.perYear[1]);
        for (const { perYear, inBand } of here.byMethod) {
          expect(perYear[0]).toBeLessThanOrEqual(perYear[1]);
          if (inBand) expect(perYear[0]).toBeGreaterThanOrEqual(here.perYear[0]);
          if (inBand) expect(perYear[1]).toBeLessThanOrEqual(here.perYear[1]);
        }
      }),
    );
  });

  it('goes with a gust that rises with its return period, however fitted', () => {
    fc.assert(
      fc.property(record, fc.double({ min: 1.1, max: 1000, noNaN: true }), (maxima, years) => {
        for (const fitted of Object.values(FITS)) {
          const fit = fitted(maxima);
          expect(gustOfPeriod(fit, years * 1.1)).toBeGreaterThan(gustOfPeriod(fit, years));
        }
      }),
    );
  });

  it('is what pencil and paper give for two values of a chart', () => {
    // y(10) = 2.250367, y(50) = 3.901939: beta = 16/1.651571 = 9.68774, mu = 76 - 9.68774·2.250367 = 54.1990;
    // at 90: y = 3.695488, exp(-3.695488) = 0.024835, p = 1 - exp(-0.024835) = 0.024529; 30 years 1 - 0.975471^30 = 0.5253.
    const returns = [
      { years: 10, speed: 76 },
      { years: 50, speed: 92 },
    ];
    const chance = chanceOfReaching({ kind: 'chart', basis: 'gust3-nominal', returns }, 90, 30);
    expect(chance.perYear[0]).toBeCloseTo(0.024529, 6);
    expect(chance.overYears[0]).toBeCloseTo(0.5253, 4);
    expect(chance.perYear[1]).toBe(chance.perYear[0]);
    expect(chance.byMethod.map(({ method }) => method)).toEqual(['chart-line']);
  });

  it('has as its band, from three values on, every line through two of them', () => {
    const returns = [
      { years: 10, speed: 76 },
      { years: 50, speed: 92 },
      { years: 100, speed: 97 },
    ];
    const of = (...indices: number[]): Climate => ({
      kind: 'chart',
      basis: 'gust3-nominal',
      returns: returns.filter((_, index) => indices.includes(index)),
    });
    const pairs = [of(0, 1), of(0, 2), of(1, 2)].map((pair) => chanceOfReaching(pair, 105, 30).perYear[0]);
    const { perYear, byMethod } = chanceOfReaching(of(0, 1, 2), 105, 30);
    const line = byMethod.find(({ method }) => method === 'chart-line')?.perYear[0] as number;
    expect(perYear[0]).toBeCloseTo(Math.min(line, ...pairs), 12);
    expect(perYear[1]).toBeCloseTo(Math.max(line, ...pairs), 12);
    expect(perYear[1]).toBeGreaterThan(perYear[0] * 1.1);
  });

  it('is, from a record, the band of three laws, with others beside it for comparison', () => {
    const [, maxima] = stations.find(([id]) => id.startsWith('brownsville')) as (typeof stations)[number];
    const gusts = maxima.map((mph) => mph * 0.44704);
    const gust = gustOfPeriod(gumbelByLikelihood(gusts), 50);
    const { byMethod, perYear, counted } = chanceOfReaching(
      { kind: 'record', basis: 'gust3-nominal', yearlyMax: gusts },
      gust,
      30,
    );
    const likelihood = byMethod.find(({ method }) => method === 'likelihood');
    expect(likelihood?.perYear[0]).toBeCloseTo(0.02, 9);
    expect(likelihood?.fiftyYearsError).toBeCloseTo(errorOfPeriod(gumbelByLikelihood(gusts), gusts.length, 50), 12);
    expect(byMethod.filter(({ inBand }) => inBand).map(({ method }) => method)).toEqual([
      'gumbel',
      'heavier-tail',
      'two-kinds',
    ]);
    expect(perYear[0]).toBeLessThan(0.02);
    expect(perYear[1]).toBeGreaterThan(0.02);
    expect(counted).toEqual({ reached: gusts.filter((each) => each >= gust).length, years: gusts.length });
  });

  it.each(['fastest-mile', 'mean-1min', 'mean-10min', 'mean-hour'] as ClimateBasis[])(
    'turns speeds given as %s into gusts, as of a site',
    (basis) => {
      const yearlyMax = [22, 25, 24, 30, 27, 23, 26, 21, 28, 24];
      const gusts = yearlyMax.map((speed) => convertSpeed(speed, basis, 'gust3-nominal', 'site'));
      const given = chanceOfReaching({ kind: 'record', basis, yearlyMax }, 45, 30);
      const turned = chanceOfReaching({ kind: 'record', basis: 'gust3-nominal', yearlyMax: gusts }, 45, 30);
      expect(given.byMethod).toEqual(turned.byMethod);
      expect(given.perYear).not.toEqual(
        chanceOfReaching({ kind: 'record', basis: 'gust3-nominal', yearlyMax }, 45, 30).perYear,
      );
    },
  );

  it('is never none, however far the gust is out', () => {
    // Far out p = e^−y and p_n = n·p. Here the law has location 20 m/s and scale 1 m/s, so that y is 60 at 80 m/s.
    const year = (y: number) => 1 / -Math.expm1(-Math.exp(-y));
    const returns = [3, 5].map((y) => ({ years: year(y), speed: 20 + y }));
    const { perYear, overYears } = chanceOfReaching({ kind: 'chart', basis: 'gust3-nominal', returns }, 80, 30);
    expect(perYear[0] / 8.75651076e-27).toBeCloseTo(1, 6);
    expect(overYears[0] / 2.62695323e-25).toBeCloseTo(1, 6);
  });

  it('is the same with its working as without', () => {
    fc.assert(
      fc.property(climate, aGust, (of, gust) => {
        const trace = new Trace();
        expect(chanceOfReaching(of, gust, 30, trace)).toEqual(chanceOfReaching(of, gust, 30));
        expect(trace.steps.length).toBeGreaterThan(5);
      }),
      { numRuns: 30 },
    );
  });
});
