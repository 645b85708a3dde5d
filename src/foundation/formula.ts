import type { Citation } from './citation.ts';
import type { Dimension } from './units.ts';

export interface Variable {
  readonly symbol: string;
  readonly meaning: string;
  readonly unit: Dimension;
  /** Range in SI over which the formula is meant and tested; for a list, of each member. */
  readonly from: number;
  readonly to: number;
  readonly list?: true;
}

/**
 * One formula in one place: the words and the expression the reader sees, and the function that computes it.
 * The expression is written for any coherent set of units, so that it holds with the units shown beside the inputs.
 */
export interface Formula<A extends readonly unknown[] = readonly unknown[]> {
  readonly id: string;
  readonly title: string;
  readonly symbol: string;
  readonly unit: Dimension;
  readonly expression: string;
  readonly variables: readonly Variable[];
  readonly cite: Citation;
  readonly of: (...inputs: A) => number;
}

/** Every formula defined, by id; the list that the service publishes and the tests sweep. */
const registry = new Map<string, Formula>();

/**
 * Registers a formula under its id.
 *
 * @param formula the formula; its id must be new
 * @throws Error when the id is taken
 * @example formulas().length > 0 // true
 */
export function defineFormula<const A extends readonly unknown[]>(formula: Formula<A>): Formula<A> {
  if (registry.has(formula.id)) throw new Error(`two formulas are called ${formula.id}`);
  registry.set(formula.id, formula as unknown as Formula);
  return formula;
}

/**
 * All formulas defined so far, in the order of their definition.
 *
 * @example formulas().every((formula) => formula.variables.length > 0) // true
 */
export function formulas(): readonly Formula[] {
  return [...registry.values()];
}

/**
 * One variable of a formula in one line.
 *
 * @param from lower end of its range, SI [-]
 * @param to upper end of its range, SI [-]
 * @example variable('V', 'wind speed', 'speed', 0, 180).symbol // 'V'
 */
export function variable(symbol: string, meaning: string, unit: Dimension, from: number, to: number): Variable {
  return { symbol, meaning, unit, from, to };
}

/**
 * One variable that is a list of numbers.
 *
 * @param from lower end of each member's range, SI [-]
 * @param to upper end of each member's range, SI [-]
 * @example listVariable('F', 'forces', 'force', 0, 1e4).list // true
 */
export function listVariable(symbol: string, meaning: string, unit: Dimension, from: number, to: number): Variable {
  return { symbol, meaning, unit, from, to, list: true };
}
