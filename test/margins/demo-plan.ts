import { readdirSync, readFileSync } from 'node:fs';

const FOLDER = new URL('../../reference/plans/', import.meta.url);

type Document = Record<string, unknown>;

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

/** The plan of ten numbers as it comes of the entries that are asked for first: without a title, a frequency, and where the beam sits. */
export function tenNumbersAsTyped(): Document {
  const { title: _, tower, loads, ...plan } = demoPlan('ten-numbers');
  const { frequency: __, ...typed } = tower as Document;
  return { ...plan, tower: typed, loads: (loads as Document[]).map(({ on: ___, ...load }) => load) };
}

/** A demo plan as version 0.1.0 had it: less was told, since it was read as this without a word. */
export function demoPlanBefore(id: string): Document {
  const without = (node: unknown, ...fields: readonly string[]): Document =>
    Object.fromEntries(Object.entries(node as Document).filter(([key]) => !fields.includes(key)));
  const { tower, mast, loads, ratings, ...plan } = demoPlan(id) as Readonly<Record<string, Document & Document[]>>;
  const sections = (tower as Document)['sections'] as Document[] | undefined;
  return {
    ...plan,
    tower: {
      ...without(tower, 'pattern', 'frequency'),
      ...(sections ? { sections: sections.map((section) => without(section, 'pattern', 'uniform')) } : {}),
    },
    ...(mast ? { mast: without(mast, 'bearing') } : {}),
    loads: (loads as Document[]).map((load) => ({
      ...without(load, 'on', 'conductor', 'sag', ...(load['offset'] === 0 ? ['offset'] : [])),
      // It was drawn to this, and its conductor not asked for.
      ...(load['shape'] === 'wire' ? { tension: 100 } : {}),
    })),
    ratings: (ratings as Document[]).map((rating) => without(rating, 'top')),
  };
}
