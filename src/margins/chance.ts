import { type Trace, under } from '../foundation/index.ts';
import {
  type ChanceOfReaching,
  type Climate,
  chanceOfReaching,
  type RecordDoubt,
  recordDoubts,
  tellsNoLaw,
} from '../wind/index.ts';
import type { CheckInput } from './check-input.ts';
import type { Check } from './checks/check.ts';
import type { CheckKind } from './checks/check-kind.ts';
import { CHECK_KIND } from './checks/check-kinds.ts';

/** Years of record under which the band is wide, and a caution says so. @source common-practice */
export const SHORT_RECORD = 20;

/** Chance of the wind that a check holds to, from whatever direction it comes. */
export interface Chance extends ChanceOfReaching {
  readonly ofCheck: string;
  /** What the check holds to, an actual 3-second gust at 10 m over open ground [m/s]. */
  readonly gust: number;
}

export interface Chances {
  readonly climate: Climate;
  readonly years: number;
  /** What of a record is to be doubted. */
  readonly doubts: readonly RecordDoubt[];
  /** The record tells no law, so that no chance is given. */
  readonly withheld: boolean;
  /** Of every check that shows what it holds to. */
  readonly ofChecks: readonly Chance[];
}

/**
 * The chance, in a year and in the years wanted, of the gust that each check holds to.
 *
 * @param checks the links with what they hold to
 * @returns the chances; undefined where the plan gives no climate
 * @throws Refusal `no-spread` when a chart does not rise
 */
export function chancesOf(
  input: Pick<CheckInput, 'site' | 'wanted'>,
  checks: readonly Check[],
  trace?: Trace,
): Chances | undefined {
  const { climate } = input.site;
  if (!climate) return undefined;
  const { years } = input.wanted;
  const doubts = recordDoubts(climate);
  const withheld = tellsNoLaw(doubts);
  if (withheld) return { climate, years, doubts, withheld, ofChecks: [] };
  const ofChecks = checks.flatMap((check): Chance[] => {
    const gust = check.result?.holdsTo?.gust;
    if (gust === undefined) return [];
    const { heading = check.kind }: CheckKind = CHECK_KIND[check.kind];
    const chance = under(trace, `chance of the gust the ${heading} holds to`, () =>
      chanceOfReaching(climate, gust, years, trace),
    );
    return [{ ofCheck: check.id, gust, ...chance }];
  });
  return { climate, years, doubts, withheld, ofChecks };
}
