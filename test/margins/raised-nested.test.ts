import { describe, expect, it } from 'vitest';
import { assessed, type Document } from './any-plan.ts';
import { CRANK_UP_TOWER } from './crank-up-tower.ts';

/** Newtons in a pound-force. */
const POUND = 4.4482216;

const plan = (tower: Document = {}, hinge: Document = {}): Document => {
  const sections = (CRANK_UP_TOWER['sections'] as Document[]).map((section, index) => ({
    ...section,
    weight: [200, 150, 100][index],
    uniform: true,
  }));
  return {
    units: 'us',
    method: 'asce7-16',
    site: { wind: 100, exposure: 'C', riskCategory: 'II' },
    tower: {
      ...CRANK_UP_TOWER,
      sections,
      weight: 450,
      hinge: { height: 4, raisedBy: { kind: 'winch', anchor: [0, 8], attach: 18, workingLoad: 700, ...hinge } },
      ...tower,
    },
    loads: [{ name: 'beam', height: 54, on: 'tower', offset: 0, area: 4, areaKind: 'effective', weight: 40 }],
    cables: [],
    ratings: [
      {
        of: 'tower',
        area: 9,
        areaKind: 'effective',
        top: 54,
        wind: { speed: 80, method: 'tia222-g', exposure: 'C', riskCategory: 'II' },
      },
    ],
  };
};
const check = (document: Document, id: string) => assessed(document).checks.find((each) => each.id === id);

describe('a crank-up on a hinge', () => {
  /*
   * Nested to 24 ft its sections are at 0–22, 1–23 and 2–24 ft. Beyond the hinge at 4 ft, flat: 200·18/22 lb at 9 ft,
   * 150·19/22 at 9.5, 100·20/22 at 10 and the beam's 40 at 20: 4412.5 lb·ft. Line from 8 ft over the hinge to 18 ft out:
   * arm 8·18/√(8² + 18²) = 7.3104 ft; 603.6 lb.
   */
  it('is raised nested, by hand', () => {
    const raising = check(plan(), 'raising');
    expect((raising?.result?.demand ?? 0) / POUND).toBeCloseTo(603.6, 0);
    expect(raising?.verdict).toBe('within');
    expect(assessed(plan()).raising?.nestedTop).toBeCloseTo(24 * 0.3048, 9);
    expect(check(plan(), 'lying')?.verdict).toBe('within');
  });

  it('pulls more than twice as much drawn out, which is what a plan without the nested height is read at', () => {
    const { nested: _, ...drawnOut } = plan()['tower'] as Document;
    const raising = check({ ...plan(), tower: drawnOut }, 'raising');
    expect((raising?.result?.demand ?? 0) / POUND).toBeGreaterThan(2 * 603.6);
    // It is never over by being looked at drawn out: it asks.
    expect(raising).toMatchObject({ verdict: 'open', because: 'missing', needs: ['/tower/nested'] });
    const strong = plan({}, { workingLoad: 4000 })['tower'] as Document;
    const { nested: __, ...silent } = strong;
    expect(check({ ...plan(), tower: silent }, 'raising')?.verdict).toBe('within');
  });

  it('weighs at least what its sections do, and their share of what is not told by length', () => {
    const total = (tower: Document) => check(plan(tower), 'raising')?.result?.demand ?? 0;
    const sections = (plan()['tower'] as { sections: Document[] }).sections;
    const told = total({});
    expect(total({ weight: 100 })).toBeCloseTo(told, 9);
    const silent = sections.map(({ weight: _, ...section }) => section);
    // By length each of three has 150 lb: 150·(18·9 + 19·9.5 + 20·10)/22 + 800 = 4498.9 lb·ft.
    expect(total({ sections: silent }) / told).toBeCloseTo(4498.9 / 4412.5, 3);
  });
});
