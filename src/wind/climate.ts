import type { Trace } from '../foundation/index.ts';
import { convertSpeed, type SpeedBasis } from './speed-basis.ts';

/** Winds that blew or that a chart expects to blow; a strength-level speed is a figure of design, no wind. */
export type ClimateBasis = Exclude<SpeedBasis, 'gust3-strength'>;

/** What is known of the strongest winds of a place, at 10 m over open ground. */
export type Climate =
  | { readonly kind: 'chart'; readonly basis: ClimateBasis; readonly returns: readonly ChartValue[] }
  | { readonly kind: 'record'; readonly basis: ClimateBasis; readonly yearlyMax: readonly number[] };

export interface ChartValue {
  /** Mean time between years that reach the speed [years]. */
  readonly years: number;
  /** In the climate's basis [m/s]. */
  readonly speed: number;
}

/**
 * Speeds of a climate as actual 3-second gusts; a mean takes the larger ratio, as for a site.
 *
 * @param climate the climate, for its basis
 * @param speeds speeds in that basis [m/s]
 * @returns the gusts, in the order of the speeds [m/s]
 * @example climateGusts({ kind: 'record', basis: 'gust3-nominal', yearlyMax: [] }, [30, 35]) // [30, 35]
 * @source ibc-2003, durst, wmo-td-1555
 */
export function climateGusts(climate: Climate, speeds: readonly number[], trace?: Trace): readonly number[] {
  return speeds.map((speed) => convertSpeed(speed, climate.basis, 'gust3-nominal', 'site', trace));
}
