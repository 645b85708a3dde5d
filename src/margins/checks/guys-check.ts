import { evaluate, under } from '../../foundation/index.ts';
import { guyUseOf, notToldOfGuys } from '../held/guys-use.ts';
import { guyUse } from '../held/held-formulas.ts';
import { heldWeightsNotGiven } from '../held/held-model.ts';
import { heldBy } from '../holds-to-ratio.ts';
import type { TowerModel } from '../model.ts';
import { type Check, type CheckResult, judged, openCheck, settled } from './check.ts';
import type { CheckContext, CheckKind } from './check-kind.ts';

/** Guys against their own strength: beside a rating a witness, without one what decides. */
export const guysKind: CheckKind<'guys'> = {
  kind: 'guys',
  part: 'guys',
  assess: guysCheck,
  explain: ({ model }, checks, trace) => {
    const found = guyUseOf(model);
    if (found === undefined || typeof found === 'string' || !checks.some(({ result }) => result)) return;
    under(trace, 'guys', () => evaluate(trace, guyUse, found.by));
  },
  loadedBy: 'wind',
  room: undefined,
};

const GUYS = { id: 'guys', kind: 'guys', at: '/tower/supportedAt' } as const;

function guysCheck({ model }: CheckContext): readonly Check[] {
  const found = guyUseOf(model);
  if (found === undefined) return [];
  if (typeof found === 'string') return [openCheck(GUYS, found)];
  const { ratio, by, height, favourable, reaching, inStillAir } = found;
  const [tension, share, ends, breaking] = by;
  const result: CheckResult = {
    ...settled({ ratio, of: 'guy-tension', demand: tension, capacity: share * ends * breaking, height }),
    ratioRange: [favourable, ratio],
    ...heldBy(model, reaching, inStillAir),
  };
  const check = judged(GUYS, result, {
    margin: model.input.wanted.margin,
    favourable,
    missing: heldWeightsNotGiven(model),
    because: 'not-given',
    asks: notToldOfGuys(model),
  });
  return besideRating(model, check);
}

/** A rating counts where it speaks: what nobody tells of the guys takes nothing from it, and what is told may contradict it. */
function besideRating(model: TowerModel, check: Check): readonly Check[] {
  if (model.claims.length + model.momentClaims.length === 0) return [check];
  if (check.verdict === 'over') return [openCheck(GUYS, 'contradicts-rating', [], check.result)];
  return check.verdict === 'open' ? [] : [check];
}
