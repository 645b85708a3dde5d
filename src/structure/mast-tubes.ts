import type { MastPiece } from './mast-beam.ts';
import type { Mast } from './station.ts';
import { sharedBending, type Tube } from './tube-section.ts';

/**
 * How much thinner than the bore around it an inner tube may be so that the two bend as one [m]: 2 mm, about 5/64 in. Tubes
 * that are meant to slide into each other have less; a pipe in the next larger size has twice as much and is shimmed.
 * @source common-practice
 */
export const LOOSEST_FIT = 0.002;

/** A stretch of a mast of one outside [m]. */
export interface MastOutside {
  readonly low: number;
  readonly high: number;
  readonly outside: number;
}

/**
 * What of a mast the wind and the ice meet: its outermost tube at each height, from the foot up.
 *
 * D(z) = max D of the tubes there
 *
 * @param foot height of its foot above ground [m]
 * @returns stretches from foot to tip [m]
 * @source derived
 */
export function outsideAlong(mast: Mast, foot: number): readonly MastOutside[] {
  const { tip, pieces } = mast;
  if (!pieces) return tip > foot ? [{ low: foot, high: tip, outside: mast.outside }] : [];
  const tubes = pieces.map(({ from, to, outside }) => ({ low: foot + from, high: foot + to, outside }));
  const stretches: MastOutside[] = [];
  for (const { low, high, within } of stretchesOf(tubes, foot, tip)) {
    const outside = within.reduce((most, tube) => Math.max(most, tube.outside), 0) || mast.outside;
    const last = stretches.at(-1);
    if (last && last.outside === outside) stretches[stretches.length - 1] = { ...last, high };
    else stretches.push({ low, high, outside });
  }
  return stretches;
}

/** Between neighbouring ends of tubes, from one height to another: the tubes that cover it. */
function stretchesOf<T extends { readonly low: number; readonly high: number }>(
  tubes: readonly T[],
  from: number,
  to: number,
): readonly { readonly low: number; readonly high: number; readonly within: readonly T[] }[] {
  const inside = tubes.flatMap(({ low, high }) => [low, high]).filter((z) => z > from && z < to);
  const ends = [...new Set([from, ...inside, to])].sort((a, b) => a - b);
  return ends.slice(1).map((high, index) => {
    const low = ends[index] as number;
    const middle = (low + high) / 2;
    return { low, high, within: tubes.filter((tube) => tube.low < middle && middle < tube.high) };
  });
}

/**
 * Tubes that stand inside each other, parted where one is loose in the next: those of a group bend as one.
 *
 * bore − outside > 2 mm
 *
 * @returns the groups from the outermost in
 * @example tubesThatFit([{ outside: 0.06, wall: 0.004 }, { outside: 0.04, wall: 0.003 }]).length // 2
 * @source common-practice
 */
export function tubesThatFit<T extends Pick<Tube, 'outside' | 'wall'>>(tubes: readonly T[]): readonly (readonly T[])[] {
  const groups: T[][] = [];
  for (const tube of tubes.toSorted((a, b) => b.outside - a.outside)) {
    const around = groups.at(-1)?.at(-1);
    if (around && around.outside - 2 * around.wall - tube.outside <= LOOSEST_FIT) groups.at(-1)?.push(tube);
    else groups.push([tube]);
  }
  return groups;
}

/**
 * The tubes of a mast that may be counted on: where one is loose in another neither is sure to help the other, so that over
 * that height those alone stay that are allowed the least moment.
 *
 * M_all = min over what fits together
 *
 * A loose sleeve takes its share only where the gap has closed, and a loose joint hands the whole moment from one tube to the
 * other. One of unknown strength stays, so that nothing is shown there.
 *
 * @returns the tubes that count, cut where a loose one begins or ends
 * @throws Refusal as sharedBending does
 * @source derived
 */
export function creditedPieces(pieces: readonly MastPiece[]): readonly MastPiece[] {
  const low = Math.min(...pieces.map((piece) => piece.low));
  const high = Math.max(...pieces.map((piece) => piece.high));
  const stretches = stretchesOf(pieces, low, high);
  if (stretches.every(({ within }) => tubesThatFit(within).length <= 1)) return pieces;
  return stretches.flatMap((stretch) =>
    weakest(tubesThatFit(stretch.within)).map((piece) => ({ ...piece, low: stretch.low, high: stretch.high })),
  );
}

function weakest(groups: readonly (readonly MastPiece[])[]): readonly MastPiece[] {
  const [first = [], ...others] = groups;
  if (others.length === 0) return first;
  const allowed = (group: readonly MastPiece[]) => sharedBending(group).allowed?.surely ?? 0;
  return others.reduce((least, group) => (allowed(group) < allowed(least) ? group : least), first);
}
