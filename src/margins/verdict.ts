export const VERDICTS = ['within', 'low-margin', 'over', 'open'] as const;
export type Verdict = (typeof VERDICTS)[number];

const RANK: Readonly<Record<Verdict, number>> = { within: 0, 'low-margin': 1, open: 2, over: 3 };

/**
 * The worst of several verdicts.
 *
 * @example worstVerdict(['low-margin', 'open', 'within']) // 'open'
 */
export function worstVerdict(verdicts: readonly Verdict[]): Verdict | undefined {
  let worst: Verdict | undefined;
  for (const verdict of verdicts) if (worst === undefined || RANK[verdict] > RANK[worst]) worst = verdict;
  return worst;
}

/**
 * Whether a verdict is better than another.
 *
 * @example betterVerdict('within', 'low-margin') // true
 */
export function betterVerdict(verdict: Verdict, than: Verdict): boolean {
  return RANK[verdict] < RANK[than];
}

/**
 * The verdict of a ratio known at both ends of what is open.
 *
 * bad ≤ 1 − wanted: within; bad ≤ 1: thin; favourable end of a comparison that can say so over 1: over; else not shown
 *
 * @param unfavourable use with every open question at its bad end [-]
 * @param favourableOver use at the good end, of the comparisons where more than 1 means over [-]
 * @param wanted share of the capacity to keep [-]
 * @example verdictOf(0.85, 0.3, 0.2) // 'low-margin'
 * @source derived
 */
export function verdictOf(unfavourable: number, favourableOver: number, wanted: number): Verdict {
  // A use put back from its own speed may miss 1 by the last bit.
  if (unfavourable <= 1 - wanted + 1e-12) return 'within';
  if (unfavourable <= 1 + 1e-12) return 'low-margin';
  return favourableOver > 1 ? 'over' : 'open';
}
