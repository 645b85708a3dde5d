/** @satisfies {Record<import('../margins/index.ts').Verdict, string>} */
export const VERDICT_WORDS = { within: 'within', 'low-margin': 'low margin', over: 'over', open: 'open' };
