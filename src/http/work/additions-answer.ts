import { additionsOf, assessAsked } from '../../margins/index.ts';
import type { readAdditionsRequest } from '../../plan/index.ts';
import { additionsDocument, additionsSheet, additionsText } from '../../worksheet/index.ts';
import { PLAN_HEADER, VERSION } from '../version.ts';
import type { AskedWork } from './budget.ts';
import { asJson, asPage, asText, type Finished, type Look, type Pause } from './finished.ts';

type ReadAdditions = Extract<ReturnType<typeof readAdditionsRequest>, { readonly ok: true }>;

export interface AdditionsAsked {
  readonly form: 'json' | 'text' | 'html';
  readonly look: Look;
}

export function additionsWork({ before, after }: ReadAdditions): AskedWork {
  const says = `${after.length} proposals are too many for this plan. Send fewer in one request.`;
  return { plans: [{ input: before }, ...after], times: 1, several: { says, pointer: '#/proposals' } };
}

export async function additionsAnswer(
  { before, after, entryWarnings, planHash }: ReadAdditions,
  { form, look }: AdditionsAsked,
  pause: Pause,
): Promise<Finished> {
  const now = assessAsked({ input: before, placed: (pointer) => ({ pointer: `/plan${pointer}` }) });
  const then = [];
  for (const asked of after) {
    await pause();
    then.push({ name: asked.name, assessment: assessAsked(asked) });
  }
  const additions = additionsOf(now, then);
  const { units } = before.station;
  const traced = { version: VERSION, planHash };
  const about = {
    headers: { [PLAN_HEADER]: planHash.format2 },
    verdicts: then.map(({ assessment }) => assessment.verdict),
  };
  if (form === 'text') return { ...about, ...asText(additionsText(additions, entryWarnings, after, units, traced)) };
  const answer = additionsDocument(additions, entryWarnings, after, units, traced);
  if (form === 'json') return { ...about, ...asJson(answer) };
  return { ...about, ...asPage(additionsSheet(answer, { title: before.title, units, version: VERSION }), look) };
}
