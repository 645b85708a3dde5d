import { under } from '../../foundation/index.ts';
import { explainHeldProof, type HeldProof, heldProofOf } from '../held/held-proof.ts';
import { heldBy } from '../holds-to-ratio.ts';
import type { TowerModel } from '../model.ts';
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
  room: undefined,
};

const BELOW = { id: 'tower-below', kind: 'tower-below', at: '/tower/supportedAt' } as const;

function belowCheck(model: TowerModel, proof: HeldProof): Check {
  if (proof.failure !== undefined) return openCheck(BELOW, proof.failure);
  const { worst, favourable, favourableOver, reaching, inStillAir } = proof;
  const { tower } = model.input.station;
  const missing = tower.support === 'guyed' && !tower.asDrawn ? ['/tower/asDrawn'] : [];
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
