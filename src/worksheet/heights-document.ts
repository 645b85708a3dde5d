import { type HeightsAnswer, told } from '../answer/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import type { CrankedTo, CrankHeights, Part } from '../margins/index.ts';
import { figures, inWords, partName, ratioFigures, VERDICT_WORDS } from '../words/index.ts';
import { quantity } from './quantity.ts';

/** Of the heights that are looked at: nested, by quarters, drawn out, and the highest that keeps the margin. */
const QUARTER = 0.25;

function shownOf({ at, highest }: CrankHeights): readonly CrankedTo[] {
  const byQuarter = at.filter(({ share }) => Math.abs(share / QUARTER - Math.round(share / QUARTER)) < 1e-9);
  const apart = highest && byQuarter.every(({ top }) => Math.abs(top - highest.top) > 0.01);
  return [...byQuarter, ...(apart ? [highest] : [])].sort((a, b) => b.top - a.top);
}

/** A telescoping tower at every height, as a document: from drawn out down. */
export function heightsDocument(heights: CrankHeights, system: UnitSystem): HeightsAnswer {
  return told<HeightsAnswer>({
    says: heightsSay(heights, system),
    highest: quantity(heights.highest?.top, 'length', system),
    rows: shownOf(heights).map((row) =>
      told<HeightsAnswer['rows'][number]>({
        height: quantity(row.top, 'length', system),
        share: row.share,
        keepsMargin: row.keeps,
        inTheWay: row.clashes.length > 0 ? row.clashes : undefined,
        parts: row.parts.flatMap(({ kind, name, verdict, governs }) =>
          verdict === undefined
            ? []
            : [
                told<HeightsAnswer['rows'][number]['parts'][number]>({
                  kind,
                  name,
                  verdict,
                  ratio: governs.result?.ratio,
                  holdsToGust: quantity(governs.result?.holdsTo?.gust, 'speed', system),
                  keepsMarginTo: quantity(governs.result?.keepsMarginTo, 'speed', system),
                }),
              ],
        ),
        holdsToGust: quantity(leastOf(row.parts, 'holdsTo'), 'speed', system),
        keepsMarginTo: quantity(leastOf(row.parts, 'keepsMarginTo'), 'speed', system),
      }),
    ),
  });
}

/** The lowest gust among the decided parts [m/s]. */
function leastOf(parts: readonly Part[], which: 'holdsTo' | 'keepsMarginTo'): number | undefined {
  const gusts = parts.flatMap(({ checks }) =>
    checks.flatMap(({ result }) => (which === 'holdsTo' ? result?.holdsTo?.gust : result?.keepsMarginTo) ?? []),
  );
  return gusts.length === 0 ? undefined : Math.min(...gusts);
}

/** "It keeps the margin in the site’s wind with its top at 38 ft or lower." */
export function heightsSay({ at, highest }: CrankHeights, system: UnitSystem): string {
  if (!highest) return 'At no height does every part keep the margin in the site’s wind.';
  const full = at.at(-1);
  if (full && Math.abs(full.top - highest.top) < 0.01)
    return 'At every height that is looked at every decided part keeps the margin in the site’s wind.';
  return `Every decided part keeps the margin in the site’s wind with the top at ${inWords(highest.top, 'length', system)} or lower.`;
}

/** The same as lines of plain text. */
export function heightsLines(heights: CrankHeights, system: UnitSystem): string[] {
  return [
    heightsSay(heights, system),
    ...shownOf(heights).map((row) => {
      const height = inWords(row.top, 'length', system);
      if (row.clashes.length > 0) return `- ${height}: something is in the way of its sections there.`;
      const parts = row.parts.flatMap((part) =>
        part.verdict === undefined ? [] : [`${partName(part)} ${figureOf(part)}`],
      );
      const keeps = leastOf(row.parts, 'keepsMarginTo');
      const until = keeps === undefined ? '' : `; keeps the margin to a gust of ${inWords(keeps, 'speed', system)}`;
      return `- ${height} (${figures(row.share * 100, 2)} % of its travel): ${parts.join(', ')}${until}.`;
    }),
  ];
}

const figureOf = ({ verdict, governs }: Part) =>
  governs.result === undefined ? VERDICT_WORDS[verdict ?? 'open'] : ratioFigures(governs.result.ratio);
