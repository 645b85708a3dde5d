import { describe, expect, it } from 'vitest';
import { elevation } from '../../src/drawing/elevation.ts';
import { remediesOf } from '../../src/margins/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { counterpoiseSide } from '../../src/structure/index.ts';
import { answerDocument, remediesLines } from '../../src/worksheet/index.ts';
import { textOf, wellFormed } from '../drawing/well-formed.ts';
import { assessed, type Document } from './any-plan.ts';

const G = 9.80665;

/** A pole of 300 kg that tilts about a hinge 3 m up, raised by a line from a post 3 m above the hinge. */
const tilting = (hinge: Document = {}, more: Document = {}): Document => ({
  units: 'si',
  method: 'tia222-h',
  site: { wind: { speed: 40, basis: 'gust3-strength' }, exposure: 'C', riskCategory: 'II', groundElevation: 0 },
  tower: {
    support: 'free',
    top: 15,
    sections: [{ name: 'A', length: 15, shape: 'pole', width: 200, sides: 0, uniform: true }],
    weight: 300,
    frequency: 3,
    hinge: {
      height: 3,
      raisedBy: { kind: 'line', anchor: [0, 3], attach: 4, workingLoad: 5000 },
      ...hinge,
    },
    ...more,
  },
  loads: [{ name: 'antenna', height: 15, area: 0.5, areaKind: 'effective', weight: 20, offset: 0, on: 'tower' }],
  cables: [],
  wanted: { margin: 0.2 },
  ratings: [
    {
      of: 'tower',
      area: 1.5,
      areaKind: 'effective',
      top: 15,
      wind: { speed: 45, method: 'tia222-h', basis: 'gust3-strength', exposure: 'C', riskCategory: 'II' },
    },
    { of: 'tower', kind: 'weight', weight: 100 },
  ],
});
const counterpoise = { weight: 150, below: 2.5 };
const block = { foundation: { kind: 'block', length: 2, width: 2, depth: 1.2, concrete: 2400, soilBearing: 150 } };

/*
 * By hand. Above the hinge are 12 of 15 m, 240 kg with their middle 6 m from it, and 20 kg 12 m from it: 1680 kg·m. Flat, the
 * line from (4, 0) to (0, 3) has an arm of 4·3/5 = 2.4 m. 150 kg 2.5 m below the hinge take 375 kg·m off.
 */
describe('a counterpoise below the hinge', () => {
  it('takes its moment off the pull that raises the tower', () => {
    const pull = (plan: Document) => assessed(plan).raising?.raising?.worst;
    expect(pull(tilting())?.force).toBeCloseTo((1680 * G) / 2.4, 6);
    const balanced = pull(tilting({ counterpoise }));
    expect(balanced?.force).toBeCloseTo((1305 * G) / 2.4, 6);
    expect(balanced?.angle).toBeCloseTo(0, 9);
    // Level: the pull's 4/5. Up: 410 kg less the pull's 3/5, which acts upwards on the tower.
    const force = (1305 * G) / 2.4;
    expect(balanced?.hinge.x).toBeCloseTo(0.8 * force, 6);
    expect(balanced?.hinge.y).toBeCloseTo(410 * G - 0.6 * force, 6);
    const check = assessed(tilting({ counterpoise })).checks.find(({ id }) => id === 'raising');
    expect(check?.result?.ratio).toBeCloseTo((1305 * G) / 2.4 / 5000, 9);
  });

  it('stands in the working of the raising', () => {
    const plan = tilting({ counterpoise });
    const { working } = answerDocument(assessed(plan), plan, [], 'full');
    const step = working?.find(
      ({ formula, about }) => formula === 'moment-of-weights-about-hinge' && about.includes('raising, worst angle'),
    );
    expect(step?.inputs.find(({ symbol }) => symbol === 's')?.value).toEqual([6, 12, -2.5]);
    expect(step?.value).toBeCloseTo(1305 * G, 6);
  });

  it('weighs on the footing, and is no part of what the manufacturer allows aloft', () => {
    const [bare, with_] = [tilting({}, block), tilting({ counterpoise }, block)].map(assessed);
    expect(bare?.reactions.weight).toBeCloseTo(320, 9);
    expect(with_?.reactions.weight).toBeCloseTo(470, 9);
    const aloft = [bare, with_].map((each) => each?.checks.find(({ kind }) => kind === 'weight')?.result?.demand);
    expect(aloft[1]).toBe(aloft[0]);
    // Its wind is there: a cube of 150 kg at 2000 kg/m³, 0.4217 m a side, half a metre up.
    expect(counterpoiseSide.of(150, 2000)).toBeCloseTo(0.4217, 4);
    const row = with_?.windLoads.rows.find(({ at }) => at === '/tower/hinge/counterpoise');
    expect(row).toMatchObject({ kind: 'counterpoise', low: 0.5, high: 0.5 });
    expect(row?.frontArea).toBeCloseTo(0.075 ** (2 / 3), 9);
    expect(row?.force as number).toBeGreaterThan(0);
    expect(with_?.foundation?.load?.weight).toBeCloseTo(470, 9);
  });

  it('is drawn to the size its wind is counted on', () => {
    const svg = elevation(assessed(tilting({ counterpoise })));
    expect(textOf(wellFormed(svg))).toContain('counterpoise,150 kg, 112 N');
    // 0.4217 m, where 15 m are 440 units.
    expect(svg).toContain('width="12.37" height="12.37"');
  });

  it('that outweighs the tower leaves a line nothing to hold', () => {
    // 1680/2.5 = 672 kg balance it.
    const over = assessed(tilting({ counterpoise: { weight: 680, below: 2.5 } }));
    expect(over.checks.find(({ id }) => id === 'raising')).toMatchObject({ verdict: 'open', because: 'no-hold' });
    expect(answerDocument(over, tilting(), [], 'none').raising?.says).toContain('Past 0° it moves on by itself');
    const just = assessed(tilting({ counterpoise: { weight: 660, below: 2.5 } }));
    expect(just.raising?.raising?.worst?.force).toBeCloseTo((30 * G) / 2.4, 6);
  });

  it('is read, and refused where it would be below the base', () => {
    const low = readPlan(tilting({ counterpoise: { weight: 10, below: 3.2 } }));
    expect(low.ok ? [] : low.faults).toMatchObject([
      {
        pointer: '#/tower/hinge/counterpoise/below',
        code: 'counterpoise-below-base',
        given: '3.2 m',
        allowed: 'up to 3 m',
      },
    ]);
    expect(readPlan(tilting({ counterpoise: { weight: 10 } })).ok).toBe(false);
  });
});

describe('the remedy of raising gear that is over', () => {
  it('is the lightest counterpoise that keeps the margin set', () => {
    const own = assessed(tilting());
    const found = remediesOf(own);
    expect(found?.check).toMatchObject({ id: 'raising', verdict: 'over' });
    const remedy = found?.remedies.find(({ change }) => change.of === 'counterpoise');
    // 0.8·5000 N·2.4 m are 978.9 kg·m: 701.1 of 1680 must go, at 2.7 m below the hinge 259.7 kg, in steps of 5.
    expect(remedy?.change).toMatchObject({ more: 260, counterpoise: { mass: 260, below: 2.7 } });
    expect(remedy?.check).toMatchObject({ verdict: 'within' });
    expect(remedy?.check?.result?.ratio).toBeCloseTo(((1680 - 260 * 2.7) * G) / 2.4 / 5000, 9);
    expect(found && remediesLines(found, 'si')[0]).toContain(
      'Add 260 kg as a counterpoise, 2.7 m below the hinge: the ratio of the raising gear is 0.799 instead of 1.37',
    );
  });

  it('adds to the one there is, and is none where the hinge leaves no room below it', () => {
    const heavier = remediesOf(assessed(tilting({ counterpoise })))?.remedies.find(
      ({ change }) => change.of === 'counterpoise',
    );
    // At 2.5 m 701.1/2.5 = 280.4 kg in all.
    expect(heavier?.change).toMatchObject({ more: 135, counterpoise: { mass: 285, below: 2.5 } });
    const low = remediesOf(assessed(tilting({ height: 0.3 })));
    expect(low?.check.id).toBe('raising');
    expect(low?.remedies.filter(({ change }) => change.of === 'counterpoise')).toEqual([]);
  });
});
