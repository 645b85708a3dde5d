import { MILE_PER_HOUR } from '../foundation/index.ts';
import type { CheckInput, Forecast } from '../margins/index.ts';
import { type EntryWarning, type Fault, inPlan } from './faults/fault.ts';
import { planHash } from './plan-hash.ts';
import { BOUNDS } from './quantities/field-bounds.ts';
import { readBesidePlan } from './read-beside-plan.ts';
import type { PlanOptions } from './read-plan.ts';
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
  const beside = readBesidePlan(document, stormFormSchema, 'a forecast', options);
  if (!('reading' in beside)) return { ok: false, faults: beside };
  const { form, formFaults, reading, planFaults, reader } = beside;
  const { speed: given, basis } = form.forecast ?? {};
  const speed = reader.quantity(given, '/forecast', 'speed', FORECAST_BOUNDS);
  const faults = [...formFaults, ...reader.faults, ...planFaults];
  if (faults.length > 0 || !reading.ok) return { ok: false, faults };
  return {
    ok: true,
    input: reading.input,
    ...(given === undefined ? {} : { forecast: { speed, ...(basis === undefined ? {} : { basis }) } }),
    entryWarnings: [...reading.entryWarnings.map(inPlan), ...reader.entryWarnings],
    planHash: planHash(reading),
  };
}
