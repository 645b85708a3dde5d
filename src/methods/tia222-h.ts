import { cite, evaluate } from '../foundation/index.ts';
import {
  ELEVATION_DECAY_HEIGHT,
  GUST_TIA,
  groundElevationFactor,
  ICE_IMPORTANCE_H,
  velocityPressureH,
} from '../wind/index.ts';
import { codeSpeeds } from './code-speeds.ts';
import { BY_EXPOSURE } from './ground-by-exposure.ts';
import { SIX_TENTHS_AT_STRENGTH } from './guy-rules.ts';
import { TIA_HILL_RULE } from './hill.ts';
import { COLUMN_SHARE, type Method } from './method.ts';
import { ratedByShape } from './rated-areas.ts';
import { TIA_SLENDER, type TiaRevision, tiaWind } from './tia222.ts';

const LEVEL = 0.6;
/** Rooftop speed-up; 1 on the ground, on a roof not computed. */
const ROOF_SPEED_UP = 1;

const revision: TiaRevision = {
  id: 'tia222-h',
  revision: 'H',
  toAllowableFactor: () => LEVEL,
  importance: () => 1,
  elevationFactor: ({ groundElevation }, trace) =>
    groundElevation > 0 ? evaluate(trace, groundElevationFactor, [groundElevation, ELEVATION_DECAY_HEIGHT]) : 1,
  // Its limits are for strength-level speeds; an actual gust stands for the strength-level one of the same rank.
  coefficientSpeedRatio: ({ actual }) => (actual ? 1 / Math.sqrt(0.6) : 1),
  pressure: ({ c, Kz, Kzt, Kd, Ke, V }, trace) =>
    trace
      ? evaluate(trace, velocityPressureH, [c, Kz, Kzt, ROOF_SPEED_UP, Ke, Kd, V])
      : velocityPressureH.of(c, Kz, Kzt, ROOF_SPEED_UP, Ke, Kd, V),
};

/** ANSI/TIA-222-H. */
export const tia222H: Method = {
  id: 'tia222-h',
  title: 'ANSI/TIA-222-H',
  ...codeSpeeds('gust3-strength'),
  aside: undefined,
  // Building codes of the United States send antenna towers to it.
  offeredTo: 'us',
  place: 'us',
  forTowers: true,
  toAllowableFactor: LEVEL,
  forceCite: cite('tia222-h', '2.6.11; in -G 2.6.9', 'memory'),
  toAllowableFactorCite: cite('tia222-h', '2.3.2, wind factor 1.0 on strength-level speeds, times 0.6', 'published'),
  toNominalFactor: 0.6,
  toStrengthFactor: 1,
  since: 2017,
  meantUnnamedIn: 'every-place',
  known: 'memory',
  cautions: [],
  ground: BY_EXPOSURE,
  classMatters: false,
  gustsInHeightLaw: false,
  hill: TIA_HILL_RULE,
  slender: TIA_SLENDER,
  ratedAreas: ratedByShape(TIA_SLENDER),
  ice: {
    mapFactor: 1,
    importance: ICE_IMPORTANCE_H,
    grows: true,
    wind: { speedOfGust: (gust) => gust },
    windLevel: 0.7,
    weightLevel: 0.7,
  },
  besideOnTowers: undefined,
  guyRules: [SIX_TENTHS_AT_STRENGTH],
  mastGust: () => GUST_TIA.mastOnTower,
  flexibleBelow: undefined,
  stiffIf: undefined,
  columnShare: COLUMN_SHARE.byH,
  wind: (conditions) => tiaWind(revision, conditions),
};
