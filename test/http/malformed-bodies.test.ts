import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoPlans } from '../margins/demo-plan.ts';
import { runningApp } from './running-app.ts';

const running = runningApp();
const PATHS = ['/v1/checks', '/v1/areas', '/v1/pressures', '/v1/ratings'] as const;
const PLANS = demoPlans().map(({ plan }) => plan);

/** Things that stand where something else belongs. */
const strange = fc.oneof(
  fc.constantFrom(
    null,
    true,
    '',
    'NaN',
    'Infinity',
    '1e999 ft',
    '12 parsecs',
    '-5',
    '1,250',
    '3 ft; import("fs")',
    '__proto__',
    '\u0000',
    '🗼',
    -1,
    0,
    1e308,
    1e-308,
    -0,
  ),
  fc.constant([]),
  fc.constant({}),
  fc.constant([[[[[[]]]]]]),
  fc.constant({ a: { b: { c: {} } } }),
  fc.string({ minLength: 300, maxLength: 400 }),
  fc.integer({ min: -1e6, max: 1e6 }),
);

type Node = Record<string, unknown>;

function places(node: unknown, path: readonly string[] = []): (readonly string[])[] {
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) => [[...path, key], ...places(value, [...path, key])]);
}

/** One thing spoilt in a copy of a plan. */
function spoilt(plan: Node, which: number, how: 'replace' | 'drop' | 'rename' | 'add', value: unknown): Node {
  const copy = structuredClone(plan);
  const all = places(copy);
  const path = all[which % all.length] as string[];
  const parent = path.slice(0, -1).reduce<Node>((node, key) => node[key] as Node, copy);
  const key = path.at(-1) as string;
  if (how === 'replace') parent[key] = value;
  if (how === 'drop') delete parent[key];
  if (how === 'rename') {
    parent[`${key}x`] = parent[key];
    delete parent[key];
  }
  if (how === 'add') parent['surprise'] = value;
  return copy;
}

function badNumbers(node: unknown, path = ''): string[] {
  if (node === null) return [path];
  if (typeof node !== 'object') return [];
  return Object.entries(node as Node).flatMap(([key, value]) => badNumbers(value, `${path}/${key}`));
}

describe('malformed bodies', () => {
  it('200 of them give a problem with pointers, or, where still sense, an answer without a null; never a failure', async () => {
    let refused = 0;
    let answered = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...PATHS),
        fc.constantFrom(...PLANS),
        fc.nat(500),
        fc.constantFrom('replace', 'replace', 'replace', 'drop', 'rename', 'add'),
        strange,
        async (path, plan, which, how, value) => {
          const body = spoilt(plan, which, how as 'replace', value);
          const response = await running.request().post(path).send(body);
          expect(response.status, JSON.stringify(body)).toBeLessThan(500);
          if (response.status === 200) {
            answered += 1;
            const { plan: _, ...rest } = response.body;
            expect(badNumbers(rest)).toEqual([]);
            return;
          }
          refused += 1;
          expect(response.status).toBe(422);
          expect(response.headers['content-type']).toMatch(/^application\/problem\+json/);
          expect(response.body.faults.length).toBeGreaterThan(0);
          for (const fault of response.body.faults) {
            expect(fault.pointer).toMatch(/^#/);
            expect(fault.says.length).toBeGreaterThan(10);
          }
        },
      ),
      { numRuns: 200, seed: 20260101 },
    );
    expect(refused).toBeGreaterThan(answered);
  });

  it.each([
    ['nothing', ''],
    ['no JSON', '{'],
    ['a bare word', 'plan'],
    ['a prototype key', '{"__proto__":{"units":"us"}}'],
  ])('%s is no JSON', async (_, body) => {
    const response = await running.request().post('/v1/checks').set('content-type', 'application/json').send(body);
    expect(response.status).toBe(400);
    expect(response.body.type).toBe('/problems/not-json');
  });

  it.each([[5], ['text'], [[]], [true]])('JSON that is no plan, %j, is refused at its root', async (body) => {
    const response = await running
      .request()
      .post('/v1/checks')
      .set('content-type', 'application/json')
      .send(JSON.stringify(body));
    expect(response.status).toBe(422);
    expect(response.body.faults[0].pointer).toBe('#');
  });
});
