import { describe, expect, it } from 'vitest';
import {
  type QuotedWind,
  type RequirementCase,
  type Requirements,
  type RequirementsAsked,
  requirementsOf,
} from '../../src/margins/index.ts';
import { METHOD_BY_ID, METHODS } from '../../src/methods/index.ts';
import fc from '../fast-check.ts';
import { anyPlan, assessed, checkInputOf, type Document } from './any-plan.ts';

const POUND_FORCE = 4.4482216152605;
const FOOT = 0.3048;
const MPH = 0.44704;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/*
 * Worked with pencil and a table of logarithms, before the code was run: a lattice of 0.3 ft² of drag area a foot, which is
 * uniform, so that its base alone is compared; margin 0.1.
 */
const lattice = (length: number, dragArea: number) => ({
  sections: [{ length, shape: 'lattice', faces: 3, width: 12, members: 'round', dragArea, uniform: true }],
});
const byF = (above: number): Document => ({
  units: 'us',
  method: 'eia222-f',
  site: { wind: 80, exposure: 'C' },
  tower: { support: 'free', top: 40, frequency: 2, ...lattice(40, 12) },
  loads: [{ name: 'what goes up', area: 10, areaKind: 'effective', above, on: 'tower' }],
  cables: [],
});
const byG = { method: 'tia222-g', speed: 90 * MPH, exposure: 'C', riskCategory: 'II' } as const;

const only = (plan: Document, asked: RequirementsAsked) =>
  requirementsOf(checkInputOf(plan), asked).cases[0] as RequirementCase;
const near = (value: number | undefined, byHand: number) => expect((value ?? Number.NaN) / byHand).toBeCloseTo(1, 3);

describe('what to ask the makers for, worked by hand', () => {
  it('is decided by shear where the load is where it is rated', () => {
    /*
     * TIA/EIA-222-F, 80 mph fastest-mile: Kz = (z/33)^(2/7), 1 or more; GH = 0.65 + 0.60/(40/33)^(1/7) = 1.2337; λ = 3/4.
     * At 42 ft Kz = 1.0713, q = 17.553 psf: 162.42 lbf. Tower: 182.84 lbf, 3673 lbf·ft. In all 345.26 lbf, 10,494 lbf·ft;
     * over 0.9: 383.62 lbf, 11,661 lbf·ft.
     * TIA-222-G, 90 mph, C, class II: q = 17.626·Kz psf, Kz = 2.01·(z/900)^(2/9.5), 0.85 or more, λ = 0.96, G = 0.85.
     * At 42 ft 15.164 lbf/ft²; tower 158.42 lbf, 3299 lbf·ft. Shear: (383.62 − 158.42)/15.164 = 14.85 ft²; moment:
     * (11,661 − 3299)/(15.164·42) = 13.13 ft².
     */
    const { quotes, force, moment } = only(byF(2), { above: 2 * FOOT, quotes: [byG] });
    const [quote] = quotes;
    near((quote?.area?.value ?? 0) / FOOT ** 2, 14.851);
    expect(quote?.area?.governs).toMatchObject({ of: 'shear', place: 'base', height: 0 });
    near((quote?.force ?? 0) / POUND_FORCE, 225.2);
    near((force?.value ?? 0) / POUND_FORCE, 383.62);
    near((moment?.value ?? 0) / POUND_FORCE / FOOT, 11_660.6);
  });

  it('is decided by moment where the load is above where it is rated', () => {
    /*
     * The load 10 ft above the top: Kz = 1.1261, 170.71 lbf, 8535.6 lbf·ft; in all 353.55 lbf, 12,209 lbf·ft; over 0.9:
     * 392.84 lbf, 13,565 lbf·ft. Rated at the top, 15.009 lbf/ft²: (13,565 − 3299)/(15.009·40) = 17.10 ft²; by shear 15.62.
     */
    const { quotes } = only(byF(10), { above: 0, quotes: [byG] });
    near((quotes[0]?.area?.value ?? 0) / FOOT ** 2, 17.1);
    expect(quotes[0]?.area?.governs).toMatchObject({ of: 'moment', place: 'base' });
  });

  it('is less where the rating includes the lines', () => {
    /*
     * ASCE 7-16, 110 mph, C, tower and two lines of half an inch, each 1.2·d: 0.4 ft² a foot; 6 ft² and 50 lb at 30 ft.
     * q = 26.330·Kz, Kz(30) = 0.98225, λ·G = 0.51: 79.14 lbf; 142.65 lbf of tower and lines; 221.78 lbf, over 0.9 246.43.
     * TIA-222-H, 100 mph, C: 10.901 lbf/ft² at 30 ft; tower and lines 117.96 lbf, tower alone 88.47.
     * (246.43 − 117.96)/10.901 = 11.785 ft²; without the lines (246.43 − 88.47)/10.901 = 14.49 ft².
     * At the base by moment 2374 + 2197 + 0.29·50·1 = 4586 lbf·ft, over 0.9 5095.
     */
    const plan = (cables: readonly Document[]): Document => ({
      units: 'us',
      method: 'asce7-16',
      site: { wind: { speed: 110, basis: 'gust3-strength' }, exposure: 'C', riskCategory: 'II' },
      tower: { support: 'free', top: 30, frequency: 2, ...lattice(30, 9) },
      loads: [{ name: 'what goes up', area: 6, areaKind: 'effective', above: 0, weight: 50 }],
      cables,
    });
    const line = { diameter: 0.5, arrangement: 'single' };
    const asked = { above: 0, quotes: [{ method: 'tia222-h', speed: 100 * MPH, exposure: 'C' } as const] };
    const together = only(plan([{ ...line, count: 2 }]), asked);
    near((together.quotes[0]?.area?.value ?? 0) / FOOT ** 2, 11.785);
    near((together.moment?.value ?? 0) / POUND_FORCE / FOOT, 5095.1);
    // As two runs they cannot be stated beside one area, which has to do for them.
    const apart = only(
      plan([
        { ...line, count: 1 },
        { ...line, count: 1 },
      ]),
      asked,
    );
    near((apart.quotes[0]?.area?.value ?? 0) / FOOT ** 2, 14.49);
  });
});

/** What is asked for as the line of a data sheet, to be typed into the plan. */
function typed({ height, withCables, input }: Requirements, claim: Document, wind?: Document): Document {
  return {
    of: 'tower',
    ...claim,
    height: height / FOOT,
    top: input.station.tower.top / FOOT,
    ...(wind ? { wind } : {}),
    ...(withCables && wind
      ? {
          withCables: {
            count: withCables.count,
            diameter: (withCables.diameter / FOOT) * 12,
            arrangement: withCables.laid,
          },
        }
      : {}),
  };
}

const towerRatio = (plan: Document, rating: Document) => {
  const { checks } = assessed({ ...plan, ratings: [rating] });
  return checks.find(({ kind }) => kind === 'tower')?.result?.ratio ?? Number.NaN;
};

const SPEEDS: Readonly<Record<string, number>> = {
  'fastest-mile': 75,
  'gust3-nominal': 88,
  'gust3-strength': 112,
  'mean-10min': 58,
};

/** A wind of a data sheet, its ground and class named or not. */
const quote: fc.Arbitrary<QuotedWind> = fc
  .record({
    method: fc.constantFrom(...METHODS),
    faster: fc.double({ min: 0.8, max: 1.3, noNaN: true }),
    ground: fc.option(fc.nat(), { nil: undefined, freq: 4 }),
    riskCategory: fc.option(fc.constantFrom('I', 'II', 'III' as const), { nil: undefined }),
  })
  .map(({ method, faster, ground: chosen, riskCategory }) => {
    const { basis, ground, classMatters } = METHOD_BY_ID[method];
    const exposure = ground.counts && chosen !== undefined ? ground.kinds[chosen % ground.kinds.length] : undefined;
    return {
      method,
      speed: (SPEEDS[basis] as number) * faster * MPH,
      ...(exposure === undefined ? {} : { exposure }),
      ...(classMatters && riskCategory ? { riskCategory } : {}),
    };
  });

describe('what is asked for, typed back into the plan', () => {
  it('leaves just the margin wanted, by every standard, whatever stands and hangs there', () => {
    const decided = new Map<string, number>();
    fc.assert(
      fc.property(
        anyPlan,
        fc.array(quote, { minLength: 3, maxLength: 3 }),
        between(0, 0.4),
        between(0, 3),
        (any, quotes, margin, above) => {
          const plan: Document = { ...any, wanted: { margin } };
          const atTarget = (ratio: number | undefined) =>
            expect((ratio ?? Number.NaN) / (1 - margin)).toBeCloseTo(1, 6);
          const required = requirementsOf(checkInputOf(plan), { quotes, above: above * FOOT });
          for (const { quotes, force, moment } of required.cases) {
            for (const { wind, area } of quotes) {
              if (area === undefined) throw new Error('nothing is compared');
              const { method, speed, exposure, riskCategory } = wind;
              const ground = exposure === undefined ? {} : { [METHOD_BY_ID[method].ground.field]: exposure };
              const stated = { method, speed: speed / MPH, ...ground, ...(riskCategory ? { riskCategory } : {}) };
              const ratio = (value: number) =>
                towerRatio(plan, typed(required, { area: value / FOOT ** 2, areaKind: 'effective' }, stated));
              if (area.value < 1e-3) expect(ratio(1e-3)).toBeLessThan(1 - margin + 1e-6);
              else if (Number.isFinite(area.value)) atTarget(ratio(area.value));
              else expect(ratio(1e3)).toBeGreaterThan(1 - margin);
              decided.set(method, (decided.get(method) ?? 0) + 1);
            }
            const claimed = { kind: 'force', force: (force?.value ?? Number.NaN) / POUND_FORCE, level: 'allowable' };
            atTarget(towerRatio(plan, typed(required, claimed)));
            const asked = {
              kind: 'moment',
              moment: (moment?.value ?? Number.NaN) / POUND_FORCE / FOOT,
              level: 'allowable',
            };
            const { height: _, ...atBase } = typed(required, asked);
            const base = assessed({ ...plan, ratings: [atBase] }).ratios.find(
              ({ comparison }) => comparison.of === 'moment' && comparison.place === 'base',
            );
            atTarget(base?.unfavourable);
          }
        },
      ),
      { numRuns: 80 },
    );
    expect([...decided.keys()].sort()).toEqual([...METHODS].sort());
  });
});

describe('a tower of which no shape is given', () => {
  const beam = { name: 'beam', above: 3, area: 8, areaKind: 'effective' };
  const bare: Document = {
    units: 'us',
    method: 'tia222-h',
    site: { wind: 115, exposure: 'C' },
    tower: { support: 'free', top: 45, frequency: 2 },
    loads: [beam],
    cables: [],
  };
  const asked = { quotes: [byG, { ...byG, speed: 110 * MPH }] };

  it('needs the most over every kind of tower, which is enough for each', () => {
    const required = requirementsOf(checkInputOf(bare), asked);
    expect(required.anyTower).toBe(true);
    const [{ quotes } = { quotes: [] }] = required.cases;
    for (const { area } of quotes) expect(area?.value).toBe(Math.max(...Object.values(area?.byKind ?? {}).flat()));
    for (const { wind, area } of quotes) {
      for (const shape of [
        { shape: 'lattice', faces: 3, width: 12, members: 'round', solidity: 0.18 },
        { shape: 'lattice', faces: 3, width: 18, members: 'round', solidity: 0.22 },
        { shape: 'lattice', faces: 4, width: 20, members: 'flat', solidity: 0.15 },
        { shape: 'pole', width: 5 },
        { shape: 'pole', width: 8, sides: 12 },
        { shape: 'pole', width: 11 },
      ] as const) {
        const most = area?.byKind?.[shape.shape]?.[1] ?? Number.NaN;
        const claim = { area: most / FOOT ** 2, areaKind: 'effective' };
        const stated = { method: 'tia222-g', exposure: 'C', riskCategory: 'II', speed: wind.speed / MPH };
        const tower = { ...(bare['tower'] as Document), ...shape };
        expect(towerRatio({ ...bare, tower }, typed(required, claim, stated))).toBeLessThan(0.9 + 1e-4);
      }
    }
    // What is enough where legs are upright is not where they lean.
    const [{ area } = {}] = quotes;
    const ratio = ([, most]: readonly [number, number] = [0, 0], width: readonly [number, number] = [0, 0]) => {
      const section = { length: 45, shape: 'lattice', faces: 4, members: 'flat', solidity: 0.2, width };
      const tower = { ...(bare['tower'] as Document), sections: [section] };
      const stated = { method: 'tia222-g', exposure: 'C', riskCategory: 'II', speed: 90 };
      return towerRatio({ ...bare, tower }, typed(required, { area: most / FOOT ** 2, areaKind: 'effective' }, stated));
    };
    expect(ratio(area?.byKind?.tapered, [28, 14])).toBeLessThan(0.9 + 1e-4);
    expect(ratio(area?.byKind?.tapered, [20, 12])).toBeLessThan(0.9 + 1e-4);
    expect(ratio(area?.byKind?.lattice, [31, 15.5])).toBeGreaterThan(0.9);
    // In a wind slower than that of the site the wind on the tower itself counts against it, in a faster one for it.
    const [slow, fast] = quotes.map(({ area }) => area?.byKind?.lattice ?? [0, 0]) as [number[], number[]];
    expect((slow[1] as number) / (slow[0] as number)).toBeGreaterThan((fast[1] as number) / (fast[0] as number));
  });

  it('has its moment at the base between the least and the most of its own drag', () => {
    const [{ moment } = {}] = requirementsOf(checkInputOf(bare), asked).cases;
    const shaped = {
      ...bare,
      tower: { ...(bare['tower'] as Document), shape: 'lattice', width: 15, members: 'round', solidity: 0.2, faces: 3 },
    };
    const [{ moment: own } = {}] = requirementsOf(checkInputOf(shaped), asked).cases;
    const [least, most] = moment?.byKind?.lattice ?? [0, 0];
    expect(own?.byKind).toBeUndefined();
    expect(least).toBeLessThan(own?.value ?? 0);
    expect(most).toBeGreaterThan(own?.value ?? 0);
  });

  it('is asked for no area where its supports are not given', () => {
    const guyed = { ...bare, tower: { support: 'guyed', top: 45 } };
    const [{ quotes, moment } = { quotes: [], moment: undefined }] = requirementsOf(checkInputOf(guyed), asked).cases;
    expect(quotes.map(({ area }) => area)).toEqual([undefined, undefined]);
    expect(moment).toBeUndefined();
  });
});

describe('loads that come later, and a wind that is wished for', () => {
  const plan = byF(2);
  const later = { name: 'dish', area: 4, areaKind: 'effective', above: 1, on: 'tower', later: true };
  const both = { ...plan, loads: [...(plan['loads'] as Document[]), later] };
  const asked = { above: 2 * FOOT, quotes: [byG], wished: { speed: 110 * MPH } };
  const sets = ({ cases }: Requirements) => cases.map(({ wind, loads }) => `${wind} ${loads}`);

  it('each have a line of their own', () => {
    const required = requirementsOf(checkInputOf(both), asked);
    expect(sets(required)).toEqual(['site now', 'site with-later', 'wished now', 'wished with-later']);
    const areas = required.cases.map(({ quotes }) => quotes[0]?.area?.value ?? Number.NaN);
    const alone = (of: Document, given: RequirementsAsked) => only(of, given).quotes[0]?.area?.value;
    const now = { ...later, later: false };
    expect(areas[0]).toBe(alone(plan, { above: asked.above, quotes: asked.quotes }));
    expect(areas[1]).toBe(alone({ ...plan, loads: [...(plan['loads'] as Document[]), now] }, asked));
    expect(areas[2]).toBe(
      alone({ ...plan, site: { wind: { speed: 110, basis: 'gust3-nominal' }, exposure: 'C' } }, asked),
    );
  });

  it('are in no check, which says so', () => {
    const [without, answer] = [plan, both].map((each) => assessed({ ...each, ratings: [] }));
    expect(answer?.windLoads.rows.map(({ name }) => name)).toEqual(without?.windLoads.rows.map(({ name }) => name));
    expect(answer?.cautions.find(({ code }) => code === 'loads-later')).toMatchObject({
      of: 'dish',
      at: '/loads/1/later',
    });
    expect(without?.cautions.map(({ code }) => code)).not.toContain('loads-later');
  });

  it('of a site of category IV are asked for in the highest class that towers have', () => {
    const site = { wind: 80, exposure: 'C', riskCategory: 'IV' };
    const { quotes } = only({ ...plan, site }, {});
    const classes = quotes.flatMap(({ wind }) => (wind.method === 'tia222-g' ? [wind.riskCategory] : []));
    expect(new Set(classes)).toEqual(new Set(['III']));
  });

  it('alone leave no line for now', () => {
    expect(sets(requirementsOf(checkInputOf({ ...plan, loads: [later] }), { quotes: [byG] }))).toEqual([
      'site with-later',
    ]);
  });
});
