import { type Assessment, hillHelpOf, loweredOf } from '../margins/index.ts';
import { gathered, NOT_COVERED, promiseOf, questionOf } from '../words/index.ts';
import { type Besides, cautionDocuments } from './answer-document.ts';
import { chanceLines } from './chance-document.ts';
import { foundationSays } from './foundation-document.ts';
import { heightsLines } from './heights-document.ts';
import { hillSays } from './hill-document.ts';
import { iceLines } from './ice-document.ts';
import { loweredSays } from './lowered-document.ts';
import { raisingSays } from './raising-document.ts';
import { remediesLines, tubesSays } from './remedies-document.ts';
import {
  bracketSays,
  checkSays,
  guysSay,
  headlineSays,
  legsSay,
  lowerAtSays,
  reactionsSay,
  roomSays,
  swaySays,
  tracedTo,
} from './says.ts';
import { sensitivityLines } from './sensitivity-document.ts';
import { spreadLines } from './spread-document.ts';

/** The answer as plain text: the sentence, the checks, what to find out, the cautions. */
export function answerText(
  assessment: Assessment,
  entryWarnings: readonly { readonly pointer: string; readonly says: string }[],
  { spread, crankHeights, sensitivity, remedies, tubes, planHash, version }: Besides = {},
): string {
  const { input, checks, questions, reactions, roomLeft } = assessment;
  const { units } = input.station;
  const lines: string[] = [];
  if (input.title) lines.push(input.title, '');
  lines.push(headlineSays(assessment), '');
  for (const check of checks) lines.push(`- ${checkSays(assessment, check).says}`);
  const guys = guysSay(assessment);
  // With its guys it stands otherwise than as a cantilever.
  lines.push('', ...(guys === undefined ? [reactionsSay(assessment)] : [guys]));
  lines.push(...iceLines(assessment));
  if (reactions.legs) lines.push(legsSay(reactions.legs, units));
  const bracket = bracketSays(assessment);
  if (bracket) lines.push(bracket);
  const sway = swaySays(assessment);
  if (sway) lines.push(sway);
  const hill = hillHelpOf(input);
  if (hill) lines.push(hillSays(hill, units));
  if (assessment.foundation) lines.push(foundationSays(assessment.foundation, units));
  if (assessment.raising) lines.push(raisingSays(assessment.raising, units));
  if (assessment.lowerAt) lines.push(lowerAtSays(assessment, assessment.lowerAt));
  const lowered = loweredOf(assessment);
  if (lowered) lines.push(loweredSays(lowered, units));
  lines.push(...roomLeft.map((room) => roomSays(assessment, room)));
  if (assessment.chances) lines.push(...chanceLines(assessment.chances, checks, units));
  if (questions.open.length > 0) {
    lines.push('', 'To find out:');
    for (const question of questions.open) lines.push(`- ${questionOf(question, input)} ${promiseOf(question)}`);
    if (questions.moreLoads > 0) lines.push(`- The same of ${questions.moreLoads} more loads.`);
  }
  if (spread) lines.push('', 'By other standards:', ...spreadLines(spread, units));
  if (crankHeights) lines.push('', 'At other heights:', ...heightsLines(crankHeights, units));
  if (sensitivity) lines.push('', 'What changes the result most:', ...sensitivityLines(sensitivity, assessment));
  if (remedies) lines.push('', 'What would help:', ...remediesLines(remedies, units));
  if (tubes && !mastWillDo(assessment)) lines.push(`- ${tubesSays(tubes)}`);
  const cautions = cautionDocuments(gathered(assessment.cautions), units);
  lines.push('', 'Cautions:');
  for (const caution of cautions) lines.push(`- ${caution.says} ${caution.action}`);
  for (const query of entryWarnings) lines.push(`- ${query.says}`);
  lines.push('', `Not covered by this service: ${NOT_COVERED.join(', ')}.`, '');
  if (version !== undefined) lines.push(tracedTo(version, planHash), '');
  return lines.join('\n');
}

/** A mast that keeps the wanted margin and is not the weakest needs no other tube. */
function mastWillDo({ checks, weakest }: Assessment): boolean {
  const masts = checks.filter(({ kind }) => kind === 'mast');
  return masts.every(({ verdict, id }) => verdict === 'within' && id !== weakest);
}
