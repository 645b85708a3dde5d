import { describe, expect, it } from 'vitest';
import { FOOT } from '../../src/foundation/index.ts';
import { crankHeightsOf, loweredOf, stormCardOf, workingOf } from '../../src/margins/index.ts';
import { overlapUnder, posturesAt } from '../../src/structure/index.ts';
import { stormDocument, stormText } from '../../src/worksheet/index.ts';
import fc from '../fast-check.ts';
import { assessed, checkInputOf, type Document } from './any-plan.ts';
import { CRANK_UP_TOWER } from './crank-up-tower.ts';

const plan = ({ wind = 100, area = 4, rated = 9, loads = [] as Document[] } = {}): Document => ({
  units: 'us',
  method: 'asce7-16',
  site: { wind, exposure: 'C', riskCategory: 'II' },
  tower: {
    ...CRANK_UP_TOWER,
    sections: (CRANK_UP_TOWER['sections'] as Document[]).map((section) => ({ ...section, uniform: true })),
  },
  mast: { outside: 2, wall: 0.25, length: 10, inside: 3, bearing: 54, yield: '50 ksi' },
  loads: [{ name: 'beam', above: 2, area, areaKind: 'effective', weight: 40 }, ...loads],
  cables: [],
  ratings: [
    {
      of: 'tower',
      area: rated,
      areaKind: 'effective',
      top: 54,
      wind: { speed: 80, method: 'tia222-g', exposure: 'C', riskCategory: 'II' },
    },
  ],
});
const ratioOf = (
  checks: readonly { readonly id: string; readonly result?: { readonly ratio: number } }[],
  id: string,
) => checks.find((each) => each.id === id)?.result?.ratio ?? Number.NaN;

describe('where the sections of a crank-up are', () => {
  const section = { shape: 'pole', sides: 0, length: 6, uniform: true };
  const { station } = checkInputOf({
    units: 'si',
    method: 'asce7-16',
    site: { wind: 45, exposure: 'C' },
    tower: {
      support: 'free',
      top: 16,
      telescopes: true,
      nested: 7,
      sections: [300, 250, 200].map((width) => ({ ...section, width })),
    },
  });

  /*
   * 0–6, 5–11, 10–16 m at 11.5: d = 0, 2.25, 4.5; overlaps 1 + 4.5/2. 800 N at the top: at the rim of the fixed section
   * 800·5.5 = 4400 N·m, handed over by 4400/3.25 = 1353.8 N below and 2153.8 above; drawn out by 8000 and 8800 N.
   */
  it('is as reckoned by hand half-way, the couple a sixth', () => {
    const [alike] = posturesAt(station.tower, 11.5);
    expect(alike?.drops).toEqual([0, 2.25, 4.5]);
    const sections = alike?.sections ?? [];
    const overlap = overlapUnder(sections, 1);
    expect(overlap).toBeCloseTo(3.25, 12);
    expect(overlapUnder(sections, 2)).toBeCloseTo(3.25, 12);
    expect((800 * (11.5 - 6)) / overlap).toBeCloseTo(1353.8, 1);
    expect((800 * (16 - 6)) / overlapUnder(station.tower.sections, 1)).toBeCloseTo(8000, 9);
  });
});

describe('a crank-up at every height', () => {
  it('is drawn out as its plan says, and nested as let down', () => {
    const own = assessed(plan());
    const { at } = crankHeightsOf(own) ?? { at: [] };
    const lowered = loweredOf(own)?.assessment.checks ?? [];
    for (const id of ['tower', 'tower-top', 'mast']) {
      expect(ratioOf(at.at(-1)?.checks ?? [], id) / ratioOf(own.checks, id)).toBeCloseTo(1, 9);
      expect(ratioOf(at[0]?.checks ?? [], id) / ratioOf(lowered, id)).toBeCloseTo(1, 9);
    }
  });

  it('asks less of the tower the lower it stands, and counts the worst order of its sections', () => {
    const own = assessed(plan());
    const ratios = crankHeightsOf(own)?.at.map(({ checks }) => ratioOf(checks, 'tower')) ?? [];
    expect(ratios).toHaveLength(13);
    ratios.slice(1).forEach((ratio, index) => {
      expect(ratio).toBeGreaterThan(ratios[index] as number);
    });
  });

  it('has as its highest height one that keeps the margin, with none a little higher that does', () => {
    const own = assessed(plan({ wind: 95 }));
    const { highest, at } = crankHeightsOf(own) ?? { at: [] };
    expect(highest?.keeps).toBe(true);
    const worst = Math.max(...['tower', 'tower-top', 'mast'].map((id) => ratioOf(highest?.checks ?? [], id)));
    expect(worst).toBeLessThanOrEqual(0.9);
    expect(worst).toBeGreaterThan(0.89);
    for (const each of at) expect(each.keeps).toBe(each.top <= (highest?.top ?? 0));
  });

  it('passes over heights at which a load is in the way', () => {
    const arm: Document = {
      name: 'arm',
      height: 30,
      area: 0.2,
      areaKind: 'effective',
      on: 'tower',
      offset: 0,
      weight: 5,
    };
    const { at, highest } = crankHeightsOf(assessed(plan({ wind: 80, loads: [arm] }))) ?? { at: [] };
    expect(at[0]?.clashes).toEqual(['arm']);
    expect(at.at(-1)?.clashes).toEqual([]);
    expect(highest?.clashes).toEqual([]);
  });

  it('is in the storm card: rows part of the way, none keeping more than what is looked at below', () => {
    const card = stormCardOf(assessed(plan()));
    const postures = card.postures.map(({ posture }) => posture);
    expect(postures).toEqual(['as-it-stands', 'part-way', 'part-way', 'part-way', 'nested']);
    const kept = card.postures.map(({ keepsTo }) => keepsTo ?? 0);
    kept.slice(1).forEach((gust, index) => {
      expect(gust).toBeGreaterThanOrEqual(kept[index] as number);
    });
    const document = stormDocument(card);
    expect(document.rows.map(({ act }) => act)).toContain('crank-down');
    expect(document.notIncluded).not.toContain('heights between raised and nested');
    expect(stormText(card, [])).toMatch(/Crank it down to [\d.]+ ft\. There the margin is kept up to a forecast of/);
  });

  it('is that of a plan which says how high it stands, its working too', () => {
    for (const step of [0, 3, 6, 9, 12]) {
      const own = assessed(plan());
      const there = crankHeightsOf(own)?.at[step];
      const standsAt = (there?.top ?? Number.NaN) / FOOT;
      const standing = plan();
      const said = assessed({ ...standing, tower: { ...(standing['tower'] as Document), standsAt } });
      expect(said.heights.tower).toBeCloseTo(there?.top ?? Number.NaN, 9);
      for (const id of ['tower', 'tower-top', 'mast'])
        expect(ratioOf(said.checks, id) / ratioOf(there?.checks ?? [], id)).toBeCloseTo(1, 9);
      // From there it still nests to the same, and has the same heights to stand at.
      expect(ratioOf(loweredOf(said)?.assessment.checks ?? [], 'tower')).toBeCloseTo(
        ratioOf(loweredOf(own)?.assessment.checks ?? [], 'tower'),
        9,
      );
      expect(crankHeightsOf(said)?.at).toHaveLength(13);
      expect(workingOf(said).steps.length).toBeGreaterThan(10);
    }
  });

  it('never fares better by what a plan does not say', () => {
    const silence: readonly ((document: Document) => Document)[] = [
      ({ cables: _, ...rest }) => rest,
      ({ tower, ...rest }) => {
        const { frequency: _, ...silent } = tower as Document;
        return { ...rest, tower: silent };
      },
      ({ ratings, ...rest }) => {
        const [{ top: _, ...rating }] = ratings as [Document];
        return { ...rest, ratings: [rating] };
      },
    ];
    fc.assert(
      fc.property(fc.double({ min: 1, max: 12, noNaN: true }), fc.constantFrom(...silence), (area, unsaid) => {
        const told = crankHeightsOf(assessed(plan({ area })))?.at ?? [];
        const silent = crankHeightsOf(assessed(unsaid(plan({ area }))))?.at ?? [];
        told.forEach(({ checks }, step) => {
          const [said, not] = [checks, silent[step]?.checks ?? []].map((each) => ratioOf(each, 'tower')) as [
            number,
            number,
          ];
          expect(not).toBeGreaterThanOrEqual(said * (1 - 1e-9));
        });
      }),
      { numRuns: Math.min(3, Number(process.env['RANDOM_RUNS'] ?? 3)) },
    );
  });
});
