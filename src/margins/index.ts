export { type Addition, type Additions, additionsOf, assessAsked, type CheckChange, ranksOf } from './additions.ts';
export { areasOf } from './areas.ts';
export { type Assessment, assess, type WindRow, windAt } from './assess.ts';
export { ASSUMED, type Assumed, type AssumedName } from './assumed/assumed.ts';
export type { Assumption } from './assumed/assumption.ts';
export {
  LONGEST_ARM,
  LOWEST_BEARING,
  PIECE_ALIKE,
  POLE_DAMPING,
  USUAL_LINES,
  USUAL_MAST,
} from './assumed/plausible.ts';
export { type BaseInWind, baseByWind } from './base-by-wind.ts';
export { CAUTION_CODES, type Caution, type CautionCode, type Lacking, SEVERITIES } from './cautions.ts';
export type { Chance, Chances } from './chance.ts';
export { type CheckInput, designBasis, enteredBasis, type NotGiven, type Wanted } from './check-input.ts';
export {
  type AreaUsed,
  CHECK_KINDS,
  type Check,
  type CheckKindName,
  type CheckResult,
  COMPARED,
  type Compared,
  type ComparedOf,
  type FallTowards,
  HOLDING_TORQUES,
  OPEN_REASONS,
  type OpenBecause,
} from './checks/check.ts';
export type { CheckKind } from './checks/check-kind.ts';
export { CHECK_KIND, isInStillAir } from './checks/check-kinds.ts';
export type { FoundationAnswer } from './checks/foundation-check.ts';
export type { MastAnswer } from './checks/mast-holds.ts';
export { PART_KINDS, type PartKind } from './checks/part-kinds.ts';
export type { RaisingAnswer } from './checks/raising-check.ts';
export { COMPARED_PLACES } from './comparisons.ts';
export { type CrankedTo, type CrankHeights, crankHeightsOf } from './crank-heights.ts';
export { actualSpeedHoldsTo, designHoldsTo, lowerAtGust, sliceForce } from './formulas.ts';
export { type GuyedForces, guyedForcesOf } from './held/guyed-forces.ts';
export { type HillHelp, hillHelpOf } from './hill-help.ts';
export { type Inquiries, type Inquiry, inquiriesOf } from './inquiries.ts';
export type { LowerAt } from './lower-at.ts';
export { type Lowered, loweredOf } from './lowered.ts';
export { type OpenQuestion, QUESTIONS } from './open-questions.ts';
export { couldBeOver, type Decided, type Part, partOf } from './parts.ts';
export { plausibleRatedHeights, type RatedHeights } from './plausible-rated-heights.ts';
export { ratedAreaFactor } from './rated-case.ts';
export type { RatedWind, Rating, RatingClaim } from './rating.ts';
export { type ComparedRating, compareRatings, type RatingComparison } from './rating-comparison.ts';
export type { ByLevel, FootForces, LegsAtFoot, Reactions } from './reactions.ts';
export { type Remedies, type Remedy, type RemedyOutcome, remediesOf, WORTH_RISING } from './remedies.ts';
export {
  FOOTING_GRAIN,
  INSIDE_GRAIN,
  LOWERING_GRAIN,
  LOWERING_STEP,
  type OtherTube,
  type RemedyChange,
  SMALLER,
} from './remedy-kinds.ts';
export type { Needed, NeededAt } from './requirements/needed.ts';
export {
  type QuotedRequirement,
  REQUIRED_LOADS,
  REQUIRED_WINDS,
  type RequirementCase,
  type Requirements,
  type RequirementsAsked,
  requirementPlans,
  requirementSteps,
  requirementsOf,
} from './requirements/requirements.ts';
export { TOWER_KINDS, type TowerKind } from './requirements/towers-meant.ts';
export type { QuotedWind } from './requirements/usual-ratings.ts';
export { ROOM_PLACES } from './room-by-check.ts';
export type { RoomLeft } from './room-left.ts';
export { type Change, HEIGHT_STEP, type Sensitivity, type SensitivityRow, sensitivityOf } from './sensitivity.ts';
export {
  SPREAD_CAUSES,
  SPREAD_FACTORS,
  type Spread,
  type SpreadCause,
  type SpreadFactor,
  type SpreadRow,
  spreadOf,
} from './spread.ts';
export { standardTubesFor, type TubeForMast } from './standard-tubes-for.ts';
export { heldAsRated, ratedSupports } from './stated-for.ts';
export {
  FORECAST_BASES,
  type Forecast,
  type ForecastBasis,
  STORM_ACTS,
  STORM_POSTURES,
  STORM_STATES,
  type StormCard,
  type StormPart,
  type StormPosture,
  type StormRow,
  stormCardOf,
} from './storm.ts';
export { SERVICE_GUST, type Sway, sheddingOf, swayOf } from './sway.ts';
export { type DemandAndCapacity, SIDEWAYS, type TowerLevel, towerLevels } from './tower-levels.ts';
export { deadDemandOf, siteSpeed, siteWind } from './tower-model.ts';
export { type ComparisonRatio, checkRatio } from './tower-ratio.ts';
export { turningCircles } from './turning-circle.ts';
export { betterVerdict, VERDICTS, type Verdict, worstVerdict } from './verdict.ts';
export type { WindLoadRow, WindLoads } from './wind-loads.ts';
export { WORK_CAUSES, type Work, type WorkCause, workOf } from './work.ts';
export { workingOf } from './working.ts';
