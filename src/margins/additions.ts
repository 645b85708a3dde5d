import { nth, Refusal } from '../foundation/index.ts';
import { type Assessment, assess } from './assess.ts';
import type { CheckInput } from './check-input.ts';
import type { Check } from './checks/check.ts';
import { CHECK_KIND } from './checks/check-kinds.ts';

/** One check as it is and as it would be; absent on one side where it is not there. */
export interface CheckChange {
  readonly id: string;
  readonly before?: Check;
  readonly after?: Check;
}

/** The plan as one proposal would leave it. */
export interface Addition {
  readonly name: string;
  readonly assessment: Assessment;
  /** Place in the ranking, 1 the best. */
  readonly rank: number;
  readonly checks: readonly CheckChange[];
}

export interface Additions {
  readonly before: Assessment;
  /** In the order asked. */
  readonly after: readonly Addition[];
}

/** One plan to assess. */
interface Asked {
  /** Of the proposal; the plan as it is has none. */
  readonly name?: string;
  readonly input: CheckInput;
  /** Where what is refused of it stands in the request. */
  readonly placed: (pointer: string) => { readonly pointer: string };
}

/**
 * The whole answer to one of the plans to be compared.
 *
 * @param asked the plan, its proposal's name, and where its parts stand in the request
 * @throws Refusal for what cannot be computed, with the proposal's name and its place in the request
 */
export function assessAsked(asked: Asked): Assessment {
  const { name, input, placed } = asked;
  try {
    return assess(input);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const says = name === undefined ? error.message : `${name}: ${error.message}`;
    throw new Refusal(error.code, says, placed(error.at).pointer.replace(/^#/, ''));
  }
}

/**
 * A plan and ways to change it, before and after for every check, ranked by what each leaves at worst.
 *
 * @param then the plan as each proposal would leave it
 * @source project-rule
 */
export function additionsOf(
  before: Assessment,
  then: readonly { readonly name: string; readonly assessment: Assessment }[],
): Additions {
  const ranks = ranksOf(then.map(({ assessment }) => assessment));
  return {
    before,
    after: then.map((each, index) => ({
      ...each,
      rank: nth(ranks, index),
      checks: changes(before.checks, each.assessment.checks),
    })),
  };
}

/**
 * The place of each of several stations by what it leaves at worst, 1 the best.
 *
 * last where a fall reaches too far; before it by the fewest parts of the structure that are not at or below 1 at worst, by the
 * fewest such loads, by the fewest things not given, by the largest ratio, by the lowest gust held to, by the distance of a
 * fall, by the order given. An open part and one that is over count alike, so that nothing wins by what it does not give.
 *
 * @returns the places, in the order given [-]
 * @source project-rule
 */
export function ranksOf(assessments: readonly Assessment[]): readonly number[] {
  const order = assessments
    .map((assessment, index) => ({ index, marks: marksOf(assessment) }))
    .sort((a, b) => firstDifference(a.marks, b.marks))
    .map(({ index }) => index);
  return assessments.map((_, index) => order.indexOf(index) + 1);
}

/** What a ranking goes by, each the smaller the better. */
function marksOf({ checks, parts, input }: Assessment): readonly number[] {
  const aboveOne = parts.filter(({ verdict }) => verdict === 'over' || verdict === 'open').map(({ kind }) => kind);
  const [ofLoads, ofFall] = (['load', 'fall'] as const).map((kind) => aboveOne.filter((each) => each === kind).length);
  const ratiosOf = (fall: boolean) =>
    checks.flatMap(({ kind, result }) =>
      result && (CHECK_KIND[kind].loadedBy === 'fall') === fall ? [result.ratio] : [],
    );
  const ratios = ratiosOf(false);
  const gusts = checks.flatMap(({ result }) => (result?.holdsTo ? [result.holdsTo.gust] : []));
  const weights = input.station.loads.flatMap(({ at, weight }) => (weight === undefined ? [`${at}/weight`] : []));
  return [
    ofFall as number,
    aboveOne.length - (ofLoads as number) - (ofFall as number),
    ofLoads as number,
    // A weight that is not given may only lower a ratio that is shown all the same.
    new Set([...checks.flatMap(({ needs }) => needs), ...weights]).size,
    // Nothing known is not the same as nothing asked.
    ratios.length === 0 ? Number.POSITIVE_INFINITY : Math.max(...ratios),
    gusts.length === 0 ? 0 : -Math.min(...gusts),
    // How far it may fall says nothing of what it takes.
    Math.max(0, ...ratiosOf(true)),
  ];
}

function firstDifference(a: readonly number[], b: readonly number[]): number {
  for (const [index, mark] of a.entries()) {
    const other = nth(b, index);
    // Uses and gusts that differ in the last bits are the same.
    if (mark !== other && !(Math.abs(mark - other) <= 1e-9)) return mark - other;
  }
  return 0;
}

function changes(before: readonly Check[], after: readonly Check[]): readonly CheckChange[] {
  const ids = [...new Set([...before, ...after].map(({ id }) => id))];
  return ids.map((id) => {
    const was = before.find((check) => check.id === id);
    const is = after.find((check) => check.id === id);
    return { id, ...(was ? { before: was } : {}), ...(is ? { after: is } : {}) };
  });
}
