import { cite, evaluate } from '../foundation/index.ts';
import {
  ELEVATION_DECAY_HEIGHT,
  EXPOSURES,
  GUST_TIA,
  groundElevationFactor,
  ICE_IMPORTANCE_H,
  velocityPressureH,
} from '../wind/index.ts';
import { TIA_HILL_RULE } from './hill.ts';
import type { Method } from './method.ts';
import { TIA_SLENDER, type TiaRevision, tiaWind } from './tia222.ts';

const LEVEL = 0.6;
/** Rooftop speed-up; 1 on the ground, on a roof not computed. */
const ROOF_SPEED_UP = 1;

const revision: TiaRevision = {
  id: 'tia222-h',
  revision: 'H',
  level: () => LEVEL,
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
  basis: 'gust3-strength',
  level: LEVEL,
  levelCite: cite('tia222-h', '2.3.2, wind factor 1.0 on strength-level speeds, times 0.6', 'published'),
  nominal: 0.6,
  strength: 1,
  since: 2017,
  known: 'memory',
  exposureMatters: true,
  grounds: EXPOSURES,
  classMatters: false,
  hill: TIA_HILL_RULE,
  slender: TIA_SLENDER,
  ice: { mapFactor: 1, importance: ICE_IMPORTANCE_H, grows: true, wind: 'given', windLevel: 0.7, weightLevel: 0.7 },
  mastGust: () => GUST_TIA.mastOnTower,
  wind: (conditions) => tiaWind(revision, conditions),
  actualGust: (speed) => speed,
};
