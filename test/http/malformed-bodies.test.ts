import { describe, expect, it } from 'vitest';
import fc from '../fast-check.ts';
import { demoPlans } from '../margins/demo-plan.ts';
import { runningApp } from './running-app.ts';

const running = runningApp();
const PATHS = ['/v1/checks', '/v1/areas', '/v1/pressures', '/v1/ratings'] as const;
const PLANS = demoPlans().map(({ plan }) => plan);

const nested = (depth: number): unknown =>
  depth === 0 ? [] : depth % 2 === 0 ? [nested(depth - 1)] : { deep: nested(depth - 1) };

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
    '12 mph',
    '3 kg',
    'ft',
    '-5',
    '1,250',
    '3 ft; import("fs")',
    '__proto__',
    'constructor',
    'toString',
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
  fc.constant(nested(6)),
  fc.constant(nested(400)),
  fc.string({ minLength: 300, maxLength: 400 }),
  fc.constant('long '.repeat(5_000)),
  fc.integer({ min: -1e6, max: 1e6 }),
);

type Node = Record<string, unknown>;

function places(node: unknown, path: readonly string[] = []): (readonly string[])[] {
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) => [[...path, key], ...places(value, [...path, key])]);
}

const spoiling = fc.record({
  which: fc.nat(500),
  how: fc.constantFrom('replace', 'replace', 'replace', 'drop', 'rename', 'add'),
  key: fc.constantFrom('surprise', 'constructor', 'prototype', 'toString', 'hasOwnProperty', '', '~/'),
  value: strange,
});

type Spoiling = typeof spoiling extends fc.Arbitrary<infer S> ? S : never;

/** A copy of a plan with something spoilt in it, once or up to three times. */
function spoilt(plan: Node, spoilings: readonly Spoiling[]): Node {
  const copy = structuredClone(plan);
  for (const { which, how, key, value } of spoilings) {
    const all = places(copy);
    const path = all[which % all.length];
    // Nothing is left to spoil.
    if (path === undefined) break;
    const parent = path.slice(0, -1).reduce<Node>((node, step) => node[step] as Node, copy);
    const spot = path.at(-1) as string;
    if (how === 'replace') parent[spot] = structuredClone(value);
    if (how === 'drop') delete parent[spot];
    if (how === 'rename') {
      parent[`${spot}x`] = parent[spot];
      delete parent[spot];
    }
    if (how === 'add') parent[key] = structuredClone(value);
  }
  return copy;
}

function badNumbers(node: unknown, path = ''): string[] {
  if (node === null) return [path];
  if (typeof node !== 'object') return [];
  return Object.entries(node as Node).flatMap(([key, value]) => badNumbers(value, `${path}/${key}`));
}

describe('malformed bodies', () => {
  it('300 of them give a problem with pointers, or, where still sense, an answer without a null; never a failure', async () => {
    let refused = 0;
    const answered = new Map<string, number>(PATHS.map((path) => [path, 0]));
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...PATHS),
        fc.constantFrom(...PLANS),
        fc.array(spoiling, { minLength: 1, maxLength: 3 }),
        async (path, plan, spoilings) => {
          const whole = path === '/v1/pressures' ? { ...plan, heights: [10, '34 ft', 58] } : plan;
          const body = spoilt(whole, spoilings);
          const response = await running.request().post(path).send(body);
          expect(response.status, JSON.stringify(body)).toBeLessThan(500);
          if (response.status === 200) {
            answered.set(path, (answered.get(path) ?? 0) + 1);
            const { plan: _, ...rest } = response.body;
            expect(badNumbers(rest)).toEqual([]);
            return;
          }
          refused += 1;
          expect(response.status, JSON.stringify(response.body)).toBe(422);
          expect(response.headers['content-type']).toMatch(/^application\/problem\+json/);
          expect(response.body.faults.length).toBeGreaterThan(0);
          for (const fault of response.body.faults) {
            expect(fault.pointer).toMatch(/^#/);
            expect(fault.says.length).toBeGreaterThan(10);
          }
        },
      ),
      { numRuns: 300, seed: 20260101 },
    );
    const still = [...answered.values()];
    expect(refused).toBeGreaterThan(still.reduce((sum, count) => sum + count, 0));
    expect(Math.min(...still)).toBeGreaterThan(0);
  });

  it('120 of proposals do the same', async () => {
    const PROPOSALS = [
      { name: 'more', add: [{ name: 'new', height: '7 m', area: 0.3, areaKind: 'effective', offset: 0 }] },
      { name: 'less', remove: ['beam'], swap: [{ load: 'other', with: { area: 0.1 } }] },
      { name: 'lower', move: [{ load: 'kept', height: '6 m' }], set: { site: { wind: '100 mph' } } },
    ];
    const [base] = PLANS;
    const loads = ['beam', 'other', 'kept'].map((name) => ({ name, height: '7 m', area: 0.2, offset: 0 }));
    const statuses = new Set<number>();
    await fc.assert(
      fc.asyncProperty(fc.array(spoiling, { minLength: 1, maxLength: 2 }), async (spoilings) => {
        const spoiltProposals = spoilt({ proposals: PROPOSALS }, spoilings);
        const body = { plan: { ...base, loads }, ...spoiltProposals };
        const response = await running.request().post('/v1/additions').send(body);
        statuses.add(response.status);
        expect([200, 422], JSON.stringify(spoiltProposals)).toContain(response.status);
        if (response.status === 200) {
          expect(badNumbers(response.body)).toEqual([]);
          return;
        }
        expect(response.body.faults.length).toBeGreaterThan(0);
        for (const fault of response.body.faults) {
          // The plan is sound, so nothing may be said against it.
          expect(fault.pointer, JSON.stringify(spoiltProposals)).toMatch(/^#(?!\/plan)/);
          expect(fault.says.length).toBeGreaterThan(10);
        }
      }),
      { numRuns: 120, seed: 20260102 },
    );
    expect([...statuses].sort()).toEqual([200, 422]);
  });

  it.each([
    ['nothing', ''],
    ['no JSON', '{'],
    ['a bare word', 'plan'],
    ['a prototype key', '{"__proto__":{"units":"us"}}'],
    ['a prototype key deep inside', '{"units":"us","site":{"hill":{"constructor":{"prototype":{"shape":"ridge"}}}}}'],
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
