import { FOOT, INCH, KNOT, MILE_PER_HOUR, POUND, POUND_FORCE, SQUARE_FOOT } from '../../foundation/index.ts';
import type { FieldBoundsName } from '../../words/index.ts';
import { PLAN_UNITS, type PlanDimension } from './plan-dimension.ts';

/** What a field may hold. The bounds keep out slips of the unit and of the keyboard; they are wider than any small tower. */
export interface FieldBounds {
  readonly dimension: PlanDimension;
  /** Lowest value allowed, SI. */
  readonly low: number;
  /** Highest value allowed, SI. */
  readonly high: number;
  /** The lowest value itself is not allowed. */
  readonly aboveLow: boolean;
}

const from = (dimension: PlanDimension, low: number, high: number): FieldBounds => ({
  dimension,
  low,
  high,
  aboveLow: false,
});
const above = (dimension: PlanDimension, low: number, high: number): FieldBounds => ({
  dimension,
  low,
  high,
  aboveLow: true,
});

/** All bounds here are ours. @source common-practice */
export const BOUNDS = {
  height: from('length', 0, 2000 * FOOT),
  /** A top, a length: something must be there. */
  extent: above('length', 0, 2000 * FOOT),
  /** Above or below something else. */
  offsetHeight: from('length', -2000 * FOOT, 2000 * FOOT),
  landscape: from('length', 0, 100_000 * FOOT),
  hillHeight: above('length', 0, 20_000 * FOOT),
  hillLength: above('length', 0, 100_000 * FOOT),
  elevation: from('length', -1500 * FOOT, 30_000 * FOOT),
  diameter: above('diameter', 0, 1200 * INCH),
  depth: from('diameter', 0, 1200 * INCH),
  wall: above('diameter', 0, 24 * INCH),
  taperLength: above('diameter', 0, 24_000 * INCH),
  area: from('area', 0, 2000 * SQUARE_FOOT),
  speed: above('speed', 0, 400 * MILE_PER_HOUR),
  force: from('force', 0, 1e6 * POUND_FORCE),
  weight: from('weight', 0, 1e6 * POUND),
  lineWeight: from('weight-per-length', 0, (100 * POUND) / FOOT),
  moment: from('moment', 0, 1e8 * POUND_FORCE * FOOT),
  strength: above('stress', 0, 300 * PLAN_UNITS.stress.us.inSi),
  soil: above('soil-pressure', 0, 1e5 * PLAN_UNITS['soil-pressure'].us.inSi),
  soilPerDepth: above('soil-pressure-per-depth', 0, 1e5 * PLAN_UNITS['soil-pressure-per-depth'].us.inSi),
  /** Of light to heavy concrete. */
  concrete: from('density', 1500, 3000),
  heading: from('angle', 0, 2 * Math.PI),
  frequency: above('frequency', 0, 1000),
  damping: above('share', 0, 0.5),
  share: from('share', 0, 0.95),
  solidity: above('share', 0, 1),
  topographicFactor: from('share', 1, 5),
  coefficient: above('share', 0, 3),
} as const satisfies Record<FieldBoundsName, FieldBounds>;

/** Speeds below which a value on the maps of a basis is hard to find, so that the basis is asked for again;
 * from memory of the maps. @source common-practice */
export const LOW_SPEED = {
  'gust3-strength': 90 * MILE_PER_HOUR,
  'gust3-nominal': 85 * MILE_PER_HOUR,
  'fastest-mile': 70 * MILE_PER_HOUR,
  'mean-1min': 45 * KNOT,
  'mean-10min': 20,
  'mean-hour': 18,
} as const;
