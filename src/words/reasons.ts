import type { OpenBecause } from '../margins/index.ts';
import type { HillExclusion } from '../wind/index.ts';

/** Why a check without a comparison is open, where no missing field says it. */
export const REASON_WORDS = {
  missing: 'No rating entered covers it.',
  'readings-disagree': 'It depends on the open questions.',
  'not-given': 'It depends on what is not given.',
  'beyond-rating': 'No rating entered covers it.',
  held: 'Nothing is compared below the highest support.',
  'no-ice-rule': 'This standard has no rule for ice on it.',
  'no-hold': 'On the way, no pull can support the tower. Gear and hinge line up, or a counterpoise outweighs it.',
  'area-only': 'Only an area is stated, which gives no force.',
  balanced: 'No load is off its axis. No rule known here gives the torque of uneven gusts on a balanced antenna.',
  'no-bearing': 'The mast has no bearing in this plan, so there is no demand to compare with its rating.',
  'held-by-bearing':
    'The bearing and the lower end of the mast take its moment as two forces. None is left to compare with this rating. How much a tight clamp takes all the same is not computed.',
  unstable: 'It is unstable in the design wind. Ask an engineer.',
  'not-converged': 'Its forces find no balance in the design wind. Ask an engineer.',
  'beyond-small-movement': 'It leans too far in the design wind for these formulas. Ask an engineer.',
  'contradicts-rating': 'Its own measures do not bear out its rating. Measure again, and ask the manufacturer.',
  'brace-ends':
    'It depends on how its braces are joined at ends and crossings, and on level members. That is not checked.',
  'not-computed': 'This version does not check it.',
} as const satisfies Record<OpenBecause, string>;

/** Why a hill does not count. */
export const HILL_REASONS = {
  'too-gentle': 'its slope is too gentle',
  'too-low': 'it is lower than the standard counts in this exposure',
  'not-isolated': 'it is not isolated, or not twice as high as its surroundings',
  'lower-half': 'the tower is on its lower half',
  'beyond-reach': 'the tower is beyond its reach',
} as const satisfies Record<HillExclusion, string>;
