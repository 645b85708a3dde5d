import { cite, defineFormula, evaluate, GRAVITY, type Trace, variable, zeros } from '../foundation/index.ts';
import { appurtenanceMasses } from './appurtenance-masses.ts';
import { type Level, ONE_HEIGHT } from './level.ts';
import { type MastHold, mastHold } from './profile.ts';
import type { Load, Section, SectionShape, Station } from './station.ts';

/** Loads that stay when the wind does not: weight aloft and the pull of wires. */
export interface DeadLoad extends EccentricWeightLoad {
  /** Weight of what hangs on the tower above each level, its own not counted [kg]. */
  readonly weight: number[];
  /** Pull of wires, as a vector sum: shear [N] and moment [N·m]. */
  readonly pullShear: number[];
  readonly pullMoment: number[];
}

/** What weight off the axis does at each level; between the mast's foot and its bearing as the couple it makes there. */
export interface EccentricWeightLoad {
  /** [N], 0 but in the couple. */
  readonly eccentricWeightShear: number[];
  /** [N·m] */
  readonly eccentricWeightMoment: number[];
}

/**
 * Dead loads above every level.
 *
 * pull: |ΣH|, |ΣH(z_i − z)| as vectors; in the couple R = Σ(H(z_i − z_f))/s at the bearing
 *
 * @param station what stands where; what has no weight given adds none, which the answer says
 * @source derived
 */
export function deadLoad(station: Station, levels: readonly Level[]): DeadLoad {
  const weight = zeros(levels.length);
  const pullShear = zeros(levels.length);
  const pullMoment = zeros(levels.length);
  const masses = appurtenanceMasses(station);
  const pulls = pullsOf(station);
  const hold = mastHold(station.mast, station.tower);
  levels.forEach((level, index) => {
    const { z } = level;
    let above = 0;
    let [east, north, eastMoment, northMoment] = [0, 0, 0, 0];
    for (const { mass, low, high, carriedAt } of masses) {
      if (carriedAt === undefined) above += (mass * Math.max(0, high - Math.max(low, z))) / (high - low);
      else if (carriedAt >= z - ONE_HEIGHT) above += mass;
    }
    for (const { pull, on, low, sine, cosine } of pulls) {
      const { force, moment } = reaching(level, on, low, hold);
      east += pull * force * sine;
      north += pull * force * cosine;
      eastMoment += pull * moment * sine;
      northMoment += pull * moment * cosine;
    }
    weight[index] = above;
    pullShear[index] = Math.hypot(east, north);
    pullMoment[index] = Math.hypot(eastMoment, northMoment);
  });
  return { weight, pullShear, pullMoment, ...eccentricWeightLoad(station, levels) };
}

/**
 * What the weight of loads off the axis does at every level.
 *
 * ΣW·e; in the couple R = ΣW·e/s at the bearing
 *
 * @param iceOnLoads mass of ice on each load, with its level [kg], or nothing
 * @source derived
 */
export function eccentricWeightLoad(
  station: Station,
  levels: readonly Level[],
  iceOnLoads?: readonly number[],
): EccentricWeightLoad {
  const hold = mastHold(station.mast, station.tower);
  const eccentricWeightShear = zeros(levels.length);
  const eccentricWeightMoment = zeros(levels.length);
  station.loads.forEach(({ on, low, count, weight = 0, offset }, number) => {
    const eccentricWeight = (count * weight + (iceOnLoads?.[number] ?? 0)) * offset * GRAVITY;
    if (eccentricWeight === 0) return;
    levels.forEach(({ z, zone }, index) => {
      if (on === 'mast' && zone === 'couple') {
        const bearing = hold.bearing as number;
        const force = eccentricWeight / (bearing - hold.foot);
        eccentricWeightShear[index] = (eccentricWeightShear[index] as number) + force;
        eccentricWeightMoment[index] = (eccentricWeightMoment[index] as number) + force * (bearing - z);
      } else if ((on === 'mast' ? Math.min(low, hold.foot) : low) >= z - ONE_HEIGHT) {
        eccentricWeightMoment[index] = (eccentricWeightMoment[index] as number) + eccentricWeight;
      }
    });
  });
  return { eccentricWeightShear, eccentricWeightMoment };
}

/** Share of a force, and its moment for each newton, that reaches a level. */
function reaching({ z, zone }: Level, on: Load['on'], at: number, hold: MastHold) {
  if (on === 'mast' && zone === 'couple') {
    const bearing = hold.bearing as number;
    const force = (at - hold.foot) / (bearing - hold.foot);
    return { force, moment: force * (bearing - z) };
  }
  if ((on === 'mast' ? Math.min(at, hold.foot) : at) < z - ONE_HEIGHT) return { force: 0, moment: 0 };
  return { force: 1, moment: at - z };
}

/** The wires whose pull is known: how hard, whither, where they hold. */
function pullsOf({ loads }: Station) {
  return loads.flatMap(({ on, low, count, shape }) => {
    if (shape.kind !== 'wire' || shape.pull === undefined) return [];
    const [sine, cosine] = [Math.sin(shape.heading), Math.cos(shape.heading)];
    return [{ pull: count * shape.pull, on, low, sine, cosine }];
  });
}

export const momentOfWeightFormula = defineFormula({
  id: 'moment-of-weight',
  title: 'Moment that fills the legs or the wall of a section as a weight above does',
  symbol: 'M_weight',
  unit: 'moment',
  expression: 'k_W * W * b',
  variables: [
    variable('k_W', '0.29 for three legs, 0.36 for four, 0.25 for a tube', 'one', 0.25, 0.36),
    variable('W', 'weight aloft beyond what the rating covers', 'force', 0, 1e5),
    variable('b', 'distance of its legs there, axis to axis; diameter of a tube', 'length', 0.05, 3),
  ],
  cite: cite('derived', 'leg force W/3 = M/(0.87·b), W/4 = M/(2·0.71·b), wall stress W/A = M/S', 'derived'),
  of: (share: number, weight: number, width: number) => share * weight * width,
});

const WEIGHT_ARM = { three: 0.29, four: 0.36, tube: 0.25 } as const;

/**
 * Moment that fills the legs or the wall of a section as a weight above does.
 *
 * 0.29·W·b (three legs), 0.36·W·b (four), b from axis to axis of the legs; W·D/4 (tube)
 *
 * @param weight the weight's force [N]
 * @param z height above ground, which decides the width of a tapering section [m]
 * @returns the moment [N·m]; 0 where the section has no shape
 * @source derived
 */
export function momentOfWeight(section: Section, weight: number, z: number, trace?: Trace): number {
  const shape = section.shape;
  if (!shape || weight === 0) return 0;
  const share = shape.kind === 'pole' ? WEIGHT_ARM.tube : shape.faces === 3 ? WEIGHT_ARM.three : WEIGHT_ARM.four;
  return evaluate(trace, momentOfWeightFormula, [share, weight, spacingAt(section, shape, z)]);
}

export const shearOfTorsionFormula = defineFormula({
  id: 'shear-of-torsion',
  title: 'Force in the braces of one lattice face from loads off the axis',
  symbol: 'V_tor',
  unit: 'force',
  expression: 'k_t * t / b',
  variables: [
    variable('k_t', '√3 for three faces, 1 for four', 'one', 1, 1.7320508),
    variable('t', 'torsion: force times distance off the axis', 'moment', 0, 1e5),
    variable('b', 'distance of its legs there, axis to axis', 'length', 0.05, 3),
  ],
  cite: cite('derived', 'statics of a torsion tube of three or four faces', 'derived'),
  of: (share: number, torsion: number, width: number) => (share * torsion) / width,
});

/**
 * Force in the braces of a lattice face from a torsion.
 *
 * √3·t/b (three faces), t/b (four), b from axis to axis of the legs
 *
 * @param torsion of what hangs off the axis [N·m]
 * @param z height above ground, which decides the width of a tapering section [m]
 * @returns the force, added to the shear [N]; 0 for a pole or a section without a shape
 * @source derived
 */
export function shearOfTorsion(section: Section, torsion: number, z: number, trace?: Trace): number {
  const shape = section.shape;
  if (shape?.kind !== 'lattice' || torsion === 0) return 0;
  return evaluate(trace, shearOfTorsionFormula, [
    shape.faces === 3 ? Math.sqrt(3) : 1,
    torsion,
    spacingAt(section, shape, z),
  ]);
}

/** Of the legs' axes; the outside width of a pole, and of legs whose thickness is not told. */
function spacingAt({ low, high }: Section, shape: SectionShape, z: number): number {
  const [below, above] = shape.width;
  const share = Math.min(1, Math.max(0, (z - low) / (high - low)));
  const leg = shape.kind === 'lattice' && shape.solid.by === 'members' ? shape.solid.leg : 0;
  return below + share * (above - below) - leg;
}
