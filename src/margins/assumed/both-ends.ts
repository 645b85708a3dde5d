import type { Check, CheckResult } from '../checks/check.ts';
import type { HoldsTo } from '../holds-to-ratio.ts';
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

/** The lower of what two ends hold to, by the design wind and by the actual one. */
function lowerOf(one: HoldsTo | undefined, other: HoldsTo | undefined): HoldsTo | undefined {
  if (!one || !other) return one ?? other;
  return {
    design: Math.min(one.design, other.design),
    gust: Math.min(one.gust, other.gust),
    steady: one.steady && other.steady,
  };
}

function between(bad: Check, good: Check, assumptions: readonly Assumption[]): Check {
  if (bad.result === undefined || good.result === undefined) return bad;
  // Where more of something asks less after all, that end is the bad one.
  if (good.result.ratio > bad.result.ratio) return between(good, bad, assumptions);
  const worse = bad.result;
  const least = Math.min(bad.result.ratioRange[0], good.result.ratioRange[0]);
  // A gust factor that falls with the speed can turn the order of the ends below the wind of the site.
  const other = good.result;
  const holdsTo = lowerOf(worse.holdsTo, other.holdsTo);
  const keepsMarginTo = Math.min(
    worse.keepsMarginTo ?? Number.POSITIVE_INFINITY,
    other.keepsMarginTo ?? Number.POSITIVE_INFINITY,
  );
  const result: CheckResult = {
    ...worse,
    ratioRange: [least, worse.ratioRange[1]],
    ...(holdsTo === undefined ? {} : { holdsTo }),
    ...(Number.isFinite(keepsMarginTo) ? { keepsMarginTo } : {}),
  };
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
