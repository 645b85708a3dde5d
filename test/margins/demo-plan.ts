import { readdirSync, readFileSync } from 'node:fs';

const FOLDER = new URL('../../reference/plans/', import.meta.url);

export interface DemoPlanFile {
  readonly id: string;
  readonly plan: Record<string, unknown>;
}

export function demoPlan(id: string): Record<string, unknown> {
  return (JSON.parse(readFileSync(new URL(`${id}.json`, FOLDER), 'utf8')) as DemoPlanFile).plan;
}

export function demoPlans(): readonly DemoPlanFile[] {
  return readdirSync(FOLDER)
    .filter((file) => file.endsWith('.json'))
    .map((file) => JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')) as DemoPlanFile);
}
