import { type Check, openCheck } from './check.ts';
import type { CheckKind } from './check-kind.ts';
import { type HeldMast, type Holder, holderChecks, icedHolderChecks, roomOfHolder } from './stated-strength.ts';

const BEARING: Holder = { kind: 'bearing', force: 'atBearing' };

export const bearingKind: CheckKind<'bearing'> = {
  kind: 'bearing',
  part: 'bearing',
  assess: (context) => [
    ...holderChecks(context.model, BEARING, withoutBearing),
    ...icedHolderChecks(context, BEARING, withoutBearing),
  ],
  explain: undefined,
  loadedBy: 'wind',
  byRating: true,
  room: roomOfHolder('atBearing'),
};

function withoutBearing({ of, mast }: HeldMast): Check | undefined {
  return mast && mast.atBearing === undefined ? openCheck(of, 'no-bearing') : undefined;
}
