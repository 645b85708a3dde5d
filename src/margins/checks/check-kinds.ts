import { antennaKind } from './antenna-check.ts';
import { bearingKind } from './bearing-check.ts';
import { CHECK_KINDS, type Check, type CheckKindName } from './check.ts';
import type { CheckContext, CheckKind } from './check-kind.ts';
import { elementsKind } from './element-check.ts';
import { fallKind } from './fall-check.ts';
import { foundationKind } from './foundation-check.ts';
import { guysKind } from './guys-check.ts';
import { hoistKind } from './hoist-check.ts';
import { iceKind } from './ice-check.ts';
import { mastKind } from './mast-check.ts';
import { ownStrengthKind } from './own-strength-check.ts';
import { lyingKind, raisingKind } from './raising-check.ts';
import { rotatorKind } from './rotator-check.ts';
import { towerBelowKind } from './tower-below-check.ts';
import { towerKind } from './tower-check.ts';
import { towerTopKind } from './tower-top-check.ts';
import { weightKind } from './weight-check.ts';

/** Every kind of check by its name: one that is named and has no record does not compile. */
export const CHECK_KIND = {
  tower: towerKind,
  'tower-below': towerBelowKind,
  'own-strength': ownStrengthKind,
  guys: guysKind,
  'tower-top': towerTopKind,
  ice: iceKind,
  mast: mastKind,
  bearing: bearingKind,
  rotator: rotatorKind,
  weight: weightKind,
  antenna: antennaKind,
  elements: elementsKind,
  foundation: foundationKind,
  raising: raisingKind,
  lying: lyingKind,
  hoist: hoistKind,
  fall: fallKind,
} as const satisfies { readonly [K in CheckKindName]: CheckKind<K> };

/** In the order of an answer. */
export const ALL_CHECK_KINDS: readonly CheckKind[] = CHECK_KINDS.map((kind) => CHECK_KIND[kind]);

/**
 * Every check of a plan, in the order of an answer.
 *
 * by kind; those of ratings together, in the order of the ratings
 *
 * @param left kinds that are left out
 */
export function checksOf(context: CheckContext, left: readonly CheckKindName[] = []): readonly Check[] {
  const checks = ALL_CHECK_KINDS.flatMap(({ kind, assess }) => (left.includes(kind) ? [] : assess(context)));
  const ofRatings = checks.filter(({ kind }) => CHECK_KIND[kind].byRating);
  const first = checks.findIndex(({ kind }) => CHECK_KIND[kind].byRating);
  const place = ({ number = Number.MAX_VALUE }: Check) => number;
  return first < 0
    ? checks
    : checks.toSpliced(first, ofRatings.length, ...ofRatings.sort((a, b) => place(a) - place(b)));
}

/**
 * Whether wind has no part in a check, so that it holds to none.
 *
 * what loads its kind, or a weight
 *
 * @example isInStillAir({ kind: 'hoist' }) // true
 */
export function isInStillAir(check: Pick<Check, 'kind' | 'result'>): boolean {
  return CHECK_KIND[check.kind].loadedBy !== 'wind' || check.result?.of === 'weight';
}
