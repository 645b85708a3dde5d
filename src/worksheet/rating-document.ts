import { type EntryWarning, type RatingsAnswer, told } from '../answer/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import type { ComparedRating, RatingComparison } from '../margins/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import { figures, groundNamed, inWords } from '../words/index.ts';
import { quantity } from './quantity.ts';
import { workingDocument } from './working-document.ts';

/** Ratings side by side, in the reader's units. */
export function ratingsDocument(
  comparison: RatingComparison,
  system: UnitSystem,
  working: 'none' | 'full',
  entryWarnings: readonly EntryWarning[],
): RatingsAnswer {
  const { ratings, more } = comparison;
  const force = (value: number) => quantity(value, 'force', system);
  const methods = new Set(ratings.flatMap((rating) => rating.readings.map((reading) => reading.reading.method)));
  return told<RatingsAnswer>({
    says: saysOf(comparison, system),
    ratings: ratings.map((rating) =>
      told<RatingsAnswer['ratings'][number]>({
        at: rating.at,
        row: rating.row,
        force: rating.force.map(force),
        equal: rating.equal?.map((area) => quantity(area, 'area', system)),
        readings: rating.readings.map(({ reading: { method, exposure, riskCategory }, low, high }) => ({
          method,
          ...groundNamed(exposure),
          riskCategory,
          low: force(low),
          high: force(high),
        })),
      }),
    ),
    more: more && { at: (ratings[more.number] as ComparedRating).at, by: more.by },
    notes: [
      {
        code: 'engineer-and-local-code',
        says: 'This compares manufacturers’ ratings, and does not apply to another tower. An engineer decides.',
      },
      {
        code: 'own-drag-not-compared',
        says: 'Only the rated areas are compared. The wind they cover on the tower itself differs too.',
      },
      ...[...methods]
        .filter((id) => METHOD_BY_ID[id].known !== 'published')
        .map((id) => ({
          code: 'method-from-memory',
          says: `Parts of ${METHOD_BY_ID[id].title} are from memory: check them against a copy of the standard.`,
        })),
    ],
    working: working === 'full' ? workingDocument(comparison.trace.steps, system) : undefined,
    entryWarnings,
  });
}

function saysOf({ ratings, more }: RatingComparison, system: UnitSystem): string {
  const range = ([low, high]: readonly [number, number], dimension: 'force' | 'area') =>
    low === high
      ? inWords(low, dimension, system)
      : `${inWords(low, dimension, system)} to ${inWords(high, dimension, system)}`;
  const lines = ratings.map((rating, number) => {
    const equal = rating.equal ? `, equal to ${range(rating.equal, 'area')} effective in the other wind` : '';
    return `Rating ${number + 1}: ${range(rating.force, 'force')} at the allowable level${equal}.`;
  });
  if (more) {
    const [least, most] = more.by;
    const by = least === most ? figures(least) : `${figures(least)} to ${figures(most)}`;
    lines.push(`Rating ${more.number + 1} is the largest, by a factor of ${by}.`);
  } else if (ratings.length > 1) lines.push('Open which is more; it depends on facts not stated.');
  return lines.join(' ');
}
