import { type LoweredAnswer, told } from '../answer/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import type { Lowered } from '../margins/index.ts';
import { checkName, heldGustInWords, inWords, listed, ratioFigures, VERDICT_WORDS, verbOf } from '../words/index.ts';
import { checkStateDocument } from './check-document.ts';
import { quantity } from './quantity.ts';
import { aboveSays } from './says.ts';

/** The lowered tower, in the reader's units. */
export function loweredDocument(lowered: Lowered, system: UnitSystem): LoweredAnswer {
  const { assessment, clashes } = lowered;
  return told<LoweredAnswer>({
    says: loweredSays(lowered, system),
    top: quantity(assessment.input.station.tower.top, 'length', system),
    verdict: assessment.verdict,
    clashes,
    keepsTo: keepsTo(assessment, system),
    checks: assessment.checks.map((check) => ({
      id: check.id,
      title: checkName(check),
      ...checkStateDocument(check, system),
    })),
  });
}

function keepsTo({ lowerAt }: Lowered['assessment'], system: UnitSystem): LoweredAnswer['keepsTo'] | undefined {
  if (lowerAt?.gust === undefined || lowerAt.ofCheck === undefined) return undefined;
  const { gust, ofCheck, without, overWithoutGust } = lowerAt;
  return { gust: quantity(gust, 'speed', system), ofCheck, without, overWithoutGust };
}

/** The lowered tower in a few sentences. */
export function loweredSays({ assessment, clashes, unspoken }: Lowered, system: UnitSystem): string {
  const top = inWords(assessment.input.station.tower.top, 'length', system);
  const [tower] = assessment.checks;
  const said: string[] = [];
  if (tower?.result) {
    const gust = tower.result.holdsTo?.gust;
    const holds = gust === undefined ? '' : ` It holds to a gust of ${heldGustInWords(gust, system)}.`;
    said.push(
      `Lowered to ${top}, the tower is at ${ratioFigures(tower.result.ratio)} of its rated capacity there: ${VERDICT_WORDS[tower.verdict]}.${holds}`,
    );
    const { lowerAt, checks } = assessment;
    const weakest = checks.find(({ id }) => id === lowerAt?.ofCheck);
    if (lowerAt?.gust !== undefined && weakest) {
      said.push(
        `It keeps the margin set up to a forecast of ${inWords(lowerAt.gust, 'speed', system)}; the ${checkName(weakest)} ${verbOf(weakest, 'governs', 'govern')}.`,
      );
    }
    const over = checks.filter(({ id }) => lowerAt?.overWithoutGust.includes(id)).map(checkName);
    if (over.length > 0) said.push(aboveSays(over));
  } else if (unspoken > 0) {
    said.push(
      `Lowered to ${top}, the tower is open: its rating is for the raised tower. Ask the manufacturer for one with the top at ${top}.`,
    );
  } else said.push(`Lowered to ${top}, the tower is open: no rating given.`);
  if (clashes.length > 0)
    said.push(
      `On the way down ${listed(clashes)} would meet the section below. Take ${clashes.length > 1 ? 'them' : 'it'} off first.`,
    );
  return said.join(' ');
}
