import type { Verdict } from '../margins/index.ts';

export const VERDICT_WORDS = {
  within: 'within',
  'low-margin': 'low margin',
  over: 'over',
  open: 'open',
} as const satisfies Record<Verdict, string>;
