import { cite, evaluate } from '../foundation/index.ts';
import { EXPOSURES, GUST_TIA, ICE_IMPORTANCE_G, IMPORTANCE_G, velocityPressureG } from '../wind/index.ts';
import { TIA_HILL_RULE } from './hill.ts';
import type { Method } from './method.ts';
import { TIA_SLENDER, type TiaRevision, tiaWind } from './tia222.ts';

/** Load factor 1.6 of wind, times 0.6. */
const LEVEL = 0.96;
const STRENGTH_MAP_LEVEL = 0.6;

const revision: TiaRevision = {
  id: 'tia222-g',
  revision: 'G',
  // A strength-level map carries the load factor and the importance already.
  level: ({ speedLevel }) => (speedLevel === 'strength' ? STRENGTH_MAP_LEVEL : LEVEL),
  importance: ({ actual, speedLevel, riskCategory }) =>
    actual || speedLevel === 'strength' ? 1 : IMPORTANCE_G[riskCategory],
  elevationFactor: () => 1,
  coefficientSpeedRatio: ({ actual, speedLevel }) => (speedLevel === 'strength' && !actual ? Math.sqrt(0.6) : 1),
  pressure: ({ c, Kz, Kzt, Kd, V, I }, trace) =>
    trace ? evaluate(trace, velocityPressureG, [c, Kz, Kzt, Kd, V, I]) : velocityPressureG.of(c, Kz, Kzt, Kd, V, I),
};

/** ANSI/TIA-222-G. */
export const tia222G: Method = {
  id: 'tia222-g',
  title: 'ANSI/TIA-222-G',
  basis: 'gust3-nominal',
  level: LEVEL,
  levelCite: cite('tia222-g', '2.3.2, wind factor 1.6, times 0.6', 'second-hand'),
  nominal: 1,
  strength: 1.6,
  since: 2005,
  known: 'memory',
  exposureMatters: true,
  grounds: EXPOSURES,
  classMatters: true,
  hill: TIA_HILL_RULE,
  slender: TIA_SLENDER,
  ice: { mapFactor: 2, importance: ICE_IMPORTANCE_G, grows: true, wind: 'given', windLevel: 0.7, weightLevel: 0.7 },
  mastGust: () => GUST_TIA.mastOnTower,
  wind: (conditions) => tiaWind(revision, conditions),
  actualGust: (speed) => speed,
};
