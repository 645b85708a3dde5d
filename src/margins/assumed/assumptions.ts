import type { CheckInput } from '../check-input.ts';
import type { Assumption } from './assumption.ts';
import { ASSUMPTION_KIND } from './assumption-kinds.ts';

/**
 * Everything that a plan does not say and that its answer takes at both plausible ends: the one list from which questions,
 * ranges, cautions and sensitivity are made.
 *
 * @source common-practice
 */
export function assumptionsOf(input: CheckInput): readonly Assumption[] {
  return input.assumed.flatMap(({ of, at }) => {
    const { readings, name } = ASSUMPTION_KIND[of];
    const all = readings(input, at);
    const called = name?.(input, at);
    return all.length === 0 ? [] : [{ of, at, readings: all, ...(called === undefined ? {} : { name: called }) }];
  });
}

/**
 * The plan with everything said that it does not say: what asks most of it, or what asks least.
 *
 * @param end of what is plausible
 */
export function filledIn(
  input: CheckInput,
  assumptions: readonly Assumption[],
  end: 'unfavourable' | 'between' | 'favourable',
): CheckInput {
  return assumptions.reduce((so, { readings }) => {
    const reading = end === 'favourable' ? readings.at(-1) : readings[end === 'between' && readings.length > 2 ? 1 : 0];
    return reading === undefined ? so : reading.said(so);
  }, input);
}
