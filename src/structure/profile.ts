import { emptyHeadingSum, type HeadingSum, worstHeading, worstOfHeadings } from '../areas/index.ts';
import { zeros } from '../foundation/index.ts';
import { type Level, ONE_HEIGHT } from './level.ts';
import type { Slice, SliceForces, SlicesInWind } from './slices-in-wind.ts';
import type { Mast, Tower } from './station.ts';
import type { WindItem } from './wind-item.ts';

/**
 * Sums of wind forces that can be asked for their worst heading: what is alike from all sides, what turns together, and
 * what faces its own way. With rotation free the maxima add.
 */
export interface GroupedSum {
  readonly still: number;
  readonly turning: HeadingSum;
  readonly fixed: HeadingSum;
}

/** Number of figures a grouped sum takes in the flat arrays of a profile. */
const FIGURES = 7;

/** Shear and moment at every level. */
export interface Profile {
  readonly levels: readonly Level[];
  /** Grouped sums behind both; absent where all is alike from all sides. */
  readonly sums?: { readonly shear: number[]; readonly moment: number[] };
  /** Largest shear over headings [N]. */
  readonly shear: number[];
  /** Largest moment over headings [N·m]. */
  readonly moment: number[];
  /** Torsion of what hangs off the axis, each thing at its own worst: broadside or endwise [N·m]. */
  readonly torsion: number[];
}

/** How the mast hands over its load. */
export interface MastHold {
  readonly foot: number;
  readonly bearing?: number;
}

/**
 * Where the mast is held, for the sums.
 *
 * @param mast the mast, if there is one
 * @returns foot and bearing; without a mast the tower's top
 */
export function mastHold(mast: Mast | undefined, tower: Tower): MastHold {
  const foot = mast?.foot ?? tower.top;
  return mast?.bearing !== undefined && mast.bearing > foot ? { foot, bearing: mast.bearing } : { foot };
}

/**
 * Shear and moment at every level from the forces on the slices. Between its foot and its bearing the mast loads the tower
 * by a couple, R_b = ΣF(z − z_f)/s at the bearing; below its foot by the plain sums.
 *
 * V = ΣF, M = ΣF(z_i − z); couple: V = R_b, M = R_b(z_b − z)
 *
 * @param forces on the slices [N]
 * @source derived
 */
export function profileOf(
  slicesInWind: SlicesInWind,
  forces: SliceForces,
  levels: readonly Level[],
  hold: MastHold,
): Profile {
  if (slicesInWind.allStill && slicesInWind.onMast.length === 0) return stillProfile(slicesInWind, forces, levels);
  const count = levels.length;
  const shearSums = zeros(count * FIGURES);
  const momentSums = zeros(count * FIGURES);
  const shear = zeros(count);
  const moment = zeros(count);
  const torsion = zeros(count);
  const towerShear = zeros(FIGURES);
  const towerFirst = zeros(FIGURES);
  const mastShear = zeros(FIGURES);
  const mastFirst = zeros(FIGURES);
  const twist = new Twist(slicesInWind);
  for (const number of slicesInWind.onMast) {
    gather(slicesInWind, forces, number, mastShear, mastFirst);
    twist.add(number, forces);
  }
  const twistOfMast = twist.taken();
  const span = hold.bearing === undefined ? 0 : hold.bearing - hold.foot;
  let next = 0;
  for (let index = 0; index < count; index += 1) {
    const { z, zone } = levels[index] as Level;
    while (next < slicesInWind.onTower.length) {
      const number = slicesInWind.onTower[next] as number;
      if ((slicesInWind.slices[number] as Slice).z < z - ONE_HEIGHT) break;
      gather(slicesInWind, forces, number, towerShear, towerFirst);
      twist.add(number, forces);
      next += 1;
    }
    const start = index * FIGURES;
    for (let figure = 0; figure < FIGURES; figure += 1) {
      let V = towerShear[figure] as number;
      let M = (towerFirst[figure] as number) - z * V;
      if (zone === 'plain') {
        V += mastShear[figure] as number;
        M += (mastFirst[figure] as number) - z * (mastShear[figure] as number);
      } else if (zone === 'couple') {
        const atBearing = ((mastFirst[figure] as number) - hold.foot * (mastShear[figure] as number)) / span;
        V += atBearing;
        M += atBearing * ((hold.bearing as number) - z);
      }
      shearSums[start + figure] = V;
      momentSums[start + figure] = M;
    }
    shear[index] = worstFrom(shearSums, start);
    moment[index] = worstFrom(momentSums, start);
    torsion[index] = twist.sum() + (zone === 'plain' ? twistOfMast : 0);
  }
  return { levels, sums: { shear: shearSums, moment: momentSums }, shear, moment, torsion };
}

/** The same for things on the tower that are alike from all sides: the tower itself, its lines. */
function stillProfile(slicesInWind: SlicesInWind, forces: SliceForces, levels: readonly Level[]): Profile {
  const shear = zeros(levels.length);
  const moment = zeros(levels.length);
  const torsion = zeros(levels.length);
  let V = 0;
  let first = 0;
  let twist = 0;
  let next = 0;
  for (let index = 0; index < levels.length; index += 1) {
    const { z } = levels[index] as Level;
    while (next < slicesInWind.onTower.length) {
      const number = slicesInWind.onTower[next] as number;
      const slice = slicesInWind.slices[number] as Slice;
      if (slice.z < z - ONE_HEIGHT) break;
      const force = forces.front[number] as number;
      V += force;
      first += force * slice.z;
      twist += force * (slicesInWind.items[slice.item] as WindItem).offset;
      next += 1;
    }
    shear[index] = V;
    moment[index] = first - z * V;
    torsion[index] = twist;
  }
  return { levels, shear, moment, torsion };
}

/** Torsion of things off the axis: of each the sum along or the sum across, whichever is more, at its distance. */
class Twist {
  readonly #windward: SlicesInWind;
  readonly #sums = new Map<number, [front: number, side: number]>();

  constructor(slicesInWind: SlicesInWind) {
    this.#windward = slicesInWind;
  }

  add(number: number, forces: SliceForces): void {
    const { item } = this.#windward.slices[number] as Slice;
    if ((this.#windward.items[item] as WindItem).offset === 0) return;
    const [front, side] = this.#sums.get(item) ?? [0, 0];
    this.#sums.set(item, [front + (forces.front[number] as number), side + (forces.side[number] as number)]);
  }

  sum(): number {
    let sum = 0;
    for (const [item, [front, side]] of this.#sums)
      sum += Math.max(front, side) * (this.#windward.items[item] as WindItem).offset;
    return sum;
  }

  /** The sum; adding begins anew. */
  taken(): number {
    const sum = this.sum();
    this.#sums.clear();
    return sum;
  }
}

function gather(
  slicesInWind: SlicesInWind,
  forces: SliceForces,
  number: number,
  shear: number[],
  first: number[],
): void {
  const slice = slicesInWind.slices[number] as Slice;
  const item = slicesInWind.items[slice.item] as WindItem;
  addForce(item, forces, number, 1, slice.z, shear, first);
}

/** A share of the force on a slice, and its first moment about the ground, into grouped sums. */
function addForce(
  item: WindItem,
  forces: SliceForces,
  number: number,
  share: number,
  z: number,
  shear: number[],
  first: number[],
): void {
  const front = share * (forces.front[number] as number);
  const side = share * (forces.side[number] as number);
  if (item.turn === 'still' || item.turn === 'own-worst') {
    shear[0] = (shear[0] as number) + front;
    first[0] = (first[0] as number) + front * z;
  } else {
    const start = item.turn === 'turning' ? 1 : 4;
    const mean = (front + side) / 2;
    const half = (front - side) / 2;
    const cosine = half * Math.cos(2 * item.heading);
    const sine = half * Math.sin(2 * item.heading);
    shear[start] = (shear[start] as number) + mean;
    shear[start + 1] = (shear[start + 1] as number) + cosine;
    shear[start + 2] = (shear[start + 2] as number) + sine;
    first[start] = (first[start] as number) + mean * z;
    first[start + 1] = (first[start + 1] as number) + cosine * z;
    first[start + 2] = (first[start + 2] as number) + sine * z;
  }
}

function worstFrom(sums: number[], start: number): number {
  return (
    (sums[start] as number) +
    (sums[start + 1] as number) +
    Math.hypot(sums[start + 2] as number, sums[start + 3] as number) +
    (sums[start + 4] as number) +
    Math.hypot(sums[start + 5] as number, sums[start + 6] as number)
  );
}

/**
 * One grouped sum of a profile.
 *
 * @param level number of the level [-]
 */
export function groupedSum(profile: Profile, of: 'shear' | 'moment', level: number): GroupedSum {
  const sums = profile.sums?.[of];
  if (!sums) return { still: profile[of][level] as number, turning: emptyHeadingSum(), fixed: emptyHeadingSum() };
  const start = level * FIGURES;
  const heading = (offset: number): HeadingSum => ({
    mean: sums[start + offset] as number,
    cosine: sums[start + offset + 1] as number,
    sine: sums[start + offset + 2] as number,
  });
  return { still: sums[start] as number, turning: heading(1), fixed: heading(4) };
}

/**
 * A grouped sum at headings.
 *
 * Σ still + ½Σ(N + T) + ½Σ(N − T)·cos 2(θ − ψ) of each group
 *
 * @param at wind heading of the fixed group, heading of the turning one [rad]
 * @returns the value; of a group without a heading its mean [N or N·m]
 * @source derived
 */
export function groupsAt(sum: GroupedSum, at: { readonly fixed?: number; readonly turning?: number }): number {
  const of = ({ mean, cosine, sine }: HeadingSum, heading = 0) =>
    mean + cosine * Math.cos(2 * heading) + sine * Math.sin(2 * heading);
  return sum.still + of(sum.turning, at.turning) + of(sum.fixed, at.fixed);
}

/**
 * The worst of a grouped sum and the headings at which it comes about.
 *
 * @returns value, wind heading of the fixed group, and heading of the turning group against rotator zero [-], headings [rad]
 */
export function worstOfGroups(sum: GroupedSum): {
  readonly value: number;
  readonly fixed?: number;
  readonly turning?: number;
} {
  const value = sum.still + worstOfHeadings(sum.turning) + worstOfHeadings(sum.fixed);
  const moves = (group: HeadingSum) => Math.hypot(group.cosine, group.sine) > 1e-9 * group.mean;
  return {
    value,
    ...(moves(sum.fixed) ? { fixed: worstHeading(sum.fixed) } : {}),
    ...(moves(sum.turning) ? { turning: worstHeading(sum.turning) } : {}),
  };
}

/**
 * Largest force the braces of a tapering lattice see: its legs, meeting at a height, carry part of the shear.
 *
 * S = |V − M/(z_a − z)|
 *
 * @param level number of the level [-]
 * @param apex height at which the legs would meet [m]; Infinity where they stand upright
 * @returns the force [N], 0 or more
 * @source derived
 */
export function bracedShear(profile: Profile, level: number, apex: number): number {
  if (apex === Number.POSITIVE_INFINITY) return profile.shear[level] as number;
  const arm = apex - (profile.levels[level] as Level).z;
  const { sums } = profile;
  if (!sums) return Math.abs((profile.shear[level] as number) - (profile.moment[level] as number) / arm);
  const start = level * FIGURES;
  const figure = (offset: number) =>
    (sums.shear[start + offset] as number) - (sums.moment[start + offset] as number) / arm;
  const middle = figure(0) + figure(1) + figure(4);
  const swing = Math.hypot(figure(2), figure(3)) + Math.hypot(figure(5), figure(6));
  return Math.abs(middle) + swing;
}

/**
 * Largest force that hung things put into the braces of a tapering lattice where some hang above the point at which its legs
 * would meet: those push the other way, and may be turned out of the wind while the others are in it.
 *
 * S = max(ΣF·w over w > 0, ΣF·|w| over w < 0), w = 1 − (z_i − z)/(z_a − z); in the couple w = R(1 − (z_b − z)/(z_a − z))
 *
 * @param forces on the slices [N]
 * @param apex height at which the legs would meet [m]
 * @returns the force [N], 0 or more
 * @source derived
 */
export function bracedEitherWay(
  slicesInWind: SlicesInWind,
  forces: SliceForces,
  level: Level,
  apex: number,
  hold: MastHold,
): number {
  const [along, against] = [zeros(FIGURES), zeros(FIGURES)];
  const unused = zeros(FIGURES);
  slicesInWind.slices.forEach(({ z, item: which }, number) => {
    const item = slicesInWind.items[which] as WindItem;
    const share = shareInBraces(item, z, level, apex, hold);
    if (share !== 0) addForce(item, forces, number, Math.abs(share), z, share > 0 ? along : against, unused);
  });
  return Math.max(worstFrom(along, 0), worstFrom(against, 0));
}

/**
 * Share of a force that the braces of a tapering lattice see; below zero where it pushes the other way.
 *
 * 1 − (z_i − z)/(z_a − z)
 *
 * @param height of the force [m]
 * @param apex height at which the legs would meet [m]
 * @returns the share [-]; 0 where the force does not reach the level
 */
export function shareInBraces(
  item: Pick<WindItem, 'carriedBy'>,
  height: number,
  level: Level,
  apex: number,
  hold: MastHold,
): number {
  const { z, zone } = level;
  if (item.carriedBy === 'mast' && zone === 'couple') {
    const bearing = hold.bearing as number;
    return ((height - hold.foot) / (bearing - hold.foot)) * (1 - (bearing - z) / (apex - z));
  }
  if (item.carriedBy === 'mast' ? zone === 'clear' : height < z - ONE_HEIGHT) return 0;
  return 1 - (height - z) / (apex - z);
}
