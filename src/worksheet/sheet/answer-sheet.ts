import { headline } from '../says.ts';
import { besidesParts, checksPart, reactionsPart } from './check-parts.ts';
import { attachmentsPart, closingPart, drawingsPart, planPart, remarksPart, versionLine } from './closing-parts.ts';
import type { AnswerSheetGiven } from './given.ts';
import { levelsPart } from './levels-part.ts';
import { standingPart, titleBlockPart, verdictPart } from './opening-parts.ts';
import type { Sheet } from './sheet.ts';
import { designPart, icePart, windPart } from './site-parts.ts';
import { structurePart, windLoadsPart } from './station-parts.ts';
import { handPart, sourcesPart, workingPart } from './working-parts.ts';

/** Whether every step came out the same twice; a worksheet is made of such working only. */
export function wholeTestimony({ testimony }: Pick<AnswerSheetGiven, 'testimony'>): boolean {
  return testimony.every(({ agrees }) => agrees);
}

/** The permit worksheet of a check, in the order a plan checker reads. */
export function answerSheet(given: AnswerSheetGiven): Sheet {
  if (!wholeTestimony(given)) throw new Error('a step of the working does not re-evaluate: no sheet is made of it');
  const { assessment, document } = given;
  const { title, station } = assessment.input;
  return {
    title: title === '' ? 'Antenna tower' : title,
    subject: 'Permit worksheet, wind on an antenna tower',
    verdict: document.decided.verdict ?? 'open',
    says: headline(assessment),
    units: station.units,
    version: versionLine(given),
    foot: 'Compares entered numbers with ratings. The local building code and a licensed engineer decide.',
    parts: [
      standingPart(given),
      verdictPart(given),
      titleBlockPart(given),
      designPart(given),
      structurePart(given),
      windLoadsPart(given),
      windPart(given),
      ...icePart(given),
      checksPart(given),
      levelsPart(given),
      reactionsPart(given),
      ...besidesParts(given),
      drawingsPart(given),
      handPart(given),
      workingPart(given),
      sourcesPart(given),
      attachmentsPart(given),
      remarksPart(),
      planPart(given),
      closingPart(given),
    ],
  };
}
