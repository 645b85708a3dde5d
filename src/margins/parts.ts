import type { Check, OpenBecause } from './checks/check.ts';
import { CHECK_KIND } from './checks/check-kinds.ts';
import { PART_KINDS, type PartKind } from './checks/part-kinds.ts';
import { type Verdict, worstVerdict } from './verdict.ts';

/** A thing that checks are about. */
export interface Part {
  readonly id: string;
  readonly kind: PartKind;
  /** The owner's name of it, where it has one of its own. */
  readonly name?: string;
  /** That of its worst check; none where nothing is compared and no answer would change that. */
  readonly verdict?: Verdict;
  readonly checks: readonly Check[];
  /** The check that its verdict comes from, where several do that with the largest ratio. */
  readonly governs: Check;
}

/** How much of a plan is decided, and what may be said of the whole of it. */
export interface Decided {
  readonly parts: number;
  /** Of so many that are checked. */
  readonly of: number;
  /** Of the parts that are decided; none where none is over and the tower is open, or an open part reads above 1 at worst. */
  readonly verdict?: Verdict;
}

/** Nothing is compared, and nothing that could be told would change it. */
const NOTHING_TO_COMPARE: readonly (OpenBecause | undefined)[] = ['balanced', 'no-bearing', 'held-by-bearing'];

/**
 * The parts of a plan, from what is aloft down, each with the verdict of its worst check.
 *
 * over before open before low margin before within
 *
 * @source project-rule
 */
export function partsOf(checks: readonly Check[]): readonly Part[] {
  const byPart = new Map<string, Check[]>();
  for (const check of checks) {
    const id = partOf(check);
    byPart.set(id, [...(byPart.get(id) ?? []), check]);
  }
  return [...byPart]
    .map(([id, [first, ...others]]) => partFrom(id, [first as Check, ...others]))
    .sort((a, b) => PART_KINDS.indexOf(a.kind) - PART_KINDS.indexOf(b.kind));
}

/**
 * The part that a check is about.
 *
 * @returns its kind; of what hangs on the tower with its name
 */
export function partOf(check: Pick<Check, 'kind' | 'name'>): string {
  const { kind, name } = check;
  const { part } = CHECK_KIND[kind];
  return part === 'load' ? `load:${name}` : part;
}

/**
 * The checks of a part that compare something, or would if more were given.
 *
 * @source project-rule
 */
export function comparedIn(part: Pick<Part, 'checks'>): readonly Check[] {
  return part.checks.filter(({ because }) => !NOTHING_TO_COMPARE.includes(because));
}

function partFrom(id: string, checks: readonly [Check, ...Check[]]): Part {
  const compared = comparedIn({ checks });
  const verdict = worstVerdict(compared.map((check) => check.verdict));
  const [first, ...others] = compared.filter((check) => check.verdict === verdict);
  const [{ kind, name }] = checks;
  return {
    id,
    kind: CHECK_KIND[kind].part,
    ...(name === undefined ? {} : { name }),
    ...(verdict === undefined ? {} : { verdict }),
    checks,
    governs: others.reduce((most, each) => (ratioOf(each) > ratioOf(most) ? each : most), first ?? checks[0]),
  };
}

const ratioOf = ({ result }: Check) => result?.ratio ?? Number.NEGATIVE_INFINITY;

/**
 * Whether a part is open and could be over: some reading of it is above 1.
 *
 * @source project-rule
 */
export function couldBeOver(part: Part): boolean {
  const { verdict, checks } = part;
  return verdict === 'open' && checks.some((check) => check.verdict === 'open' && ratioOf(check) > 1);
}

/**
 * How much of a plan is decided.
 *
 * An open part that reads above 1 at worst forbids "within" and "low margin" of the whole, and so does an open tower.
 *
 * @source project-rule
 */
export function decidedOf(parts: readonly Part[]): Decided {
  const verdicts = parts.flatMap(({ verdict }) => (verdict === undefined ? [] : [verdict]));
  const decided = verdicts.filter((verdict) => verdict !== 'open');
  const worst = worstVerdict(decided);
  const towerOpen = parts.some(({ kind, verdict }) => kind === 'tower' && verdict === 'open');
  const mayBeSaid = worst === 'over' || !(towerOpen || parts.some(couldBeOver));
  return {
    parts: decided.length,
    of: verdicts.length,
    ...(worst !== undefined && mayBeSaid ? { verdict: worst } : {}),
  };
}
