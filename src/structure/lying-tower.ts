import { cite, defineFormula, evaluate, GRAVITY, listVariable, type Trace, variable } from '../foundation/index.ts';
import { holdingForce, type RaisingGear, raisingAt, type TiltingBody } from './raising-gear.ts';

/** Bending of the tilted tower at one place. */
export interface LyingMoment {
  /** Along the tower from the hinge [m]. */
  readonly at: number;
  /** Moment in the plane of tilting [N·m]: positive where the upper side of the lying tower is pulled. */
  readonly moment: number;
}

export const lyingMoment = defineFormula({
  id: 'bending-of-lying-tower',
  title: 'Bending of a tilted tower by its own weight and its raising gear',
  symbol: 'M_z',
  unit: 'moment',
  expression: 'sum(W .* (a * cos(theta) - e * sin(theta))) - P_n * a_g + P_a * e_g',
  variables: [
    listVariable('W', 'weights beyond the place', 'force', 0, 1e5),
    listVariable('a', 'their distances along the tower from the place', 'length', -30, 60),
    listVariable('e', 'their distances square to it', 'length', -3, 3),
    variable('theta', 'angle of the tower, 0 flat', 'angle', 0, 3.1),
    variable('P_n', 'force of the gear beyond the place, square to the tower', 'force', -1e5, 1e5),
    variable('a_g', 'its distance along the tower from the place', 'length', -30, 60),
    variable('P_a', 'force of the gear along the tower', 'force', -1e5, 1e5),
    variable('e_g', 'its distance square to the tower', 'length', -3, 3),
  ],
  cite: cite('derived', 'moments of all that lies beyond the place', 'derived'),
  of: (
    weights: readonly number[],
    along: readonly number[],
    square: readonly number[],
    angle: number,
    across: number,
    alongGear: number,
    axial: number,
    squareGear: number,
  ) => {
    const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
    const hanging = weights.reduce(
      (sum, weight, index) => sum + weight * ((along[index] as number) * cosine - (square[index] as number) * sine),
      0,
    );
    return hanging - across * alongGear + axial * squareGear;
  },
});

/**
 * Bending along a tilted tower held by its hinge and its raising gear, nowhere else propped. It is largest with the tower
 * flat unless weights or gear sit well off its axis. At a weight or at the gear it is that just on the hinge's side of it.
 *
 * M_z = ΣW·(a·cos θ − e·sin θ) − P_n·a_g + P_a·e_g, of all beyond z
 *
 * @param bodies what tilts; of a raising pole only what hangs on the tower
 * @param places along the tower from the hinge [m]
 * @param angle of the tower, 0 flat [rad]
 * @returns the moment at each place [N·m]
 * @throws Refusal as `raisingAt`, or where the gear does not hold the tower at this angle
 * @example lyingMoments([{ mass: 100, low: 0, high: 10, offset: 0 }], { kind: 'line', anchor: [6, 9], attach: [6, 0] }, [6], 0)[0].moment // 784.53
 * @source derived
 */
export function lyingMoments(
  bodies: readonly TiltingBody[],
  gear: RaisingGear,
  places: readonly number[],
  angle: number,
  trace?: Trace,
): readonly LyingMoment[] {
  const [axial, across] = holdingForce(gear, raisingAt(bodies, gear, angle));
  const [alongGear, squareGear] = gear.attach;
  return places.map((at) => {
    // Above the hinge the far part is the one above the place, below it the one below; the hinge itself is in neither.
    const side = at < 0 ? -1 : 1;
    const [weights, along, square]: [number[], number[], number[]] = [[], [], []];
    for (const { mass, low, high, offset } of bodies) {
      // What of it lies beyond the place, and the middle of that.
      const from = side > 0 ? Math.max(low, at) : low;
      const to = side > 0 ? high : Math.min(high, at);
      if (to < from || mass === 0 || (to === from && low < high)) continue;
      weights.push((low === high ? mass : (mass * (to - from)) / (high - low)) * GRAVITY);
      along.push(side * ((from + to) / 2 - at));
      square.push(side * offset);
    }
    const gearBeyond = side * (alongGear - at) >= 0;
    if (weights.length === 0) {
      if (!gearBeyond) return { at, moment: 0 };
      for (const list of [weights, along, square]) list.push(0);
    }
    const moment = evaluate(trace, lyingMoment, [
      weights,
      along,
      square,
      angle,
      gearBeyond ? across : 0,
      gearBeyond ? side * (alongGear - at) : 0,
      gearBeyond ? axial : 0,
      gearBeyond ? side * squareGear : 0,
    ]);
    return { at, moment };
  });
}
