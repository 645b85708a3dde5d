import { evaluate, type Trace } from '../foundation/index.ts';
import type { CheckInput } from './check-input.ts';
import type { Check } from './checks/check.ts';
import { CHECK_KIND } from './checks/check-kinds.ts';
import { lowerAtGust } from './formulas.ts';
import { canBeLowered } from './holds-to-ratio.ts';

export interface LowerAt {
  /**
   * Forecast gust, an actual 3-second one at 10 m over open ground [m/s]; absent where no wind at all is too much already, or no
   * check tells one.
   */
  readonly gust?: number;
  /** Absent where no check tells a gust. */
  readonly ofCheck?: string;
  /** Its use without wind, where that leaves less than the wanted margin. */
  readonly ratioWithoutWind?: number;
  /** Other checks that are not shown, so that they may be weaker. */
  readonly without: readonly string[];
  /** Checks above 1, over or open, of which no gust is known: they may need a lower one. */
  readonly overWithoutGust: readonly string[];
  /** Ice is given, and is not counted. */
  readonly withoutIce: boolean;
}

/**
 * The forecast gust at which to lower a tower that can be lowered.
 *
 * v_low = (1 − a)·min v_m; none where a check has less than the wanted margin without wind
 *
 * @param checks with the gust to which each keeps the wanted margin
 * @returns the gust and whose it is; undefined where nothing can be lowered, or no check shows a gust and none is above 1
 * @source common-practice
 */
export function lowerAtOf(input: CheckInput, checks: readonly Check[], trace?: Trace): LowerAt | undefined {
  if (!canBeLowered(input.station)) return undefined;
  let weakest: Check | undefined;
  for (const check of checks) if (reachesFirst(check, weakest)) weakest = check;
  const others = {
    without: checks.filter((check) => check.verdict === 'open' && check !== weakest).map((check) => check.id),
    overWithoutGust: checks.filter(isOverWithoutGust).map((check) => check.id),
    withoutIce: input.site.ice !== undefined,
  };
  if (!weakest?.result) return others.overWithoutGust.length === 0 ? undefined : others;
  const { ratioWithoutWind, keepsMarginTo } = weakest.result;
  const found = { ofCheck: weakest.id, ...others };
  if (ratioWithoutWind !== undefined) return { ratioWithoutWind, ...found };
  if (keepsMarginTo === undefined) return undefined;
  return { gust: evaluate(trace, lowerAtGust, [keepsMarginTo, input.wanted.forecast]), ...found };
}

/** Of what stands up; what raises the tower and how far it falls ask for no gust. */
function isOverWithoutGust({ kind, verdict, result }: Check): boolean {
  const { loadedBy } = CHECK_KIND[kind];
  if ((loadedBy !== 'wind' && loadedBy !== 'weight') || !result) return false;
  const { ratio, keepsMarginTo, ratioWithoutWind } = result;
  return (
    ratio > 1 &&
    (verdict === 'over' || verdict === 'open') &&
    keepsMarginTo === undefined &&
    ratioWithoutWind === undefined
  );
}

/** The most used without wind comes first, then what reaches the margin in the lowest gust. */
function reachesFirst({ result }: Check, other: Check | undefined): boolean {
  const [calm, most] = [result?.ratioWithoutWind ?? 0, other?.result?.ratioWithoutWind ?? 0];
  if (calm > 0 || most > 0) return calm > most;
  const gust = result?.keepsMarginTo;
  return gust !== undefined && gust < (other?.result?.keepsMarginTo ?? Number.POSITIVE_INFINITY);
}
