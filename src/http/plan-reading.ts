import { type Fault, type PlanReading, readPlan } from '../plan/index.ts';
import { Problem } from './problems/problem.ts';

type ReadablePlan = Extract<PlanReading, { ok: true }>;

export function planFaults(faults: readonly Fault[]): Problem {
  const [first] = faults;
  const detail =
    faults.length === 1 && first !== undefined
      ? first.says
      : `${faults.length} entries of the plan do not fit; each is listed.`;
  return new Problem('plan-faults', detail, { faults });
}

/** The plan of a request body; a problem with every fault where it cannot be read. */
export function readablePlan(body: unknown): ReadablePlan {
  if (body === undefined || body === null)
    throw new Problem('not-json', 'The body is empty; send a plan as a JSON object.');
  const reading = readPlan(body);
  if (!reading.ok) throw planFaults(reading.faults);
  return reading;
}
