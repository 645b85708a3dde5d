import { METHOD_BY_ID, type Method } from '../../src/methods/index.ts';

function without<Key extends keyof Method>(key: Key): Omit<Method, Key> {
  const { [key]: _, ...rest } = METHOD_BY_ID['asce7-16'];
  return rest;
}

/** What must not compile: a standard that leaves one thing of its record open. A mark without an error is an error. */
export const INCOMPLETE_METHODS: readonly Method[] = [
  // @ts-expect-error id
  without('id'),
  // @ts-expect-error title
  without('title'),
  // @ts-expect-error aside
  without('aside'),
  // @ts-expect-error basis
  without('basis'),
  // @ts-expect-error sharedBasis
  without('sharedBasis'),
  // @ts-expect-error speedLevel
  without('speedLevel'),
  // @ts-expect-error toOwnBasis
  without('toOwnBasis'),
  // @ts-expect-error fromOwnBasis
  without('fromOwnBasis'),
  // @ts-expect-error actualGust
  without('actualGust'),
  // @ts-expect-error gustAtHeight
  without('gustAtHeight'),
  // @ts-expect-error returnPeriod
  without('returnPeriod'),
  // @ts-expect-error toAllowableFactor
  without('toAllowableFactor'),
  // @ts-expect-error toAllowableFactorCite
  without('toAllowableFactorCite'),
  // @ts-expect-error toNominalFactor
  without('toNominalFactor'),
  // @ts-expect-error place
  without('place'),
  // @ts-expect-error forTowers
  without('forTowers'),
  // @ts-expect-error since
  without('since'),
  // @ts-expect-error meantUnnamedIn
  without('meantUnnamedIn'),
  // @ts-expect-error known
  without('known'),
  // @ts-expect-error cautions
  without('cautions'),
  // @ts-expect-error ground
  without('ground'),
  // @ts-expect-error classMatters
  without('classMatters'),
  // @ts-expect-error gustsInHeightLaw
  without('gustsInHeightLaw'),
  // @ts-expect-error hill
  without('hill'),
  // @ts-expect-error ice
  without('ice'),
  // @ts-expect-error slender
  without('slender'),
  // @ts-expect-error ratedAreas
  without('ratedAreas'),
  // @ts-expect-error mastGust
  without('mastGust'),
  // @ts-expect-error flexibleBelow
  without('flexibleBelow'),
  // @ts-expect-error stiffIf
  without('stiffIf'),
  // @ts-expect-error wind
  without('wind'),
];
