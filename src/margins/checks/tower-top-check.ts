import { explainGoverning } from '../explain-comparison.ts';
import { steadyNotGiven } from '../tower-model.ts';
import { checkRatio } from '../tower-ratio.ts';
import { type Check, judged, openCheck, withoutWinds } from './check.ts';
import type { CheckContext, CheckKind } from './check-kind.ts';
import { resultOf, supportsNotGiven, towerNeeds } from './compared-with-rating.ts';
import { roomOfTower } from './room-of-tower.ts';

/** The top of the tower, where the mast hands over its load as a couple. */
export const towerTopKind: CheckKind<'tower-top'> = {
  kind: 'tower-top',
  part: 'tower-top',
  assess: topCheck,
  explain: (context, checks, trace) => explainGoverning(context, checks, 'tower-top', 'tower top', trace),
  heading: 'tower top',
  loadedBy: 'wind',
  comparesTower: 'tower-top',
  room: { onMastOnly: false, neededFor: 'all', left: roomOfTower },
};

const TOP = { id: 'tower-top', kind: 'tower-top', at: '/mast' } as const;

function topCheck({ model, ratios, withoutLeast }: CheckContext): readonly Check[] {
  const { mast } = model.input.station;
  if (!mast) return [];
  const found = checkRatio(ratios, 'tower-top');
  if (supportsNotGiven(model)) return [openCheck(TOP, 'missing', ['/tower/supportedAt'])];
  if (mast.foot === undefined) return [openCheck(TOP, 'missing', ['/mast/inside'])];
  if (!found) return [];
  if (!Number.isFinite(found.unfavourable)) return [openCheck(TOP, 'beyond-rating', towerNeeds(model))];
  const result = resultOf(model, found, withoutLeast);
  const missing = steadyNotGiven(model);
  const because = found.favourable > 1 ? 'beyond-rating' : 'readings-disagree';
  const by = { margin: model.input.wanted.margin, favourable: found.favourableOver, missing, because } as const;
  const check = judged(TOP, result, by);
  return [check.because === 'missing' ? { ...check, result: withoutWinds(result) } : check];
}
