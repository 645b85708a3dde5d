import { type Ground, isMeanBasis, type SpeedBasis } from '../wind/index.ts';
import type { Method } from './method.ts';
import type { Place } from './method-id.ts';

/** What a rating that names no standard tells of it. */
export interface UnnamedStandard {
  readonly basis?: SpeedBasis;
  readonly exposure?: Ground;
  /** Year of the sheet. */
  readonly year?: number;
  /** Of the plan it stands in; absent: nothing tells. */
  readonly place?: Place;
}

/**
 * Whether a rating that names no standard may be by this one.
 *
 * not before the standard; in its kind of speed or a mean; for a ground that it knows; in a plan of a place it is meant in
 *
 * @returns true where nothing told speaks against it
 * @example mayBeMeant({ ...METHOD_BY_ID['eia222-f'], meantUnnamedIn: ['us'] }, { place: 'europe' }) // false
 */
export function mayBeMeant(
  method: Pick<Method, 'basis' | 'ground' | 'since' | 'meantUnnamedIn'>,
  told: UnnamedStandard,
): boolean {
  const { basis, exposure, year, place } = told;
  const { meantUnnamedIn } = method;
  if (meantUnnamedIn !== 'every-place' && (place === undefined || !meantUnnamedIn.includes(place))) return false;
  if (year !== undefined && method.since > year) return false;
  // Who names the ground in the words of one family of standards did not rate by the other.
  if (exposure !== undefined && !method.ground.kinds.includes(exposure)) return false;
  return basis === undefined || basis === method.basis || isMeanBasis(basis);
}
