import { explainIced } from '../explain-comparison.ts';
import { leansOn } from '../stated-for.ts';
import { checkRatio } from '../tower-ratio.ts';
import { type Check, judged, openCheck, withoutWinds } from './check.ts';
import type { CheckContext, CheckKind } from './check-kind.ts';
import { resultOf, towerNeeds } from './compared-with-rating.ts';

/** Tower and its top in the ice case. */
export const iceKind: CheckKind<'ice'> = {
  kind: 'ice',
  part: 'tower-with-ice',
  assess: iceCheck,
  explain: explainIced,
  loadedBy: 'wind',
  // More area gathers ice of its own, which nobody can tell yet.
  room: { onMastOnly: false, neededFor: undefined, left: () => undefined },
};

const ICE = { id: 'ice', kind: 'ice', at: '/site/ice' } as const;

function iceCheck({ model, ice }: CheckContext): readonly Check[] {
  if (!ice) return [];
  const { shown } = ice;
  if (!shown) return [openCheck(ICE, ice.weights === undefined ? 'no-ice-rule' : 'missing', ice.needs)];
  const found = checkRatio(shown.ratios, 'tower', 'tower-top');
  const missing = towerNeeds(model);
  if (model.comparedFromHeight >= model.input.station.tower.top) return [openCheck(ICE, 'held', missing)];
  if (!found || !Number.isFinite(found.unfavourable))
    return [openCheck(ICE, missing.length > 0 ? 'missing' : 'beyond-rating', missing)];
  const result = withoutWinds(resultOf(shown.model, found, shown.unfavourable));
  const because = found.favourable > 1 ? 'beyond-rating' : 'readings-disagree';
  const by = { margin: model.input.wanted.margin, favourable: found.favourableOver, missing, because } as const;
  const check = judged(ICE, result, by);
  // Ice makes the tower's own drag larger than any rated one, which the proof of a held tower leans on.
  const isHeld = leansOn(model.input.station.tower) && check.verdict !== 'over';
  return [isHeld ? openCheck(ICE, 'held', [], result) : check];
}
