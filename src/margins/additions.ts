import { type Assessment, assess } from './assess.ts';
import type { Inquiry } from './inquiry.ts';
import type { Link } from './links/link.ts';

/** One link as it is and as it would be; absent on one side where it is not there. */
export interface LinkChange {
  readonly id: string;
  readonly before?: Link;
  readonly after?: Link;
}

/** The plan as one proposal would leave it. */
export interface Addition {
  readonly name: string;
  readonly assessment: Assessment;
  /** Place in the ranking, 1 the best. */
  readonly rank: number;
  readonly links: readonly LinkChange[];
}

export interface Additions {
  readonly before: Assessment;
  /** In the order asked. */
  readonly after: readonly Addition[];
}

/**
 * A plan and ways to change it, before and after for every link, ranked by the margin of the weakest.
 *
 * over last; then by the largest use of what is shown, then by the lowest gust held to
 *
 * @param before the plan as it is [-]
 * @param proposals the plan as each would leave it [-]
 * @returns the answers and their ranks [-]
 * @throws Refusal for what cannot be computed
 * @source derived
 */
export function additionsOf(
  before: Inquiry,
  proposals: readonly { readonly name: string; readonly inquiry: Inquiry }[],
): Additions {
  const now = assess(before);
  const then = proposals.map(({ name, inquiry }) => ({ name, assessment: assess(inquiry) }));
  const order = [...then].sort((a, b) => compare(a.assessment, b.assessment));
  return {
    before: now,
    after: then.map((each) => ({
      ...each,
      rank: order.indexOf(each) + 1,
      links: changes(now.links, each.assessment.links),
    })),
  };
}

function compare(a: Assessment, b: Assessment): number {
  const over = Number(a.soFar === 'over') - Number(b.soFar === 'over');
  if (over !== 0) return over;
  const [useA, useB] = [largestUse(a), largestUse(b)];
  if (Math.abs(useA - useB) > 1e-9) return useA - useB;
  return lowestGust(b) - lowestGust(a);
}

/** Of links with a use, shown or not: what is not shown at its bad end may be no better. */
function largestUse({ links }: Assessment): number {
  return links.reduce((most, { result }) => Math.max(most, result?.use ?? 0), 0);
}

function lowestGust({ links }: Assessment): number {
  return links.reduce((least, { result }) => Math.min(least, result?.holdsTo?.gust ?? least), Number.POSITIVE_INFINITY);
}

function changes(before: readonly Link[], after: readonly Link[]): readonly LinkChange[] {
  const ids = [...new Set([...before, ...after].map(({ id }) => id))];
  return ids.map((id) => {
    const was = before.find((link) => link.id === id);
    const is = after.find((link) => link.id === id);
    return { id, ...(was ? { before: was } : {}), ...(is ? { after: is } : {}) };
  });
}
