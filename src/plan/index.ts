export {
  CELL_IDS,
  CELLS,
  type CellDefinition,
  type CellId,
  FORM_PARAMETERS,
  type StationGives,
} from './cells/cell-definitions.ts';
export type { CellFault } from './cells/cell-faults.ts';
export { type CellQuestion, type CellReading, type CellRow, readCell } from './cells/read-cell.ts';
export type { EntryWarning, Fault, FaultCode, QueryCode } from './faults/fault.ts';
export { type FormReading, type FormTextOptions, fromFormText, readFormText } from './form-text.ts';
export { type LoadTable, readLoadTable } from './load-table.ts';
export { planHash } from './plan-hash.ts';
export type { DecimalSign } from './quantities/number-text.ts';
export { PLAN_UNITS, type PlanDimension } from './quantities/plan-dimension.ts';
export { type QuantityReading, readQuantityText } from './quantities/quantity-text.ts';
export { type AdditionsReading, readAdditionsRequest } from './read-additions.ts';
export {
  type Part,
  type PartReading,
  type PressuresPart,
  type RatingsPart,
  readAreasRequest,
  readPressuresRequest,
  readRatingsRequest,
} from './read-part.ts';
export { type PlanOptions, type PlanReading, readPlan } from './read-plan.ts';
export { additionsFieldsSchema, additionsRequestSchema } from './schema/additions-request.ts';
export { areasRequestSchema, pressuresRequestSchema, ratingsRequestSchema } from './schema/part-documents.ts';
export { type PlanDocument, planDocumentSchema } from './schema/plan-document.ts';
export {
  readStock,
  STOCK_KINDS,
  type StockEntry,
  type StockKind,
  type StockReading,
} from './stock/read-stock.ts';
export { withUnits } from './stock/with-units.ts';
