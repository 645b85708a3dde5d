import { appurtenanceMasses, weightsNotGiven } from '../../structure/index.ts';
import { misfitsOf } from '../stated-for.ts';
import type { Check } from './check.ts';
import type { CheckContext, CheckKind } from './check-kind.ts';
import { compare, statedCheck, unknownCheck } from './stated-strength.ts';

/** Everything aloft against a weight that the maker of the tower states. */
export const weightKind: CheckKind<'weight'> = {
  kind: 'weight',
  assess: weightChecks,
  explain: undefined,
  loadedBy: 'weight',
  byRating: true,
  room: undefined,
};

function weightChecks({ model }: CheckContext): readonly Check[] {
  const { station, ratings } = model.input;
  return ratings.flatMap((rating, index): Check[] => {
    const { of: rated, claim, at } = rating;
    if (rated !== 'tower' || claim.kind !== 'weight') return [];
    const of = { id: `weight:${index + 1}`, kind: 'weight', at, number: index + 1 } as const;
    const misfits = misfitsOf(rating, station.tower).map((misfit) => `${at}/${misfit}`);
    if (misfits.length > 0) return [unknownCheck(of, misfits)];
    const weight = appurtenanceMasses(station).reduce((sum, { mass }) => sum + mass, 0);
    return [statedCheck(model, of, compare('weight', weight, claim.weight), weightsNotGiven(station))];
  });
}
