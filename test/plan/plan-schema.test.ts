import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { planDocumentSchema } from '../../src/plan/index.ts';
import { tenNumbers } from './sample-plans.ts';

type Node = {
  description?: string;
  properties?: Record<string, Node>;
  items?: Node;
  anyOf?: Node[];
  prefixItems?: Node[];
};

const schema = z.toJSONSchema(planDocumentSchema) as Node & { required: string[] };

function* fieldsOf(node: Node, at: string): Generator<[string, Node]> {
  for (const [name, field] of Object.entries(node.properties ?? {})) {
    yield [`${at}/${name}`, field];
    yield* fieldsOf(field, `${at}/${name}`);
  }
  if (node.items) yield* fieldsOf(node.items, `${at}/*`);
  for (const form of [...(node.anyOf ?? []), ...(node.prefixItems ?? [])]) yield* fieldsOf(form, at);
}

describe('the schema as a contract', () => {
  it('needs what a plan needs', () => {
    expect(schema.required).toEqual(['units', 'method', 'site', 'tower']);
  });

  it('describes every field that is not a plain object', () => {
    const fields = [...fieldsOf(schema, '')];
    expect(fields.length).toBeGreaterThan(150);
    const silent = fields.filter(([, field]) => field.description === undefined && field.properties === undefined);
    expect(silent.map(([at]) => at)).toEqual([]);
  });

  it('names the units of its quantities in both systems', () => {
    const said = new Map(fieldsOf(schema, ''));
    expect(said.get('/tower/top')?.description).toBe('Height of its top above ground [us ft, si m]');
    expect(said.get('/mast/wall')?.description).toBe('Wall thickness [us in, si mm]');
    expect(said.get('/loads/*/area')?.description).toContain('[us ft², si m²]');
    expect(said.get('/site/wind')?.description).toContain('[us mph, si m/s]');
    expect(said.get('/mast/yield')?.description).toContain('[us ksi, si MPa]');
    expect(said.get('/tower/foundation/soilBearing')?.description).toContain('[us psf, si kPa]');
  });

  it('can be compiled whole, and a compiled one agrees', () => {
    const compiled = z.compile(planDocumentSchema, { strict: true });
    expect(compiled.safeParse(tenNumbers()).success).toBe(true);
    expect(compiled.safeParse({ ...tenNumbers(), extra: 1 }).success).toBe(false);
  });
});
