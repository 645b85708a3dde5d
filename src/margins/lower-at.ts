import { cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';
import type { Inquiry } from './inquiry.ts';
import type { Link } from './links/link.ts';

export const lowerAtGust = defineFormula({
  id: 'lower-at',
  title: 'Forecast gust at which to lower: the gust that leaves the wanted margin, less the error of a forecast',
  symbol: 'v_low',
  unit: 'speed',
  expression: 'v_m * (1 - a)',
  variables: [
    variable('v_m', 'gust at which the weakest link reaches one less the wanted margin', 'speed', 1, 150),
    variable('a', 'allowance for the error of a forecast', 'one', 0, 0.9),
  ],
  cite: cite('common-practice', 'a forecast errs by about a tenth', 'common-practice'),
  of: (gust: number, allowance: number) => gust * (1 - allowance),
});

export interface LowerAt {
  /** Forecast gust, an actual 3-second one at 10 m over open ground [m/s]; absent where no wind at all is too much already. */
  readonly gust?: number;
  readonly ofLink: string;
  /** Its use without wind, where that leaves less than the wanted margin. */
  readonly inCalm?: number;
  /** Other links that are not shown, so that they may be weaker. */
  readonly without: readonly string[];
  /** Ice is given, and is not counted. */
  readonly withoutIce: boolean;
}

/**
 * The forecast gust at which to lower a tower that can be lowered.
 *
 * v_low = (1 − a)·min v_m; none where a link has less than the wanted margin without wind
 *
 * @param inquiry the plan in SI [-]
 * @param links with the gust to which each keeps the wanted margin [-]
 * @param trace the working, or nothing [-]
 * @returns the gust and whose it is [-]; undefined where nothing can be lowered, or no link shows a gust
 * @source common-practice
 */
export function lowerAtOf(inquiry: Inquiry, links: readonly Link[], trace?: Trace): LowerAt | undefined {
  const { tower } = inquiry.station;
  if (tower.hingeHeight === undefined && !tower.telescopes) return undefined;
  let weakest: Link | undefined;
  for (const link of links) if (reachesFirst(link, weakest)) weakest = link;
  if (!weakest?.result) return undefined;
  const { inCalm, keepsMarginTo } = weakest.result;
  const others = {
    ofLink: weakest.id,
    without: links.filter((link) => link.verdict === 'not-shown' && link !== weakest).map((link) => link.id),
    withoutIce: inquiry.site.ice !== undefined,
  };
  if (inCalm !== undefined) return { inCalm, ...others };
  if (keepsMarginTo === undefined) return undefined;
  return { gust: evaluate(trace, lowerAtGust, [keepsMarginTo, inquiry.wanted.forecast]), ...others };
}

/** The most used without wind comes first, then what reaches the margin in the lowest gust. */
function reachesFirst({ result }: Link, other: Link | undefined): boolean {
  const [calm, most] = [result?.inCalm ?? 0, other?.result?.inCalm ?? 0];
  if (calm > 0 || most > 0) return calm > most;
  const gust = result?.keepsMarginTo;
  return gust !== undefined && gust < (other?.result?.keepsMarginTo ?? Number.POSITIVE_INFINITY);
}
