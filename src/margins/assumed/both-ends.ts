import type { Check, CheckResult } from '../checks/check.ts';
import type { Assumption } from './assumption.ts';
import { ASSUMPTION_KIND } from './assumption-kinds.ts';

/**
 * Each check with its verdict at both ends of what is not told: within where the bad end is, over where the good end is, else
 * open, with what would tell.
 *
 * @param unfavourable the checks at the bad end of every assumption
 * @param favourable the same at the good end
 * @source derived
 */
export function betweenEnds(
  unfavourable: readonly Check[],
  favourable: readonly Check[],
  assumptions: readonly Assumption[],
): readonly Check[] {
  const best = new Map(favourable.map((check) => [check.id, check]));
  return unfavourable.map((check) => {
    const good = best.get(check.id);
    return good === undefined ? check : between(check, good, assumptions);
  });
}

function between(bad: Check, good: Check, assumptions: readonly Assumption[]): Check {
  if (bad.result === undefined || good.result === undefined) return bad;
  // Where more of something asks less after all, that end is the bad one.
  const worse = good.result.ratio > bad.result.ratio ? good.result : bad.result;
  const least = Math.min(bad.result.ratioRange[0], good.result.ratioRange[0]);
  const result: CheckResult = { ...worse, ratioRange: [least, worse.ratioRange[1]] };
  if (bad.verdict === 'over' && good.verdict === 'over') return { ...bad, result };
  const isShown = good.verdict === 'within' || good.verdict === 'low-margin';
  const decides = bad.verdict === 'over' || (bad.verdict === 'open' && isShown);
  if (!decides) return { ...bad, result };
  const atBest = good.result.holdsTo?.gust;
  const needs = assumptions.filter(({ of }) => ASSUMPTION_KIND[of].moves.includes(bad.kind)).map(({ at }) => at);
  return {
    ...bad,
    verdict: 'open',
    because: 'not-given',
    needs,
    result: { ...result, ...(atBest === undefined ? {} : { holdsToAtBest: atBest }) },
  };
}
