/** How a number or formula is known. Whatever is from memory or second hand is shown as such to the user. */
export const KNOWN = ['published', 'second-hand', 'memory', 'derived', 'common-practice'] as const;
export type Known = (typeof KNOWN)[number];

export interface Citation {
  /** An id in reference/sources.json. */
  readonly source: string;
  /** Clause, equation, table or page. */
  readonly clause: string;
  readonly known: Known;
}

/**
 * A citation in one line of code.
 *
 * @param clause clause, equation, table or page
 * @example cite('asce7-16', 'Eq. 26.10-1', 'memory').source // 'asce7-16'
 */
export function cite(source: string, clause: string, known: Known): Citation {
  return { source, clause, known };
}

export const WORDS_FOR_KNOWN: Readonly<Record<Known, string>> = {
  published: 'published',
  'second-hand': 'second hand, check against the document',
  memory: 'from memory, check against the document',
  derived: 'derived here from mechanics',
  'common-practice': 'common practice',
};
