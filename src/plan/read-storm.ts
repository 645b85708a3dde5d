import type { z } from 'zod';
import { MILE_PER_HOUR } from '../foundation/index.ts';
import type { CheckInput, Forecast } from '../margins/index.ts';
import { documentFaults } from './faults/document-faults.ts';
import { type EntryWarning, type Fault, isObject } from './faults/fault.ts';
import { givenWords } from './faults/given-words.ts';
import { planHash } from './plan-hash.ts';
import { BOUNDS } from './quantities/field-bounds.ts';
import { type PlanOptions, readPlan } from './read-plan.ts';
import { PlanReader } from './reading/plan-reader.ts';
import { stormFormSchema } from './schema/storm-request.ts';

export type StormReading =
  | {
      readonly ok: true;
      readonly input: CheckInput;
      readonly forecast?: Forecast;
      readonly entryWarnings: readonly EntryWarning[];
      readonly planHash: ReturnType<typeof planHash>;
    }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** No wind near the ground but a tornado's is stronger. @source common-practice */
const FORECAST_BOUNDS = { ...BOUNDS.speed, high: 250 * MILE_PER_HOUR };

/**
 * Reads a plan and the wind that is forecast for it, or everything that is wrong with either.
 *
 * @param document anything, as parsed from JSON: `plan`, and `forecast` with its speed and type
 * @returns both in SI, or the faults, each pointing into the request
 * @example readStormRequest(5).ok // false
 */
export function readStormRequest(document: unknown, options: PlanOptions = {}): StormReading {
  if (!isObject(document)) {
    const given = givenWords(document);
    const says = `A plan and a forecast are one object; ${given} was given.`;
    return { ok: false, faults: [{ pointer: '#', code: 'wrong-type', given, allowed: 'an object', says }] };
  }
  const parsed = stormFormSchema.safeParse(document);
  const form = parsed.success
    ? { faults: [], rest: parsed.data }
    : documentFaults<Partial<z.output<typeof stormFormSchema>>>(document, parsed.error.issues, stormFormSchema);
  const reading = readPlan(document['plan'], options);
  const units = isObject(document['plan']) && document['plan']['units'] === 'si' ? 'si' : 'us';
  const reader = new PlanReader(document, units, options.decimal ?? 'point');
  const { speed: given, basis } = form.rest?.forecast ?? {};
  const speed = reader.quantity(given, '/forecast', 'speed', FORECAST_BOUNDS);
  const inPlan = <T extends { readonly pointer: string }>(each: T) => ({
    ...each,
    pointer: `#/plan${each.pointer.slice(1)}`,
  });
  const faults = [
    ...form.faults,
    ...reader.faults,
    ...(reading.ok || form.faults.some(({ pointer }) => pointer === '#/plan') ? [] : reading.faults.map(inPlan)),
  ];
  if (faults.length > 0 || !reading.ok) return { ok: false, faults };
  return {
    ok: true,
    input: reading.input,
    ...(given === undefined ? {} : { forecast: { speed, ...(basis === undefined ? {} : { basis }) } }),
    entryWarnings: [...reading.entryWarnings.map(inPlan), ...reader.entryWarnings],
    planHash: planHash(reading),
  };
}
