import { DISPLAY_UNITS, type DisplayUnit, type UnitSystem } from '../../foundation/index.ts';
import type { FieldDimension } from '../../words/index.ts';

/** The kinds of quantity a plan can hold. */
export type PlanDimension = FieldDimension;

export interface PlanUnit {
  readonly label: string;
  readonly inSi: number;
}

const { us, si } = DISPLAY_UNITS;
const both = (dimension: Exclude<PlanDimension, 'share'>) => ({
  us: us[dimension] as DisplayUnit as PlanUnit,
  si: si[dimension] as DisplayUnit as PlanUnit,
});

/** The unit a plain number has in a plan. */
export const PLAN_UNITS: Readonly<Record<PlanDimension, Readonly<Record<UnitSystem, PlanUnit>>>> = {
  length: both('length'),
  diameter: both('diameter'),
  area: both('area'),
  speed: both('speed'),
  force: both('force'),
  weight: both('weight'),
  'weight-per-length': both('weight-per-length'),
  moment: both('moment'),
  stress: both('stress'),
  'soil-pressure': both('soil-pressure'),
  'soil-pressure-per-depth': both('soil-pressure-per-depth'),
  density: both('density'),
  angle: both('angle'),
  frequency: both('frequency'),
  share: { us: { label: '', inSi: 1 }, si: { label: '', inSi: 1 } },
};

export const WORDS_FOR_DIMENSION: Readonly<Record<PlanDimension, string>> = {
  length: 'a length',
  diameter: 'a width',
  area: 'an area',
  speed: 'a speed',
  force: 'a force',
  weight: 'a weight',
  'weight-per-length': 'a weight of a length',
  moment: 'a moment',
  stress: 'a strength',
  'soil-pressure': 'a soil pressure',
  'soil-pressure-per-depth': 'a soil pressure for each length of depth',
  density: 'a weight of a volume',
  angle: 'a heading',
  frequency: 'a frequency',
  share: 'a share',
};

/** A quantity in SI in the plan's own units, in words, to four significant figures. */
export function quantityWords(value: number, dimension: PlanDimension, units: UnitSystem): string {
  const unit = PLAN_UNITS[dimension][units];
  return `${Number((value / unit.inSi).toPrecision(4))} ${unit.label}`.trim();
}
