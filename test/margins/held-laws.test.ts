import { describe, expect, it } from 'vitest';
import type { Check } from '../../src/margins/index.ts';
import fc from '../fast-check.ts';
import { assessed, type Document } from './any-plan.ts';
import { GUYS_IN_FULL, guyedPlan, RATED, SECTION, sideLoad, topLoad } from './guyed-tower.ts';

/* Of towers on guys and brackets: the own case, more load, and silence, over plans at random. */

const guyed = fc
  .record({
    sections: fc.integer({ min: 4, max: 8 }),
    width: fc.integer({ min: 9, max: 18 }),
    lower: fc.integer({ min: 35, max: 55 }),
    upper: fc.integer({ min: 80, max: 97 }),
    radius: fc.integer({ min: 50, max: 90 }),
    count: fc.constantFrom(3, 4),
    tension: fc.integer({ min: 280, max: 590 }),
    speed: fc.integer({ min: 70, max: 110 }),
    area: fc.integer({ min: 3, max: 14 }),
    held: fc.boolean(),
  })
  .map(({ sections, width, lower, upper, radius, count, tension, speed, area, held }) => {
    const top = sections * 10;
    const faces = count;
    const at = (share: number) => Math.round(top * share) / 100;
    const guys = { ...GUYS_IN_FULL, count, tension, radius: Math.round(top * radius) / 100 };
    const supportedAt = [
      { height: at(lower), ...guys },
      { height: at(upper), ...guys },
    ];
    const wind = { speed, basis: 'gust3-nominal' };
    const load = { ...topLoad(area), height: top };
    return guyedPlan(
      {
        top,
        sections: Array.from({ length: sections }, () => ({ ...SECTION, width, faces })),
        baseHeld: held,
        weight: 60 * sections,
        supportedAt,
      },
      {
        site: { wind, exposure: 'C', riskCategory: 'II' },
        loads: [load],
        ratings: [
          {
            ...RATED,
            top,
            height: top,
            supportedAt: supportedAt.map(({ height }) => height),
            area,
            wind: { ...RATED.wind, speed },
          },
        ],
      },
    );
  });

const bracketed = fc
  .record({
    sections: fc.integer({ min: 3, max: 6 }),
    width: fc.integer({ min: 12, max: 24 }),
    heights: fc.uniqueArray(fc.integer({ min: 20, max: 80 }), { minLength: 1, maxLength: 2 }),
    speed: fc.integer({ min: 70, max: 110 }),
    area: fc.integer({ min: 3, max: 14 }),
    held: fc.boolean(),
  })
  .map(({ sections, width, heights, speed, area, held }) => {
    const top = sections * 10;
    const supportedAt = [...heights]
      .sort((a, b) => a - b)
      .map((share) => ({ height: (top * share) / 100, by: 'bracket' }));
    return guyedPlan(
      {
        support: 'bracketed',
        top,
        sections: Array.from({ length: sections }, () => ({ ...SECTION, width })),
        baseHeld: held,
        weight: 60 * sections,
        supportedAt,
      },
      {
        site: { wind: { speed, basis: 'gust3-nominal' }, exposure: 'C', riskCategory: 'II' },
        loads: [{ ...topLoad(area), height: top }],
        ratings: [
          {
            ...RATED,
            top,
            height: top,
            supportedAt: supportedAt.map(({ height }) => height),
            area,
            wind: { ...RATED.wind, speed },
          },
        ],
      },
    );
  });

const RANK: Readonly<Record<Check['verdict'], number>> = { within: 0, 'low-margin': 1, open: 2, over: 3 };
const belowOf = (plan: Document) => assessed(plan).checks.find(({ kind }) => kind === 'tower-below');
const useOf = (plan: Document) => belowOf(plan)?.result?.ratio ?? Number.POSITIVE_INFINITY;
const withLoads = (plan: Document, change: (loads: Document[]) => Document[]) => ({
  ...plan,
  loads: change(plan['loads'] as Document[]),
});
const withTower = (plan: Document, change: (tower: Document) => Document) =>
  JSON.parse(JSON.stringify({ ...plan, tower: change(plan['tower'] as Document) })) as Document;
const RUNS = { numRuns: Number(process.env['RANDOM_RUNS'] ?? 8) };

describe.each([
  ['guys', guyed],
  ['brackets', bracketed],
])('a tower on %s', (_, plans) => {
  it('is used whole by its own rated case', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        const use = useOf(plan);
        // A tower too slender for these formulas has no figures on either side.
        if (use === Number.POSITIVE_INFINITY) {
          expect(belowOf(plan)?.because).not.toBe('beyond-rating');
          return;
        }
        expect(use).toBeLessThan(1.0005);
        expect(use).toBeGreaterThan(0.995);
      }),
      RUNS,
    );
  });

  it('is used no less by more between its supports, or in more wind', () => {
    fc.assert(
      fc.property(plans, fc.integer({ min: 1, max: 4 }), (plan, area) => {
        const top = Number((plan['tower'] as Document)['top']);
        const more = (by: number) => useOf(withLoads(plan, (loads) => [...loads, sideLoad(by, 0.6 * top)]));
        const [least, most] = [more(area / 4), more(area)];
        expect(most).toBeGreaterThanOrEqual(least - 1e-6);
        const { site } = plan as { site: Document };
        const faster = { ...site, wind: { speed: 118, basis: 'gust3-nominal' } };
        expect(useOf({ ...plan, site: faster })).toBeGreaterThanOrEqual(useOf(plan) - 1e-6);
      }),
      RUNS,
    );
  });

  it('is shown no better by what is left out', () => {
    const silences: readonly ((tower: Document) => Document)[] = [
      (tower) => ({ ...tower, baseHeld: undefined }),
      (tower) => ({
        ...tower,
        supportedAt: (tower['supportedAt'] as Document[]).map((row) => ({ ...row, tension: undefined })),
      }),
      (tower) => ({
        ...tower,
        supportedAt: (tower['supportedAt'] as Document[]).map((row) => ({ ...row, grade: undefined, ends: undefined })),
      }),
      ...['diameter', 'radius', 'ends'].map((field) => (tower: Document) => ({
        ...tower,
        supportedAt: (tower['supportedAt'] as Document[]).map((row) => ({ ...row, [field]: undefined })),
      })),
      (tower) => ({ ...tower, asDrawn: undefined }),
      (tower) => ({
        ...tower,
        sections: (tower['sections'] as Document[]).map((row) => ({ ...row, uniform: undefined, make: undefined })),
      }),
      (tower) => ({ ...tower, weight: undefined }),
      (tower) => ({
        ...tower,
        sections: (tower['sections'] as Document[]).map((row) => ({ ...row, legWall: undefined, material: undefined })),
      }),
    ];
    fc.assert(
      fc.property(plans, fc.constantFrom(...silences), (plan, silence) => {
        const loads = (given: Document[]) => [
          ...given,
          sideLoad(0.3, 0.6 * Number((plan['tower'] as Document)['top'])),
        ];
        const told = withLoads(plan, loads);
        const silent = withTower(told, silence);
        const worst = (of: Document) =>
          Math.max(
            ...assessed(of)
              .parts.filter(({ kind }) => kind === 'tower' || kind === 'guys')
              .map(({ verdict }) => RANK[verdict ?? 'open']),
          );
        // What is over stays over, or is open; what is open is never firm for want of a word.
        if (worst(told) < 3) expect(worst(silent)).toBeGreaterThanOrEqual(worst(told));
        const [before, after] = [useOf(told), useOf(silent)];
        // Open for a weight that is missing, it shows what is known so far.
        const isOpen = belowOf(silent)?.because === 'missing';
        if (Number.isFinite(before) && !isOpen) expect(after).toBeGreaterThanOrEqual(before - 1e-6);
      }),
      RUNS,
    );
  });
});
