import { type Trace, under } from '../foundation/index.ts';
import { type ChanceOfReaching, type Climate, chanceOfReaching } from '../wind/index.ts';
import type { Inquiry } from './inquiry.ts';
import type { Link } from './links/link.ts';

/** Years of record under which the band is wide, and a caution says so. @source common-practice */
export const SHORT_RECORD = 20;

/** Chance of the wind that a link holds to: an upper bound, for a storm may come from where the link is stronger. */
export interface Chance extends ChanceOfReaching {
  readonly ofLink: string;
  /** What the link holds to, an actual 3-second gust at 10 m over open ground [m/s]. */
  readonly gust: number;
}

export interface Chances {
  readonly climate: Climate;
  readonly years: number;
  /** Of every link that shows what it holds to. */
  readonly ofLinks: readonly Chance[];
}

/**
 * The chance, in a year and in the years wanted, of the gust that each link holds to.
 *
 * @param inquiry the plan in SI [-]
 * @param links the links with what they hold to [-]
 * @param trace the working, or nothing [-]
 * @returns the chances [-]; undefined where the plan gives no climate
 * @throws Refusal `no-spread` when the climate's speeds are all alike
 * @source derived
 */
export function chancesOf(
  inquiry: Pick<Inquiry, 'site' | 'wanted'>,
  links: readonly Link[],
  trace?: Trace,
): Chances | undefined {
  const { climate } = inquiry.site;
  if (!climate) return undefined;
  const { years } = inquiry.wanted;
  const ofLinks = links.flatMap((link): Chance[] => {
    const gust = link.result?.holdsTo?.gust;
    if (gust === undefined) return [];
    const heading = `chance of the gust the ${link.kind === 'tower-top' ? 'top of the tower' : link.kind} holds to`;
    const chance = under(trace, heading, () => chanceOfReaching(climate, gust, years, trace));
    return [{ ofLink: link.id, gust, ...chance }];
  });
  return { climate, years, ofLinks };
}
