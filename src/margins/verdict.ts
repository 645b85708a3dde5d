export type Verdict = 'within' | 'thin' | 'over' | 'not-shown';

const RANK: Readonly<Record<Verdict, number>> = { within: 0, thin: 1, 'not-shown': 2, over: 3 };

/**
 * The worst of several verdicts.
 *
 * over, not-shown, thin, within
 *
 * @param verdicts one or more [-]
 * @returns the worst, or undefined for none [-]
 * @example worstVerdict(['thin', 'not-shown', 'within']) // 'not-shown'
 * @source derived
 */
export function worstVerdict(verdicts: readonly Verdict[]): Verdict | undefined {
  let worst: Verdict | undefined;
  for (const verdict of verdicts) if (worst === undefined || RANK[verdict] > RANK[worst]) worst = verdict;
  return worst;
}

/**
 * The verdict of a use known at both ends of what is open.
 *
 * bad ≤ 1 − wanted: within; bad ≤ 1: thin; good end of a comparison that can say so over 1: over; else not shown
 *
 * @param bad use with every open question at its bad end [-]
 * @param goodOver use at the good end, of the comparisons where more than 1 means over [-]
 * @param wanted share of the capacity to keep [-]
 * @returns the verdict [-]
 * @example verdictOf(0.85, 0.3, 0.2) // 'thin'
 * @source derived
 */
export function verdictOf(bad: number, goodOver: number, wanted: number): Verdict {
  // A use put back from its own speed may miss 1 by the last bit.
  if (bad <= 1 - wanted + 1e-12) return 'within';
  if (bad <= 1 + 1e-12) return 'thin';
  return goodOver > 1 ? 'over' : 'not-shown';
}
