import { STANDARD_PIPES, type StandardPipe, tubeSection } from '../structure/index.ts';
import type { Assessment } from './assess.ts';
import type { Link } from './links/link.ts';
import { mastLink } from './links/mast-link.ts';
import { towerModel } from './tower-model.ts';

/** A standard tube that would do for the mast, by the plan with that tube. */
export interface TubeForMast {
  readonly pipe: StandardPipe;
  readonly use: number;
  /** [kg/m] */
  readonly weightPerLength: number;
  readonly link: Link;
}

/**
 * Standard tubes of the mast's own material and yield with which it keeps the wanted margin, the lightest first: each is
 * tried by checking the mast again with that tube from end to end.
 *
 * @param own the plan as it is [-]
 * @returns the tubes; undefined where there is no mast, or its yield or foot is not told [-]
 * @source derived
 */
export function standardTubesFor(own: Assessment): readonly TubeForMast[] | undefined {
  const { inquiry } = own;
  const { mast } = inquiry.station;
  if (mast?.yieldStrength === undefined || mast.foot === undefined) return undefined;
  const { pieces: _, wall: __, ...rest } = mast;
  const found = STANDARD_PIPES.flatMap((pipe): TubeForMast[] => {
    const { outside, wall } = pipe;
    const station = { ...inquiry.station, mast: { ...rest, outside, wall } };
    const [link] = mastLink(towerModel({ ...inquiry, station }));
    const use = link?.result?.use;
    if (!link || use === undefined || use > 1 - inquiry.wanted.margin) return [];
    return [
      { pipe, use, weightPerLength: tubeSection({ outside, wall, material: mast.material }).weightPerLength, link },
    ];
  });
  return found.sort((a, b) => a.weightPerLength - b.weightPerLength);
}
