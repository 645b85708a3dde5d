import {
  flatCoefficientEn,
  flowMeasureEn,
  latticeCoefficientEn,
  poleCoefficientEn,
  type Role,
  roundCoefficientEn,
  type WindDirection,
} from '../areas/index.ts';
import { cite, evaluate, type Trace } from '../foundation/index.ts';
import {
  AIR_DENSITY_EN,
  basicWindFor,
  basicWindOfGust,
  convertSpeed,
  exposureFactorEn,
  gustAtAntennaEn,
  gustOfBasicWind,
  hillConditionsEn,
  hillFactorEn,
  isMeanBasis,
  isTerrain,
  meanVelocity,
  orographyPressureRatio,
  peakVelocityPressure,
  roughnessFactor,
  TERRAIN_ROUGHNESS,
  TERRAINS,
  terrainFactor,
  terrainOf,
  turbulenceIntensityEn,
} from '../wind/index.ts';
import { coefficientOf, type MethodRule } from './common-coefficients.ts';
import { HALF_AT_STRENGTH } from './guy-rules.ts';
import { excludedBy, type HillRule } from './hill.ts';
import {
  COLUMN_SHARE,
  type Method,
  type PartCoefficient,
  type SpeedRule,
  type Wind,
  type WindConditions,
} from './method.ts';
import { ratedByShape } from './rated-areas.ts';

/** Characteristic wind × partial factor 1.5 × 0.6; EN 1993-3-1 has 1.2 to 1.6 for towers by class. */
const LEVEL = 0.9;

/** Lower than this [m] or swinging faster [Hz] the structural factor may be taken as 1; from memory, 6.2 (1). @source en1991-1-4 */
const STIFF_IF = { height: 15, frequency: 5 } as const;

/** Between a gust and the basic wind stands that standard's own gust factor; its peak wind is what an antenna feels. */
const SPEEDS: SpeedRule = {
  basis: 'mean-10min',
  sharedBasis: 'gust3-nominal',
  speedLevel: () => 'own',
  toOwnBasis: (speed, basis, role, trace) => {
    if (isMeanBasis(basis)) return convertSpeed(speed, basis, 'mean-10min', role, trace);
    return evaluate(trace, basicWindOfGust, [convertSpeed(speed, basis, 'gust3-nominal', role, trace)]);
  },
  fromOwnBasis: (speed, basis, role, trace) => {
    if (isMeanBasis(basis)) return convertSpeed(speed, 'mean-10min', basis, role, trace);
    return convertSpeed(evaluate(trace, gustOfBasicWind, [speed]), 'gust3-nominal', basis, role, trace);
  },
  actualGust: (speed, trace) => evaluate(trace, gustOfBasicWind, [speed]),
  gustAtHeight: (wind, speed, z, trace) =>
    evaluate(trace, gustAtAntennaEn, [wind.pressurePerSpeedSquared(z) * speed * speed, AIR_DENSITY_EN]),
  returnPeriod: { asked: true, speedFor: basicWindFor },
};

interface Orography {
  /** c_o at a height. */
  readonly factor: (z: number, trace?: Trace) => number;
  /** A factor on the pressure that the place's authority gives, where it is not one on the speed. */
  readonly pressureRatio: number;
}

const LEVEL_GROUND: Orography = { factor: () => 1, pressureRatio: 1 };

/** A factor on the pressure, as the other methods have it. */
export const EN_HILL_RULE: HillRule = {
  factorOn: 'speed',
  asksSurroundings: false,
  conditions: hillConditionsEn,
  byHeight: (hill, ground, trace) => {
    const { length, lowest } = TERRAIN_ROUGHNESS[terrainOf(ground)];
    return (z) => {
      const levelGround = evaluate(trace, turbulenceIntensityEn, [1, z, lowest, length]);
      const factors = [hillFactorEn(hill, z, trace), hillFactorEn(hill, Math.max(z, lowest))] as const;
      return evaluate(trace, orographyPressureRatio, [...factors, levelGround]);
    };
  },
};

function orographyOf({ hill, topographicFactor, exposure }: WindConditions): Orography {
  if (topographicFactor !== undefined) {
    return isTerrain(exposure)
      ? { factor: () => topographicFactor, pressureRatio: 1 }
      : { factor: () => 1, pressureRatio: topographicFactor };
  }
  if (!hill || excludedBy(EN_HILL_RULE, hill, exposure)) return LEVEL_GROUND;
  return { factor: (z, trace) => hillFactorEn(hill, z, trace), pressureRatio: 1 };
}

function wind(conditions: WindConditions): Wind {
  const { speed, actual } = conditions;
  const { length: z0, lowest } = TERRAIN_ROUGHNESS[terrainOf(conditions.exposure)];
  const z0II = TERRAIN_ROUGHNESS.II.length;
  const kr = terrainFactor.of(z0, z0II);
  const hill = orographyOf(conditions);
  const cr = (z: number, trace?: Trace) =>
    trace
      ? evaluate(trace, roughnessFactor, [evaluate(trace, terrainFactor, [z0, z0II]), z, lowest, z0])
      : roughnessFactor.of(kr, z, lowest, z0);
  const Iv = (co: number, z: number, trace?: Trace) =>
    trace ? evaluate(trace, turbulenceIntensityEn, [co, z, lowest, z0]) : turbulenceIntensityEn.of(co, z, lowest, z0);
  const peak = (z: number, V: number, trace?: Trace) => {
    const co = hill.factor(z, trace);
    // 4.4: below the lowest height the turbulence is that of the lowest height, its hill included.
    const intensity = Iv(z < lowest ? hill.factor(lowest, trace) : co, z, trace);
    const roughness = cr(z, trace);
    const q = trace
      ? evaluate(trace, peakVelocityPressure, [
          intensity,
          AIR_DENSITY_EN,
          evaluate(trace, meanVelocity, [roughness, co, V]),
        ])
      : peakVelocityPressure.of(intensity, AIR_DENSITY_EN, meanVelocity.of(roughness, co, V));
    return q * hill.pressureRatio;
  };
  // Pressure and flow are asked for the same height one after the other.
  let lastHeight = Number.NaN;
  let lastPressure = Number.NaN;
  const pressurePerSpeedSquared = (z: number) => {
    if (z !== lastHeight) {
      lastPressure = peak(z, 1);
      lastHeight = z;
    }
    return lastPressure;
  };
  const pressure = (z: number, trace?: Trace) => peak(z, speed, trace);
  const topographicFactor = (z: number, trace?: Trace) => {
    const co = hill.factor(z, trace);
    if (co === 1) return hill.pressureRatio;
    return (
      evaluate(trace, orographyPressureRatio, [co, hill.factor(Math.max(z, lowest)), Iv(1, z, trace)]) *
      hill.pressureRatio
    );
  };
  const excluded =
    conditions.hill && conditions.topographicFactor === undefined
      ? excludedBy(EN_HILL_RULE, conditions.hill, conditions.exposure)
      : undefined;
  const built: Wind = {
    method: 'en1991-1-4',
    conditions,
    toAllowableFactor: actual ? 1 : LEVEL,
    directionFactor: 1,
    forceDirectionFactor: 1,
    importance: 1,
    elevationFactor: 1,
    bendsAt: lowest,
    pressure,
    pressurePerSpeedSquared,
    exposureCoefficient: (z, trace) => evaluate(trace, exposureFactorEn, [Iv(1, z, trace), cr(z, trace)]),
    topographicFactor,
    gustVaries: false,
    gustEffect: () => 1,
    flowPerSpeed: (z) => Math.sqrt((2 * pressurePerSpeedSquared(z)) / AIR_DENSITY_EN),
    flow: (z, diameter, trace) => evaluate(trace, flowMeasureEn, [diameter, pressure(z), AIR_DENSITY_EN]),
    forceCoefficient: (rule, role, direction) =>
      coefficientOf(rule, conditions.units, (own) => ownCoefficient(own, role, direction)),
    leastPressure: 0,
  };
  return excluded ? { ...built, hillExcluded: excluded } : built;
}

function ownCoefficient(rule: MethodRule, role: Role, direction: WindDirection): PartCoefficient {
  switch (rule.of) {
    case 'round':
      return { byFlow: roundCoefficientEn(rule.aspect, rule.diameter, role) };
    case 'flat':
      return { byFlow: flatCoefficientEn(rule.face) };
    case 'lattice':
      return { byFlow: latticeCoefficientEn(rule.face, direction, role) };
    case 'pole':
      return { byFlow: poleCoefficientEn(rule.sides, rule.aspect, rule.width, role) };
  }
}

const SLENDER = { round: 1.2, flat: 2, compactFlat: 1.2 } as const;

/** EN 1991-1-4 with the lattices of EN 1993-3-1; recommended values, no national annex; c_s·c_d, c_dir and c_season 1. */
export const en199114: Method = {
  id: 'en1991-1-4',
  title: 'EN 1991-1-4',
  ...SPEEDS,
  aside: 'Europe',
  place: 'europe',
  forTowers: false,
  toAllowableFactor: LEVEL,
  toAllowableFactorCite: cite(
    'en1990',
    'A1.3.1, Table A1.2(B), partial factor 1.5, times 0.6; towers 1.2 to 1.6 by class',
    'memory',
  ),
  forceCite: cite('en1991-1-4', '5.3(2), Eq. (5.3)', 'memory'),
  toNominalFactor: 1,
  toStrengthFactor: 1.5,
  toStrengthFactorWithoutWind: 1.35,
  since: 2005,
  // A maker outside Europe may have meant it too: where nothing told speaks against it, the least of all counts.
  meantUnnamedIn: 'every-place',
  known: 'memory',
  cautions: ['partial-factor'],
  ground: { field: 'terrain', kinds: [...TERRAINS].reverse(), usual: 'II', counts: true },
  classMatters: false,
  gustsInHeightLaw: true,
  hill: EN_HILL_RULE,
  slender: SLENDER,
  ratedAreas: ratedByShape(SLENDER),
  // It has no ice of its own: the thickness and the gust that the place gives, at every height, with its own level.
  ice: {
    mapFactor: 1,
    importance: undefined,
    grows: false,
    wind: { speedOfGust: (gust) => SPEEDS.toOwnBasis(gust, 'gust3-nominal', 'site') },
    windLevel: LEVEL,
    weightLevel: 1,
  },
  besideOnTowers: undefined,
  guyRules: [HALF_AT_STRENGTH],
  mastGust: undefined,
  flexibleBelow: undefined,
  stiffIf: STIFF_IF,
  columnShare: COLUMN_SHARE.byH,
  wind,
};
