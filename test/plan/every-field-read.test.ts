import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readPlan } from '../../src/plan/index.ts';
import { FIELD_BY_PLACE } from '../../src/words/index.ts';
import fc from '../fast-check.ts';
import { anyPlan, type Document } from '../margins/any-plan.ts';
import { demoPlans } from '../margins/demo-plan.ts';
import { latticeOfRods, weldedTube } from '../margins/own-strength-stations.ts';

const BY_HAND = new URL('../margins/by-hand/', import.meta.url);
const read = (file: string) => JSON.parse(readFileSync(new URL(file, BY_HAND), 'utf8')) as Document;
const raised = read('raised-by-a-screw.json');
const tower = raised['tower'] as Document & { hinge: Document };
const PLANS: readonly Document[] = [
  ...demoPlans().map(({ plan }) => plan),
  ...readdirSync(BY_HAND)
    .filter((file) => file.endsWith('.json'))
    .map(read),
  latticeOfRods(),
  weldedTube(),
  {
    ...raised,
    tower: { ...tower, hinge: { ...tower.hinge, counterpoise: { weight: 40, below: 0.4 } } },
  },
  { ...raised, loads: (raised['loads'] as Document[]).map((load, index) => ({ ...load, later: index === 0 })) },
  {
    ...raised,
    tower: {
      ...tower,
      foundation: {
        kind: 'block',
        length: 4,
        width: 4,
        depth: 6,
        soilBearing: 2000,
        soilLateral: 150,
        bearingNet: true,
        isolatedPole: false,
        bothAccepted: true,
        concrete: 150,
      },
    },
  },
  ...fc.sample(anyPlan, { seed: 3, numRuns: 80 }),
];

type Holder = Record<string, unknown>;
const valueAt = (plan: unknown, keys: readonly string[]) =>
  keys.reduce<unknown>((value, key) => (value as Holder)[key], plan);

function* pointersOf(value: unknown, at = ''): Generator<string> {
  if (typeof value !== 'object' || value === null) return;
  for (const [key, inner] of Object.entries(value)) {
    yield `${at}/${key}`;
    yield* pointersOf(inner, `${at}/${key}`);
  }
}

const inputOf = (plan: unknown) => {
  const reading = readPlan(plan);
  return reading.ok ? JSON.stringify(reading.input) : undefined;
};

const othersThan = (value: unknown) =>
  typeof value === 'number' ? [value * 0.999, value + 1] : typeof value === 'boolean' ? [!value] : [`${value} more`];

/** Whether what is read changes where one value is left out, or is a little another one. */
function isRead(plan: Document, pointer: string, before: string): boolean {
  const keys = pointer.slice(1).split('/');
  const last = keys.at(-1) as string;
  const value = valueAt(plan, keys);
  const others = [
    ...othersThan(value),
    ...Object.keys(FIELD_BY_PLACE.get(placeOf(pointer) ?? '')?.choices ?? {}),
    undefined,
  ];
  return others.some((other) => {
    const copy = structuredClone(plan);
    const holder = valueAt(copy, keys.slice(0, -1)) as Holder;
    if (other === undefined) delete holder[last];
    else holder[last] = other;
    const after = inputOf(copy);
    return after !== undefined && after !== before;
  });
}

const places = [...FIELD_BY_PLACE.keys()];
const placeOf = (pointer: string) => {
  const place = pointer.replaceAll(/\/\d+(?=\/|$)/g, '/*');
  return places.includes(place) ? place : undefined;
};

/** Not shown by these plans: other values are faults beside what stands with them, or come to the same there. */
const NOT_SHOWN_HERE = new Set([
  '/format',
  '/method',
  '/tower/shape',
  '/tower/sections/*/count',
  '/tower/sections/*/shape',
  '/tower/sections/*/sides',
  '/tower/sections/*/uniform',
  '/tower/telescopes',
  '/tower/foundation/kind',
  '/ratings/*/kind',
  '/rotator/height',
]);

describe('every field of a plan that a plan here has', () => {
  it('is read', () => {
    const found = new Set<string>();
    const told = new Map<string, number>();
    for (const plan of PLANS) {
      const before = inputOf(plan);
      if (before === undefined) continue;
      for (const pointer of pointersOf(plan)) {
        const place = placeOf(pointer);
        if (place === undefined || typeof valueAt(plan, pointer.slice(1).split('/')) === 'object') continue;
        if (found.has(place) || (told.get(place) ?? 0) > 5) continue;
        told.set(place, (told.get(place) ?? 0) + 1);
        if (isRead(plan, pointer, before)) found.add(place);
      }
    }
    expect(told.size).toBeGreaterThan(150);
    const unread = [...told.keys()].filter((place) => !found.has(place) && !/\/(source|note)$/.test(place));
    expect(unread.filter((place) => !NOT_SHOWN_HERE.has(place))).toEqual([]);
  });
});
