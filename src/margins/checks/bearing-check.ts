import { openCheck } from './check.ts';
import type { CheckKind } from './check-kind.ts';
import { type Holder, holderChecks, roomOfHolder } from './stated-strength.ts';

const BEARING: Holder = { kind: 'bearing', force: 'atBearing' };

export const bearingKind: CheckKind<'bearing'> = {
  kind: 'bearing',
  assess: ({ model }) =>
    holderChecks(model, BEARING, ({ of, mast }) =>
      mast && mast.atBearing === undefined ? openCheck(of, 'no-bearing') : undefined,
    ),
  explain: undefined,
  loadedBy: 'wind',
  byRating: true,
  room: roomOfHolder('atBearing'),
};
