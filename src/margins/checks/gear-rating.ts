import type { RaisingGear } from '../../structure/index.ts';
import type { Rating } from '../rating.ts';

/**
 * What the first rating of gear says of its strength.
 *
 * @returns working load and breaking strength [N], as given; nothing where no gear is rated
 */
export function ratedGear(ratings: readonly Rating[]): Pick<RaisingGear, 'workingLoad' | 'breakingLoad'> | undefined {
  for (const { of, claim } of ratings) {
    if (of !== 'gear' || claim.kind !== 'gear') continue;
    return {
      ...(claim.working === undefined ? {} : { workingLoad: claim.working }),
      ...(claim.breaking === undefined ? {} : { breakingLoad: claim.breaking }),
    };
  }
  return undefined;
}
