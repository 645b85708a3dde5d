import { evaluate, type Trace } from '../foundation/index.ts';
import {
  basicWindOfGust,
  convertSpeed,
  gustOfBasicWind,
  isMeanBasis,
  type SpeedBasis,
  type SpeedRole,
} from '../wind/index.ts';
import type { Method } from './method.ts';

/**
 * A speed in the basis of a method's own maps. Between a gust and the basic wind of EN 1991-1-4 stands that standard's own
 * gust factor.
 *
 * V_own; to EN 1991-1-4: v_b = V₃ₛ/1.534
 *
 * @param method whose basis is wanted [-]
 * @param speed the speed [m/s], above 0
 * @param basis its basis [-]
 * @param role whose speed it is: decides the ratio of a mean [-]
 * @param trace the working, or nothing [-]
 * @returns the speed in the method's basis [m/s]
 * @throws Refusal `speed-too-low` when a gust under 10.5 mph is asked for as a fastest mile
 * @example toOwnBasis({ id: 'en1991-1-4', basis: 'mean-10min' }, 40, 'gust3-nominal', 'site') // 26.0756
 * @source derived
 */
export function toOwnBasis(
  method: Pick<Method, 'id' | 'basis'>,
  speed: number,
  basis: SpeedBasis,
  role: SpeedRole,
  trace?: Trace,
): number {
  if (method.id !== 'en1991-1-4' || isMeanBasis(basis)) return convertSpeed(speed, basis, method.basis, role, trace);
  return evaluate(trace, basicWindOfGust, [convertSpeed(speed, basis, 'gust3-nominal', role, trace)]);
}

/**
 * A speed of a method's own maps in another basis, by the same ratios as `toOwnBasis`.
 *
 * of EN 1991-1-4: V₃ₛ = 1.534·v_b
 *
 * @param method whose basis it is in [-]
 * @param speed the speed [m/s], above 0
 * @param basis the basis wanted [-]
 * @param role whose speed it is: decides the ratio of a mean [-]
 * @param trace the working, or nothing [-]
 * @returns the speed in that basis [m/s]
 * @throws Refusal `speed-too-low` when a gust under 10.5 mph is asked for as a fastest mile
 * @example fromOwnBasis({ id: 'en1991-1-4', basis: 'mean-10min' }, 26, 'gust3-nominal', 'site') // 39.884
 * @source derived
 */
export function fromOwnBasis(
  method: Pick<Method, 'id' | 'basis'>,
  speed: number,
  basis: SpeedBasis,
  role: SpeedRole,
  trace?: Trace,
): number {
  if (method.id !== 'en1991-1-4' || isMeanBasis(basis)) return convertSpeed(speed, method.basis, basis, role, trace);
  return convertSpeed(evaluate(trace, gustOfBasicWind, [speed]), 'gust3-nominal', basis, role, trace);
}
