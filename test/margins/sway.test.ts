import { describe, expect, it } from 'vitest';
import { sheddingOf, swayOf } from '../../src/margins/index.ts';
import { leaningByFrequency, leaningOf, leaningShare } from '../../src/margins/sway.ts';
import { firstModeAtLeast, vortexSpeed } from '../../src/structure/index.ts';
import { answerText } from '../../src/worksheet/index.ts';
import { assessed, type Document } from './any-plan.ts';

/** A round steel pole of 10 m, 200 × 5 mm, with one load at its top, in metres and newtons. */
const plan = (area: number, weight: number, more: Document = {}): Document => ({
  units: 'si',
  method: 'asce7-16',
  site: { wind: { speed: 45, basis: 'gust3-strength' }, exposure: 'C', riskCategory: 'II' },
  tower: {
    support: 'free',
    top: 10,
    shape: 'pole',
    width: 200,
    sides: 0,
    wall: 5,
    material: 'steel',
    weight: 0.1,
    frequency: 2,
    used: false,
    ...more,
  },
  loads: [
    {
      name: 'l',
      height: 10,
      on: 'tower',
      front: area,
      side: area,
      areaKind: 'effective',
      offset: 0,
      heading: 0,
      weight,
    },
  ],
  cables: [],
  ratings: [],
});
const sway = (area: number, weight: number, more?: Document) => {
  const found = swayOf(assessed(plan(area, weight, more)).model);
  if (!found) throw new Error('it does not sway');
  return found;
};
const WALL = 0.005;
const EI = 200e9 * ((Math.PI * (0.2 ** 4 - (0.2 - 2 * WALL) ** 4)) / 64);

describe('a tower that stands by itself', () => {
  it('moves at its top as a cantilever does', () => {
    // 60 mph, 26.82 m/s, over open ground at 10 m: 0.613 · 1.000 · 26.82² · 0.85 = 375.1 N a square metre; F·L³/(3·EI).
    const byArea = sway(2, 0.01).movement - sway(1, 0.01).movement;
    expect(Math.abs(byArea / ((375.1 * 1000) / (3 * EI)) - 1)).toBeLessThan(5e-3);
  });

  it('leans at its top half as much again as its movement over its height', () => {
    const { movement, lean } = sway(4, 0.01);
    expect(Math.abs(lean / ((1.5 * movement) / 10) - 1)).toBeLessThan(0.03);
  });

  it('bends further by its weight as a column does', () => {
    // M_2/M_1 = tan(a)/a, a = L·√(P/EI); a force at the top that makes the wind on the pole itself small.
    const weight = 900;
    const a = 10 * Math.sqrt((weight * 9.80665) / EI);
    expect(sway(4, weight).leaning).toBeCloseTo(1 - a / Math.tan(a), 2);
  });

  it('bends as far in proportion where it bends far, and is laid over by its weight alone at the weight of a column', () => {
    expect(sway(40, 0.01).movement - sway(39, 0.01).movement).toBeCloseTo(
      sway(2, 0.01).movement - sway(1, 0.01).movement,
      6,
    );
    const column = (Math.PI ** 2 * EI) / (4 * 10 ** 2 * 9.80665);
    expect(sway(1, 0.98 * column).leaning).toBeGreaterThan(0.97);
    expect(sway(1, 0.98 * column).movement).toBeLessThan(Number.POSITIVE_INFINITY);
    expect(sway(1, 1.02 * column).movement).toBe(Number.POSITIVE_INFINITY);
  });

  it('says so where its weight adds more than a tenth, and more loudly beyond a quarter', () => {
    const word = (weight: number) => assessed(plan(1, weight)).cautions.find(({ code }) => code === 'p-delta')?.word;
    const has = (weight: number) => assessed(plan(1, weight)).cautions.some(({ code }) => code === 'p-delta');
    expect([has(200), has(1200), word(1200), word(3000)]).toEqual([false, true, undefined, 'beyond']);
  });

  it('is told in the answer, and where walls or weights lack the old words stand', () => {
    expect(answerText(assessed(plan(1, 20)), [])).toContain('In an actual gust of');
    const { wall: _, material: __, ...bare } = plan(1, 20)['tower'] as Document;
    const without = assessed({ ...plan(1, 20), tower: bare });
    expect(swayOf(without.model)).toBeUndefined();
    expect(without.cautions.map(({ code }) => code)).toContain('p-delta-not-included');
  });
});

describe('how often a tower swings', () => {
  it('says what its weight adds where its walls are not told, and never less than they do', () => {
    // A mass at the top, 0.5 Hz at 20 m: 0.050.
    expect(leaningByFrequency.of(9.80665, 20, 0.5)).toBeCloseTo(0.0497, 4);
    for (const [area, weight] of [
      [4, 0.01],
      [4, 300],
      [4, 900],
      [0.5, 60],
    ] as const) {
      const { model } = assessed(plan(area, weight));
      const frequency = firstModeAtLeast(model.input.station, Number.POSITIVE_INFINITY);
      const { wall: _, material: __, ...bare } = plan(area, weight)['tower'] as Document;
      const silent = assessed({ ...plan(area, weight), tower: { ...bare, frequency } }).model;
      expect(leaningOf(silent)).toBeGreaterThan(swayOf(model)?.leaning ?? Number.NaN);
    }
  });

  const rated = (tower: Document, weight: number): Document => ({
    ...plan(1, weight, tower),
    ratings: [
      {
        of: 'tower',
        top: 10,
        area: 12,
        areaKind: 'effective',
        wind: { speed: 50, basis: 'gust3-strength', method: 'asce7-16', exposure: 'C', riskCategory: 'II' },
      },
    ],
  });
  const ofTower = (tower: Document, weight: number) =>
    assessed(rated(tower, weight)).checks.find(({ kind }) => kind === 'tower');
  const ofFooting = (tower: Document, weight: number) =>
    assessed(
      rated({ ...tower, foundation: { kind: 'pier', diameter: 2, depth: 4, soilLateral: 40 } }, weight),
    ).checks.find(({ kind }) => kind === 'foundation');

  it('leaves tower and footing open where its weight adds more than a quarter', () => {
    for (const check of [ofTower, ofFooting]) {
      expect(check({}, 200)?.verdict).toBe('within');
      expect([check({}, 3000)?.verdict, check({}, 3000)?.because]).toEqual(['open', 'beyond-small-movement']);
    }
  });

  it('leaves a footing open that its leaning weight takes beyond its limit', () => {
    const footing = (weight: number, area: number) => {
      const pier = {
        kind: 'pier',
        diameter: 1,
        depth: 2.5,
        soilLateral: 40,
        isolatedPole: false,
        bothAccepted: false,
      };
      const { checks, model } = assessed(plan(area, weight, { foundation: pier }));
      const { verdict, result } = checks.find(({ kind }) => kind === 'foundation') ?? {};
      return { verdict, ratio: result?.ratio ?? Number.NaN, leaning: swayOf(model)?.leaning ?? Number.NaN };
    };
    const open = [2, 5, 7, 8, 9, 10, 11, 12].flatMap((area) => {
      const { verdict, ratio, leaning } = footing(1200, area);
      expect(leaning).toBeGreaterThan(0.1);
      expect(footing(100, area).verdict).not.toBe('open');
      if (ratio > 1) return [];
      expect(verdict === 'open').toBe(ratio / (1 - leaning) > 1);
      return [verdict === 'open'];
    });
    expect(new Set(open).size).toBe(2);
  });

  it('does so by its frequency too, and says in between how much it may be', () => {
    const { wall: _, material: __, ...bare } = plan(1, 20)['tower'] as Document;
    const at = (frequency: number) => assessed({ ...rated({}, 20), tower: { ...bare, frequency } });
    // 1.58 · 9.80665/(10 · (2π·n)²): 0.25 at 0.396 Hz, 0.1 at 0.626 Hz.
    const said = (frequency: number) => at(frequency).cautions.find(({ code }) => code === 'p-delta')?.word;
    expect([said(0.39), said(0.4), said(0.62), said(0.64)]).toEqual([
      'beyond',
      'by-frequency',
      'by-frequency',
      undefined,
    ]);
    const tower = (frequency: number) => at(frequency).checks.find(({ kind }) => kind === 'tower');
    expect(tower(0.39)?.because).toBe('beyond-small-movement');
    expect(tower(0.4)?.verdict).toBe('within');
  });
});

describe('eddies behind a round pole', () => {
  it('are spoken of where the wind of the site can reach them', () => {
    const has = (tower: Document) =>
      assessed(plan(1, 20, tower)).cautions.some(({ code }) => code === 'vortex-of-pole');
    // 0.2 · n/0.18 · 6.27 of 45 m/s and less: up to 6.46 Hz, or less as the gust that is meant is.
    expect([has({ frequency: 2 }), has({ frequency: 6.5 })]).toEqual([true, false]);
  });

  it('shake it at v = b·n/St', () => {
    expect(vortexSpeed.of(0.2, 2, 0.18)).toBeCloseTo(2.2222, 4);
    expect(leaningShare.of(95, 100)).toBeCloseTo(0.05, 12);
    const shedding = sheddingOf(assessed(plan(1, 20)).model);
    expect(shedding?.first[0]).toBeCloseTo(2.2222, 4);
    expect(shedding?.second[1]).toBeCloseTo(2.2222 * 6.27, 3);
  });

  it('are of no lattice', () => {
    const lattice = { shape: 'lattice', faces: 3, width: 400, members: 'round', leg: 30, brace: 10, panel: 400 };
    const { sides: _, wall: __, ...tower }: Document = { ...(plan(1, 20)['tower'] as Document), ...lattice };
    expect(sheddingOf(assessed({ ...plan(1, 20), tower: { ...tower, legWall: 3 } }).model)).toBeUndefined();
  });
});
