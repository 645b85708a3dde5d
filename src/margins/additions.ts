import { Refusal } from '../foundation/index.ts';
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

/** One plan to assess. */
interface Asked {
  /** Of the proposal; the plan as it is has none. */
  readonly name?: string;
  readonly inquiry: Inquiry;
  /** Where what is refused of it stands in the request. */
  readonly placed: (pointer: string) => { readonly pointer: string };
}

/**
 * The whole answer to one of the plans to be compared.
 *
 * @param asked the plan, its proposal's name, and where its parts stand in the request [-]
 * @returns the answer [-]
 * @throws Refusal for what cannot be computed, with the proposal's name and its place in the request
 * @source derived
 */
export function assessAsked(asked: Asked): Assessment {
  const { name, inquiry, placed } = asked;
  try {
    return assess(inquiry);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const says = name === undefined ? error.message : `${name}: ${error.message}`;
    throw new Refusal(error.code, says, placed(error.at).pointer.replace(/^#/, ''));
  }
}

/**
 * A plan and ways to change it, before and after for every link, ranked by the margin of the weakest.
 *
 * over last, not shown before it; then by the fewest links left unshown that are shown elsewhere, by the largest use, by
 * the lowest gust held to, by the order asked
 *
 * @param before the plan as it is [-]
 * @param then the plan as each proposal would leave it [-]
 * @returns the answers and their ranks [-]
 * @source project-rule
 */
export function additionsOf(
  before: Assessment,
  then: readonly { readonly name: string; readonly assessment: Assessment }[],
): Additions {
  const shown = new Set([before, ...then.map(({ assessment }) => assessment)].flatMap(({ links }) => shownIds(links)));
  const order = then
    .map((each) => ({ each, marks: marksOf(each.assessment, shown) }))
    .sort((a, b) => firstDifference(a.marks, b.marks))
    .map(({ each }) => each);
  return {
    before,
    after: then.map((each) => ({
      ...each,
      rank: order.indexOf(each) + 1,
      links: changes(before.links, each.assessment.links),
    })),
  };
}

function shownIds(links: readonly Link[]): readonly string[] {
  return links.filter(({ verdict }) => verdict !== 'not-shown').map(({ id }) => id);
}

/** What a ranking goes by, each the smaller the better. */
function marksOf({ verdict, links }: Assessment, shown: ReadonlySet<string>): readonly number[] {
  const unshown = links.filter((link) => link.verdict === 'not-shown' && shown.has(link.id)).length;
  const usesOf = (ofFall: boolean) =>
    links.flatMap(({ kind, result }) => (result && (kind === 'fall') === ofFall ? [result.use] : []));
  const [uses, falls] = [usesOf(false), usesOf(true)];
  const gusts = links.flatMap(({ result }) => (result?.holdsTo ? [result.holdsTo.gust] : []));
  return [
    Number(verdict === 'over'),
    Number(verdict === 'not-shown'),
    unshown,
    // Nothing known is not the same as nothing asked.
    uses.length === 0 ? Number.POSITIVE_INFINITY : Math.max(...uses),
    gusts.length === 0 ? 0 : -Math.min(...gusts),
    // How far it may fall says nothing of what it takes.
    Math.max(0, ...falls),
  ];
}

function firstDifference(a: readonly number[], b: readonly number[]): number {
  for (const [index, mark] of a.entries()) {
    const other = b[index] as number;
    // Uses and gusts that differ in the last bits are the same.
    if (mark !== other && !(Math.abs(mark - other) <= 1e-9)) return mark - other;
  }
  return 0;
}

function changes(before: readonly Link[], after: readonly Link[]): readonly LinkChange[] {
  const ids = [...new Set([...before, ...after].map(({ id }) => id))];
  return ids.map((id) => {
    const was = before.find((link) => link.id === id);
    const is = after.find((link) => link.id === id);
    return { id, ...(was ? { before: was } : {}), ...(is ? { after: is } : {}) };
  });
}
