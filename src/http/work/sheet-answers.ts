import { assess, assessAsked, ranksOf, requirementPlans, requirementSteps, stormCardOf } from '../../margins/index.ts';
import type { readRequirementsRequest, readStormRequest } from '../../plan/index.ts';
import {
  type ComparedCandidate,
  requirementsDocument,
  requirementsSheet,
  requirementsText,
  type Sheet,
  stormDocument,
  stormSheet,
  stormText,
} from '../../worksheet/index.ts';
import { pdfDisposition } from '../paper/file-name.ts';
import { PLAN_HEADER, VERSION } from '../version.ts';
import { type AskedWork, CHECKS_FOR } from './budget.ts';
import { asJson, asPage, asPaper, asText, type Finished, type Pause, type SheetAsked } from './finished.ts';

type ReadStorm = Extract<ReturnType<typeof readStormRequest>, { readonly ok: true }>;
type ReadRequirements = Extract<ReturnType<typeof readRequirementsRequest>, { readonly ok: true }>;

export interface SheetAnswerAsked extends SheetAsked {
  readonly form: 'json' | 'text' | 'html' | 'pdf';
}

/** An answer in the form that was asked for; of a sheet the file has a name of its own. */
function inForm<A extends object>(
  { form, look, paper }: SheetAnswerAsked,
  planHash: { readonly format2: string },
  answer: { readonly text: () => string; readonly json: () => A; readonly sheet: (json: A) => Sheet },
  file: { readonly title: string; readonly name: Parameters<typeof pdfDisposition>[1] },
): Finished {
  const about = { headers: { [PLAN_HEADER]: planHash.format2 }, verdicts: [] };
  if (form === 'text') return { ...about, ...asText(answer.text()) };
  const json = answer.json();
  if (form === 'json') return { ...about, ...asJson(json) };
  const sheet = answer.sheet(json);
  if (form === 'html') return { ...about, ...asPage(sheet, look) };
  const headers = { ...about.headers, 'content-disposition': pdfDisposition(file.title, file.name) };
  return { ...about, headers, ...asPaper(sheet, paper) };
}

export function stormWork({ input }: ReadStorm): AskedWork {
  const times = input.station.tower.telescopes ? CHECKS_FOR.crankHeights : 1;
  return { plans: [{ input }], times };
}

export function stormAnswer(
  { input, forecast, entryWarnings, planHash }: ReadStorm,
  asked: SheetAnswerAsked,
): Finished {
  const card = stormCardOf(assess(input), forecast);
  const traced = { version: VERSION, planHash };
  const answer = {
    text: () => stormText(card, entryWarnings, traced),
    json: () => stormDocument(card, entryWarnings, traced),
    sheet: (json: ReturnType<typeof stormDocument>) => stormSheet(card, json, VERSION),
  };
  return inForm(asked, planHash, answer, { title: input.title, name: 'storm-card' });
}

export function requirementsWork({ input, asked, candidates }: ReadRequirements): AskedWork {
  const plans = requirementPlans(input, asked.wished).map(({ plan }) => ({ input: plan }));
  const compared = candidates.flatMap(({ name, input: of }) =>
    requirementPlans(of, asked.wished).map(({ plan }) => ({ name, input: plan })),
  );
  const says = `${candidates.length} towers are too many for this plan. Send fewer in one request.`;
  const searched = plans.flatMap((plan) => Array.from({ length: CHECKS_FOR.requirement }, () => plan));
  return {
    plans: [...searched, ...compared],
    times: 1,
    several: { says, pointer: '#/candidates' },
  };
}

export async function requirementsAnswer(
  reading: ReadRequirements,
  sheetAsked: SheetAnswerAsked,
  pause: Pause,
): Promise<Finished> {
  const { input, asked, entryWarnings, planHash } = reading;
  const steps = requirementSteps(input, asked);
  let step = steps.next();
  while (!step.done) {
    await pause();
    step = steps.next();
  }
  const requirements = step.value;
  const candidates = await compareCandidates(reading, pause);
  const traced = { version: VERSION, planHash };
  const answer = {
    text: () => requirementsText(requirements, candidates, entryWarnings, traced),
    json: () => requirementsDocument(requirements, candidates, entryWarnings, traced),
    sheet: (json: ReturnType<typeof requirementsDocument>) => requirementsSheet(requirements, json, VERSION),
  };
  return inForm(sheetAsked, planHash, answer, { title: input.title, name: 'tower-inquiry' });
}

/** Towers to choose from, each in every wind and with every set of loads. */
async function compareCandidates(
  { asked, candidates }: ReadRequirements,
  pause: Pause,
): Promise<readonly ComparedCandidate[]> {
  const compared = [];
  for (const { name, input, placed, planHash, entryWarnings } of candidates) {
    const cases = [];
    for (const { wind, loads, plan } of requirementPlans(input, asked.wished)) {
      await pause();
      cases.push({ wind, loads, assessment: assessAsked({ name, input: plan, placed }) });
    }
    const placedWarnings = entryWarnings.map((each) => ({ ...each, ...placed(each.pointer) }));
    const ofTower = placedWarnings.filter(({ pointer }) => pointer.startsWith('#/candidates'));
    compared.push({ name, planHash, entryWarnings: ofTower, cases });
  }
  // The wind of the site decides, with all loads.
  const deciding = compared.map(({ cases }) => cases.findLast(({ wind }) => wind === 'site')?.assessment);
  const ranks = ranksOf(deciding.flatMap((assessment) => assessment ?? []));
  return compared.map((each, index) => ({ ...each, rank: ranks[index] ?? 0 }));
}
