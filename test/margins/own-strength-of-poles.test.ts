import { describe, expect, it } from 'vitest';
import { INCH, POUND_FORCE } from '../../src/foundation/index.ts';
import { workingOf } from '../../src/margins/index.ts';
import { allowedCompression } from '../../src/structure/member-strength.ts';
import {
  allowedShear,
  allowedTorsion,
  columnStressFormula,
  momentAmplified,
  momentLeft,
  PLAUSIBLE_YIELD,
  poleLimits,
  weightAsAtTop,
} from '../../src/structure/pole-strength.ts';
import { answerText } from '../../src/worksheet/index.ts';
import { assessed, type Document } from './any-plan.ts';
import { steelPole as pole } from './steel-pole.ts';

const rated = (area: number): Document => ({
  ratings: [
    { of: 'tower', area, areaKind: 'effective', wind: { speed: 100, method: 'tia222-h', exposure: 'C' }, top: 30 },
  ],
});
const steelOf = (plan: Document) => assessed(plan).checks.find(({ kind }) => kind === 'own-strength');
const towerOf = (plan: Document) => assessed(plan).parts.find(({ kind }) => kind === 'tower');

/*
 * By pencil: 0.6 · 0.00256 · Kz · 0.95 · 110² · 1.10 · C · 0.552 ft a foot, C 1.2 up to 39 mph·ft and 1.2 · 39/C beyond, summed over
 * thin slices, with 56.4 lbf of load at 28 ft: 289.6 lbf and 5123.8 lbf·ft at the base,
 * and 20 lbf · 0.552 ft/4 of weight in the wall. A 5.581 in², S 8.496 in³, weight as at
 * the top 20 + 0.32 · 570 = 202.4 lbf, B 1.0213, 1/36 of the weight it is allowed; V/V_c 0.0055.
 */
const SHEAR = 289.644;
const MOMENT = 5126.55;
const ALLOWED = 12_920.8;

describe('a round steel pole without papers', () => {
  it('is within what its own steel is allowed, as by pencil', () => {
    const { reactions } = assessed(pole());
    expect(reactions.allowable.shear / POUND_FORCE / SHEAR).toBeCloseTo(1, 3);
    const steel = steelOf(pole());
    const { demand = 0, capacity = 0, ratio, height } = steel?.result ?? {};
    const poundFeet = POUND_FORCE * 12 * INCH;
    expect(demand / poundFeet / MOMENT).toBeCloseTo(1, 3);
    expect(capacity / poundFeet / ALLOWED).toBeCloseTo(1, 3);
    expect(ratio).toBeCloseTo(MOMENT / ALLOWED, 4);
    expect(height).toBe(0);
    expect(steel?.verdict).toBe('within');
    expect(towerOf(pole())?.verdict).toBe('within');
    expect(towerOf(pole())?.checks.map(({ kind }) => kind)).toEqual(['own-strength']);
  });

  it('holds to the wind that brings its moment there, which faster flow about the tube lets grow slower', () => {
    const design = steelOf(pole())?.result?.holdsTo?.design ?? 0;
    const there = pole(
      {},
      { site: { ...(pole()['site'] as Document), wind: { speed: `${design} m/s`, basis: 'gust3-strength' } } },
    );
    expect(steelOf(there)?.result?.ratio).toBeCloseTo(1, 3);
    expect(design).toBeGreaterThan(110 * 0.44704 * Math.sqrt(ALLOWED / MOMENT));
  });

  it('counts at worst as the least plausible grade where nobody tells it, and is open where that decides', () => {
    const untold = steelOf(pole({ yield: undefined }));
    expect(untold?.result?.ratioRange[1]).toBeCloseTo(steelOf(pole({ yield: '207 MPa' }))?.result?.ratio as number, 9);
    expect(untold?.result?.ratioRange[0]).toBeCloseTo(steelOf(pole({ yield: '345 MPa' }))?.result?.ratio as number, 9);
    expect(PLAUSIBLE_YIELD).toMatchObject({ steel: { least: 207e6, most: 345e6 } });
    const heavy = { loads: [{ ...(pole()['loads'] as Document[])[0], area: 16 }] };
    expect(steelOf(pole({ yield: undefined }, heavy))).toMatchObject({
      verdict: 'open',
      because: 'not-given',
      needs: ['/tower/sections/0/yield'],
    });
    expect(steelOf(pole({ yield: 60 }, heavy))?.verdict).toBe('within');
    expect(steelOf(pole({ yield: 25 }, heavy))?.verdict).toBe('over');
  });

  it('is a witness beside a rating that is within, and forbids a firm word where it contradicts one', () => {
    const both = towerOf(pole({}, rated(6)));
    expect(both?.checks.map(({ id, verdict }) => [id, verdict])).toEqual([
      ['tower', 'within'],
      ['own-strength', 'within'],
    ]);
    const thin = towerOf(pole({ wall: 0.1 }, rated(6)));
    expect(thin?.verdict).toBe('open');
    expect(thin?.checks.map(({ id, because }) => [id, because])).toEqual([
      ['tower', undefined],
      ['own-strength', 'contradicts-rating'],
    ]);
    expect(answerText(assessed(pole({ wall: 0.1 }, rated(6))), [])).toContain('does not bear out its rating');
    // What its grade leaves between says nothing beside a rating.
    expect(towerOf(pole({ wall: 0.12, yield: undefined }, rated(6)))?.checks.map(({ id }) => id)).toEqual(['tower']);
  });

  it('never raises a rating that is over', () => {
    const over = towerOf(pole({}, rated(0.2)));
    expect(over?.verdict).toBe('over');
  });

  it('leaves a pole of several pieces open for its joints, and says nothing of other towers', () => {
    const piece = { length: 15, shape: 'pole', sides: 0, width: 6.625, wall: 0.28, material: 'steel', yield: 35 };
    const joined = pole({}, { tower: { ...(pole()['tower'] as Document), sections: [piece, piece] } });
    expect(towerOf(joined)?.checks.map(({ id, verdict }) => [id, verdict])).toEqual([
      ['tower', 'open'],
      ['own-strength', 'within'],
    ]);
    expect(steelOf(pole({ sides: undefined }))).toMatchObject({ verdict: 'open', needs: ['/tower/sections/0/sides'] });
    expect(steelOf(pole({ wall: undefined, material: undefined, yield: undefined }))).toBeUndefined();
    expect(steelOf(pole({ wall: 0.09 }))).toMatchObject({ verdict: 'open', because: 'not-computed' });
  });

  it('waits for a weight that is not given, and is never better for it', () => {
    const { weight: _, ...light } = (pole()['loads'] as Document[])[0] as Document;
    const plan = pole({}, { loads: [light] });
    expect(steelOf(plan)).toMatchObject({ verdict: 'open', because: 'missing', needs: ['/loads/0/weight'] });
  });

  it('is written down step by step', () => {
    const answer = assessed(pole());
    const steps = workingOf(answer).steps.filter(({ about }) => about.includes('own strength'));
    expect(steps.map(({ formula }) => formula.id)).toContain('moment-left');
    expect(steps.at(-1)?.value).toBeCloseTo(steelOf(pole())?.result?.ratio as number, 9);
  });
});

describe('the strength of a round steel pole', () => {
  it('is that of its section, by each formula', () => {
    expect(weightAsAtTop.of(9.80665, 10, 100) / 9.80665).toBeCloseTo(42, 9);
    // 8 in of metal, 30 ksi: 0.6 · 30 · 8/2/1.67 and by the whole share.
    expect(allowedShear.of(1, 30, 8)).toBeCloseTo(43.11, 2);
    expect(allowedCompression.of(1, 20, 8)).toBeCloseTo(95.81, 2);
    // C = π(D − t)²t/2 of 4.5 by 0.25 in: 7.093 in³.
    expect(allowedTorsion.of(1, 50, 4.5, 0.25)).toBeCloseTo((0.6 * 50 * 7.093) / 1.67, 1);
    // KL/r of 150 and F_y 36: 0.877 · π² · 29,000/150² = 11.16 ksi; short, 0.39 · 36.
    expect(columnStressFormula.of(36, 29_000, 75, 1)).toBeCloseTo(11.16, 2);
    expect(columnStressFormula.of(36, 29_000, 10, 1)).toBeCloseTo(14.04, 2);
    // P a tenth of the weight that buckles it by 1.6.
    expect(momentAmplified.of(1, 1, (1.6 * 4) / (Math.PI ** 2 * 0.1), 1)).toBeCloseTo(1 / 0.9, 9);
    expect(momentLeft.of(0.9, 100, 1, 10, 0, 1, 0, 1, 1)).toBeCloseTo(85.5, 9);
    expect(momentLeft.of(0.9, 100, 1, 10, 0.5, 1, 0.6, 1, 1)).toBe(0);
  });

  it('is not shown of a wall that may buckle, nor of a pole that its weight bends too far', () => {
    const tube = { outside: 0.15, wall: 0.005, material: 'steel', sides: 0, yieldStrength: 235e6 } as const;
    const column = { height: 9, weight: 500, leastSecondMoment: 6e-6 };
    expect(poleLimits(tube, column, 1)?.bending).toBeGreaterThan(0);
    expect(poleLimits({ ...tube, wall: 0.002 }, column, 1)).toBeUndefined();
    expect(poleLimits(tube, { ...column, weight: 2e4 }, 1)).toBeUndefined();
    expect(poleLimits(tube, { ...column, height: 40, leastSecondMoment: 6e-7 }, 1)).toBeUndefined();
  });
});
