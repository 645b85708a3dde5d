import { type HillAnswer, told } from '../answer/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import type { HillHelp } from '../margins/index.ts';
import type { HillCondition } from '../wind/index.ts';
import { figures, HILL_REASONS, inWords, sentence } from '../words/index.ts';
import { quantity } from './quantity.ts';

/** What a hill is to its method, in the reader's units. */
export function hillDocument(help: HillHelp, system: UnitSystem): HillAnswer {
  return {
    says: hillSays(help, system),
    counts: help.counts,
    factor: help.factor,
    wouldBe: help.wouldBe,
    height: quantity(help.height, 'length', system),
    conditions: help.conditions.map((condition) =>
      told<HillAnswer['conditions'][number]>({
        condition: condition.why,
        holds: condition.holds,
        says: conditionSays(condition, system),
      }),
    ),
    profile: help.profile.map(({ distance, factor, here }) => ({
      distance: quantity(distance, 'length', system),
      factor,
      here,
    })),
  };
}

/** The hill in two sentences. */
export function hillSays(
  { counts, factor, wouldBe, height, conditions, profile }: HillHelp,
  system: UnitSystem,
): string {
  const at = `at ${inWords(height, 'length', system)}`;
  if (!counts) {
    const reasons = conditions.filter((each) => each.holds === false).map((each) => HILL_REASONS[each.why]);
    return `The hill does not count: ${reasons.map((each, place) => (place === 0 ? each : sentence(each))).join('. ')}. If it counted, pressure would be ${figures(wouldBe)} times as high ${at}.`;
  }
  const most = profile.reduce((best, point) => (point.factor > best.factor ? point : best));
  // Where its crest does not count for more by this standard, or by less than the figures tell.
  const crest =
    figures(most.factor) === figures(factor)
      ? 'Nowhere on its slope is it more.'
      : `At most, ${placeOf(most.distance, system)}, it would be ${figures(most.factor)}.`;
  return `The hill multiplies the pressure by ${figures(factor)} ${at}. ${crest}`;
}

function placeOf(distance: number, system: UnitSystem): string {
  if (distance === 0) return 'at the crest';
  return `${inWords(Math.abs(distance), 'length', system)} ${distance < 0 ? 'before' : 'behind'} the crest`;
}

function conditionSays({ why, holds, of, given, limit }: HillCondition, system: UnitSystem): string {
  const figure = (value: number | undefined) =>
    of === 'slope' ? figures(value ?? 0) : inWords(value ?? 0, 'length', system);
  if (of === 'surroundings') {
    const said = holds === undefined ? 'not stated, assumed' : holds ? 'as entered' : 'not so';
    return `It is isolated and twice as high as its surroundings within ${system === 'us' ? '2 miles' : '3.2 km'}: ${said}.`;
  }
  if (of === 'distance') {
    const only = holds ? '' : ' only';
    return `The tower is ${figure(given)} from the crest; the standard counts the hill up to ${figure(limit)}${only}.`;
  }
  const bound = why === 'too-gentle' || why === 'too-low' ? 'at least' : 'at most';
  return `${OF_WORDS[of]} ${figure(given)}; the standard requires ${bound} ${figure(limit)}${holds ? '' : ': not met'}.`;
}

const OF_WORDS = {
  slope: 'Its slope is',
  height: 'Its height is',
} as const;
