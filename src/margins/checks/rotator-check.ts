import type { TowerModel } from '../model.ts';
import { shareAllowed } from '../rating.ts';
import { once, steadyNotGiven } from '../tower-model.ts';
import { type Check, openCheck } from './check.ts';
import type { CheckKind } from './check-kind.ts';
import { mastAnswer, windsHeldByHold } from './mast-holds.ts';
import {
  compare,
  countedBy,
  type HeldMast,
  type Holder,
  holderChecks,
  icedHolderChecks,
  levelOf,
  mastNeeds,
  roomOfHolder,
  statedCheck,
  unknownCheck,
} from './stated-strength.ts';

const ROTATOR: Holder = { kind: 'rotator', force: 'atFoot' };

export const rotatorKind: CheckKind<'rotator'> = {
  kind: 'rotator',
  part: 'rotator',
  assess: (context) => [
    ...holderChecks(context.model, ROTATOR, clampCheck),
    ...icedHolderChecks(context, ROTATOR, clampCheck),
    ...unstatedClampCheck(context.model),
  ],
  explain: undefined,
  loadedBy: 'wind',
  byRating: true,
  room: roomOfHolder('atFoot'),
};

/** A mast without a bearing hands its moment whole to the rotator it is clamped on: that is shown by a moment, or not at all. */
function unstatedClampCheck(model: TowerModel): readonly Check[] {
  const { station, ratings } = model.input;
  if (!station.mast || station.mast.bearing !== undefined) return [];
  const ofRotator = ratings.filter(({ of }) => of === 'rotator');
  if (!station.rotator && ofRotator.length === 0) return [];
  if (ofRotator.some(({ claim }) => claim.kind === 'moment')) return [];
  const needs = [...mastNeeds(model, once(model, mastAnswer)), ...steadyNotGiven(model, 'mast'), '/ratings'];
  return [openCheck({ id: 'rotator', kind: 'rotator', at: '/rotator' }, 'missing', needs)];
}

function clampCheck({ of, model, rating, mast }: HeldMast): Check | undefined {
  const { claim } = rating;
  if (claim.kind !== 'moment') return undefined;
  if (!mast) return unknownCheck(of, mastNeeds(model, mast));
  if (mast.clampMoment === undefined) return openCheck(of, 'held-by-bearing');
  const capacity = claim.moment * shareAllowed(claim).low;
  const compared = {
    ...compare('clamp-moment', mast.clampMoment, capacity, model.hold.foot),
    ...countedBy(mast, 'clampMoment'),
  };
  const held = windsHeldByHold(model, 'clampMoment', capacity);
  return statedCheck(model, of, compared, steadyNotGiven(model, 'mast'), held, levelOf(rating, claim));
}
