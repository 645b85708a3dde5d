import { under } from '../../foundation/index.ts';
import { heldWeightsNotGiven } from '../held/held-model.ts';
import { explainHeldProof, type HeldProof, heldProofOf } from '../held/held-proof.ts';
import { heldBy } from '../holds-to-ratio.ts';
import type { TowerModel } from '../model.ts';
import { forcePerArea, type RoomByCheck, type RoomPlace } from '../room-by-check.ts';
import { type Check, type CheckResult, judged, openCheck, settled } from './check.ts';
import type { CheckContext, CheckKind } from './check-kind.ts';

/** A tower from its foot to its highest guy or bracket, against what its ratings show through the same model. */
export const towerBelowKind: CheckKind<'tower-below'> = {
  kind: 'tower-below',
  part: 'tower',
  assess: ({ model }: CheckContext) => {
    const proof = heldProofOf(model);
    return proof ? [belowCheck(model, proof)] : [];
  },
  explain: ({ model }, checks, trace) => {
    if (checks.some(({ result }) => result))
      under(trace, 'tower below its highest support', () => explainHeldProof(model, trace));
  },
  loadedBy: 'wind',
  room: { onMastOnly: false, neededFor: 'all', left: roomBelow },
};

const BELOW = { id: 'tower-below', kind: 'tower-below', at: '/tower/supportedAt' } as const;

function belowCheck(model: TowerModel, proof: HeldProof): Check {
  if (proof.failure !== undefined) return openCheck(BELOW, proof.failure);
  const { worst, favourable, favourableOver, reaching, inStillAir } = proof;
  const { tower } = model.input.station;
  const missing = [
    ...(tower.support === 'guyed' && !tower.asDrawn ? ['/tower/asDrawn'] : []),
    ...heldWeightsNotGiven(model),
  ];
  const { of, ratio, demand, capacity, height } = worst;
  if (!Number.isFinite(ratio)) return openCheck(BELOW, missing.length > 0 ? 'missing' : 'beyond-rating', missing);
  const result: CheckResult = {
    ...settled({ ratio, of, demand, capacity, height }),
    ratioRange: [favourable, ratio],
    ...heldBy(model, reaching, inStillAir),
  };
  return judged(BELOW, result, {
    margin: model.input.wanted.margin,
    favourable: favourableOver,
    missing,
    because: favourable > 1 ? 'beyond-rating' : 'readings-disagree',
  });
}

/** What it leaves at a place, where it is shown. */
function roomBelow(
  { model }: CheckContext,
  { verdict }: Check,
  place: RoomPlace,
): RoomByCheck | 'unlimited' | undefined {
  const proof = heldProofOf(model);
  if (verdict === 'open' || !proof || proof.failure !== undefined) return undefined;
  const room = proof.room(place, 1 - model.input.wanted.margin);
  if (!room) return 'unlimited';
  const { area, perSquareMetre } = room;
  const perArea = Math.max(
    ...model.scenarios.map(({ appurtenances }) => forcePerArea(appurtenances.wind, place.height)),
  );
  const { ratio: demand } = proof.worst;
  return { ...place, check: BELOW.id, perArea, capacity: 1, demand, arm: perSquareMetre / perArea, area };
}
