import { describe, expect, it } from 'vitest';
import { FOOT, MILE_PER_HOUR, POUND_FORCE } from '../../src/foundation/index.ts';
import type { Assessment } from '../../src/margins/index.ts';
import { answerText } from '../../src/worksheet/index.ts';
import { assessed, type Document } from './any-plan.ts';
import { POLE_PLAN, poleOn, poleRating } from './pole-station.ts';

/*
 * By pencil: TIA-222-H, C, 100 mph, q = 0.00256·2.01·(z/900)^(2/9.5)·0.95·100², λ 0.6, gust factor of a mast 1.35. The load,
 * 5 ft² at 50 ft: q 26.6006, 0.81·26.6006·5 = 107.73 lbf, 10 ft over the clamp. The mast, 2.5 in from 40 to 52 ft,
 * 1.2 × 2.5/12 ft² a foot: 0.81·∫q(z)·0.25·(z − 40)dz = 384.40 lbf·ft in thin steps. 1077.33 + 384.40 = 1461.73 lbf·ft.
 */
const MOMENT = 1461.73;
const TOWER_RATING = poleRating(30);
const ROTATOR_FORCE = { of: 'rotator', kind: 'force', force: 400, level: 'allowable' };
const momentRating = (moment: number, level?: string) => ({
  of: 'rotator',
  kind: 'moment',
  moment,
  ...(level && { level }),
});
const station = (ratings: readonly Document[], more: Document = {}): Document => ({
  ...POLE_PLAN,
  tower: poleOn({ kind: 'manufacturer' }),
  mast: { outside: 2.5, length: 12, inside: 0, bearing: false, wall: 0.375, yield: 50 },
  rotator: { height: 40, weight: 20 },
  loads: [
    {
      name: 'a',
      height: 50,
      area: 5,
      areaKind: 'effective',
      weight: 20,
      turns: true,
      ratedWind: { speed: 150, basis: 'gust3-nominal' },
      offset: 0,
    },
  ],
  ratings: [TOWER_RATING, ...ratings],
  ...more,
});
const HELD = {
  mast: { outside: 2.5, length: 16, inside: 4, wall: 0.375, yield: 50, bearing: 40 },
  rotator: { height: 36, weight: 20 },
};
const checkOf = ({ checks }: Assessment, id: string) => checks.find((check) => check.id === id);
const poundFeet = (moment = 0) => moment / POUND_FORCE / FOOT;
const codes = ({ cautions }: Assessment) => cautions.map(({ code }) => code);

describe('a mast clamped on its rotator, no bearing above it', () => {
  it('hands its moment whole to the rotator, which is not shown where nobody says what moment it takes', () => {
    for (const ratings of [[], [ROTATOR_FORCE]]) {
      const answer = assessed(station(ratings));
      expect(poundFeet(answer.mast?.clampMoment)).toBeCloseTo(MOMENT, 1);
      expect(checkOf(answer, 'rotator')).toMatchObject({
        verdict: 'open',
        because: 'missing',
        needs: ['/ratings'],
      });
      expect(answer.verdict).toBe('open');
      expect(answerText(answer, [])).toContain(
        'Rotator: open. Without a bearing, the rotator alone takes the moment at the lower end of the mast (1,462 lbf·ft). No rated moment given; ask the manufacturer.',
      );
    }
  });

  it('is held against a moment its maker states, which counts by its level', () => {
    const answer = assessed(station([momentRating(2000, 'allowable'), momentRating(2000)]));
    const [allowable, strength] = ['rotator:2', 'rotator:3'].map((id) => checkOf(answer, id));
    expect(allowable?.result).toMatchObject({ of: 'clamp-moment' });
    expect(allowable?.result?.ratio).toBeCloseTo(MOMENT / 2000, 4);
    expect(allowable?.verdict).toBe('within');
    expect(strength?.result?.ratio).toBeCloseTo(MOMENT / 1200, 4);
    // Allowable, as nobody told, it would do.
    expect(strength).toMatchObject({ verdict: 'open', because: 'readings-disagree', needs: ['/ratings/2/level'] });
    expect(strength?.result?.ratioRange[0]).toBeCloseTo(MOMENT / 2000, 4);
    expect((allowable?.result?.height ?? 0) / FOOT).toBeCloseTo(40, 9);
    expect(checkOf(answer, 'rotator')).toBeUndefined();
    expect(answer.cautions.filter(({ code }) => code === 'rating-level-assumed')).toMatchObject([{ at: '/ratings/2' }]);
  });

  it('holds to the wind that brings it there', () => {
    const answer = assessed(station([momentRating(1700, 'allowable')]));
    const design = (checkOf(answer, 'rotator:2')?.result?.holdsTo?.design ?? 0) / MILE_PER_HOUR;
    expect(design).toBeCloseTo(100 * Math.sqrt(1700 / MOMENT), 2);
    const site = { wind: { speed: design, basis: 'gust3-strength' }, exposure: 'C', riskCategory: 'II' };
    const there = assessed(station([momentRating(1700, 'allowable')], { site }));
    expect(checkOf(there, 'rotator:2')?.result?.ratio).toBeCloseTo(1, 6);
  });

  it('ends the room left on the mast where it reaches the wanted margin', () => {
    const ratings = [momentRating(2000, 'allowable')];
    const answer = assessed(station(ratings));
    const room = answer.roomLeft.find(({ on }) => on === 'mast');
    expect(room?.check).toBe('rotator:2');
    // (0.9·2000 − 1461.73) lbf·ft over 10 ft and 21.547 lbf for each square foot there (107.73/5).
    expect((room?.area ?? 0) / FOOT ** 2).toBeCloseTo((1800 - MOMENT) / (10 * 21.5466), 3);
    const [load] = station([])['loads'] as Document[];
    const added = { ...load, name: 'b', area: (room?.area ?? 0) / FOOT ** 2, weight: 0 };
    const there = assessed(station(ratings, { loads: [load, added] }));
    expect(checkOf(there, 'rotator:2')?.result?.ratio).toBeCloseTo(0.9, 6);
  });

  it('adds weight off the axis and the pull of wires, and waits for a pull that is not told', () => {
    const [load] = station([])['loads'] as Document[];
    // 20 lb one foot off the axis are 20 lbf·ft.
    const eccentricWeight = assessed(station([], { loads: [{ ...load, offset: 1 }] }));
    expect(poundFeet(eccentricWeight.mast?.clampMoment) - MOMENT).toBeCloseTo(20, 1);
    const wire = {
      name: 'w',
      height: 48,
      shape: 'wire',
      diameter: 0.08,
      to: { distance: 60, heading: 90, height: 48 },
    };
    const moment = (tension: number) =>
      poundFeet(assessed(station([], { loads: [load, { ...wire, tension, weight: 1 }] })).mast?.clampMoment);
    // In 21.362 psf a steel wire of 138,517 lbf and 1/60 lbf/ft drawn to 60 lbf pulls 109.505 lbf, to 10 lbf 71.637 lbf: its
    // length by sag is its length by stretch, found by bisection; 8 ft over the clamp.
    expect(moment(60) - moment(10)).toBeCloseTo(8 * (109.50489 - 71.63672), 3);
    const notGiven = assessed(station([momentRating(9000)], { loads: [load, { ...wire, weight: 1 }] }));
    expect(checkOf(notGiven, 'rotator:2')).toMatchObject({ verdict: 'open', needs: ['/loads/1/tension'] });
  });

  it('says of a rating of a bearing that there is none', () => {
    const answer = assessed(station([{ of: 'bearing', kind: 'force', force: 400, level: 'allowable' }]));
    expect(checkOf(answer, 'bearing:2')).toMatchObject({ verdict: 'open', because: 'no-bearing', needs: [] });
    const text = answerText(answer, []);
    expect(text).toContain(
      'Bearing: open. The mast has no bearing in this plan, so there is no demand to compare with its rating.',
    );
    expect(text).not.toContain('Whether the mast has a bearing');
  });

  it('is not asked of a mast clamped on the tower itself', () => {
    const { rotator: _, ...fixed } = station([], { mast: { ...(station([])['mast'] as Document) } });
    expect(assessed(fixed).checks.filter(({ kind }) => kind === 'rotator')).toEqual([]);
  });
});

describe('a mast in a bearing', () => {
  it('leaves no moment for its rotator, so that a moment stated of that shows nothing', () => {
    const answer = assessed(station([momentRating(2000, 'allowable')], HELD));
    expect(answer.mast?.clampMoment).toBeUndefined();
    expect(checkOf(answer, 'rotator')).toBeUndefined();
    expect(checkOf(answer, 'rotator:2')).toMatchObject({ verdict: 'open', because: 'held-by-bearing' });
    expect(answerText(answer, [])).toContain(
      'Rotator: open. The bearing and the lower end of the mast take its moment as two forces.',
    );
  });
});

describe('what rides at the very foot of a mast, off its axis', () => {
  it('counts in the couple of bearing and foot', () => {
    const [load] = station([])['loads'] as Document[];
    const couple = (offset: number) => {
      const low = { name: 'low', height: 36, on: 'mast', area: 0.1, areaKind: 'effective', weight: 20, offset };
      return (assessed(station([], { ...HELD, loads: [load, low] })).mast?.atBearing ?? 0) / POUND_FORCE;
    };
    // 20 lb one foot off over the 4 ft between bearing and foot.
    expect(couple(1) - couple(0)).toBeCloseTo(5, 9);
  });
});

describe('a rotator or a bearing of which nothing is stated', () => {
  it('has a caution, and none where something is', () => {
    expect(codes(assessed(station([], HELD)))).toEqual(
      expect.arrayContaining(['rotator-not-checked', 'bearing-not-checked']),
    );
    expect(codes(assessed(station([])))).toContain('rotator-not-checked');
    expect(codes(assessed(station([])))).not.toContain('bearing-not-checked');
    const stated = [ROTATOR_FORCE, { ...ROTATOR_FORCE, of: 'bearing' }];
    for (const code of ['rotator-not-checked', 'bearing-not-checked'])
      expect(codes(assessed(station(stated, HELD)))).not.toContain(code);
    const { mast: _, rotator: __, ...bare } = station([], { loads: [] });
    for (const code of ['rotator-not-checked', 'bearing-not-checked'])
      expect(codes(assessed(bare))).not.toContain(code);
  });
});
