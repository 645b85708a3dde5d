import { describe, expect, it } from 'vitest';
import { assessed, type Document } from './any-plan.ts';

/*
 * Pencil figures, with g = 9.80665 m/s². A mast in bearing and foot 1.5 m apart; on it a tube of 20 kg, held 0.5 m beside the
 * axis: 20·9.80665·0.5 = 98.067 N·m, a couple of 98.067/1.5 = 65.378 N.
 */
const plan = (offset: number, more: Document = {}): Document => ({
  units: 'si',
  method: 'asce7-16',
  site: { wind: '46 m/s', exposure: 'C' },
  tower: {
    support: 'free',
    top: 12,
    hinge: { height: 0.5 },
    sections: [
      {
        length: 12,
        shape: 'lattice',
        faces: 3,
        width: 400,
        members: 'round',
        leg: 35,
        brace: 12,
        panel: 400,
        pattern: 'zigzag',
      },
    ],
  },
  mast: { outside: 60, wall: 5, length: 4, inside: 1.5, yield: '250 MPa', bearing: 12 },
  loads: [{ name: 'pole', height: [13, 14], shape: 'tube', along: 'upright', diameter: 50, weight: 20, offset }],
  cables: [],
  ratings: [
    {
      of: 'tower',
      area: 1.5,
      areaKind: 'effective',
      above: 1,
      wind: { speed: '45 m/s', method: 'asce7-16', exposure: 'C' },
      top: 12,
    },
    { of: 'bearing', kind: 'force', force: 300, level: 'allowable' },
    { of: 'rotator', kind: 'force', force: 300, level: 'allowable' },
  ],
  ...more,
});
const LEANING = 98.0665;
const COUPLE = LEANING / 1.5;

describe('weight off the axis', () => {
  const [centred, offset] = [assessed(plan(0)), assessed(plan(0.5))];

  it('presses on the bearing and on what holds the foot of the mast', () => {
    const [before, after] = [centred.mast, offset.mast];
    expect((after?.atBearing ?? 0) - (before?.atBearing ?? 0)).toBeCloseTo(COUPLE, 6);
    expect((after?.atFoot ?? 0) - (before?.atFoot ?? 0)).toBeCloseTo(COUPLE, 6);
  });

  it('comes into the top of the tower as a couple and into the foot as a moment', () => {
    const [before, after] = [centred, offset].map(({ model }) => model.dead);
    const couple = centred.model.levels.findIndex(({ zone }) => zone === 'couple');
    const last = centred.model.levels.length - 1;
    expect((after?.eccentricWeightShear[couple] ?? 0) - (before?.eccentricWeightShear[couple] ?? 0)).toBeCloseTo(
      COUPLE,
      6,
    );
    expect((after?.eccentricWeightMoment[last] ?? 0) - (before?.eccentricWeightMoment[last] ?? 0)).toBeCloseTo(
      LEANING,
      6,
    );
    const demand = (of: typeof offset) => of.checks.find(({ id }) => id === 'tower-top')?.result?.demand ?? 0;
    expect(demand(offset) - demand(centred)).toBeGreaterThan(0);
  });

  it('is asked for: what would lean by a weight not given is not shown', () => {
    const [load] = plan(0.5)['loads'] as Document[];
    const { weight: _, ...notGiven } = load as Document;
    const answer = assessed(plan(0.5, { loads: [notGiven] }));
    for (const id of ['tower', 'tower-top', 'mast', 'bearing:2', 'rotator:3']) {
      const check = answer.checks.find((each) => each.id === id);
      expect([id, check?.verdict, check?.needs]).toEqual([id, 'open', ['/loads/0/weight']]);
    }
  });

  it('leans with the ice on it too', () => {
    /*
     * Ice of 20 mm on a tube of 50 mm, 1 m long: 900·π·0.020·(0.050 + 0.020)·1 = 3.958 kg where the thickness is that of
     * 10 m; by ASCE 7-16 10.4.3 it grows as (z/10 m)^0.10, and 0.7 of it counts (load combination of ice).
     */
    const ice = { site: { wind: '46 m/s', exposure: 'C', ice: { thickness: 20, gust: '18 m/s' }, riskCategory: 'II' } };
    const moments = [plan(0, ice), plan(0.5, ice)].map(
      (each) => assessed(each).checks.find(({ id }) => id === 'mast:ice')?.result?.demand ?? 0,
    );
    const thickness = 0.02 * (14 / 10.06) ** 0.1;
    const mass = 900 * Math.PI * thickness * (0.05 + thickness);
    const eccentricWeight = (20 + 0.7 * mass) * 9.80665 * 0.5;
    expect((moments[1] ?? 0) - (moments[0] ?? 0)).toBeCloseTo(eccentricWeight, 0);
    expect(eccentricWeight - LEANING).toBeGreaterThan(5);
  });
});

describe('what holds the mast', () => {
  const answer = assessed(plan(0.5));
  const bearing = answer.checks.find(({ kind }) => kind === 'bearing');
  const rotator = answer.checks.find(({ kind }) => kind === 'rotator');

  it('holds to a wind that brings it to what its maker states', () => {
    for (const check of [bearing, rotator]) {
      const design = check?.result?.holdsTo?.design ?? 0;
      const there = assessed({ ...plan(0.5), site: { wind: `${design} m/s`, exposure: 'C' } });
      expect(there.checks.find(({ id }) => id === check?.id)?.result?.ratio).toBeCloseTo(1, 3);
    }
  });

  it('may be what gives first, and says when to lower', () => {
    // Alone of all checks it is asked for more than its maker states.
    expect(bearing?.verdict).toBe('over');
    const others = answer.checks.flatMap((check) => check.result?.holdsTo?.gust ?? []);
    expect(bearing?.result?.holdsTo?.gust).toBe(Math.min(...others));
    expect(answer.weakest).toBe(bearing?.id);
    expect(answer.lowerAt?.ofCheck).toBe(bearing?.id);
  });

  it('is not shown while the pull of a wire on the mast is not told', () => {
    const wire = {
      name: 'wire',
      height: 13,
      shape: 'wire',
      diameter: 2,
      to: { distance: 15, heading: 90, height: 3 },
      weight: 1,
    };
    const loads = [...(plan(0)['loads'] as Document[]), wire];
    const notGiven = assessed({ ...plan(0), loads });
    for (const kind of ['bearing', 'rotator']) {
      expect(notGiven.checks.find((check) => check.kind === kind)).toMatchObject({
        verdict: 'open',
        needs: ['/loads/1/tension'],
      });
    }
  });
});
