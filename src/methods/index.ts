import type { GroundField } from '../wind/index.ts';
import { asce710 } from './asce7-10.ts';
import { asce716 } from './asce7-16.ts';
import { asce722 } from './asce7-22.ts';
import { eia222F } from './eia222-f.ts';
import { en199114 } from './en1991-1-4.ts';
import type { Method } from './method.ts';
import { METHODS, type MethodId, PLACES, SITE_METHODS } from './method-id.ts';
import { rs222C } from './rs222-c.ts';
import { tia222G } from './tia222-g.ts';
import { tia222H } from './tia222-h.ts';

export { ASCE_LEAST_PRESSURE, LATTICE_DIRECTION_FACTOR, STANDARD_DAMPING } from './asce7.ts';
export * from './code-editions.ts';
export * from './common-coefficients.ts';
export type { GuyRule } from './guy-rules.ts';
export type { ExcludedHill, HillRule } from './hill.ts';
export * from './method.ts';
export * from './method-id.ts';
export { RATED_AREA_KINDS } from './rated-areas.ts';
export { TIA_POLE_DIRECTION_FACTOR } from './tia222.ts';
export * from './unnamed-standard.ts';

/** Every method by its id. */
export const METHOD_BY_ID: Readonly<Record<MethodId, Method>> = {
  'asce7-10': asce710,
  'asce7-16': asce716,
  'asce7-22': asce722,
  'tia222-g': tia222G,
  'tia222-h': tia222H,
  'eia222-f': eia222F,
  'en1991-1-4': en199114,
  'rs222-c': rs222C,
};

/**
 * The ids of the methods of a site that have something of their own, for words.
 *
 * id, id
 *
 * @example siteMethodsWith(({ ground }) => ground.field === 'terrain') // 'en1991-1-4'
 */
export function siteMethodsWith(has: (method: Method) => boolean): string {
  return SITE_METHODS.filter((id) => has(METHOD_BY_ID[id])).join(', ');
}

/** A method as it is offered where one is chosen. */
export interface ListedMethod {
  readonly id: MethodId;
  readonly words: string;
  readonly ground: GroundField;
  /** Its wind goes by the ground. */
  readonly asksGround: boolean;
  /** A plan may name the return period of its speed. */
  readonly asksYears: boolean;
  /** A hill counts only where it is isolated. */
  readonly asksIsolated: boolean;
  readonly ofSites: boolean;
  /** Units of new plans that it is offered to. */
  readonly offeredTo?: 'us' | 'si';
}

/**
 * All methods as they are offered: those of a site first, of towers before those of structures at large, the newest first.
 *
 * title (where or when)
 *
 * @example listedMethods()[0].words // 'ANSI/TIA-222-H'
 */
export function listedMethods(): readonly ListedMethod[] {
  const ofSites = new Set<MethodId>(SITE_METHODS);
  const order = ({ id, forTowers, place, since }: Method) =>
    (ofSites.has(id) ? 0 : 1e6) + (forTowers ? 0 : 1e5) + PLACES.indexOf(place) * 1e4 - since;
  return METHODS.map((id) => METHOD_BY_ID[id])
    .sort((a, b) => order(a) - order(b))
    .map(({ id, title, aside, ground, returnPeriod, hill, offeredTo }) => ({
      id,
      words: aside === undefined ? title : `${title} (${aside})`,
      ground: ground.field,
      asksGround: ground.counts,
      asksYears: returnPeriod.asked,
      asksIsolated: hill?.asksSurroundings ?? false,
      ofSites: ofSites.has(id),
      ...(offeredTo === undefined ? {} : { offeredTo }),
    }));
}
