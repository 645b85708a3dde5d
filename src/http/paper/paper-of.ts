import type { Paper, Sheet } from '../../worksheet/index.ts';

/** The paper of a country that measures as the plan does, unless one is named. */
export function paperOf({ units }: Sheet, named: Paper | undefined): Paper {
  return named ?? (units === 'us' ? 'letter' : 'a4');
}
