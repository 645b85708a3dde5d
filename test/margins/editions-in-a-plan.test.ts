import { describe, expect, it } from 'vitest';
import { POUND_FORCE } from '../../src/foundation/index.ts';
import { assessed, type Document } from './any-plan.ts';
import { demoPlan } from './demo-plan.ts';

const bluff = demoPlan('river-bluff');
const onBluff = (method: string, hill: Document): Document => ({
  ...bluff,
  method,
  site: { ...(bluff['site'] as Document), hill: { shape: 'escarpment', distance: 0, side: 'upwind', ...hill } },
});
const tower = (plan: Document) => {
  const [check] = assessed(plan).checks;
  return { verdict: check?.verdict, demand: (check?.result?.demand ?? Number.NaN) / POUND_FORCE };
};

describe('a bluff that does not stand alone', () => {
  const at = (method: string, given: Document) => tower(onBluff(method, { height: 45, halfLength: 90, ...given }));

  it('counts by ASCE 7-22, whatever is said of what is around it', () => {
    // With a height of 0.5 of its half-length, at the crest; taken out, it left 474.7 lbf and "within".
    for (const given of [{}, { isolated: true }, { isolated: false }]) {
      const { demand, verdict } = at('asce7-22', given);
      expect(demand).toBeCloseTo(670.06, 1);
      expect(verdict).not.toBe('within');
    }
  });

  it('does not count by ASCE 7-16 or 7-10', () => {
    for (const method of ['asce7-16', 'asce7-10']) {
      expect(at(method, { isolated: false }).demand).toBeLessThan(0.75 * at(method, {}).demand);
    }
  });
});

describe('a slope of 1 in 5', () => {
  it('counts as one that is a hair steeper, in feet and in metres', () => {
    for (const [height, halfLength] of [
      [50, 250],
      ['15 m', '75 m'],
      ['180 in', '75 ft'],
      [45, '225 ft'],
    ] as const) {
      const typed = tower(onBluff('asce7-16', { height, halfLength })).demand;
      expect(typed, `${height} in ${halfLength}`).toBeGreaterThan(500);
    }
    const [exact, steeper] = [250, 249.9].map((halfLength) => tower(onBluff('asce7-16', { height: 50, halfLength })));
    expect((exact?.demand ?? 0) / (steeper?.demand ?? 1)).toBeCloseTo(1, 3);
    expect(exact?.verdict).toBe('low-margin');
  });
});

describe('ice on a tower of equal members', () => {
  it('asks the same of it, however its sections are written', () => {
    const iced = (length: number, count: number): Document => ({
      units: 'us',
      method: 'asce7-16',
      site: { wind: 105, exposure: 'C', ice: { thickness: 0.75, gust: 40 }, riskCategory: 'II' },
      tower: {
        support: 'free',
        top: 60,
        sections: [
          {
            length,
            count,
            shape: 'lattice',
            faces: 3,
            width: 18,
            members: 'round',
            leg: 1.25,
            brace: 0.4375,
            panel: 18,
            pattern: 'zigzag',
          },
        ],
      },
      loads: [{ name: 'tube', height: 61, shape: 'tube', along: 'element', diameter: 1, length: 12, offset: 0 }],
      ratings: [{ of: 'tower', area: 15, areaKind: 'effective', wind: { speed: 90, method: 'tia222-g' }, top: 60 }],
      cables: [],
    });
    const demand = (length: number, count: number) => {
      const { shown } = assessed(iced(length, count)).ice ?? {};
      return Math.max(
        ...(shown?.ratios ?? []).flatMap(({ comparison, demand: asked }) =>
          comparison.check === 'tower' && comparison.of === 'shear' ? [asked] : [],
        ),
      );
    };
    const one = demand(60, 1);
    expect(one).toBeGreaterThan(0);
    for (const [length, count] of [
      [30, 2],
      [20, 3],
      [10, 6],
      [5, 12],
    ] as const) {
      expect(demand(length, count) / one).toBeCloseTo(1, 3);
    }
  });
});
