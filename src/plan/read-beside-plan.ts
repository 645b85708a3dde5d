import type { z } from 'zod';
import { documentFaults } from './faults/document-faults.ts';
import { type Fault, inPlan, isObject } from './faults/fault.ts';
import { givenWords } from './faults/given-words.ts';
import { type PlanOptions, type PlanReading, readPlan } from './read-plan.ts';
import { PlanReader } from './reading/plan-reader.ts';

/** A plan and what is asked beside it, each read by itself. */
export interface BesidePlan<Form> {
  /** What is asked, as far as its form is right. */
  readonly form: Partial<Form>;
  readonly formFaults: readonly Fault[];
  readonly reading: PlanReading;
  /** What is wrong with the plan, placed in the request. */
  readonly planFaults: readonly Fault[];
  /** Reads quantities of the request in the plan's units. */
  readonly reader: PlanReader;
}

/**
 * Reads the plan of a request, and the form of what is asked beside it.
 *
 * @param document anything, as parsed from JSON
 * @param schema what may be asked; its plan is read by itself
 * @param called what a request is, after "a plan and"
 * @returns both, or the fault of what is no request at all
 * @example readBesidePlan(5, z.strictObject({ plan: z.unknown() }), 'a forecast') // [{ pointer: '#', code: 'wrong-type', given: '5', allowed: 'an object', says: 'A plan and a forecast are one object; 5 was given.' }]
 */
export function readBesidePlan<Schema extends z.ZodObject>(
  document: unknown,
  schema: Schema,
  called: string,
  options: PlanOptions = {},
): BesidePlan<z.output<Schema>> | readonly Fault[] {
  if (!isObject(document)) {
    const given = givenWords(document);
    const says = `A plan and ${called} are one object; ${given} was given.`;
    return [{ pointer: '#', code: 'wrong-type', given, allowed: 'an object', says }];
  }
  const parsed = schema.safeParse(document);
  const { faults: formFaults, rest = {} } = parsed.success
    ? { faults: [], rest: parsed.data }
    : documentFaults<Partial<z.output<Schema>>>(document, parsed.error.issues, schema);
  const { plan } = document;
  const reading = readPlan(plan, options);
  const units = isObject(plan) && plan['units'] === 'si' ? 'si' : 'us';
  const reader = new PlanReader(document, units, options.decimal ?? 'point');
  const isTold = reading.ok || formFaults.some(({ pointer }) => pointer === '#/plan');
  return { form: rest, formFaults, reading, planFaults: isTold ? [] : reading.faults.map(inPlan), reader };
}
