import { type SpreadAnswer, told } from '../answer/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import type { Spread, SpreadCause, SpreadRow } from '../margins/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import { figures, inWords, ratioFigures, SPEED_WORDS } from '../words/index.ts';
import { quantity } from './quantity.ts';

const CAUSE_WORDS: Readonly<Record<SpreadCause, string>> = {
  'design-wind': 'its design wind (speed, averaging time, gust factor and level)',
  speed: 'the design speed, squared',
  level: 'the level at which its forces are compared',
  'height-and-ground': 'how its wind grows with height over this ground',
  hill: 'its hill',
  'ground-elevation': 'its thinner air higher up',
  direction: 'its direction factor',
  importance: 'its importance factor',
  gust: 'its gust effect factor',
  air: 'the density of its air',
  shapes: 'its coefficients of the shapes',
};

/** The plan by every method, as a document. */
export function spreadDocument(spread: Spread, system: UnitSystem): SpreadAnswer {
  return told<SpreadAnswer>({
    says: spreadSays(spread),
    rows: spread.rows.map((row) =>
      told<SpreadAnswer['rows'][number]>({
        method: row.method,
        title: METHOD_BY_ID[row.method].title,
        speed: { ...quantity(row.speed, 'speed', system), basis: row.basis },
        verdict: row.verdict,
        ratio: row.result?.ratio,
        ratioRange: row.result?.ratioRange,
        holdsToGust: quantity(row.result?.holdsTo?.gust, 'speed', system),
        largest: row.largest,
        moment: quantity(row.moment, 'moment', system),
        factors: row.factors,
      }),
    ),
    refused: spread.refused,
    cause: spread.cause,
  });
}

/** How far convention alone carries the answer, in a sentence or two. */
export function spreadSays({ rows, cause }: Spread): string {
  const shown = rows.flatMap((row) => (row.result ? [{ ...row, ratio: row.result.ratio }] : []));
  const [first] = shown;
  if (!first) return 'No standard gives a ratio to compare; what the tower is rated for is unknown.';
  const least = shown.reduce((low, row) => (row.ratio < low.ratio ? row : low));
  const most = shown.reduce((high, row) => (row.ratio > high.ratio ? row : high));
  const title = ({ method }: SpreadRow) => METHOD_BY_ID[method].title;
  const range = `The choice of standard alone moves the tower’s ratio from ${ratioFigures(least.ratio)} (${title(least)}) to ${ratioFigures(most.ratio)} (${title(most)}).`;
  if (!cause) return range;
  return `${range} The largest difference from ${METHOD_BY_ID[cause.method].title} is ${CAUSE_WORDS[cause.factor]}: a factor of ${figures(cause.ratio)}.`;
}

/** The same as lines of plain text. */
export function spreadLines(spread: Spread, system: UnitSystem): string[] {
  return [
    spreadSays(spread),
    ...spread.rows.map((row) => {
      const ratio = row.result ? `ratio ${ratioFigures(row.result.ratio)}` : 'no ratio';
      const holds = row.result?.holdsTo
        ? `, holds to an actual gust of ${inWords(row.result.holdsTo.gust, 'speed', system)}`
        : '';
      return `- ${METHOD_BY_ID[row.method].title}, ${inWords(row.speed, 'speed', system)} ${SPEED_WORDS[row.basis]}: ${ratio}${holds}.`;
    }),
    ...spread.refused.map(({ method, why }) => `- ${METHOD_BY_ID[method].title}: ${why}`),
  ];
}
