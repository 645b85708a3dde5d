import { describe, expect, it } from 'vitest';
import { GRAVITY, Refusal, Trace } from '../../src/foundation/index.ts';
import {
  leastWindHeld,
  type RaisingGear,
  type RaisingRow,
  raisingAt,
  raisingThrough,
  staticsForSearch,
  type TiltingBody,
  tiltingWeights,
  windHeldAt,
} from '../../src/structure/index.ts';
import fc from '../fast-check.ts';

const DEGREE = Math.PI / 180;
const UPRIGHT = { from: 0, to: Math.PI / 2 };
const lump = (weight: number, along: number, offset = 0): TiltingBody => ({
  mass: weight / GRAVITY,
  low: along,
  high: along,
  offset,
});

/** 1000 N at 6 m, held at 8 m by a line from a post of 4 m that stands at the hinge. */
const tower = [lump(1000, 6)];
const overPost: RaisingGear = { kind: 'line', anchor: [0, 4], attach: [8, 0] };
/** The same tower pulled from 10 m behind over a pole of 4 m that turns with it. */
const overPole: RaisingGear = { kind: 'winch', anchor: [-10, 0], attach: [8, 0], over: [0, 4] };
/** Pushed from below: pins 2 m from the hinge on both sides of a right angle. */
const pushed: RaisingGear = { kind: 'actuator', anchor: [0, -2], attach: [2, 0] };

/** A place of the tilted tower, by turning it. */
const turned = ([s, e]: readonly [number, number], angle: number) =>
  [s * Math.cos(angle) - e * Math.sin(angle), s * Math.sin(angle) + e * Math.cos(angle)] as const;
const unit = (from: readonly [number, number], to: readonly [number, number]) => {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length] as const;
};

/** Evenly: drawn by its digits, a number from a range about 0 is nearly always next to 0. */
const coordinate = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((share) => min + ((max - min) * share) / 1_000_000);
const anyBodies = fc.array(
  fc.record({
    mass: coordinate(1, 400),
    low: coordinate(0, 12),
    offset: coordinate(-0.5, 0.5),
    length: coordinate(0, 8),
  }),
  { minLength: 1, maxLength: 5 },
);
const bodiesOf = (drawn: readonly { mass: number; low: number; offset: number; length: number }[]): TiltingBody[] =>
  drawn.map(({ mass, low, offset, length }) => ({ mass, low, high: low + length, offset }));
const anyGear: fc.Arbitrary<RaisingGear> = fc.oneof(
  fc.record({
    kind: fc.constantFrom('line' as const, 'winch' as const),
    anchor: fc.tuple(coordinate(-20, -1), coordinate(-2, 8)),
    attach: fc.tuple(coordinate(1, 15), fc.constant(0)),
    over: fc.tuple(coordinate(-2, 1), coordinate(1, 6)),
  }),
  fc.record({
    kind: fc.constantFrom('line' as const, 'winch' as const),
    anchor: fc.tuple(coordinate(-20, 5), coordinate(1, 12)),
    attach: fc.tuple(coordinate(1, 15), coordinate(-0.3, 0.3)),
  }),
  fc.record({
    kind: fc.constantFrom('screw' as const, 'actuator' as const),
    anchor: fc.tuple(coordinate(-3, 4), coordinate(-3, -0.2)),
    attach: fc.tuple(coordinate(0.5, 5), coordinate(-0.3, 0.3)),
  }),
);

describe('raising in closed form, at three angles', () => {
  // Moments about the hinge: F = W·x·cos θ/r, with r from the triangle of hinge, anchor and moving end.
  const angles = [0, 30, 60] as const;

  it('by a line over a post at the hinge: F = (W·x/(a·h))·√(a² + h² − 2ah·sin θ)', () => {
    for (const angle of angles) {
      const expected = ((1000 * 6) / (8 * 4)) * Math.sqrt(8 ** 2 + 4 ** 2 - 2 * 8 * 4 * Math.sin(angle * DEGREE));
      expect(raisingAt(tower, overPost, angle * DEGREE).force).toBeCloseTo(expected, 9);
    }
    // At 30° the end is level with the top of the post: 6000·cos 30°/4.
    expect(raisingAt(tower, overPost, 30 * DEGREE).force).toBeCloseTo(1299.0381057, 6);
  });

  it('by a line over a pole that turns with the tower: r = c·h·sin(90° − θ)/L', () => {
    // Tip at 90° + θ, anchor at 180°: the angle at the hinge is 90° − θ. r = 10·4·sin(90° − θ)/L.
    for (const angle of angles) {
      const open = (90 - angle) * DEGREE;
      const length = Math.sqrt(10 ** 2 + 4 ** 2 - 2 * 10 * 4 * Math.cos(open));
      const expected = (1000 * 6 * Math.cos(angle * DEGREE)) / ((10 * 4 * Math.sin(open)) / length);
      const row = raisingAt(tower, overPole, angle * DEGREE);
      expect(row.force).toBeCloseTo(expected, 9);
      expect(row.length).toBeCloseTo(length, 12);
    }
  });

  it('by an actuator below, its pins equally far from the hinge: F = −(2·W·x/d)·cos(45° − θ/2)', () => {
    for (const angle of angles) {
      const expected = -((2 * 1000 * 6) / 2) * Math.cos((45 - angle / 2) * DEGREE);
      const row = raisingAt(tower, pushed, angle * DEGREE);
      expect(row.force).toBeCloseTo(expected, 8);
      expect(row.state).toBe('push');
    }
  });

  it('the hinge of the boom on its cable bears 11.45 kN at 32.2°', () => {
    // Bhavikatti, Mechanics of Solids, Example 2.31; the reaction worked out by hand from the published pull.
    const tilt = 30 * DEGREE;
    const [x, y] = [12 * Math.cos(tilt), 12 * Math.sin(tilt)];
    const gear: RaisingGear = { kind: 'line', anchor: [0, y - x * Math.tan(15 * DEGREE)], attach: [12, 0] };
    const { hinge } = raisingAt([lump(1000, 6), lump(2500, 12)], gear, tilt);
    expect((hinge?.force as number) / 1000).toBeCloseTo(11.45, 2);
    expect(Math.atan2(hinge?.y as number, hinge?.x as number) / DEGREE).toBeCloseTo(32.2, 1);
  });
});

describe('the work of the gear', () => {
  /** ∫F·dl from its own force and length alone, by Romberg's rule on midpoints. */
  function workBy(bodies: readonly TiltingBody[], gear: RaisingGear, from: number, to: number): number {
    const sum = (pieces: number) => {
      let work = 0;
      const step = (to - from) / pieces;
      for (let piece = 0; piece < pieces; piece += 1) {
        const low = from + piece * step;
        const { force } = raisingAt(bodies, gear, low + step / 2);
        const shortening = raisingAt(bodies, gear, low).length - raisingAt(bodies, gear, low + step).length;
        work += (force as number) * shortening;
      }
      return work;
    };
    const [coarse, fine] = [sum(400), sum(800)];
    return fine + (fine - coarse) / 3;
  }

  it.each([
    ['a line over a post', overPost, 0, 89],
    ['a line over a pole', overPole, 0, 89],
    ['an actuator that pushes', pushed, 0, 85],
    ['a screw that pulls', { kind: 'screw', anchor: [-1, 1.5], attach: [1.2, 0.1] } as RaisingGear, 0, 90],
  ])('of %s is the weight times the rise of its centre of gravity', (_, gear, from, to) => {
    const work = workBy(tower, gear, from * DEGREE, to * DEGREE);
    const raised = 1000 * 6 * (Math.sin(to * DEGREE) - Math.sin(from * DEGREE));
    expect(Math.abs(work / raised - 1)).toBeLessThan(1e-6);
    const through = raisingThrough(tower, gear, { from: from * DEGREE, to: to * DEGREE });
    expect(through.work).toBeCloseTo(raised, 8);
    expect(through.rise).toBeCloseTo(raised / 1000, 10);
  });

  it('is that for any tower and gear that holds all the way', () => {
    let met = 0;
    fc.assert(
      fc.property(anyBodies, anyGear, (drawn, gear) => {
        const bodies = bodiesOf(drawn);
        const travel = { from: 0.05, to: 1.2 };
        const { pieces, deadPoint, balance } = raisingThrough(bodies, gear, travel);
        if (deadPoint !== undefined || balance !== undefined) return;
        if (pieces.some(({ state }) => state === 'cannot-hold' || state === 'falls-on')) return;
        // Quadrature by equal steps needs an arm that does not all but vanish.
        if ([travel.from, travel.to].some((angle) => Math.abs(raisingAt(bodies, gear, angle).arm) < 0.3)) return;
        met += 1;
        const height = (angle: number) =>
          bodies.reduce(
            (sum, { mass, low, high, offset }) => sum + mass * GRAVITY * turned([(low + high) / 2, offset], angle)[1],
            0,
          );
        const raised = height(travel.to) - height(travel.from);
        expect(Math.abs(workBy(bodies, gear, travel.from, travel.to) / raised - 1)).toBeLessThan(1e-6);
      }),
      { numRuns: 60 },
    );
    expect(met).toBeGreaterThan(15);
  });
});

describe('forces on a tilting tower', () => {
  it('leave nothing over, about any point, and at the tip of a raising pole', () => {
    let met = 0;
    fc.assert(
      fc.property(anyBodies, anyGear, coordinate(0, 1.57), (drawn, gear, angle) => {
        const bodies = bodiesOf(drawn);
        const row = raisingAt(bodies, gear, angle);
        if (row.force === undefined || !row.hinge) return;
        met += 1;
        const end = turned(gear.over ?? gear.attach, angle);
        const way = unit(end, gear.anchor);
        const forces = [
          { at: [0, 0] as const, x: row.hinge.x, y: row.hinge.y },
          { at: end, x: row.force * way[0], y: row.force * way[1] },
          ...bodies.map(({ mass, low, high, offset }) => ({
            at: turned([(low + high) / 2, offset], angle),
            x: 0,
            y: -mass * GRAVITY,
          })),
        ];
        const scale = forces.reduce((sum, { x, y }) => sum + Math.hypot(x, y), 0);
        const moment = ([px, py]: readonly [number, number]) =>
          forces.reduce((sum, { at, x, y }) => sum + (at[0] - px) * y - (at[1] - py) * x, 0);
        expect(Math.abs(forces.reduce((sum, { x }) => sum + x, 0)) / scale).toBeLessThan(1e-9);
        expect(Math.abs(forces.reduce((sum, { y }) => sum + y, 0)) / scale).toBeLessThan(1e-9);
        expect(Math.abs(moment([3, -7])) / scale / 20).toBeLessThan(1e-9);
        expect(row.hinge.force).toBeCloseTo(Math.hypot(row.hinge.x, row.hinge.y), 6);
        if (!gear.over || !row.pole) return;
        const stayWay = unit(end, turned(gear.attach, angle));
        const poleWay = unit([0, 0], end);
        for (const axis of [0, 1] as const) {
          const rest = row.force * way[axis] + row.pole.stay * stayWay[axis] + row.pole.thrust * poleWay[axis];
          expect(Math.abs(rest) / (scale + Math.abs(row.pole.stay))).toBeLessThan(1e-8);
        }
        expect(row.pole.stay).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 300 },
    );
    expect(met).toBeGreaterThan(100);
  });

  it('grow with the weights and turn with the sign of nothing else', () => {
    const once = raisingThrough(tower, overPole, UPRIGHT);
    const twice = raisingThrough([...tower, ...tower], overPole, UPRIGHT);
    expect(twice.worst?.force).toBeCloseTo(2 * (once.worst?.force as number), 8);
    expect(twice.worst?.angle).toBeCloseTo(once.worst?.angle as number, 8);
  });
});

describe('the figures a search looks at', () => {
  it('are those of the row, wherever the gear holds', () => {
    let met = 0;
    fc.assert(
      fc.property(anyBodies, anyGear, coordinate(0, 1.57), (drawn, gear, angle) => {
        const bodies = bodiesOf(drawn);
        const row = raisingAt(bodies, gear, angle);
        // Next to the dead point the force grows with every digit of the arm.
        if (row.force === undefined || !row.hinge || Math.abs(row.arm) < 1e-3) return;
        met += 1;
        const found = staticsForSearch(tiltingWeights(bodies), gear)(angle);
        const weight = bodies.reduce((sum, { mass }) => sum + mass * GRAVITY, 0);
        expect(Math.abs(found.moment - row.moment)).toBeLessThan(1e-11 * weight * 20);
        expect(Math.abs(found.arm - row.arm)).toBeLessThan(1e-11 * 20);
        expect(Math.abs(found.force - row.force)).toBeLessThan(1e-8 * (weight + Math.abs(row.force)));
        expect(Math.abs(found.hinge - row.hinge.force)).toBeLessThan(1e-8 * (weight + row.hinge.force));
      }),
      { numRuns: 300 },
    );
    expect(met).toBeGreaterThan(80);
  });
});

describe('the travel', () => {
  it('has its worst at the flat for a line over a post, and a table every 5°', () => {
    const { rows, worst, deadPoint, balance, unbounded, ratio } = raisingThrough(
      tower,
      { ...overPost, workingLoad: 2000 },
      UPRIGHT,
    );
    expect(rows.map(({ angle }) => Math.round(angle / DEGREE))).toEqual(Array.from({ length: 19 }, (_, i) => 5 * i));
    expect(worst?.angle).toBe(0);
    // 6000/(8·4/√80)
    expect(worst?.force).toBeCloseTo(1677.0509831, 6);
    expect(ratio).toBeCloseTo(0.8385254916, 9);
    // Upright, tower, post and line stand in one line: no weight turns the tower, and no pull could.
    expect(deadPoint).toBeCloseTo(Math.PI / 2, 12);
    expect(balance).toBeCloseTo(Math.PI / 2, 12);
    expect(unbounded).toBe(false);
    expect(rows.at(-1)).toMatchObject({ state: 'dead-point', arm: 0 });
    expect(rows.at(-1)?.force).toBeUndefined();
  });

  it('finds a worst inside the travel as a search by hundredths of a degree does', () => {
    // A low actuator under a tower with its weight above the axis.
    const gear: RaisingGear = { kind: 'actuator', anchor: [1.5, -0.6], attach: [2.2, -0.2] };
    const bodies = [lump(1000, 5, -0.4), lump(400, 9, 0.3)];
    fc.assert(
      fc.property(coordinate(0.6, 2.4), coordinate(-2, -0.4), (x, y) => {
        const { worst, worstHinge, unbounded } = raisingThrough(bodies, { ...gear, anchor: [x, y] }, UPRIGHT);
        if (unbounded) return;
        let [force, hinge] = [0, 0];
        for (let step = 0; step <= 9000; step += 1) {
          const row = raisingAt(bodies, { ...gear, anchor: [x, y] }, (step / 100) * DEGREE);
          force = Math.max(force, Math.abs(row.force as number));
          hinge = Math.max(hinge, row.hinge?.force as number);
        }
        expect(Math.abs(worst?.force as number) / force).toBeGreaterThan(1 - 1e-9);
        expect(Math.abs(worst?.force as number) / force).toBeLessThan(1 + 1e-4);
        expect((worstHinge?.hinge.force as number) / hinge).toBeGreaterThan(1 - 1e-9);
        expect((worstHinge?.hinge.force as number) / hinge).toBeLessThan(1 + 1e-4);
      }),
      { numRuns: 8 },
    );
  });

  it('past its balance leaves a line slack, and says what must be held then', () => {
    // 1000 N at 6 m, 1 m to the side it is raised to: balance at atan(6/1), past it up to 1000·1 N·m when upright.
    const eccentricWeight = [lump(1000, 6, 1)];
    const low: RaisingGear = { ...overPole, anchor: [-10, -1] };
    const { balance, pieces, holdBack, rows, worst } = raisingThrough(eccentricWeight, low, UPRIGHT);
    expect((balance as number) / DEGREE).toBeCloseTo(80.5376778, 6);
    expect(pieces.map(({ state }) => state)).toEqual(['pull', 'falls-on']);
    expect(holdBack?.moment).toBeCloseTo(1000, 6);
    expect(holdBack?.angle).toBeCloseTo(Math.PI / 2, 6);
    const last = rows.at(-1) as RaisingRow;
    expect(last.state).toBe('falls-on');
    expect(last.force).toBeUndefined();
    expect(rows.find(({ angle }) => angle === balance)?.force).toBe(0);
    expect(worst?.angle as number).toBeLessThan(balance as number);
  });

  it('past its balance is held back by a screw, whose force changes its sign', () => {
    const screw: RaisingGear = { kind: 'screw', anchor: [1, -1.5], attach: [2, 0] };
    const { pieces, holdBack, rows } = raisingThrough([lump(1000, 6, 1)], screw, UPRIGHT);
    expect(pieces.map(({ state }) => state)).toEqual(['push', 'pull']);
    expect(holdBack).toBeUndefined();
    expect(rows[0]?.force as number).toBeLessThan(0);
    expect(rows.at(-1)?.force as number).toBeGreaterThan(0);
  });

  it('tells a dead point in the travel, and no worst force with it', () => {
    // Pins at 1 m under and 2 m along: in line with the hinge when the tower has turned 60°.
    const screw: RaisingGear = {
      kind: 'screw',
      anchor: [-Math.cos(60 * DEGREE), -Math.sin(60 * DEGREE)],
      attach: [2, 0],
      workingLoad: 1e5,
    };
    const { deadPoint, unbounded, worst, worstHinge, ratio, workingLoad, lengths } = raisingThrough(
      tower,
      screw,
      UPRIGHT,
    );
    // Stretched out there: 2 + 1 m.
    expect(lengths.largest).toBeCloseTo(3, 12);
    expect(lengths.least).toBe(Math.min(lengths.from, lengths.to));
    expect((deadPoint as number) / DEGREE).toBeCloseTo(60, 9);
    expect(unbounded).toBe(true);
    expect([worst, worstHinge, ratio]).toEqual([undefined, undefined, undefined]);
    expect(workingLoad).toBe(1e5);
  });

  it('cannot be begun by a line along the ground', () => {
    const { rows, unbounded } = raisingThrough(tower, { kind: 'line', anchor: [-10, 0], attach: [8, 0] }, UPRIGHT);
    expect(rows[0]?.state).toBe('dead-point');
    expect(unbounded).toBe(true);
    const below = raisingThrough(tower, { kind: 'line', anchor: [-10, -1], attach: [8, 0] }, UPRIGHT);
    expect(below.pieces[0]?.state).toBe('cannot-hold');
  });

  it('needs no force where a counterweight balances the tower', () => {
    const { worst, balance, pieces } = raisingThrough([lump(600, 4), lump(1200, -2)], pushed, UPRIGHT);
    expect(worst?.force).toBe(0);
    expect(balance).toBeUndefined();
    expect(pieces.every(({ state }) => state === 'balanced')).toBe(true);
  });

  it('takes a fifth of a breaking strength, and a working load before it', () => {
    const of = (loads: Partial<RaisingGear>) => raisingThrough(tower, { ...overPost, ...loads }, UPRIGHT);
    expect(of({ breakingLoad: 20000 }).workingLoad).toBe(4000);
    expect(of({ breakingLoad: 20000, workingLoad: 3000 }).workingLoad).toBe(3000);
    expect(of({}).workingLoad).toBeUndefined();
    expect(of({}).ratio).toBeUndefined();
  });

  it('tells the travel of a screw', () => {
    const { lengths } = raisingThrough(tower, pushed, UPRIGHT);
    expect(lengths.from).toBeCloseTo(2 * Math.SQRT2, 12);
    expect(lengths.to).toBeCloseTo(4, 12);
    expect([lengths.least, lengths.largest]).toEqual([lengths.from, lengths.to]);
  });

  it('holds no number that is none, whatever the gear', () => {
    const numbers = (value: unknown): number[] =>
      typeof value === 'number'
        ? [value]
        : value && typeof value === 'object'
          ? Object.values(value).flatMap(numbers)
          : [];
    fc.assert(
      fc.property(anyBodies, anyGear, coordinate(-0.5, 1), coordinate(0.1, 2), (drawn, gear, from, by) => {
        const found = raisingThrough(bodiesOf(drawn), { ...gear, breakingLoad: 9000 }, { from, to: from + by });
        expect(numbers(found).every(Number.isFinite)).toBe(true);
        expect(found.pieces[0]?.from).toBe(from);
        expect(found.pieces.at(-1)?.to).toBe(from + by);
        for (const row of found.rows) {
          if (row.force === undefined) continue;
          if (gear.kind === 'line' || gear.kind === 'winch') expect(row.force).toBeGreaterThanOrEqual(0);
          if (found.worst)
            expect(Math.abs(row.force)).toBeLessThanOrEqual(Math.abs(found.worst.force) * (1 + 1e-6) + 1e-6);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('leaves a working of its worst angle that gives the same force and use', () => {
    const trace = new Trace();
    const { worst, ratio } = raisingThrough(tower, { ...overPole, workingLoad: 5000 }, UPRIGHT, trace);
    const value = (id: string) => trace.steps.find(({ formula }) => formula.id === id)?.value;
    expect(value('force-of-raising-gear')).toBe(worst?.force);
    expect(value('hinge-reaction')).toBe(worst?.hinge.force);
    expect(value('pull-in-stay-of-raising-pole')).toBe(worst?.pole?.stay);
    expect(value('use-of-raising-gear')).toBe(ratio);
  });
});

describe('wind on a tilted tower', () => {
  const gear = { ...overPole, workingLoad: 8000 };
  const wind = {
    speed: 1,
    forces: [
      { force: 0.8, along: 5, acts: 'square' as const },
      { force: 0.4, along: 10, acts: 'square' as const },
    ],
  };

  it('brings the gear to its working load at the speed told, and lifts the tower at the other', () => {
    const angle = 40 * DEGREE;
    const { reaches, unloads, state, moment } = windHeldAt(tower, gear, angle, wind);
    expect(state).toBe('held');
    expect(moment).toBeCloseTo(8, 12);
    const row = raisingAt(tower, gear, angle);
    expect((row.moment + 8 * (reaches as number) ** 2) / row.arm).toBeCloseTo(8000, 6);
    expect(8 * (unloads as number) ** 2).toBeCloseTo(1000 * 6 * Math.cos(angle), 8);
  });

  it('goes by the speed the forces are given for', () => {
    const of = (speed: number, share: number) =>
      windHeldAt(tower, gear, 0.5, {
        speed,
        forces: wind.forces.map((each) => ({ ...each, force: each.force * share })),
      });
    expect(of(20, 400).reaches).toBeCloseTo(of(1, 1).reaches as number, 9);
  });

  it('does not turn a flat tower when it blows level, and is not told where it cannot be', () => {
    const level = { speed: 1, forces: [{ force: 1, along: 6, acts: 'level' as const }] };
    expect(windHeldAt(tower, gear, 0, level).state).toBe('no-moment');
    expect(windHeldAt(tower, gear, 30 * DEGREE, level).moment).toBeCloseTo(3, 12);
    expect(windHeldAt(tower, { ...gear, workingLoad: 100 }, 0, wind).state).toBe('over-in-calm');
    expect(windHeldAt(tower, overPole, 0, wind)).toMatchObject({ state: 'load-unknown' });
    expect(windHeldAt([lump(1000, 6, 1)], gear, 88 * DEGREE, wind).state).toBe('not-held');
    expect(() => windHeldAt(tower, gear, 0, { ...wind, speed: 0 })).toThrow(Refusal);
  });

  it('has its least over the travel where a search by degrees has it', () => {
    const travel = { from: 0, to: 80 * DEGREE };
    const speeds = Array.from(
      { length: 801 },
      (_, i) => windHeldAt(tower, gear, (i / 10) * DEGREE, wind).reaches as number,
    );
    const least = leastWindHeld(tower, gear, travel, wind);
    expect((least?.reaches as number) / Math.min(...speeds)).toBeLessThanOrEqual(1 + 1e-9);
    expect((least?.reaches as number) / Math.min(...speeds)).toBeGreaterThan(1 - 1e-4);
    expect(leastWindHeld(tower, overPole, travel, wind)).toBeUndefined();
    expect(leastWindHeld(tower, { ...gear, workingLoad: 100 }, travel, wind)?.state).toBe('over-in-calm');
  });
});

describe('what cannot be meant is refused', () => {
  it.each<[string, readonly TiltingBody[], RaisingGear, { from: number; to: number }]>([
    ['nothing-tilts', [], overPost, UPRIGHT],
    ['tilting-body', [{ mass: -1, low: 0, high: 1, offset: 0 }], overPost, UPRIGHT],
    ['tilting-body', [{ mass: 1, low: 2, high: 1, offset: 0 }], overPost, UPRIGHT],
    ['tilting-body', [{ mass: Number.NaN, low: 0, high: 1, offset: 0 }], overPost, UPRIGHT],
    ['raising-gear-in-hinge', tower, { ...overPost, anchor: [0, 0] }, UPRIGHT],
    ['raising-gear-in-hinge', tower, { ...overPost, attach: [0, 0] }, UPRIGHT],
    ['raising-pole-without-line', tower, { ...pushed, over: [0, 2] }, UPRIGHT],
    ['raising-pole-below', tower, { ...overPole, over: [0, -2] }, UPRIGHT],
    ['raising-load', tower, { ...overPost, workingLoad: 0 }, UPRIGHT],
    ['raising-travel', tower, overPost, { from: 1, to: 1 }],
    ['raising-travel', tower, overPost, { from: 0, to: 7 }],
  ])('%s', (code, bodies, gear, travel) => {
    let caught: unknown;
    try {
      raisingThrough(bodies, gear, travel);
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(Refusal);
    expect((caught as Refusal).code).toBe(code);
  });
});
