import type { Mast, Station } from './station.ts';
import { sharedBending } from './tube-section.ts';

/** Something that hangs on the tower or rides on its mast, as a weight. */
export interface AppurtenanceMass {
  /** All of it [kg]. */
  readonly mass: number;
  /** Between these heights, spread evenly [m]. */
  readonly low: number;
  readonly high: number;
  /** Where the tower takes it, if in one place: what the mast carries comes down at the mast's foot [m]. */
  readonly carriedAt?: number;
  /** It rides on the mast, which stands in the uppermost section. */
  readonly onMast?: true;
  /** It balances the tower below its hinge. */
  readonly counterpoise?: true;
  /** Off the axis [m]. */
  readonly offset: number;
}

/**
 * Everything on a tower that has weight, the tower itself left out: tubes of the mast, rotator, loads, lines, counterpoise.
 *
 * W = n·w; tubes of a mast by area and density, lines by their length
 *
 * @param station what stands where; what has no weight given adds none
 * @source derived
 */
export function appurtenanceMasses(station: Station): readonly AppurtenanceMass[] {
  const { tower, mast, rotator, loads, cables } = station;
  const footOfMast = mast?.foot ?? tower.top;
  const masses: AppurtenanceMass[] = [];
  for (const { mass, from, to } of mast ? tubesOf(mast) : []) {
    masses.push({
      mass,
      low: footOfMast + from,
      high: footOfMast + to,
      carriedAt: footOfMast,
      onMast: true,
      offset: 0,
    });
  }
  if (rotator?.weight !== undefined) {
    masses.push({
      mass: rotator.weight,
      low: footOfMast,
      high: footOfMast,
      carriedAt: footOfMast,
      onMast: true,
      offset: 0,
    });
  }
  for (const { on, count, weight, low, high, offset } of loads) {
    if (weight === undefined) continue;
    const carriedAt = on === 'mast' ? Math.min(low, footOfMast) : low;
    masses.push({ mass: count * weight, low, high, carriedAt, ...(on === 'mast' ? { onMast: true } : {}), offset });
  }
  for (const { count, weight, low, high } of cables) {
    if (weight !== undefined) masses.push({ mass: count * weight * (high - low), low, high, offset: 0 });
  }
  if (tower.counterpoise && tower.hingeHeight !== undefined) {
    const { mass, below } = tower.counterpoise;
    const [carriedAt, place] = [tower.hingeHeight, tower.hingeHeight - below];
    masses.push({ mass, low: place, high: place, carriedAt, counterpoise: true, offset: 0 });
  }
  return masses;
}

function tubesOf(mast: Mast): readonly { readonly mass: number; readonly from: number; readonly to: number }[] {
  const whole = mast.wall === undefined ? [] : [{ outside: mast.outside, wall: mast.wall, from: 0, to: mast.length }];
  return (mast.pieces ?? whole).map(({ outside, wall, from, to }) => ({
    mass: sharedBending([{ outside, wall, material: mast.material }]).weightPerLength * (to - from),
    from,
    to,
  }));
}

/**
 * What hides a weight: pointers to what a plan would have to tell so that `appurtenanceMasses` is whole.
 *
 * @returns the pointers, none where all weights are known
 */
export function weightsNotGiven(station: Station): readonly string[] {
  const { mast, rotator, loads, cables } = station;
  return [
    ...(mast && mast.wall === undefined && mast.pieces === undefined ? ['/mast/wall'] : []),
    // What turns has a rotator, told or not.
    ...((rotator ?? loads.some(turnsOnMast)) && rotator?.weight === undefined ? ['/rotator/weight'] : []),
    ...loads.filter((load) => load.weight === undefined).map((load) => `${load.at}/weight`),
    ...cables.filter((run) => run.weight === undefined).map((run) => `${run.at}/weight`),
  ];
}

/** The same of the tower and all that hangs on it. */
export function allWeightsNotGiven(station: Station): readonly string[] {
  return [...(station.tower.weight === undefined ? ['/tower/weight'] : []), ...weightsNotGiven(station)];
}

const turnsOnMast = ({ on, turns }: Station['loads'][number]): boolean => on === 'mast' && turns;
