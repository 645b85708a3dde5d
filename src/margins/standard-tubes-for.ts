import { STANDARD_PIPES, type StandardPipe, tubeSection } from '../structure/index.ts';
import type { Assessment } from './assess.ts';
import type { Check } from './checks/check.ts';
import { mastCheck } from './checks/mast-check.ts';
import { towerModel } from './tower-model.ts';

/** A standard tube that would do for the mast, by the plan with that tube. */
export interface TubeForMast {
  readonly pipe: StandardPipe;
  readonly ratio: number;
  /** [kg/m] */
  readonly weightPerLength: number;
  readonly check: Check;
}

/**
 * Standard tubes of the mast's own material and yield with which it keeps the wanted margin, the lightest first: each is
 * tried by checking the mast again with that tube from end to end.
 *
 * @returns the tubes; undefined where there is no mast, or its yield or foot is not told
 */
export function standardTubesFor(own: Assessment): readonly TubeForMast[] | undefined {
  const { input } = own.model;
  const { mast } = input.station;
  if (mast?.yieldStrength === undefined || mast.foot === undefined) return undefined;
  const { pieces: _, wall: __, ...rest } = mast;
  const found = STANDARD_PIPES.flatMap((pipe): TubeForMast[] => {
    const { outside, wall } = pipe;
    const station = { ...input.station, mast: { ...rest, outside, wall } };
    const [check] = mastCheck(towerModel({ ...input, station }));
    const ratio = check?.result?.ratio;
    if (!check || ratio === undefined || ratio > 1 - input.wanted.margin) return [];
    return [
      { pipe, ratio, weightPerLength: tubeSection({ outside, wall, material: mast.material }).weightPerLength, check },
    ];
  });
  return found.sort((a, b) => a.weightPerLength - b.weightPerLength);
}
