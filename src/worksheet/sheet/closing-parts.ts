import { MARKS_IN_MARKUP, type PlanHash, planText, RATED_WORDS } from '../../words/index.ts';
import { type AnswerSheetGiven, planWords } from './given.ts';
import { standingBlocks } from './opening-parts.ts';
import { paragraph } from './printed.ts';
import type { Block, SheetPart } from './sheet.ts';
import { witnessSays } from './working-parts.ts';

const TITLES: Readonly<Record<string, string>> = {
  elevation: 'Elevation, to scale',
  rose: 'From above: areas by heading',
  pressure: 'Pressure by height',
  moment: 'Moment and shear by height',
  ratio: 'Ratio against gust',
  ladder: 'Checks by the gust they hold to',
};

/** A drawing says itself what it shows. */
function within(svg: string, name: 'title' | 'desc'): string {
  const [, text = ''] = new RegExp(`<${name}>([^<]*)</${name}>`).exec(svg) ?? [];
  const letters = Object.entries(MARKS_IN_MARKUP);
  return text.replace(/&[\w#]+;/g, (written) => letters.find(([, each]) => each === written)?.[0] ?? written);
}

export function drawingsPart({ drawings }: AnswerSheetGiven): SheetPart {
  return {
    id: 'drawings',
    heading: 'Drawings',
    blocks: drawings.map(({ name, svg }) => ({
      kind: 'drawing',
      name,
      title: TITLES[name] ?? within(svg, 'title'),
      svg,
      alternative: `${within(svg, 'title')}. ${within(svg, 'desc')}`,
    })),
  };
}

/** What usually goes along, beside what the plan lists. */
export function attachmentsPart(given: AnswerSheetGiven): SheetPart {
  const plan = planWords(given);
  const { ratings, station, site } = given.assessment.input;
  const ofRatings = ratings.map((rating, index) => {
    const source = plan.ratings?.[index]?.source;
    return `data sheet with the rating of the ${RATED_WORDS[rating.of]}${source === undefined ? '' : ` (${source})`}`;
  });
  const items = [
    ...(plan.titleBlock?.attachments ?? []),
    ...ofRatings,
    ...(station.tower.foundation?.kind === 'manufacturer' ? ['manufacturer’s drawing of the footing'] : []),
    ...(station.mast ? ['mill certificate or invoice for the mast steel'] : []),
    'map or county page with the design wind',
    ...(site.hill ? ['survey of the hill, or how it was measured'] : []),
    'site plan with the distances to power lines and property lines',
  ];
  return {
    id: 'attachments',
    heading: 'Attachments (tick those enclosed)',
    blocks: [{ kind: 'ticks', items: [...new Set(items)] }],
  };
}

export function remarksPart(): SheetPart {
  const blocks: readonly Block[] = [
    { kind: 'remarks', label: 'Remarks of the engineer', lines: 5 },
    { kind: 'seal', label: 'Seal and signature of the engineer, if required' },
    { kind: 'remarks', label: 'Remarks of the plan checker', lines: 5 },
    { kind: 'seal', label: 'Stamp of the building department' },
  ];
  return { id: 'remarks', heading: 'Remarks and seal', blocks };
}

export function planPart({ document }: AnswerSheetGiven): SheetPart {
  return {
    id: 'plan',
    heading: 'Appendix: the plan',
    blocks: [
      paragraph('Sent to the service again, this plan gives the same answer. Later versions read it too.'),
      { kind: 'plan', json: planText(document.plan) },
    ],
  };
}

/** Eight letters and figures that tell one plan from another. */
const markOf = (hash: string) => `${hash.slice(0, 4)} ${hash.slice(4, 8)}`;

export function versionLine({
  version,
  document,
}: {
  readonly version: string;
  readonly document: { readonly planHash?: PlanHash };
}): string {
  const { planHash } = document;
  if (planHash === undefined) return `Gustworthy ${version}`;
  const before = planHash.format1 === undefined ? '' : ` (in format 1, ${markOf(planHash.format1)})`;
  return `Gustworthy ${version}, plan format 2, plan ${markOf(planHash.format2)}${before}`;
}

/** What made the sheet, and once more what it is not. */
export function closingPart(given: AnswerSheetGiven): SheetPart {
  return {
    id: 'closing',
    heading: 'Who decides',
    blocks: [paragraph(`${versionLine(given)}. ${witnessSays(given)}`), ...standingBlocks(given)],
  };
}
