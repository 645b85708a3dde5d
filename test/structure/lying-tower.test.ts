import { describe, expect, it } from 'vitest';
import { GRAVITY, Refusal, Trace } from '../../src/foundation/index.ts';
import { lyingMoments, type RaisingGear, raisingAt, type TiltingBody } from '../../src/structure/index.ts';
import fc from '../fast-check.ts';

const body = (weight: number, low: number, high = low, offset = 0): TiltingBody => ({
  mass: weight / GRAVITY,
  low,
  high,
  offset,
});
const moments = (bodies: readonly TiltingBody[], gear: RaisingGear, places: readonly number[], angle = 0) =>
  lyingMoments(bodies, gear, places, angle).map(({ moment }) => moment);

describe('bending of a lying tower', () => {
  const hoisted: RaisingGear = { kind: 'line', anchor: [6, 9], attach: [6, 0] };

  it('of even weight, held upwards at 6 m of 10: the overhanging beam', () => {
    // w = 100 N/m: reaction 5000/6 at 6 m; M = −R_0·z + w·z²/2 inside, w·c²/2 over the support.
    const hinge = 1000 - 5000 / 6;
    const found = moments([body(1000, 0, 10)], hoisted, [0, 2, 5, 6, 8, 10]);
    const expected = [0, -hinge * 2 + 200, -hinge * 5 + 1250, 800, 200, 0];
    for (const [index, value] of expected.entries()) expect(found[index]).toBeCloseTo(value, 8);
  });

  it('with a weight at its end only: a straight line up to where it is held', () => {
    const found = moments([body(300, 10)], hoisted, [0, 3, 6, 9, 10]);
    for (const [index, value] of [0, 600, 1200, 300, 0].entries()) expect(found[index]).toBeCloseTo(value, 8);
  });

  it('is the same however the line runs, while it is held on its axis', () => {
    const bodies = [body(800, 0, 9), body(200, 9.5)];
    const straight = moments(bodies, hoisted, [1, 3, 5.9, 7]);
    const slanting = moments(bodies, { ...hoisted, anchor: [-4, 5] }, [1, 3, 5.9, 7]);
    const overPole = moments(bodies, { ...hoisted, anchor: [-10, 0], over: [0.5, 4] }, [1, 3, 5.9, 7]);
    const pushed = moments(bodies, { kind: 'actuator', anchor: [1, -2], attach: [6, 0] }, [1, 3, 5.9, 7]);
    for (const [index, value] of straight.entries()) {
      expect(slanting[index]).toBeCloseTo(value, 8);
      expect(overPole[index]).toBeCloseTo(value, 8);
      expect(pushed[index]).toBeCloseTo(value, 8);
    }
  });

  it('jumps at a bracket off the axis by the pull along the tower times its distance', () => {
    const gear: RaisingGear = { kind: 'line', anchor: [-4, 3], attach: [6, 0.5] };
    const bodies = [body(500, 10)];
    const row = raisingAt(bodies, gear, 0);
    const axial = ((row.force as number) * (-4 - 6)) / row.length;
    const [before, after] = moments(bodies, gear, [6 - 1e-9, 6 + 1e-9]) as [number, number];
    expect(before - after).toBeCloseTo(axial * 0.5, 4);
  });

  it('of a stub with a counterweight under the hinge hangs from it on the other side', () => {
    const found = moments([body(300, 8), body(500, -2)], hoisted, [-2, -1, -1e-12, 0, 3]);
    // Below: 500·(2 − |z|); at the hinge 1000; above 2400 at 0 less (2400 − 1000)/6 a metre of the line's share.
    const held = (2400 - 1000) / 6;
    for (const [index, value] of [0, 500, 1000, 1000, 300 * 5 - held * 3].entries()) {
      expect(found[index]).toBeCloseTo(value, 6);
    }
  });

  it('is found alike from its other side, hinge and all, at any angle and under the hinge too', () => {
    // Evenly: drawn by its digits, a number from a range about 0 is nearly always next to 0.
    const coordinate = (min: number, max: number) =>
      fc.integer({ min: 0, max: 1_000_000 }).map((share) => min + ((max - min) * share) / 1_000_000);
    let met = 0;
    fc.assert(
      fc.property(
        fc.array(fc.tuple(coordinate(10, 900), coordinate(-4, 12), coordinate(-0.4, 0.4)), {
          minLength: 1,
          maxLength: 6,
        }),
        fc.oneof(coordinate(2, 10), coordinate(-3, -1)),
        coordinate(-0.3, 0.3),
        coordinate(0, 1.1),
        fc.oneof(coordinate(0.1, 11.9), coordinate(-3.9, -0.1)),
        (drawn, attach, square, angle, z) => {
          const bodies = drawn.map(([weight, along, offset]) => body(weight, along, along, offset));
          const gear: RaisingGear = { kind: 'screw', anchor: [-3, 7], attach: [attach, square] };
          const row = raisingAt(bodies, gear, angle);
          if (row.force === undefined || !row.hinge || Math.abs(row.arm) < 0.2) return;
          met += 1;
          const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
          const from = (along: number, offset: number) =>
            [(along - z) * cosine - offset * sine, (along - z) * sine + offset * cosine] as const;
          const [gx, gy] = from(attach, square);
          const [ax, ay] = [-3 - z * cosine, 7 - z * sine];
          const share = row.force / row.length;
          const forces = [
            ...drawn.map(([weight, along, offset]) => ({ along, at: from(along, offset), x: 0, y: -weight })),
            { along: attach, at: [gx, gy] as const, x: share * (ax - gx), y: share * (ay - gy) },
            { along: 0, at: from(0, 0), x: row.hinge.x, y: row.hinge.y },
          ];
          // All on the hinge's side of the place, turning about the axis there.
          const turning = forces
            .filter(({ along }) => (z > 0 ? along < z : along > z))
            .reduce((sum, { at, x, y }) => sum + at[0] * y - at[1] * x, 0);
          const expected = z > 0 ? turning : -turning;
          const scale = drawn.reduce((sum, [weight]) => sum + weight, 0) + Math.abs(row.force);
          const [found] = moments(bodies, gear, [z], angle) as [number];
          expect(Math.abs(found - expected) / scale).toBeLessThan(1e-8);
        },
      ),
      { numRuns: 300 },
    );
    expect(met).toBeGreaterThan(150);
  });

  it('counts what sits off the axis under the hinge, and an even weight there from its far end', () => {
    // 50 N at 3 m under the hinge and 0.3 m off: about the axis 1 m under it, 50·(2·cos θ + 0.3·sin θ).
    const gear: RaisingGear = { kind: 'screw', anchor: [-3, 7], attach: [6, 0.1] };
    const [off] = moments([body(100, 8, 8, 0.2), body(50, -3, -3, 0.3)], gear, [-1], 0.8) as [number];
    expect(off).toBeCloseTo(50 * (2 * Math.cos(0.8) + 0.3 * Math.sin(0.8)), 9);
    // 100 N a metre down to 2 m under the hinge: 100·1.5²/2 at half a metre.
    const [even] = moments([body(100, 8), body(400, -2, 2)], gear, [-0.5]) as [number];
    expect(even).toBeCloseTo(112.5, 9);
  });

  it('is refused where nothing holds the tower, and leaves a working', () => {
    expect(() => moments([body(100, 5)], { kind: 'line', anchor: [-9, 0], attach: [6, 0] }, [2])).toThrow(Refusal);
    const trace = new Trace();
    const found = lyingMoments([body(1000, 0, 10)], hoisted, [6, 8], 0, trace);
    expect(trace.steps.map(({ value }) => value)).toEqual(found.map(({ moment }) => moment));
  });
});
