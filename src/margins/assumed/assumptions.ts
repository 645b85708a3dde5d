import { nth } from '../../foundation/index.ts';
import type { CheckInput } from '../check-input.ts';
import type { SomeOf } from '../scenarios.ts';
import type { Assumption, Reading } from './assumption.ts';
import { ASSUMPTION_KIND } from './assumption-kinds.ts';

/**
 * Everything that a plan does not say and that its answer takes at both plausible ends: the one list from which questions,
 * ranges, cautions and sensitivity are made.
 *
 * @source common-practice
 */
export function assumptionsOf(input: CheckInput): readonly Assumption[] {
  return input.assumed.flatMap(({ of, at }) => {
    const { readings, between, name } = ASSUMPTION_KIND[of];
    const all = readings(input, at);
    const called = name?.(input, at);
    return all.length === 0
      ? []
      : [
          {
            of,
            at,
            readings: all,
            ...(between === undefined ? {} : { between: between(input) }),
            ...(called === undefined ? {} : { name: called }),
          },
        ];
  });
}

/**
 * The plan with everything said that it does not say, in every way that is tried: first what asks most of it, last what asks
 * least. How a tower sways is tried in every way, since on both sides of a comparison less of it can be worse.
 *
 * @source derived
 */
export function plausiblePlans(input: CheckInput, assumptions: readonly Assumption[]): SomeOf<CheckInput> {
  const [worst, ...ways] = worstPlans(input, assumptions);
  // Where nothing else is assumed, what asks least is among the ways of swaying.
  if (assumptions.every(({ of }) => ASSUMPTION_KIND[of].sways)) return [worst, ...ways];
  return [worst, ...ways, assumptions.reduce((so, { readings }) => readings.at(-1)?.said(so) ?? so, input)];
}

/**
 * Of these what asks most, in every way of swaying.
 *
 * @source derived
 */
export function worstPlans(input: CheckInput, assumptions: readonly Assumption[]): SomeOf<CheckInput> {
  const said = (choose: (assumption: Assumption) => Reading | undefined) =>
    assumptions.reduce((so, assumption) => choose(assumption)?.said(so) ?? so, input);
  const swaying = assumptions.filter(({ of }) => ASSUMPTION_KIND[of].sways);
  const ways = swaying.reduce<readonly (readonly [Assumption, Reading][])[]>(
    (so, each) =>
      so.flatMap((way) =>
        apart([...each.readings, ...(each.between ?? [])]).map((reading) => [
          ...way,
          [each, reading] as [Assumption, Reading],
        ]),
      ),
    [[]],
  );
  const unfavourable = ways.map((way) => said((each) => new Map(way).get(each) ?? each.readings[0]));
  return [nth(unfavourable, 0), ...unfavourable.slice(1)];
}

/** Readings of different values. */
function apart(readings: readonly Reading[]): readonly Reading[] {
  return readings.filter(({ value }, index) => readings.findIndex((other) => other.value === value) === index);
}
