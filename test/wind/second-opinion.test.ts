import { createRequire } from 'node:module';
import { bisect, linearRegression, mean, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { DISPLAY_UNITS, type Dimension, lowestReaching, type UnitSystem } from '../../src/foundation/index.ts';
import { type PlanDimension, readQuantityText } from '../../src/plan/index.ts';
import {
  chanceOfReaching,
  errorOfPeriod,
  type GumbelFit,
  gumbelByLikelihood,
  gumbelByLMoments,
  gumbelByMoments,
  gumbelThroughChart,
  gustOfPeriod,
} from '../../src/wind/index.ts';
import fc from '../fast-check.ts';

/*
 * What three libraries of general use make of the same things: ranjs of distributions, simple-statistics of moments,
 * regression and root finding, js-quantities of units. None of them knows anything of wind or of towers.
 */
interface Distribution {
  seed(value: number): Distribution;
  sample(count: number): number[];
  cdf(x: number): number;
  pdf(x: number): number;
  q(p: number): number;
  lnL(data: readonly number[]): number;
}
type Making = new (...parameters: number[]) => Distribution;
const require = createRequire(import.meta.url);
const { dist } = require('ranjs') as { dist: { Gumbel: Making; Binomial: Making } };
const quantity = require('js-quantities') as (text: string) => { readonly baseScalar: number };

const gumbel = ({ location, scale }: GumbelFit) => new dist.Gumbel(location, scale);
const law = fc.record({
  location: fc.double({ min: 15, max: 50, noNaN: true }),
  scale: fc.double({ min: 1.5, max: 10, noNaN: true }),
});
/** Yearly maxima drawn by the library. */
const drawn = (fit: GumbelFit, count: number, seed: number) => gumbel(fit).seed(seed).sample(count);
const record = fc
  .tuple(law, fc.integer({ min: 5, max: 60 }), fc.integer({ min: 1, max: 1e6 }))
  .map(([fit, count, seed]) => drawn(fit, count, seed));

describe('Gumbel’s law by a library of distributions', () => {
  it('has the same gust of a return period', () => {
    fc.assert(
      fc.property(law, fc.double({ min: 1.05, max: 3000, noNaN: true }), (fit, years) => {
        expect(gustOfPeriod(fit, years) / gumbel(fit).q(1 - 1 / years)).toBeCloseTo(1, 10);
      }),
    );
  });

  it('has the same chance in a year, and a binomial law the same over the years', () => {
    fc.assert(
      fc.property(
        law,
        fc.double({ min: 2, max: 500, noNaN: true }),
        fc.integer({ min: 1, max: 100 }),
        (fit, years, over) => {
          const returns = [5, 50].map((each) => ({ years: each, speed: gumbel(fit).q(1 - 1 / each) }));
          const gust = gumbel(fit).q(1 - 1 / years);
          const found = chanceOfReaching({ kind: 'chart', basis: 'gust3-nominal', returns }, gust, over);
          const inYear = 1 - gumbel(fit).cdf(gust);
          expect(found.perYear[0]).toBeCloseTo(inYear, 9);
          expect(found.overYears[1]).toBeCloseTo(1 - new dist.Binomial(over, inYear).pdf(0), 8);
        },
      ),
    );
  });

  it('has no likelier law than the one fitted by likelihood', () => {
    fc.assert(
      fc.property(record, (maxima) => {
        const fit = gumbelByLikelihood(maxima);
        const likelihood = (by: Partial<GumbelFit>) => gumbel({ ...fit, ...by }).lnL(maxima);
        const best = likelihood({});
        for (const share of [0.999, 1.001]) {
          expect(likelihood({ scale: fit.scale * share })).toBeLessThan(best);
          expect(likelihood({ location: fit.location + (share - 1) * fit.scale })).toBeLessThan(best);
        }
        for (const other of [gumbelByMoments(maxima), gumbelByLMoments(maxima)]) {
          expect(likelihood(other)).toBeLessThanOrEqual(best + 1e-9 * Math.abs(best));
        }
      }),
    );
  });

  it('is found again in what the library draws from it', () => {
    const fit = { location: 30, scale: 5 };
    const maxima = drawn(fit, 20_000, 7);
    // Variances by maximum likelihood, from memory of the literature: 1.1087 and 0.6079 times β²/n.
    const errorOf = (variance: number) => fit.scale * Math.sqrt(variance / maxima.length);
    for (const fitted of [gumbelByLikelihood(maxima), gumbelByLMoments(maxima), gumbelByMoments(maxima)]) {
      // Moments and L-moments scatter up to half as much again as likelihood.
      expect(Math.abs(fitted.location - fit.location)).toBeLessThan(5 * errorOf(1.1087));
      expect(Math.abs(fitted.scale - fit.scale)).toBeLessThan(5 * errorOf(0.6079));
    }
  });

  it('scatters over records as the standard error says', () => {
    const fit = { location: 30, scale: 5 };
    const records = Array.from({ length: 500 }, (_, index) => drawn(fit, 100, index + 1));
    const gusts = records.map((maxima) => gustOfPeriod(gumbelByLikelihood(maxima), 50));
    // 500 records leave the deviation itself 3 % uncertain.
    expect(sampleStandardDeviation(gusts) / errorOfPeriod(fit, 100, 50)).toBeGreaterThan(0.9);
    expect(sampleStandardDeviation(gusts) / errorOfPeriod(fit, 100, 50)).toBeLessThan(1.1);
    expect(Math.abs(mean(gusts) / gustOfPeriod(fit, 50) - 1)).toBeLessThan(0.02);
  });
});

describe('moments and lines by a library of statistics', () => {
  it('give the same law by moments', () => {
    fc.assert(
      fc.property(record, (maxima) => {
        const { location, scale } = gumbelByMoments(maxima);
        expect(scale / ((Math.sqrt(6) / Math.PI) * sampleStandardDeviation(maxima))).toBeCloseTo(1, 9);
        // Euler's constant, from memory.
        expect((location + 0.5772156649 * scale) / mean(maxima)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('give the same line through a chart', () => {
    fc.assert(
      fc.property(
        law,
        fc.array(fc.double({ min: 0, max: 3, noNaN: true }), { minLength: 4, maxLength: 4 }),
        (fit, off) => {
          const returns = [5, 20, 100, 700].map((years, index) => ({
            years,
            speed: gumbel(fit).q(1 - 1 / years) + (off[index] as number),
          }));
          // The library's own law of location 0 and scale 1 gives the variate.
          const variate = new dist.Gumbel(0, 1);
          const { m, b } = linearRegression(returns.map(({ years, speed }) => [variate.q(1 - 1 / years), speed]));
          if (m <= 0) return;
          const { location, scale } = gumbelThroughChart(returns);
          expect(scale).toBeCloseTo(m, 8);
          expect(location).toBeCloseTo(b, 8);
        },
      ),
    );
  });
});

describe('units by a library of units', () => {
  /** The library's pound-force has seven digits, so it is made of its pound and its gravity. */
  const POUND_FORCE = 'lb*gee';
  const AS_WRITTEN: Readonly<Record<UnitSystem, Readonly<Record<Dimension, string>>>> = {
    us: {
      one: '1',
      length: 'ft',
      diameter: 'in',
      area: 'ft^2',
      'second-moment': 'in^4',
      speed: 'mph',
      pressure: `${POUND_FORCE}/ft^2`,
      force: POUND_FORCE,
      weight: 'lb',
      'weight-per-length': 'lb/ft',
      density: 'lb/ft^3',
      moment: `${POUND_FORCE}*ft`,
      stress: `1000 ${POUND_FORCE}/in^2`,
      angle: 'deg',
      frequency: 'Hz',
      period: 's',
      'flow-number': 'mph*ft',
      // Its square: the library knows no roots.
      'drag-number': `ft^2*${POUND_FORCE}/ft^2`,
      // All that stands behind its one stroke is below the line.
      'pressure-constant': `${POUND_FORCE}/ft^2*mph^2`,
      stiffness: `${POUND_FORCE}/ft`,
      'force-per-length': `${POUND_FORCE}/ft`,
      'section-area': 'in^2',
      'section-modulus': 'in^3',
      'soil-pressure': `${POUND_FORCE}/ft^2`,
      'soil-pressure-per-depth': `${POUND_FORCE}/ft^3`,
      'force-per-weight': `${POUND_FORCE}/lb`,
    },
    si: {
      one: '1',
      length: 'm',
      diameter: 'mm',
      area: 'm^2',
      'second-moment': 'mm^4',
      speed: 'm/s',
      pressure: 'Pa',
      force: 'N',
      weight: 'kg',
      'weight-per-length': 'kg/m',
      density: 'kg/m^3',
      moment: 'N*m',
      stress: 'MPa',
      angle: 'deg',
      frequency: 'Hz',
      period: 's',
      'flow-number': 'm^2/s',
      'drag-number': 'm^2*Pa',
      'pressure-constant': 'Pa*s^2/m^2',
      stiffness: 'N/m',
      'force-per-length': 'N/m',
      'section-area': 'mm^2',
      'section-modulus': 'mm^3',
      'soil-pressure': 'kPa',
      'soil-pressure-per-depth': 'kPa/m',
      'force-per-weight': 'N/kg',
    },
  };

  it.each(['us', 'si'] as const)('are the same in the units shown to %s readers', (system) => {
    for (const [dimension, { inSi }] of Object.entries(DISPLAY_UNITS[system])) {
      const theirs = quantity(AS_WRITTEN[system][dimension as Dimension]).baseScalar;
      const ours = dimension === 'drag-number' ? inSi ** 2 : inSi;
      expect(ours / theirs, dimension).toBeCloseTo(1, 12);
    }
  });

  /** What is read, as which kind, how the library writes it, to how many digits it holds that unit. */
  const WRITTEN: readonly (readonly [string, PlanDimension, string, number])[] = [
    ['48.5 ft', 'length', '48.5 ft', 12],
    ['7 yd', 'length', '7 yd', 12],
    ['1.5 mi', 'length', '1.5 mile', 12],
    ['31 cm', 'length', '31 cm', 12],
    ['0.405 in', 'diameter', '0.405 in', 12],
    ['5.5 sq ft', 'area', '5.5 ft^2', 12],
    ['144 in²', 'area', '144 in^2', 12],
    ['2500 cm²', 'area', '2500 cm^2', 12],
    ['105 mph', 'speed', '105 mph', 12],
    ['180 km/h', 'speed', '180 km/h', 12],
    ['90 kn', 'speed', '90 kt', 8],
    ['120 ft/s', 'speed', '120 ft/s', 12],
    ['250 lbf', 'force', `250 ${POUND_FORCE}`, 12],
    ['2.5 kip', 'force', `2500 ${POUND_FORCE}`, 12],
    ['3 kN', 'force', '3 kN', 12],
    ['40 kgf', 'force', '40 kg*gee', 12],
    ['55 lb', 'weight', '55 lb', 12],
    ['9 oz', 'weight', '9 oz', 8],
    ['0.5 t', 'weight', '0.5 tonne', 12],
    ['0.11 lb/ft', 'weight-per-length', '0.11 lb/ft', 12],
    ['90 g/m', 'weight-per-length', '90 g/m', 12],
    ['1200 ft-lb', 'moment', `1200 ${POUND_FORCE}*ft`, 12],
    ['1200 in-lb', 'moment', `1200 ${POUND_FORCE}*in`, 12],
    ['12 kN·m', 'moment', '12 kN*m', 12],
    ['36 ksi', 'stress', `36000 ${POUND_FORCE}/in^2`, 12],
    ['240 N/mm²', 'stress', '240 N/mm^2', 12],
    ['2000 psf', 'soil-pressure', `2000 ${POUND_FORCE}/ft^2`, 12],
    ['150 kPa', 'soil-pressure', '150 kPa', 12],
    ['100 pcf', 'soil-pressure-per-depth', `100 ${POUND_FORCE}/ft^3`, 12],
    ['210 degrees', 'angle', '210 deg', 12],
  ];

  it.each(WRITTEN)('%s is the same as the plan reads it', (text, dimension, written, digits) => {
    const ours = readQuantityText(text, dimension, 'si');
    expect(typeof ours).toBe('number');
    expect((ours as number) / quantity(written).baseScalar).toBeCloseTo(1, digits);
  });
});

describe('roots by a library of statistics', () => {
  it('lie where the search for the lowest crossing finds them', () => {
    const root = fc.double({ min: 0.1, max: 99, noNaN: true });
    const power = fc.double({ min: 0.3, max: 4, noNaN: true });
    fc.assert(
      fc.property(root, power, (wanted, exponent) => {
        const over = (x: number) => x ** exponent - wanted ** exponent;
        const theirs = bisect(over, 0, 100, 200, 1e-10);
        const ours = lowestReaching((x) => over(x) >= 0, 0, 100, 64);
        expect(ours).toBeCloseTo(theirs, 8);
      }),
    );
  });

  it('are, of several, the lowest', () => {
    // A force with a step down: it is reached, left and reached again. 1550 is left within two steps of the scan.
    const step = (x: number) => x * x * (x > 40 ? 0.55 : 1);
    for (const wanted of [900, 1500, 1550, 2000]) {
      const ends = wanted <= 1600 ? ([0, 40] as const) : ([40.000001, 100] as const);
      const theirs = bisect((x) => step(x) - wanted, ends[0], ends[1], 200, 1e-10);
      expect(lowestReaching((x) => step(x) >= wanted, 0, 100, 256)).toBeCloseTo(theirs, 8);
    }
  });
});
