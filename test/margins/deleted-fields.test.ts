import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Assessment, assess, type Verdict } from '../../src/margins/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import type { Document } from './any-plan.ts';
import { demoPlans } from './demo-plan.ts';
import { latticeOfRods, poleOfEightSides, weldedTube } from './own-strength-stations.ts';

const FOLDER = new URL('by-hand/', import.meta.url);
const PLANS: readonly (readonly [string, Document])[] = [
  ...readdirSync(FOLDER)
    .filter((file) => file.endsWith('.json'))
    .map((file): [string, Document] => [file, JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')) as Document]),
  ...demoPlans().map(({ id, plan }): [string, Document] => [id, plan]),
  ['of a lattice of rods', latticeOfRods()],
  ['of a pole of eight sides', poleOfEightSides()],
  ['of a welded tube', weldedTube()],
];

/** Without these there is less in the plan, not less known of it: loads, lines, ice, hills, what is off the axis or far away. */
const LESS = [
  /^\/loads(\/\d+)?$/,
  /^\/cables(\/\d+)?$/,
  /^\/cables\/\d+\/(count|from|to)$/,
  /^\/loads\/\d+\/(offset|count|boom|reach|tubes)$/,
  /^\/loads\/\d+\/tubes\/\d+(\/count|\/taper\/\d+)?$/,
  /^\/mast$/,
  /^\/site\/(ice|hill|climate|distances)(\/.*)?$/,
  /^\/wanted(\/.*)?$/,
];
/**
 * What the basis lets be unsaid at the cost of a caution: the frequency of a tower, its shape where its rating names a standard
 * (use is then no less than your wind over the rated one), and weights on the axis, which fill the legs a little.
 */
const CAUTIONED = [
  /^\/tower\/frequency$/,
  /^\/tower\/(sections|shape)(\/\d+)?(\/shape)?$/,
  /\/weight$/,
  /^\/mast\/wall$/,
];
const BY_CAUTION = ['tower', 'tower-top', 'ice'];
const RANK: Readonly<Record<Verdict, number>> = { within: 0, 'low-margin': 1, open: 2, over: 3 };

/** Every pointer of a document, and the document without what stands there. */
function* without(plan: Document): Generator<readonly [pointer: string, plan: Document]> {
  const pointers = function* (value: unknown, at: string): Generator<string> {
    if (typeof value !== 'object' || value === null) return;
    for (const key of Object.keys(value)) {
      yield `${at}/${key}`;
      yield* pointers((value as Document)[key], `${at}/${key}`);
    }
  };
  for (const pointer of pointers(plan, '')) {
    const copy = structuredClone(plan);
    const keys = pointer.slice(1).split('/');
    const last = keys.pop() as string;
    const holder = keys.reduce<unknown>((value, key) => (value as Document)[key], copy);
    if (Array.isArray(holder)) holder.splice(Number(last), 1);
    else delete (holder as Document)[last];
    yield [pointer, copy];
  }
}

function answerTo(plan: Document): Assessment | undefined {
  const reading = readPlan(plan);
  return reading.ok ? assess(reading.input) : undefined;
}

const isShown = (verdict: Verdict) => verdict === 'within' || verdict === 'low-margin';

/** A rating taken away takes the numbers of those behind it with it. */
const nameOf = (id: string) => id.replace(/^(bearing|rotator|weight):\d+/, '$1');

describe.each(PLANS)('the plan %s, one field fewer', (_, plan) => {
  it('never comes to a better verdict of any link', () => {
    const before = assess((readPlan(plan) as { input: Parameters<typeof assess>[0] }).input);
    const better: string[] = [];
    for (const [pointer, fewer] of without(plan)) {
      if (LESS.some((pattern) => pattern.test(pointer))) continue;
      const after = answerTo(fewer);
      for (const check of after?.checks ?? []) {
        const was = before.checks
          .filter(({ id }) => nameOf(id) === nameOf(check.id))
          .map(({ verdict }) => RANK[verdict]);
        if (BY_CAUTION.includes(check.id) && CAUTIONED.some((pattern) => pattern.test(pointer))) continue;
        if (was.length > 0 && isShown(check.verdict) && RANK[check.verdict] < Math.min(...was)) {
          better.push(`${pointer}: ${check.id} ${check.verdict}`);
        }
      }
    }
    expect(better).toEqual([]);
  });
});
