import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { Trace } from '../../src/foundation/index.ts';
import {
  type BeamForce,
  type MastBeam,
  type MastPiece,
  mastBending,
  mastHeights,
  mastMoment,
} from '../../src/structure/index.ts';
import { witness, workingDocument } from '../../src/worksheet/index.ts';
import fc from '../fast-check.ts';

const math = createRequire(import.meta.url)('mathjs/lib/browser/math.js') as typeof import('mathjs');

/** E·I of tubes at a height, worked out here and not by the program. */
const rigidityAt = (pieces: readonly MastPiece[], z: number) =>
  pieces
    .filter(({ low, high }) => low < z && z < high)
    .reduce((sum, { outside, wall }) => sum + ((200e9 * Math.PI) / 64) * (outside ** 4 - (outside - 2 * wall) ** 4), 0);

/**
 * The mast as plane beams with stiffness matrices. Spread forces come as the forces and moments that hold the ends of a
 * beam on which they lie (exact for such beams). Supports are left out of the equations, not made stiff.
 */
function byMatrices({ pieces, foot, bearing }: MastBeam, acting: readonly BeamForce[]) {
  const ends = [foot, bearing ?? foot, ...[...pieces, ...acting].flatMap(({ low, high }) => [low, high])];
  const nodes = [...new Set(ends.filter((z) => z >= foot))].sort((a, b) => a - b);
  const size = nodes.length * 2;
  const K = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const f = new Array<number>(size).fill(0);
  const put = (list: number[], at: number, value: number) => {
    list[at] = (list[at] as number) + value;
  };
  const elements = nodes.slice(1).map((high, index) => {
    const low = nodes[index] as number;
    const L = high - low;
    const k = rigidityAt(pieces, (low + high) / 2) / L ** 3;
    const stiff = [
      [12, 6 * L, -12, 6 * L],
      [6 * L, 4 * L * L, -6 * L, 2 * L * L],
      [-12, -6 * L, 12, -6 * L],
      [6 * L, 2 * L * L, -6 * L, 4 * L * L],
    ].map((row) => row.map((value) => value * k));
    let w = 0;
    for (const { low: from, high: to, force } of acting) {
      if (to > from && from <= low && high <= to) w += force / (to - from);
    }
    const even = [(w * L) / 2, (w * L * L) / 12, (w * L) / 2, (-w * L * L) / 12];
    for (let i = 0; i < 4; i += 1) {
      put(f, index * 2 + i, even[i] as number);
      for (let j = 0; j < 4; j += 1) {
        put(K[index * 2 + i] as number[], index * 2 + j, (stiff[i] as number[])[j] as number);
      }
    }
    return { stiff, even, w, L };
  });
  for (const { low, high, force } of acting) if (low === high) put(f, nodes.indexOf(low) * 2, force);
  const fixed = new Set(bearing === undefined ? [0, 1] : [0, nodes.indexOf(bearing) * 2]);
  const free = Array.from({ length: size }, (_, index) => index).filter((index) => !fixed.has(index));
  // Turns are scaled so that the equations are of one size.
  const scale = (index: number) => (index % 2 === 0 ? 1 : 2);
  const reduced = free.map((i) => free.map((j) => ((K[i] as number[])[j] as number) * scale(i) * scale(j)));
  const right = free.map((i) => (f[i] as number) * scale(i));
  const solved = (math.lusolve(reduced, right) as unknown as number[][]).map((row) => row[0] as number);
  const u = new Array<number>(size).fill(0);
  free.forEach((index, at) => {
    u[index] = (solved[at] as number) * scale(index);
  });
  const answer = (index: number) => (K[index] as number[]).reduce((sum, k, j) => sum + k * (u[j] as number), 0);
  const inside = (index: number, row: number) => {
    const { stiff, even } = elements[index] as (typeof elements)[number];
    return (
      (stiff[row] as number[]).reduce((sum, k, j) => sum + k * (u[index * 2 + j] as number), 0) - (even[row] as number)
    );
  };
  return {
    nodes,
    /** What a support answers, turned round: what the mast hands to it. */
    handed: (z: number) => {
      const index = nodes.indexOf(z) * 2;
      return -(answer(index) - (f[index] as number));
    },
    clampMoment: -(answer(1) - (f[1] as number)),
    moment: (z: number) => {
      const index = nodes.indexOf(z);
      return index < elements.length ? -inside(index, 1) : inside(index - 1, 3);
    },
    movement: (z: number) => u[nodes.indexOf(z) * 2] as number,
    slope: (z: number) => u[nodes.indexOf(z) * 2 + 1] as number,
  };
}

const steel = (low: number, high: number, outside: number, wall: number, yieldStrength = 240e6): MastPiece => ({
  low,
  high,
  outside,
  wall,
  material: 'steel',
  yieldStrength,
});

/** Heights on a grid of a tenth of a metre, so that no beam is so short that the matrices lose digits. */
const tenths = (least: number, most: number) => fc.integer({ min: least, max: most }).map((n) => 10 + n / 10);

const masts = fc
  .record({
    held: fc.boolean(),
    bearing: tenths(5, 25),
    step: tenths(6, 45),
    tip: tenths(46, 80),
    sleeve: fc.tuple(tenths(2, 20), tenths(21, 44)),
    walls: fc.tuple(
      fc.double({ min: 0.003, max: 0.006, noNaN: true }),
      fc.double({ min: 0.002, max: 0.004, noNaN: true }),
    ),
  })
  .map(({ held, bearing, step, tip, sleeve, walls }): MastBeam => {
    const [lower, upper] = walls;
    const pieces = [
      steel(10, step, 0.06, lower),
      steel(step, tip, 0.045, upper),
      steel(sleeve[0], Math.min(sleeve[1], tip), 0.036, 0.003, 350e6),
    ];
    return { pieces, foot: 10, ...(held ? { bearing } : {}) };
  });

const someForces = (from: number, to: number, least: number) =>
  fc.array(
    fc
      .tuple(
        tenths(from, to),
        tenths(from, to),
        fc.boolean(),
        fc.integer({ min: least, max: 500 }).map((newtons) => newtons + 0.5),
      )
      .map(([a, b, spread, force]) => ({ low: Math.min(a, b), high: spread ? Math.max(a, b) : Math.min(a, b), force })),
    { minLength: 1, maxLength: 6 },
  );

const near = (value: number, wanted: number, size: number, what: string) =>
  expect(Math.abs(value - wanted), `${what}: ${value} against ${wanted}`).toBeLessThanOrEqual(1e-9 * size);

describe('a mast as a beam', () => {
  it('is that of stiffness matrices: what it hands on, its moments, its tip', () => {
    fc.assert(
      fc.property(masts, someForces(0, 45, -500), (beam, acting) => {
        const found = mastBending(beam, acting);
        const { nodes, ...wanted } = byMatrices(beam, acting);
        const forceSize = acting.reduce((sum, { force }) => sum + Math.abs(force), 1) * 20;
        if (beam.bearing === undefined) {
          near(found.clampMoment, wanted.clampMoment, forceSize, 'clamp moment');
        } else near(found.atBearing as number, wanted.handed(beam.bearing), forceSize, 'bearing');
        near(found.atFoot, wanted.handed(beam.foot), forceSize, 'foot');
        const largest = Math.max(...nodes.map((z) => Math.abs(wanted.movement(z))), 1e-9);
        expect(found.stations.map(({ z }) => z)).toEqual(nodes);
        for (const { z, moment, movement } of found.stations) {
          near(moment, wanted.moment(z), forceSize, `moment at ${z}`);
          near(movement as number, wanted.movement(z), largest, `movement at ${z}`);
        }
        near(found.tip.movement, wanted.movement(found.tip.z), largest, 'tip');
        near(found.tip.slope, wanted.slope(found.tip.z), largest, 'slope of the tip');
      }),
      { numRuns: 200, endOnFailure: true },
    );
  });

  it('hands on all of the forces, and all is linear in them', () => {
    fc.assert(
      fc.property(masts, someForces(0, 90, -500), (beam, acting) => {
        const found = mastBending(beam, acting);
        const size = acting.reduce((sum, { force }) => sum + Math.abs(force), 1) * 20;
        near(
          (found.atBearing ?? 0) + found.atFoot,
          acting.reduce((sum, { force }) => sum + force, 0),
          size,
          'sum',
        );
        const heights = mastHeights(beam, acting);
        const alone = acting.map(({ low, high }) => {
          const one = { low, high, force: 1 };
          return { one, does: mastBending(beam, [one]) };
        });
        const sum = (of: (each: (typeof alone)[number]) => number) =>
          alone.reduce((all, each, index) => all + of(each) * (acting[index] as BeamForce).force, 0);
        near(
          sum(({ does }) => does.atBearing ?? 0),
          found.atBearing ?? 0,
          size,
          'bearing',
        );
        near(
          sum(({ does }) => does.atFoot),
          found.atFoot,
          size,
          'foot',
        );
        heights.forEach((z, index) => {
          const { moment } = found.stations[index] ?? { moment: Number.NaN };
          const ofEach = sum(({ one, does }) => mastMoment(beam, [one], z, does.atBearing ?? 0));
          near(ofEach, moment, size, `sum at ${z}`);
          near(mastMoment(beam, acting, z, found.atBearing ?? 0), moment, size, `moment at ${z}`);
        });
        near(
          sum(({ does }) => does.tip.movement),
          found.tip.movement,
          size,
          'tip',
        );
      }),
      { numRuns: 100 },
    );
  });

  it('is used the more, the more it is loaded', () => {
    fc.assert(
      // Forces below the bearing bend a mast the other way: the rule is for those above it.
      fc.property(
        masts,
        someForces(26, 90, 0),
        fc.integer({ min: 0, max: 5 }),
        fc.double({ min: 1, max: 5, noNaN: true }),
        (beam, acting, which, times) => {
          const ratio = (list: readonly BeamForce[]) => mastBending(beam, list).worst?.ratio as number;
          const before = ratio(acting);
          const one = acting.map((each, index) =>
            index === which % acting.length ? { ...each, force: each.force * times } : each,
          );
          expect(ratio(one)).toBeGreaterThanOrEqual(before * (1 - 1e-12));
          expect(ratio(acting.map((each) => ({ ...each, force: each.force * times })))).toBeCloseTo(before * times, 9);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('has nowhere a use above the one it calls the largest', () => {
    fc.assert(
      fc.property(masts, someForces(0, 45, -500), (beam, acting) => {
        const { worst, atBearing, tip } = mastBending(beam, acting);
        // A force that stands in the bearing bends nothing, and then both sides are what is left of its cancelling moments:
        // digits of the force times its arm, N·m.
        const rounding = 1e-13 * acting.reduce((sum, { force }) => sum + Math.abs(force), 0) * (tip.z - beam.foot);
        // On a fine comb, with the strength of the plain tubes worked out here and those of sleeves left out.
        for (let z = beam.foot + 0.005; z < tip.z; z += 0.01) {
          const here = beam.pieces.filter(({ low, high }) => low < z && z < high);
          const [only] = here;
          if (here.length !== 1 || !only) continue;
          const { outside: D, wall: t } = only;
          const S = (Math.PI * (D ** 4 - (D - 2 * t) ** 4)) / 32 / D;
          const allowed = ((only.yieldStrength as number) * S) / 1.67;
          const demand = Math.abs(mastMoment(beam, acting, z, atBearing ?? 0));
          expect(demand / allowed).toBeLessThanOrEqual((worst?.ratio as number) * (1 + 1e-9) + rounding / allowed);
        }
      }),
      {
        numRuns: 40,
        examples: [
          [
            { pieces: [steel(10, 14.6, 0.06, 0.003)], foot: 10, bearing: 12.3 },
            [{ low: 12.3, high: 12.3, force: 225.5 }],
          ],
        ],
      },
    );
  });
});

describe('a mast by hand', () => {
  const tube = steel(0, 3, 0.05, 0.004);

  it('with a load at its tip, held at foot and bearing', () => {
    const found = mastBending({ pieces: [tube], foot: 0, bearing: 1 }, [{ low: 3, high: 3, force: 100 }]);
    // R_b = 100·3/1, R_f = 200 back; M = 100·2; y = F·a²(s + a)/(3EI) with a = 2, s = 1.
    expect(found).toMatchObject({ atBearing: 300, atFoot: -200, momentAtHold: 200, clampMoment: 0 });
    const EI = ((200e9 * Math.PI) / 64) * (0.05 ** 4 - 0.042 ** 4);
    expect(found.tip.movement).toBeCloseTo((100 * 4 * 3) / (3 * EI), 12);
    expect(found.worst).toMatchObject({ z: 1, pieces: [0], decides: 0 });
    // S = π(0.05⁴ − 0.042⁴)/(32·0.05) = 6.1618e-6 m³, allowed 240 MPa·S/1.67 = 885.5 N·m.
    expect(found.worst?.ratio).toBeCloseTo(200 / 885.5, 4);
    expect(found.notShown).toEqual([]);
  });

  it('clamped at its foot, with its own wind spread along it', () => {
    const found = mastBending({ pieces: [tube], foot: 0 }, [{ low: 0, high: 3, force: 300 }]);
    expect(found).toMatchObject({ atFoot: 300, clampMoment: 450, momentAtHold: 450 });
    expect(found.atBearing).toBeUndefined();
  });

  it('finds the largest moment inside a stretch, between foot and bearing', () => {
    // wL²/8 in the middle, the other way than a load at the tip would bend it.
    const found = mastBending({ pieces: [tube], foot: 0, bearing: 3 }, [{ low: 0, high: 3, force: 300 }]);
    expect(found.worst?.z).toBeCloseTo(1.5, 12);
    expect(found.worst?.moment).toBeCloseTo((-100 * 9) / 8, 9);
  });

  it('gives way at the step and not at the bearing where the upper tube is thin', () => {
    const pieces = [steel(0, 2, 0.06, 0.006), steel(2, 5, 0.03, 0.003)];
    const found = mastBending({ pieces, foot: 0, bearing: 1 }, [{ low: 5, high: 5, force: 50 }]);
    expect(found.worst).toMatchObject({ z: 2, moment: 150, pieces: [1], decides: 1 });
  });

  it('takes a pull of a wire against the wind off the moment', () => {
    const wind = { low: 3, high: 3, force: 100 };
    const pull = { low: 2, high: 2, force: -60 };
    expect(mastBending({ pieces: [tube], foot: 0, bearing: 1 }, [wind, pull]).momentAtHold).toBeCloseTo(140, 12);
  });

  it('does not show what a tube of unknown grade is allowed, and says which', () => {
    const { yieldStrength: _, ...unknown } = steel(2, 5, 0.03, 0.003);
    const pieces = [steel(0, 2, 0.06, 0.006), unknown];
    const found = mastBending({ pieces, foot: 0, bearing: 1 }, [{ low: 5, high: 5, force: 50 }]);
    expect(found.notShown).toEqual([{ tube: 1, why: 'yield-not-given' }]);
    expect(found.stations.find(({ z }) => z === 2)?.ratio).toBeUndefined();
    const { worst } = mastBending({ pieces: [{ ...unknown, low: 0 }], foot: 0 }, [{ low: 4, high: 4, force: 1 }]);
    expect(worst).toBeUndefined();
  });

  it('refuses what cannot be', () => {
    const at = [{ low: 2, high: 2, force: 1 }];
    const code = (beam: MastBeam, acting: readonly BeamForce[] = at) => {
      try {
        mastBending(beam, acting);
      } catch (error) {
        return (error as { code: string }).code;
      }
      return 'none';
    };
    expect(code({ pieces: [tube], foot: 0 })).toBe('none');
    expect(code({ pieces: [], foot: 0 })).toBe('mast-none');
    expect(code({ pieces: [{ ...tube, high: 0 }], foot: 0 })).toBe('mast-piece-impossible');
    expect(code({ pieces: [tube], foot: 3 })).toBe('mast-foot-impossible');
    expect(code({ pieces: [tube], foot: 1, bearing: 1 })).toBe('mast-bearing-impossible');
    expect(code({ pieces: [tube], foot: 0, bearing: 3.1 })).toBe('mast-bearing-impossible');
    expect(code({ pieces: [tube, steel(3.1, 5, 0.05, 0.004)], foot: 0 })).toBe('mast-gap');
    expect(code({ pieces: [tube], foot: -0.1 })).toBe('mast-gap');
    expect(code({ pieces: [tube, steel(2, 5, 0.045, 0.004)], foot: 0 })).toBe('tubes-do-not-nest');
    expect(code({ pieces: [{ ...tube, wall: 0.026 }], foot: 0 })).toBe('tube-impossible');
    expect(code({ pieces: [{ ...tube, yieldStrength: 0 }], foot: 0 })).toBe('strength-impossible');
    expect(code({ pieces: [tube], foot: 2.5 })).toBe('force-off-mast');
    expect(code({ pieces: [tube], foot: 0 }, [{ low: 2, high: 1, force: 1 }])).toBe('force-off-mast');
    expect(code({ pieces: [tube], foot: 0 }, [{ low: 2, high: 2, force: Number.NaN }])).toBe('force-impossible');
  });

  it.each(['us', 'si'] as const)('shows a working that re-evaluates in %s units, and changes nothing', (units) => {
    const beam: MastBeam = {
      pieces: [steel(0, 3, 0.06, 0.005), steel(0.5, 5, 0.048, 0.004, 350e6)],
      foot: 0,
      bearing: 1,
    };
    const acting = [
      { low: 5, high: 5, force: 250 },
      { low: 1, high: 5, force: 120 },
      { low: 4, high: 4, force: -80 },
    ];
    const trace = new Trace();
    const found = mastBending(beam, acting, trace);
    expect(found).toEqual(mastBending(beam, acting));
    const working = workingDocument(trace.steps, units);
    expect(witness(working).filter(({ agrees }) => !agrees)).toEqual([]);
    const values = (id: string) => trace.steps.filter(({ formula }) => formula.id === id).map(({ value }) => value);
    expect(values('mast-bearing-force')).toEqual([found.atBearing]);
    expect(values('use-in-bending')[0]).toBeCloseTo(found.worst?.ratio as number, 12);
    expect(values('mast-moment')[0]).toBeCloseTo(found.momentAtHold, 9);
    expect(values('movement-along-beam').at(-1)).toBe(found.tip.movement);
    expect(values('share-by-stiffness').length + values('bending-by-yield').length).toBeGreaterThan(0);
  });
});
