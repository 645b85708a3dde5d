import { appurtenanceMasses, weightsNotGiven } from '../../structure/index.ts';
import type { TowerModel } from '../model.ts';
import { misfitsOf } from '../stated-for.ts';
import { type Check, withIce } from './check.ts';
import type { CheckKind } from './check-kind.ts';
import { compare, statedCheck, unknownCheck } from './stated-strength.ts';

/** Everything aloft against a weight that the maker of the tower states, bare and with ice. */
export const weightKind: CheckKind<'weight'> = {
  kind: 'weight',
  part: 'weight-aloft',
  assess: ({ model, ice }) => [
    ...weightChecks(model),
    ...(ice?.weights ? withIce(weightChecks({ ...model, ice: ice.weights })) : []),
  ],
  explain: undefined,
  loadedBy: 'weight',
  byRating: true,
  room: undefined,
};

function weightChecks(model: TowerModel): readonly Check[] {
  const { station, ratings } = model.input;
  return ratings.flatMap((rating, index): Check[] => {
    const { of: rated, claim, at } = rating;
    if (rated !== 'tower' || claim.kind !== 'weight') return [];
    const of = { id: `weight:${index + 1}`, kind: 'weight', at, number: index + 1 } as const;
    const misfits = misfitsOf(rating, station.tower).map((misfit) => `${at}/${misfit}`);
    if (misfits.length > 0) return [unknownCheck(of, misfits)];
    const bare = appurtenanceMasses(station).reduce(
      (sum, { mass, counterpoise }) => sum + (counterpoise ? 0 : mass),
      0,
    );
    const needs = [...weightsNotGiven(station), ...(model.ice?.needs ?? [])];
    return [statedCheck(model, of, compare('weight', bare + (model.ice?.aloft ?? 0), claim.weight), needs)];
  });
}
