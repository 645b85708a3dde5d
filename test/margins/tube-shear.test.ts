import { describe, expect, it } from 'vitest';
import { shearBesideMoment } from '../../src/margins/formulas.ts';
import { workingOf } from '../../src/margins/index.ts';
import { assessed, type Document } from './any-plan.ts';

/*
 * A round tube that is shown to take a moment takes V = 1.2·M/D by the same steel: 0.6·Fy·A/2 beside Fy·S. Here a tube of 6 in
 * and 40 ft rated for 12 ft² at its top, 115 mph, ASCE/SEI 7-16, exposure C (Kd = 1 for a round pole, G 0.85, level 0.6):
 *   rated    0.6·0.85·0.00256·2.01·(40/900)^(2/9.5)·115²·12 = 216.2 lbf at 40 ft; M at the foot by it 8649 lbf·ft
 *   asked    16 ft² at 20 ft: 249.2 lbf there, more in shear, 4983 lbf·ft in moment
 */
const plan = (tower: Document, section: Document = {}, load: Document = {}): Document => ({
  units: 'us',
  method: 'asce7-16',
  site: {
    wind: { speed: 115, basis: 'gust3-strength' },
    exposure: 'C',
    riskCategory: 'II',
    groundElevation: 0,
    topographicFactor: 1,
  },
  tower: {
    support: 'free',
    top: 40,
    frequency: 3,
    ...tower,
    sections: [{ length: 40, shape: 'pole', sides: 0, width: 6, ...section }],
  },
  loads: [{ name: 'panel', area: 16, areaKind: 'effective', height: 20, offset: 0, weight: 0, ...load }],
  cables: [],
  ratings: [
    {
      of: 'tower',
      area: 12,
      areaKind: 'effective',
      above: 0,
      wind: { speed: 115, basis: 'gust3-strength', method: 'asce7-16', exposure: 'C', riskCategory: 'II' },
      top: 40,
    },
  ],
});

const steel = (wall: number) => ({ wall, material: 'steel' });
const tower = (told: Document) => assessed(told).checks[0];

it('shear that a tube takes which takes a moment: 8649 lbf·ft in a tube of half a foot', () => {
  expect(shearBesideMoment.of(8649, 0.5)).toBeCloseTo(20_757.6, 9);
});

describe('a round tube', () => {
  it('that takes a moment takes a shear, told its wall', () => {
    const told = tower(plan({}, steel(0.25)));
    expect([told?.verdict, told?.result?.of]).toEqual(['within', 'moment']);
    const notGiven = tower(plan({}));
    expect([notGiven?.verdict, notGiven?.result?.of]).toEqual(['open', 'shear']);
    expect(notGiven?.result?.ratio).toBeGreaterThan(1);
    const rated = 0.6 * 0.85 * 0.00256 * 2.01 * (40 / 900) ** (2 / 9.5) * 115 ** 2 * 12;
    const asked = 0.6 * 0.85 * 0.00256 * 2.01 * (20 / 900) ** (2 / 9.5) * 115 ** 2 * 16;
    // The tube's own wind is the same on both sides: what is left are the two forces.
    const extra = ((notGiven?.result?.demand ?? 0) - (notGiven?.result?.capacity ?? 0)) / 4.4482216152605;
    expect(extra).toBeCloseTo(asked - rated, 1);
  });

  it('has as much of it as 1.2·M/D, in the working too', () => {
    const heavy = assessed(plan({}, steel(0.25), { area: 4, height: 1 }));
    const shear = heavy.ratios.find(({ comparison }) => comparison.of === 'shear' && comparison.place === 'base');
    const moment = heavy.ratios.find(({ comparison }) => comparison.of === 'moment' && comparison.place === 'base');
    expect((shear?.capacity ?? 0) / ((1.2 * (moment?.capacity ?? 0)) / (6 * 0.0254))).toBeCloseTo(1, 9);
    expect(() => workingOf(heavy)).not.toThrow();
  });

  it('has its wall from its weight, or from that of the tower', () => {
    // π·(6 − t)·t in² · 3.403 lb/ft/in² · 40 ft; D/t = 70 at 0.0857 in, 217 lb.
    for (const [weight, verdict] of [
      [230, 'within'],
      [205, 'open'],
    ] as const) {
      expect(tower(plan({}, { weight }))?.verdict).toBe(verdict);
      expect(tower(plan({ weight }))?.verdict).toBe(verdict);
    }
  });

  it('that is thin shows no shear by its moment, nor does one of flat sides', () => {
    expect(tower(plan({}, steel(6 / 70)))?.verdict).toBe('within');
    expect(tower(plan({}, steel(6 / 71)))?.verdict).toBe('open');
    expect(tower(plan({}, { ...steel(0.25), sides: 12 }))?.verdict).toBe('open');
  });

  it('has by its steel no less than this, whatever its wall', () => {
    for (let wall = 1 / 70; wall <= 0.5; wall += 0.01) {
      const inside = 1 - 2 * wall;
      const area = (Math.PI / 4) * (1 - inside ** 2);
      const modulus = (Math.PI / 32) * (1 - inside ** 4);
      expect((0.6 * area) / 2 / modulus).toBeGreaterThan(1.2 * (1 - 1e-12));
    }
  });
});
