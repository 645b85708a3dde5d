import { type Assessment, hillHelpOf, loweredOf } from '../margins/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import { gathered, NOT_COVERED } from './caution-words.ts';
import { chanceLines } from './chance-document.ts';
import { type Besides, cautionDocuments } from './check-document.ts';
import { foundationSays } from './foundation-document.ts';
import { hillSays } from './hill-document.ts';
import { loweredSays } from './lowered-document.ts';
import { inWords } from './quantity.ts';
import { promiseOf, questionOf } from './question-words.ts';
import { raisingSays } from './raising-document.ts';
import { remediesLines, tubesSays } from './remedies-document.ts';
import { bracketSays, headline, legsSay, linkSays, lowerAtSays, roomSays } from './says.ts';
import { sensitivityLines } from './sensitivity-document.ts';
import { spreadLines } from './spread-document.ts';

/** The answer as plain text: the sentence, the links, what to find out, the cautions. */
export function checkText(
  assessment: Assessment,
  queries: readonly { readonly pointer: string; readonly says: string }[],
  { spread, sensitivity, remedies, tubes }: Besides = {},
): string {
  const { inquiry, links, questions, reactions, roomLeft } = assessment;
  const { units } = inquiry.station;
  const towerUse = links[0]?.result?.use ?? 0;
  const lines: string[] = [];
  if (inquiry.title) lines.push(inquiry.title, '');
  lines.push(headline(assessment), '');
  for (const link of links) lines.push(`- ${linkSays(assessment, link)}`);
  lines.push(
    '',
    `At the foot${reactions.heldAbove ? ', as if nothing held it above' : ''}${reactions.withoutOwnWind ? ', without the wind on the tower itself, which is not known' : ''}, allowable level, ${METHOD_BY_ID[inquiry.method].title}: shear ${inWords(reactions.allowable.shear, 'force', units, 4)}, moment ${inWords(reactions.allowable.moment, 'moment', units, 4)}.`,
  );
  if (reactions.legs) lines.push(legsSay(reactions.legs, units));
  const bracket = bracketSays(assessment);
  if (bracket) lines.push(bracket);
  const hill = hillHelpOf(inquiry);
  if (hill) lines.push(hillSays(hill, units));
  if (assessment.foundation) lines.push(foundationSays(assessment.foundation, units));
  if (assessment.raising) lines.push(raisingSays(assessment.raising, units));
  if (assessment.lowerAt) lines.push(lowerAtSays(assessment, assessment.lowerAt));
  const lowered = loweredOf(assessment);
  if (lowered) lines.push(loweredSays(lowered, units));
  lines.push(...roomLeft.map((room) => roomSays(assessment, room)));
  if (assessment.chances) lines.push(...chanceLines(assessment.chances, links, units));
  if (questions.gaps.length > 0) {
    lines.push('', 'To find out:');
    for (const gap of questions.gaps) lines.push(`- ${questionOf(gap, inquiry)} ${promiseOf(gap, towerUse)}`);
    if (questions.moreLoads > 0) lines.push(`- and the same of ${questions.moreLoads} more loads.`);
  }
  if (spread) lines.push('', 'By the other standards:', ...spreadLines(spread, units));
  if (sensitivity) lines.push('', 'What it hangs on:', ...sensitivityLines(sensitivity, assessment));
  if (remedies) lines.push('', 'What would help:', ...remediesLines(remedies, units));
  if (tubes && !mastWillDo(assessment)) lines.push(`- ${tubesSays(tubes)}`);
  const cautions = cautionDocuments(gathered(assessment.cautions), units);
  lines.push('', 'Cautions:');
  for (const caution of cautions) lines.push(`- ${caution.says} ${caution.do}`);
  for (const query of queries) lines.push(`- ${query.says}`);
  lines.push('', `Never covered here: ${NOT_COVERED.join(', ')}.`, '');
  return lines.join('\n');
}

/** A mast that keeps the wanted margin and is not the weakest needs no other tube. */
function mastWillDo({ links, weakest }: Assessment): boolean {
  const masts = links.filter(({ kind }) => kind === 'mast');
  return masts.every(({ verdict, id }) => verdict === 'within' && id !== weakest);
}
