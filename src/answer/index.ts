export { type AdditionsAnswer, additionsSchema } from './additions.ts';
export { type Answer, answerSchema } from './answer.ts';
export type {
  ChanceAnswer,
  HeightsAnswer,
  RemediesAnswer,
  RemedyOutcomeAnswer,
  SensitivityAnswer,
  SpreadAnswer,
  StandardTubes,
} from './besides.ts';
export type { CheckAnswer, CheckChangeAnswer, CheckState, Piece } from './checks.ts';
export type { CautionAnswer, EntryWarning, InquiriesAnswer, Note } from './findings.ts';
export type { PartAnswer } from './part-verdicts.ts';
export {
  type AreasAnswer,
  areasSchema,
  type PressuresAnswer,
  pressuresSchema,
  type RatingsAnswer,
  ratingsSchema,
} from './parts.ts';
export type { Headings, Quantity } from './quantities.ts';
export { type RequirementsAnswer, requirementsSchema } from './requirements.ts';
export { told } from './settled.ts';
export { type StormCardAnswer, stormCardSchema } from './storm.ts';
export type {
  FoundationReport,
  IceReport,
  LoweredAnswer,
  MastForces,
  RaisingReport,
  RaisingRowReport,
  ReactionsAnswer,
} from './structure.ts';
export type { HillAnswer, LevelAnswer, LevelsAnswer } from './wind.ts';
export type { StepInput, WorkingStep } from './working.ts';
