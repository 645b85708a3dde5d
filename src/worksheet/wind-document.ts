import { type Answer, type Headings, told } from '../answer/index.ts';
import { DISPLAY_UNITS, type Dimension, displayValue, type UnitSystem } from '../foundation/index.ts';
import { type Assessment, designBasis, type WindLoads, type WindRow } from '../margins/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import { convertSpeed, isMeanBasis, type SpeedBasis } from '../wind/index.ts';
import { groundNamed } from '../words/index.ts';
import { quantity } from './quantity.ts';

/** The design wind and its factors. */
export function designDocument({ input, site, wind }: Assessment, system: UnitSystem): Answer['design'] {
  const method = METHOD_BY_ID[input.method];
  const basis = designBasis(input, site);
  const at = (level: SpeedBasis) => quantity(convertSpeed(site.speed, basis, level, 'site'), 'speed', system);
  return told<Answer['design']>({
    method: input.method,
    title: method.title,
    speed: { ...quantity(site.speed, 'speed', system), basis },
    exposure: undefined,
    terrain: undefined,
    ...(input.site.groundNotGiven ? {} : groundNamed(input.site.exposure)),
    speedLevels: isMeanBasis(basis) ? undefined : { strength: at('gust3-strength'), nominal: at('gust3-nominal') },
    riskCategory: wind.conditions.riskCategory,
    directionFactor: wind.directionFactor,
    directionFactorInForce: wind.forceDirectionFactor,
    importance: wind.importance,
    elevationFactor: wind.elevationFactor,
    gustEffect: wind.gustEffect(),
    level: wind.toAllowableFactor,
  });
}

/** Every item the wind acts on. */
export function windLoadsDocument(windLoads: WindLoads, system: UnitSystem): Answer['windLoads'] {
  const shown = (value: number, dimension: Dimension) => displayValue(value, dimension, system);
  const units = DISPLAY_UNITS[system];
  const { rows, total, headings, direction } = windLoads;
  return told<Answer['windLoads']>({
    units: {
      height: units.length.label,
      area: units.area.label,
      pressure: units.pressure.label,
      force: units.force.label,
      moment: units.moment.label,
    },
    rows: rows.map((row) => ({
      name: row.name,
      at: row.at,
      kind: row.kind,
      low: shown(row.low, 'length'),
      high: shown(row.high, 'length'),
      front: shown(row.front, 'area'),
      side: shown(row.side, 'area'),
      coefficient: row.coefficient,
      facing: shown(row.facing, 'area'),
      pressure: shown(row.pressure, 'pressure'),
      gustEffect: row.gustEffect,
      force: shown(row.force, 'force'),
      momentAtBase: shown(row.momentAtBase, 'moment'),
      momentAtTop: shown(row.momentAtTop, 'moment'),
    })),
    total: {
      force: shown(total.force, 'force'),
      momentAtBase: shown(total.momentAtBase, 'moment'),
      momentAtTop: shown(total.momentAtTop, 'moment'),
    },
    heading: headingDocument(headings, system),
    direction,
  });
}

/** Factors, pressure and speed of the wind at a height. */
export function windRowDocument(row: WindRow, system: UnitSystem): Answer['wind'][number] {
  return {
    height: quantity(row.height, 'length', system),
    exposureCoefficient: row.exposureCoefficient,
    topographicFactor: row.topographicFactor,
    pressure: quantity(row.pressure, 'pressure', system),
    speed: quantity(row.speed, 'speed', system),
  };
}

/** Headings in degrees, of what there is. */
export function headingDocument(headings: WindLoads['headings'], system: UnitSystem): Headings {
  return told<Headings>({
    fixed: quantity(headings.fixed, 'angle', system),
    turning: quantity(headings.turning, 'angle', system),
  });
}
