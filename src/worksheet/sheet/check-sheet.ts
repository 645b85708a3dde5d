import { attachmentsPart, closingPart, drawingsPart, planPart, remarksPart, versionLine } from './closing-parts.ts';
import type { CheckSheetGiven } from './given.ts';
import { levelsPart } from './levels-part.ts';
import { besidesParts, linksPart, reactionsPart } from './link-parts.ts';
import { standingPart, titleBlockPart, verdictPart } from './opening-parts.ts';
import type { Sheet } from './sheet.ts';
import { designPart, windPart } from './site-parts.ts';
import { ledgerPart, structurePart } from './station-parts.ts';
import { handPart, sourcesPart, workingPart } from './working-parts.ts';

/** Whether every step came out the same twice; a worksheet is made of such working only. */
export function wholeTestimony({ testimony }: Pick<CheckSheetGiven, 'testimony'>): boolean {
  return testimony.every(({ agrees }) => agrees);
}

/** The permit worksheet of a check, in the order a plan checker reads. */
export function checkSheet(given: CheckSheetGiven): Sheet {
  if (!wholeTestimony(given)) throw new Error('a step of the working does not re-evaluate: no sheet is made of it');
  const { assessment, document } = given;
  const { title, station } = assessment.inquiry;
  return {
    title: title === '' ? 'Antenna tower' : title,
    subject: 'Permit worksheet, wind on an antenna tower',
    verdict: document.soFar ?? document.verdict,
    says: document.says,
    units: station.units,
    version: versionLine(given),
    foot: 'Compares numbers typed with ratings typed. The local building code and a licensed engineer decide.',
    parts: [
      standingPart(given),
      verdictPart(given),
      titleBlockPart(given),
      designPart(given),
      structurePart(given),
      ledgerPart(given),
      windPart(given),
      linksPart(given),
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
