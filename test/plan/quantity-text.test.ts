import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { readPlan, readQuantityText } from '../../src/plan/index.ts';
import { PLAN_UNITS, type PlanDimension } from '../../src/plan/quantities/plan-dimension.ts';
import { splitPair } from '../../src/plan/quantities/quantity-text.ts';
import { read, tenNumbers } from './sample-plans.ts';

const bundleLoaded = () =>
  Object.keys(createRequire(import.meta.url).cache).some((path) => path.includes('mathjs/lib/browser'));

describe('the unit library', () => {
  it('is loaded when a text with a unit is met, and not before', () => {
    read(tenNumbers());
    readQuantityText('48', 'length', 'us');
    readQuantityText('48 ft 6 in', 'length', 'us');
    expect(bundleLoaded()).toBe(false);
    readQuantityText('48 ft', 'length', 'us');
    expect(bundleLoaded()).toBe(true);
  });
});

/** SI values worked out by hand from the exact definitions: ft 0.3048 m, in 0.0254 m, mi 1609.344 m, lb 0.45359237 kg, g 9.80665 m/s², kn 1852 m/h. */
const READ: readonly (readonly [string, PlanDimension, number])[] = [
  ['48', 'length', 14.6304],
  ['48 ft', 'length', 14.6304],
  ['48 FT', 'length', 14.6304],
  ['48ft', 'length', 14.6304],
  ['48 feet', 'length', 14.6304],
  ["48'", 'length', 14.6304],
  ['48 ft 6 in', 'length', 14.7828],
  ['48 ft 6 inches', 'length', 14.7828],
  [`48' 6"`, 'length', 14.7828],
  ['48′6″', 'length', 14.7828],
  ['48 ft 6 1/2 in', 'length', 14.7955],
  ['-2 ft 6 in', 'length', -0.762],
  ['-3 ft', 'length', -0.9144],
  ['−3 ft', 'length', -0.9144],
  ['14.6304 m', 'length', 14.6304],
  ['1e3 mm', 'length', 1],
  ['1 1/4 in', 'diameter', 0.03175],
  ['1-1/4 in', 'diameter', 0.03175],
  ['1¼ in', 'diameter', 0.03175],
  ['1 ¼"', 'diameter', 0.03175],
  ['7/16 in', 'diameter', 0.0111125],
  ['1/2', 'diameter', 0.0127],
  ['0,405 in', 'diameter', 0.010287],
  ['.5 in', 'diameter', 0.0127],
  ['50,8 mm', 'diameter', 0.0508],
  ['2 ft', 'diameter', 0.6096],
  ['5.5 sq ft', 'area', 0.51096672],
  ['5.5 sq. ft.', 'area', 0.51096672],
  ['5.5 ft²', 'area', 0.51096672],
  ['5.5 ft^2', 'area', 0.51096672],
  ['144 in2', 'area', 0.09290304],
  ['2500 cm²', 'area', 0.25],
  ['105', 'speed', 46.9392],
  ['105 mph', 'speed', 46.9392],
  ['180 km/h', 'speed', 50],
  ['180 kmh', 'speed', 50],
  ['50 m/s', 'speed', 50],
  ['90 kt', 'speed', 46.3],
  ['90 kn', 'speed', 46.3],
  ['90 knots', 'speed', 46.3],
  ['100 lbf', 'force', 444.82216152605],
  ['1 kip', 'force', 4448.2216152605],
  ['2 kN', 'force', 2000],
  ['10 daN', 'force', 100],
  ['40 lb', 'weight', 18.1436948],
  ['40 lbs.', 'weight', 18.1436948],
  ['2 t', 'weight', 2000],
  ['0.1 lb/ft', 'weight-per-length', 0.148816394356955],
  ['150 g/m', 'weight-per-length', 0.15],
  ['100 ft-lb', 'moment', 135.58179483314],
  ['100 lbf·ft', 'moment', 135.58179483314],
  ['1200 in-lb', 'moment', 135.58179483314],
  ['100 N·m', 'moment', 100],
  ['1 kN m', 'moment', 1000],
  ['46 ksi', 'stress', 317158835.485745],
  ['46000 psi', 'stress', 317158835.485745],
  ['350 MPa', 'stress', 350e6],
  ['350 N/mm²', 'stress', 350e6],
  ['2000 psf', 'soil-pressure', 95760.5179606717],
  ['100 kPa', 'soil-pressure', 100e3],
  ['100 pcf', 'soil-pressure-per-depth', 15708.7463846246],
  ['20 kPa/m', 'soil-pressure-per-depth', 20e3],
  ['90°', 'angle', 1.5707963267949],
  ['90 deg', 'angle', 1.5707963267949],
  ['3.2 Hz', 'frequency', 3.2],
  ['20 %', 'share', 0.2],
  ['20%', 'share', 0.2],
  ['0.2', 'share', 0.2],
];

describe('a quantity as people write it', () => {
  it.each(READ)('%s is read', (text, dimension, si) => {
    const value = readQuantityText(text, dimension, 'us');
    expect(value).toBeTypeOf('number');
    expect(Math.abs((value as number) / si - 1)).toBeLessThan(1e-12);
  });

  it('without a unit has that of the plan', () => {
    expect(readQuantityText('100', 'length', 'si')).toBe(100);
    expect(readQuantityText('50', 'diameter', 'si')).toBeCloseTo(0.05, 12);
    expect(readQuantityText('100', 'soil-pressure', 'si')).toBe(100_000);
    expect(readQuantityText('350', 'stress', 'si')).toBe(350e6);
  });

  it('gives in every dimension the same by the plain number and by the unit it stands for', () => {
    for (const dimension of Object.keys(PLAN_UNITS) as PlanDimension[]) {
      for (const units of ['us', 'si'] as const) {
        const plain = readQuantityText('7', dimension, units) as number;
        const written = readQuantityText(`7 ${PLAN_UNITS[dimension][units].label}`, dimension, units) as number;
        expect(Math.abs(written / plain - 1), `${dimension} ${units}`).toBeLessThan(1e-12);
      }
    }
  });
});

describe('a comma', () => {
  it('is refused where it can mean two numbers', () => {
    expect(readQuantityText('1,250', 'length', 'us')).toBe('ambiguous-comma');
    expect(readQuantityText('1,250 ft', 'length', 'us')).toBe('ambiguous-comma');
    expect(readQuantityText('12,500 lb', 'weight', 'us')).toBe('ambiguous-comma');
  });

  it('is asked about where US units are written and it need not be a decimal sign', () => {
    for (const text of ['1,05', '1,05 mph', '12,5', '1,2345', '1234,5'])
      expect(readQuantityText(text, 'speed', 'us'), text).toBe('ambiguous-comma');
    expect(readQuantityText('3,2 Hz', 'frequency', 'us')).toBe('ambiguous-comma');
    expect(readQuantityText('1,05 mph', 'speed', 'si')).toBe('ambiguous-comma');
    expect(readQuantityText('6 ft 1,5 in', 'length', 'si')).toBe('ambiguous-comma');
    // Nothing or zero in front leaves no thousands; a metric unit names its own sign; a sign that is said rules.
    expect(readQuantityText('0,5', 'length', 'us')).toBeCloseTo(0.1524, 12);
    expect(readQuantityText(',5', 'length', 'us')).toBeCloseTo(0.1524, 12);
    expect(readQuantityText('12,5 mm', 'diameter', 'us')).toBeCloseTo(0.0125, 12);
    expect(readQuantityText('1,05 mph', 'speed', 'us', 'comma')).toBeCloseTo(0.469392, 12);
  });

  it('is never asked about, nor taken, without its readings or a warning', () => {
    const us = (speed: unknown) => readPlan({ ...tenNumbers(), site: { exposure: 'C', wind: { speed } } });
    const asked = us('1,05 mph');
    expect(asked.ok ? [] : asked.faults).toMatchObject([
      {
        pointer: '#/site/wind/speed',
        code: 'ambiguous-comma',
        readings: ['1.05 mph', '105 mph'],
        says: 'Site wind speed: "1,05 mph" can mean two numbers. Write 1.05 mph or 105 mph.',
      },
    ]);
    const taken = us('47,5 m/s');
    expect(taken.ok ? taken.entryWarnings : taken.faults).toContainEqual({
      pointer: '#/site/wind/speed',
      code: 'decimal-comma',
      says: 'Site wind speed: "47,5 m/s" taken as 47.5 m/s, its comma as the decimal sign.',
    });
    const plain = us('1,250.5');
    expect(plain.ok ? [] : plain.faults.map(({ code }) => code)).toEqual(['out-of-bounds']);
    const loads = [{ name: 'whip', height: '10,5 to 12,25', area: 1 }];
    const pair = readPlan({ ...tenNumbers(), loads });
    expect(pair.ok ? [] : pair.faults).toMatchObject([{ readings: ['10.5 to 12.25', '105 to 1225'] }]);
  });

  it('is read where it can mean only one', () => {
    expect(readQuantityText('1,25', 'length', 'si')).toBe(1.25);
    expect(readQuantityText('0,405', 'length', 'si')).toBe(0.405);
    expect(readQuantityText('1234,567', 'length', 'si')).toBe(1234.567);
    expect(readQuantityText('1,250.5', 'length', 'si')).toBe(1250.5);
    expect(readQuantityText('1,250,000', 'length', 'si')).toBe(1_250_000);
  });

  it('is the decimal sign where the reader says so, and then the point is ambiguous', () => {
    expect(readQuantityText('1,250', 'length', 'si', 'comma')).toBe(1.25);
    expect(readQuantityText('1.250,5 m', 'length', 'si', 'comma')).toBe(1250.5);
    expect(readQuantityText('34.5', 'length', 'si', 'comma')).toBe(34.5);
    expect(readQuantityText('1.250', 'length', 'si', 'comma')).toBe('ambiguous-comma');
    expect(readQuantityText('1,250.5', 'length', 'si', 'comma')).toBe('unreadable');
  });
});

describe('what is no quantity', () => {
  it.each([
    ['', 'unreadable'],
    ['ft', 'unreadable'],
    ['about 5', 'unreadable'],
    ['1/0 in', 'unreadable'],
    ['48 ft 12 in', 'unreadable'],
    ['1e400 m', 'unreadable'],
    ['Infinity', 'unreadable'],
    ['NaN', 'unreadable'],
    ['0x10', 'unknown-unit'],
    ['--3 ft', 'unreadable'],
    ['1.2.3', 'unreadable'],
    ['5 kg', 'unknown-unit'],
    ['5 furlong', 'unknown-unit'],
    ['5 constructor', 'unknown-unit'],
    ['5 __proto__', 'unknown-unit'],
    ['5 ft * 1e9', 'unknown-unit'],
    ['5 ft; 3', 'unknown-unit'],
    ['import("fs")', 'unreadable'],
    ['2 evaluate("1")', 'unknown-unit'],
    ['createUnit("x")', 'unreadable'],
    ['1 ft to 2 ft', 'unknown-unit'],
    [`${'9'.repeat(39)} m`, 'too-long'],
  ])('%s', (text, why) => {
    expect(readQuantityText(text, 'length', 'us')).toBe(why);
  });

  it('is a ton, which is two things, and kt is never a kilotonne', () => {
    expect(readQuantityText('2 ton', 'weight', 'us')).toBe('unknown-unit');
    expect(readQuantityText('2 kt', 'weight', 'us')).toBe('unknown-unit');
  });
});

describe('a pair as text', () => {
  it.each([
    ['48 to 58', ['48', '58']],
    ['48 to 58 ft', ['48 ft', '58 ft']],
    ['48 ft to 58 ft 6 in', ['48 ft', '58 ft 6 in']],
    ['5 1/2 to 8 in', ['5 1/2 in', '8 in']],
  ])('%s', (text, ends) => {
    expect(splitPair(text)).toEqual(ends);
  });

  it('is not found where there is none', () => {
    expect(splitPair('48 ft')).toBeUndefined();
    expect(splitPair('to 58')).toBeUndefined();
  });
});
