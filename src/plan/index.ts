export {
  CELL_IDS,
  CELLS,
  type CellDefinition,
  type CellId,
  FORM_PARAMETERS,
} from './cells/cell-definitions.ts';
export type { CellFault } from './cells/cell-faults.ts';
export { type CellQuestion, type CellReading, readCell } from './cells/read-cell.ts';
export type { EntryWarning, Fault, FaultCode } from './faults/fault.ts';
export { editDistance } from './faults/nearest-name.ts';
export { fromFormText, readFormText } from './form-text.ts';
export { readLoadTable } from './load-table.ts';
export { planHash } from './plan-hash.ts';
export type { DecimalSign } from './quantities/number-text.ts';
export { PLAN_UNITS, type PlanDimension } from './quantities/plan-dimension.ts';
export { readQuantityText } from './quantities/quantity-text.ts';
export { readAdditionsRequest } from './read-additions.ts';
export {
  type Part,
  readAreasRequest,
  readPressuresRequest,
  readRatingsRequest,
} from './read-part.ts';
export { type PlanOptions, type PlanReading, readPlan } from './read-plan.ts';
export { type ReadCandidate, readRequirementsRequest } from './read-requirements.ts';
export { readStormRequest } from './read-storm.ts';
export { additionsFieldsSchema, additionsRequestSchema } from './schema/additions-request.ts';
export { areasRequestSchema, pressuresRequestSchema, ratingsRequestSchema } from './schema/part-documents.ts';
export { planDocumentSchema } from './schema/plan-document.ts';
export { requirementsRequestSchema } from './schema/requirements-request.ts';
export { stormRequestSchema } from './schema/storm-request.ts';
export {
  readStock,
  STOCK_KINDS,
  type StockEntry,
} from './stock/read-stock.ts';
export { withUnits } from './stock/with-units.ts';
