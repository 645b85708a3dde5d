import type { UnitSystem } from '../foundation/index.ts';
import type { Lowered, Verdict } from '../margins/index.ts';
import { linkName, verbOf, WORDS_FOR_VERDICT } from './choice-words.ts';
import { heldGustInWords, inWords, listed, type Quantity, quantity, useFigures } from './quantity.ts';

export interface LoweredDocument {
  readonly says: string;
  readonly top: Quantity;
  readonly verdict: Verdict;
  readonly clashes: readonly string[];
  /** The forecast gust up to which it keeps the wanted margin so. */
  readonly keepsTo?: { readonly gust: Quantity; readonly ofLink: string; readonly without: readonly string[] };
  readonly links: readonly {
    readonly id: string;
    readonly title: string;
    readonly verdict: Verdict;
    readonly use?: number;
    readonly holdsTo?: Quantity;
  }[];
}

/** The lowered tower, in the reader's units. */
export function loweredDocument(lowered: Lowered, system: UnitSystem): LoweredDocument {
  const { assessment, clashes } = lowered;
  return {
    says: loweredSays(lowered, system),
    top: quantity(assessment.inquiry.station.tower.top, 'length', system),
    verdict: assessment.verdict,
    clashes,
    ...keepsTo(assessment, system),
    links: assessment.links.map((link) => ({
      id: link.id,
      title: linkName(link),
      verdict: link.verdict,
      ...(link.result === undefined ? {} : { use: link.result.use }),
      ...(link.result?.holdsTo === undefined ? {} : { holdsTo: quantity(link.result.holdsTo.gust, 'speed', system) }),
    })),
  };
}

function keepsTo({ lowerAt }: Lowered['assessment'], system: UnitSystem): Pick<LoweredDocument, 'keepsTo'> {
  if (lowerAt?.gust === undefined) return {};
  const { gust, ofLink, without } = lowerAt;
  return { keepsTo: { gust: quantity(gust, 'speed', system), ofLink, without } };
}

/** The lowered tower in a few sentences. */
export function loweredSays({ assessment, clashes, unspoken }: Lowered, system: UnitSystem): string {
  const top = inWords(assessment.inquiry.station.tower.top, 'length', system);
  const [tower] = assessment.links;
  const said: string[] = [];
  if (tower?.result) {
    const gust = tower.result.holdsTo?.gust;
    const holds = gust === undefined ? '' : `, and holds to a gust of ${heldGustInWords(gust, system)}`;
    said.push(
      `Lowered to ${top} the tower takes ${useFigures(tower.result.use)} of what its rating there shows: ${WORDS_FOR_VERDICT[tower.verdict]}${holds}.`,
    );
    const { lowerAt, links } = assessment;
    const weakest = links.find(({ id }) => id === lowerAt?.ofLink);
    if (lowerAt?.gust !== undefined && weakest) {
      said.push(
        `So it keeps the margin you want up to a forecast of ${inWords(lowerAt.gust, 'speed', system)}; then the ${linkName(weakest)} ${verbOf(weakest, 'comes', 'come')} to it.`,
      );
    }
  } else if (unspoken > 0) {
    said.push(
      `Lowered to ${top} the tower is not shown: its rating is for the raised one. Ask the maker for one with the top at ${top}.`,
    );
  } else said.push(`Lowered to ${top} the tower is not shown: no rating is given.`);
  if (clashes.length > 0)
    said.push(
      `On the way down ${listed(clashes)} would meet the section below: take ${clashes.length > 1 ? 'them' : 'it'} off first.`,
    );
  return said.join(' ');
}
