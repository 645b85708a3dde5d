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
  /** Forecast gust, an actual 3-second one at 10 m over open ground [m/s]. */
  readonly gust: number;
  readonly ofLink: string;
  /** Other links that are not shown, so that they may be weaker. */
  readonly without: readonly string[];
}

/**
 * The forecast gust at which to lower a tower that can be lowered.
 *
 * v_low = (1 − a)·min v_m
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
  for (const link of links) {
    const gust = link.result?.keepsMarginTo;
    if (gust !== undefined && gust < (weakest?.result?.keepsMarginTo ?? Number.POSITIVE_INFINITY)) weakest = link;
  }
  const gust = weakest?.result?.keepsMarginTo;
  if (!weakest || gust === undefined) return undefined;
  return {
    gust: evaluate(trace, lowerAtGust, [gust, inquiry.wanted.forecast]),
    ofLink: weakest.id,
    without: links.filter((link) => link.verdict === 'not-shown' && link !== weakest).map((link) => link.id),
  };
}
