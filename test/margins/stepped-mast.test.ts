import { describe, expect, it } from 'vitest';
import { FOOT, INCH, POUND, POUND_FORCE } from '../../src/foundation/index.ts';
import { type Assessment, type Check, workingOf } from '../../src/margins/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { witness, workingDocument } from '../../src/worksheet/index.ts';
import { assessed, type Document } from './any-plan.ts';
import { POLE_PLAN, POLE_SITE, poleOn, poleRating } from './pole-station.ts';

const plan = (mast: Document, site: Document = {}): Document => ({
  ...POLE_PLAN,
  site: { ...POLE_SITE, ...site },
  tower: poleOn({ kind: 'manufacturer' }),
  mast: { outside: 2, length: 12, inside: 4, bearing: 40, yield: 46, ...mast },
  loads: [{ name: 'a', height: 46, area: 5, areaKind: 'effective', weight: 20, icedArea: 6, offset: 0 }],
  ratings: [poleRating(30)],
});
const tube = (outside: number, wall: number, from = 0, to = 12, yieldStrength = 46) => ({
  outside,
  wall,
  from,
  to,
  yield: yieldStrength,
});
const mastOf = ({ checks }: Assessment) => checks.find(({ id }) => id === 'mast') as Check;
const allowed = (answer: Assessment) => (mastOf(answer).result?.capacity ?? 0) / POUND_FORCE / FOOT;
const entryWarnings = (document: Document) => {
  const reading = readPlan(document);
  return reading.ok ? reading.entryWarnings : [];
};

describe('the wind on a mast in pieces', () => {
  it('is that on the pieces, whatever outside is written beside them', () => {
    const plain = assessed(plan({ outside: 4, wall: 0.25 }));
    const written = plan({ outside: 1.5, pieces: [tube(4, 0.25)] });
    const pieces = assessed(written);
    expect(pieces.mast?.force).toBeCloseTo(plain.mast?.force ?? 0, 6);
    expect(mastOf(pieces).result?.ratio).toBeCloseTo(mastOf(plain).result?.ratio ?? 0, 9);
    expect(pieces.checks[0]?.result?.ratio).toBeCloseTo(plain.checks[0]?.result?.ratio ?? 0, 9);
    expect(entryWarnings(written)).toEqual([
      {
        pointer: '#/mast/outside',
        code: 'mast-outside-differs',
        says: 'Mast: 1.5 in outside is that of none of its pieces, the widest of which has 4 in. Wind, ice, weight and strength go by the pieces.',
      },
    ]);
    expect(entryWarnings(plan({ outside: 4, pieces: [tube(4, 0.25)] }))).toEqual([]);
  });

  it('follows the outermost tube from height to height', () => {
    // From its foot at 36 ft 8 ft have a sleeve of 3 in: over the top at 40 ft 4 ft of 3 in and 4 ft of 2 in, × 1.2.
    const answer = assessed(plan({ pieces: [tube(2, 0.25), tube(3, 0.47, 0, 8)] }));
    const row = answer.windLoads.rows.find(({ kind }) => kind === 'mast');
    expect((row?.front ?? 0) / FOOT ** 2).toBeCloseTo((1.2 * (4 * 3 + 4 * 2)) / 12, 9);
    // 5 ft² of load and 2 ft² of mast.
    expect(
      answer.windLoads.rows.reduce((sum, each) => sum + (each.kind === 'tower' ? 0 : each.front), 0) / FOOT ** 2,
    ).toBeCloseTo(7, 9);
  });

  it('weighs what the pieces weigh, and their ice goes round the outermost', () => {
    const ice = { ice: { thickness: 0.5, gust: 40 } };
    const bare = (mast: Document) => assessed(plan(mast)).mast?.weight ?? 0;
    expect(bare({ outside: 1.5, pieces: [tube(4, 0.25)] })).toBeCloseTo(bare({ outside: 4, wall: 0.25 }), 6);
    const iced = (mast: Document) => assessed(plan(mast, ice)).ice?.shown;
    const [stepped, plain] = [
      { outside: 1.5, pieces: [tube(4, 0.25)] },
      { outside: 4, wall: 0.25 },
    ].map(iced);
    expect(stepped?.model.dead.weight.at(-1)).toBeCloseTo(plain?.model.dead.weight.at(-1) ?? 0, 6);
    const check = (mast: Document) =>
      assessed(plan(mast, ice)).checks.find(({ id }) => id === 'mast:ice')?.result?.demand;
    expect(check({ outside: 1.5, pieces: [tube(4, 0.25)] })).toBeCloseTo(check({ outside: 4, wall: 0.25 }) ?? 0, 6);
  });
});

describe('a sleeve that is loose', () => {
  // Alone 2 in by 1/4 of 46 ksi is allowed 46,000·π(2⁴ − 1.5⁴)/64/1.67/12 = 1232.39 lbf·ft.
  const loose = plan({ pieces: [tube(2, 0.25), tube(3, 0.125, 0, 8)] });

  it('is not counted on, and a query tells how loose it is', () => {
    expect(allowed(assessed(loose))).toBeCloseTo(1232.39, 1);
    expect(entryWarnings(loose)).toMatchObject([{ pointer: '#/mast/pieces/0', code: 'pieces-loose' }]);
    expect(entryWarnings(loose)[0]?.says).toMatch(/^Mast piece 1 is loose in piece 2: 0\.75 in of play/);
    // Both weigh, all the same: 12 ft of the one, 8 ft of the other, steel of 7850 kg/m³.
    const metal = (D: number, t: number, feet: number) => Math.PI * (D - t) * t * INCH ** 2 * feet * FOOT * 7850;
    const weight = metal(2, 0.25, 12) + metal(3, 0.125, 8) + 20 * POUND;
    expect(assessed(loose).mast?.weight).toBeCloseTo(weight, 6);
  });

  it('takes the place of a stronger tube inside it, for it may have the whole moment', () => {
    // 3 in by 1/8 of 20 ksi: 20,000·π(3⁴ − 2.75⁴)/96/1.67/12 = 777.6 lbf·ft.
    const answer = assessed(plan({ pieces: [tube(2, 0.25), tube(3, 0.125, 0, 8, 20)] }));
    expect(allowed(answer)).toBeCloseTo(777.57, 1);
  });

  it('helps where it is tight', () => {
    // A bore of 2.06 in leaves 0.06 in, less than 2 mm.
    const tight = plan({ pieces: [tube(2, 0.25), tube(3, 0.47)] });
    // I of both π/64·(2⁴ − 1.5⁴ + 3⁴ − 2.06⁴) = 3.6290 in⁴; 46,000·3.6290/1.5/1.67/12 = 5553.4 lbf·ft.
    expect(allowed(assessed(tight))).toBeCloseTo(5553.4, 0);
    expect(entryWarnings(tight)).toEqual([]);
  });

  it('asks nothing of tubes with another tight between them', () => {
    const nest = plan({ outside: 3, pieces: [tube(3, 0.25), tube(2.5, 0.25, 0, 8), tube(2, 0.2, 0, 8)] });
    expect(entryWarnings(nest)).toEqual([]);
  });
});

describe('the working of a mast in pieces', () => {
  it.each([
    ['that meet where it is used most', [tube(2, 0.25, 0, 4, 92), tube(2, 0.25, 4, 12)]],
    ['with a tight sleeve', [tube(2, 0.25), tube(1.5, 0.2, 1, 10)]],
    ['with a loose sleeve', [tube(2, 0.25), tube(3, 0.125, 0, 8)]],
    ['written a hair apart', [tube(2, 0.25, 0, 5.99), tube(2, 0.25, 6.01, 12)]],
    ['written a hair over each other', [tube(2, 0.25, 0, 6.01), tube(2, 0.25, 5.99, 12)]],
  ])('%s re-evaluates', (_, pieces) => {
    const answer = assessed(plan({ pieces }));
    const steps = workingDocument(workingOf(answer).steps, 'us');
    expect(witness(steps).filter(({ agrees }) => !agrees)).toEqual([]);
    const ratio = steps.filter(({ about, formula }) => about.includes('mast') && formula === 'use-in-bending').at(-1);
    expect(ratio?.value).toBeCloseTo(mastOf(answer).result?.ratio ?? 0, 9);
  });
});
