import { cite, evaluate } from '../foundation/index.ts';
import { GUST_TIA, ICE_IMPORTANCE_G, IMPORTANCE_G, velocityPressureG } from '../wind/index.ts';
import { codeSpeeds } from './code-speeds.ts';
import { BY_EXPOSURE } from './ground-by-exposure.ts';
import { SIX_TENTHS_AT_STRENGTH } from './guy-rules.ts';
import { TIA_HILL_RULE } from './hill.ts';
import { COLUMN_SHARE, type LevelFactors, type Method } from './method.ts';
import { ratedByShape } from './rated-areas.ts';
import { TIA_SLENDER, type TiaRevision, tiaWind } from './tia222.ts';

/** Load factor 1.6 of wind, times 0.6. */
const LEVEL = 0.96;
/** A strength-level map carries the load factor and the importance already. @source tia-faq */
const STRENGTH_MAP: LevelFactors = { toAllowableFactor: 0.6, toNominalFactor: 0.6, toStrengthFactor: 1 };

const revision: TiaRevision = {
  id: 'tia222-g',
  revision: 'G',
  toAllowableFactor: ({ speedLevel }) => (speedLevel === 'strength' ? STRENGTH_MAP.toAllowableFactor : LEVEL),
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
  ...codeSpeeds('gust3-nominal', STRENGTH_MAP),
  aside: undefined,
  place: 'us',
  forTowers: true,
  toAllowableFactor: LEVEL,
  forceCite: cite('tia222-g', '2.6.9', 'memory'),
  toAllowableFactorCite: cite('tia222-g', '2.3.2, wind factor 1.6, times 0.6', 'second-hand'),
  toNominalFactor: 1,
  toStrengthFactor: 1.6,
  since: 2005,
  meantUnnamedIn: 'every-place',
  known: 'memory',
  cautions: [],
  ground: BY_EXPOSURE,
  classMatters: true,
  gustsInHeightLaw: false,
  hill: TIA_HILL_RULE,
  slender: TIA_SLENDER,
  ratedAreas: ratedByShape(TIA_SLENDER),
  ice: {
    mapFactor: 2,
    importance: ICE_IMPORTANCE_G,
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
  columnShare: COLUMN_SHARE.byG,
  wind: (conditions) => tiaWind(revision, conditions),
};
