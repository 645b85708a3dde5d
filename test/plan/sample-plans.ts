import { type EntryWarning, type Fault, type PlanOptions, type PlanReading, readPlan } from '../../src/plan/index.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
export type Sample = { [key: string]: Json };

/** The smallest useful plan, invented: ten numbers. */
export function tenNumbers(): Sample {
  return {
    units: 'us',
    method: 'asce7-16',
    site: { wind: 105, exposure: 'C' },
    tower: { support: 'free', top: 48, shape: 'lattice', faces: 3, width: 18, members: 'round', frequency: 2 },
    loads: [{ name: 'beam', above: 2, area: 5.5 }],
    cables: [{ count: 3, diameter: 0.405 }],
    ratings: [{ of: 'tower', area: 18, wind: { speed: 100, method: 'tia222-g' } }],
  };
}

/** The ten numbers with members merged in, as RFC 7396 merges: null takes a member away. */
export function changed(patch: Sample, plan: Sample = tenNumbers()): Sample {
  const merged: Sample = { ...plan };
  for (const [key, value] of Object.entries(patch)) {
    const before = merged[key];
    if (value === null) delete merged[key];
    else if (isObject(value) && isObject(before)) merged[key] = changed(value, before);
    else merged[key] = value;
  }
  return merged;
}

function isObject(value: Json | undefined): value is Sample {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Reads a plan that must be readable. */
export function read(plan: unknown, options?: PlanOptions): Extract<PlanReading, { ok: true }> {
  const reading = readPlan(plan, options);
  if (!reading.ok) throw new Error(reading.faults.map((fault) => `${fault.pointer} ${fault.says}`).join('\n'));
  return reading;
}

/** The faults of a plan that must not be readable. */
export function faultsOf(plan: unknown, options?: PlanOptions): readonly Fault[] {
  const reading = readPlan(plan, options);
  if (reading.ok) throw new Error('the plan was read');
  return reading.faults;
}

export function entryWarningsOf(plan: unknown): readonly EntryWarning[] {
  return read(plan).entryWarnings;
}
