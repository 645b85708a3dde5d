import { describe, expect, it } from 'vitest';
import { readPlan } from '../../src/plan/index.ts';
import fc from '../fast-check.ts';
import { changed, read, type Sample } from './sample-plans.ts';

const RICH: Sample = changed({
  site: {
    wind: { speed: 105, basis: 'gust3-strength' },
    hill: { shape: 'ridge', height: 60, run: 300, distance: 50, side: 'upwind' },
    climate: {
      basis: 'gust3-nominal',
      returnPeriods: [
        [10, 76],
        [50, 92],
      ],
    },
  },
  tower: {
    shape: null,
    faces: null,
    width: null,
    members: null,
    support: 'guyed',
    sections: [
      { length: 8, shape: 'pole', width: [9, 6] },
      { length: 10, count: 4 },
    ],
    supportedAt: [{ height: 40, by: 'guys', count: 3, diameter: 0.2, radius: 20 }],
    hinge: { height: 4, raisedBy: { kind: 'winch', anchor: [-20, 0], attach: 20 } },
    foundation: { kind: 'pier', diameter: 3, depth: 6, soilLateral: 150 },
  },
  mast: { outside: 2, length: 12, wall: 0.25, inside: 4, bearing: 48 },
  rotator: { height: 44 },
  loads: [
    { name: 'beam', above: 2, area: 5.5 },
    { name: 'vertical', above: '1 to 7 ft', shape: 'tube', diameter: [2, 1] },
    {
      name: 'elements',
      above: 4,
      shape: 'tubes',
      tubes: [
        {
          along: 'element',
          taper: [
            [1, 36, 0.058],
            [0.5, 40],
          ],
        },
      ],
    },
    {
      name: 'leg',
      height: 40,
      shape: 'wire',
      diameter: 0.1,
      sag: 2,
      weight: 1,
      to: { distance: 60, height: 10, heading: 90 },
    },
  ],
  ratings: [
    {
      of: 'tower',
      areasBySpeed: [
        [70, 12],
        [90, 6],
      ],
      wind: { method: 'eia222-f' },
    },
    { of: 'tower', area: 9, furtherAreas: [{ area: 1, height: 20 }], wind: 70, supportedAt: [20] },
  ],
});

/** Every place in a document, as a list of members. */
function places(value: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== 'object' || value === null) return [path];
  const members = Array.isArray(value) ? [...value.entries()] : Object.entries(value);
  return [path, ...members.flatMap(([key, member]) => places(member, [...path, key]))];
}

function replaced(value: unknown, [key, ...rest]: readonly (string | number)[], by: unknown): unknown {
  if (key === undefined) return by;
  const copy: Record<string | number, unknown> = Array.isArray(value)
    ? ([...value] as never)
    : { ...(value as object) };
  copy[key] = replaced(copy[key], rest, by);
  return copy;
}

function nonFinite(value: unknown): boolean {
  if (typeof value === 'number') return !Number.isFinite(value);
  return typeof value === 'object' && value !== null && Object.values(value).some(nonFinite);
}

function everyReadingIsWhole(document: unknown): void {
  const reading = readPlan(document);
  if (reading.ok) {
    if (nonFinite(reading.input)) throw new Error('a reading with numbers that are not finite');
    return;
  }
  expect(reading.faults.length).toBeGreaterThan(0);
  for (const fault of reading.faults) {
    expect(fault.pointer).toMatch(/^#(\/.*)?$/);
    expect(fault.says).not.toMatch(/NaN|undefined|\[object/);
  }
}

describe('any document', () => {
  it('the sample among them can be read', () => {
    expect(read(RICH).input.station.loads).toHaveLength(4);
  });

  it('is read with finite numbers, or refused in words, and never throws', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (document) => everyReadingIsWhole(document)),
      { numRuns: 200 },
    );
  });

  it('that is a plan with one or two places spoilt is so too', { timeout: 60_000 }, () => {
    const spoilt = fc.oneof(
      fc.constantFrom<unknown>(
        undefined,
        null,
        0,
        -1,
        1e9,
        Number.NaN,
        '',
        '1,250',
        '3 to 2',
        '5 kg',
        '2 ft',
        true,
        false,
        [],
        {},
        [1, 2],
      ),
      fc.jsonValue({ maxDepth: 2 }),
      fc.double(),
    );
    const place = fc.constantFrom(...places(RICH));
    fc.assert(
      fc.property(place, spoilt, place, spoilt, (first, one, second, other) => {
        const once = replaced(RICH, first, one);
        everyReadingIsWhole(once);
        if (places(once).some((path) => path.join('/') === second.join('/')))
          everyReadingIsWhole(replaced(once, second, other));
      }),
      { numRuns: 600 },
    );
  });

  it('that is a plan with one place taken out is so too', () => {
    for (const path of places(RICH)) {
      const owner = path.slice(0, -1);
      const key = path.at(-1);
      if (typeof key !== 'string') continue;
      const copy = structuredClone(RICH);
      let object: Record<string | number, unknown> = copy;
      for (const step of owner) object = object[step] as Record<string | number, unknown>;
      delete object[key];
      everyReadingIsWhole(copy);
    }
  });
});
