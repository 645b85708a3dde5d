import { readdirSync, readFileSync } from 'node:fs';
import { z } from 'zod';

const REFERENCE = new URL('../../../reference/', import.meta.url);

function readJson(path: string): unknown {
  return JSON.parse(readFileSync(new URL(path, REFERENCE), 'utf8'));
}

const demoFile = z.strictObject({
  id: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
  title: z.string().min(1),
  says: z.string().min(1),
  plan: z.looseObject({ units: z.enum(['us', 'si']) }),
});

export type DemoPlan = z.output<typeof demoFile>;

/**
 * The demo plans of reference/plans. That each is answered in full is tested; reading them at the start would load the
 * library of units, which most of a start would then wait for.
 */
export function demoPlans(): readonly DemoPlan[] {
  const plans = readdirSync(new URL('plans/', REFERENCE))
    .filter((file) => file.endsWith('.json'))
    .sort()
    .map((file) => {
      const demo = demoFile.parse(readJson(`plans/${file}`));
      if (`${demo.id}.json` !== file) throw new Error(`reference/plans/${file} cannot be used: its id is ${demo.id}`);
      return demo;
    });
  if (plans.length === 0) throw new Error('reference/plans holds no demo plan');
  return plans;
}

export interface SourceEntry {
  readonly id: string;
  readonly title: string;
  /** As the working names it, where its title is long. */
  readonly short?: string;
  readonly edition: string;
  readonly publisher: string;
  readonly kind: string;
  readonly known: string;
  readonly seen: string;
  readonly used: string;
}

/** The documents that formulas, tables and check values come from. */
export function sourceEntries(): readonly SourceEntry[] {
  return (readJson('sources.json') as { sources: SourceEntry[] }).sources;
}
