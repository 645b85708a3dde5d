import { describe, expect, it } from 'vitest';
import fc from '../fast-check.ts';
import { anyPlan, type Document } from '../margins/any-plan.ts';
import { toldPlan } from '../second-opinion/told-plans.ts';
import { runningApp } from './running-app.ts';

/*
 * The same question has the same answer whichever way it comes in: as a check, as a proposal, as a cell. RANDOM_RUNS and
 * RANDOM_SEED make a soak of it.
 */
const RUNS = Number(process.env['RANDOM_RUNS'] ?? 20);

const running = runningApp();

async function post(path: string, body: unknown): Promise<Document> {
  const { statusCode, body: text } = await running.app.inject({ method: 'POST', url: path, payload: body as object });
  if (statusCode !== 200) throw new Error(`${text} for ${JSON.stringify(body)}`);
  return JSON.parse(text) as Document;
}

async function cell(id: string, query: Readonly<Record<string, unknown>>): Promise<string> {
  const asked = new URLSearchParams(
    Object.entries(query).flatMap(([key, value]) => (value === undefined ? [] : [[key, String(value)]])),
  );
  const { body } = await running.app.inject({ method: 'GET', url: `/v1/cells/${id}?${asked}` });
  return body;
}

const rows = (of: unknown, key: string) => ((of as Document)[key] ?? []) as Document[];
const part = (of: Document, key: string) => of[key] as Document;

const states = (checks: readonly Document[]) =>
  new Map(
    checks.map(({ id, verdict, ratio, holdsTo }) => [id, { verdict, ratio, gust: (holdsTo as Document)?.['gust'] }]),
  );

/** Changes of a plan, each with the plan that a hand would write. */
function changesOf(plan: Document): { readonly proposal: Document; readonly byHand: Document }[] {
  const loads = rows(plan, 'loads');
  const [first] = loads as [Document];
  const point = loads.find(({ height, shape }) => typeof height === 'number' && shape !== 'wire');
  const long = plan['units'] === 'us' ? 1 : 0.3048;
  const added = { name: 'added', height: 20 * long, area: 0.5 * long, areaKind: 'effective', weight: 1, offset: 0 };
  const site = part(plan, 'site');
  const speed = Number(part(site, 'wind')['speed']) * 1.1;
  return [
    {
      proposal: { name: 'more wind', set: { site: { wind: { speed } } } },
      byHand: { ...plan, site: { ...site, wind: { ...part(site, 'wind'), speed } } },
    },
    { proposal: { name: 'one more', add: [added] }, byHand: { ...plan, loads: [...loads, added] } },
    ...(loads.length < 2
      ? []
      : [{ proposal: { name: 'one less', remove: [first['name']] }, byHand: { ...plan, loads: loads.slice(1) } }]),
    ...(point === undefined
      ? []
      : [
          {
            proposal: { name: 'lower', move: [{ load: point['name'], height: Number(point['height']) * 0.99 }] },
            byHand: {
              ...plan,
              loads: loads.map((load) => (load === point ? { ...load, height: Number(point['height']) * 0.99 } : load)),
            },
          },
        ]),
  ];
}

describe('a proposal', { timeout: 600_000 }, () => {
  it('has the answer of the plan that a hand would write', async () => {
    for (const plan of fc.sample(fc.oneof(toldPlan, anyPlan), { numRuns: RUNS / 2 }) as Document[]) {
      const changes = changesOf(plan);
      const { after } = await post('/v1/additions', { plan, proposals: changes.map(({ proposal }) => proposal) });
      for (const [index, { byHand, proposal }] of changes.entries()) {
        const there = await post('/v1/checks', byHand);
        const found = new Map(
          rows((after as Document[])[index], 'checks').flatMap(({ id, after: state }) => {
            if (state === undefined) return [];
            const { verdict, ratio, holdsTo } = state as Document;
            return [[id, { verdict, ratio, gust: holdsTo }]];
          }),
        );
        expect(found, `${proposal['name']} of ${JSON.stringify(plan)}`).toEqual(states(rows(there, 'checks')));
      }
    }
  });
});

const between = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((value) => Number(value.toPrecision(3)));

/** What the address of a cell can say of a station. */
const said = fc
  .record({
    units: fc.constantFrom('us', 'si'),
    method: fc.constantFrom('asce7-10', 'asce7-16', 'asce7-22', 'tia222-g', 'tia222-h', 'eia222-f', 'en1991-1-4'),
    riskCategory: fc.constantFrom('I', 'II', 'III'),
    exposure: fc.constantFrom('B', 'C', 'D'),
    terrain: fc.constantFrom('0', 'I', 'II', 'III', 'IV'),
    speed: between(85, 120),
    elevation: fc.constantFrom(undefined, 1500),
    factor: fc.constantFrom(undefined, 1.2),
    lattice: fc.boolean(),
    faces: fc.constantFrom(3, 4),
    members: fc.constantFrom('round', 'flat'),
    width: between(10, 20),
    top: between(25, 70),
    area: between(1, 8),
    above: between(1, 5),
    cables: fc.integer({ min: 0, max: 4 }),
    ratedArea: between(6, 25),
    ratedMethod: fc.constantFrom('tia222-g', 'asce7-16', 'eia222-f', 'rs222-c', undefined),
  })
  .map((drawn) => {
    const us = drawn.units === 'us';
    const long = (feet: number) => (us ? feet : Number((feet * 0.3048).toPrecision(4)));
    const across = (inches: number) => (us ? inches : Number((inches * 25.4).toPrecision(4)));
    const area = (feet: number) => (us ? feet : Number((feet * 0.3048 ** 2).toPrecision(4)));
    const fast = (mph: number) => (us ? mph : Number((mph * 0.44704).toPrecision(4)));
    const mean = drawn.method === 'en1991-1-4' ? 0.55 : 1;
    const ground = drawn.method === 'en1991-1-4' ? { terrain: drawn.terrain } : { exposure: drawn.exposure };
    const site = {
      method: drawn.method,
      speed: fast(drawn.speed * mean),
      ...ground,
      riskCategory: drawn.riskCategory,
      groundElevation: drawn.elevation === undefined ? undefined : long(drawn.elevation),
      topographicFactor: drawn.method === 'eia222-f' ? undefined : drawn.factor,
    };
    const shape = drawn.lattice
      ? { shape: 'lattice', faces: drawn.faces, members: drawn.members, width: across(drawn.width) }
      : { shape: 'pole', sides: 0, width: across(drawn.width / 2) };
    const top = long(drawn.top);
    const load = { area: area(drawn.area), areaKind: 'effective', above: long(drawn.above) };
    const rated = { area: area(drawn.ratedArea), areaKind: 'effective', speed: fast(90), method: drawn.ratedMethod };
    return { units: drawn.units, site, shape, top, load, rated, count: drawn.cables, cable: across(0.4) };
  });
type Said = typeof said extends fc.Arbitrary<infer T> ? T : never;

function planOf({ units, site, shape, top, load, rated, count, cable }: Said): Document {
  const { method, speed, ...where } = site;
  const { speed: ratedSpeed, method: ratedMethod, ...claim } = rated;
  return {
    units,
    method,
    site: { wind: { speed }, ...where },
    tower: { support: 'free', top, ...shape },
    loads: [{ name: 'antenna', ...load }],
    cables: count === 0 ? [] : [{ count, diameter: cable }],
    ratings: [{ of: 'tower', ...claim, top, wind: { speed: ratedSpeed, method: ratedMethod } }],
  };
}

describe('a cell', { timeout: 600_000 }, () => {
  /** A cell has six figures. */
  const near = (text: string, value: number) =>
    expect(Math.abs(Number(text) / value - 1), `${text}, ${value}`).toBeLessThan(5.1e-6);

  it('of a pressure has those of the check', async () => {
    for (const one of fc.sample(said, { numRuns: RUNS })) {
      const { wind } = await post('/v1/checks', planOf(one));
      for (const { height, pressure } of wind as { height: { value: number }; pressure: { value: number } }[]) {
        const structure = one.shape.shape;
        near(
          await cell('pressure', { units: one.units, ...one.site, height: height.value, structure }),
          pressure.value,
        );
      }
    }
  });

  it('of a station has its ratio, verdict, wind and room', async () => {
    let shown = 0;
    for (const one of fc.sample(said, { numRuns: RUNS })) {
      const answer = await post('/v1/checks', planOf(one));
      const [tower] = rows(answer, 'checks') as [Document];
      const query = {
        units: one.units,
        ...one.site,
        support: 'free',
        top: one.top,
        ...one.shape,
        ...one.load,
        cables: one.count,
        cableDiameter: one.count === 0 ? undefined : one.cable,
        ratedArea: one.rated.area,
        ratedAreaKind: one.rated.areaKind,
        ratedSpeed: one.rated.speed,
        ratedMethod: one.rated.method,
        ratedTop: one.top,
      };
      const verdict = await cell('station', { ...query, give: 'verdict' });
      expect(verdict.replace(' (tower only)', '').replace(' ', '-')).toBe(tower['verdict']);
      if (tower['verdict'] === 'open') continue;
      shown += 1;
      near(await cell('station', { ...query, give: 'ratio' }), Number(tower['ratio']));
      const { gust } = (tower['holdsTo'] ?? {}) as { gust?: { value: number } };
      if (gust) near(await cell('station', { ...query, give: 'holdsTo' }), gust.value);
    }
    expect(shown).toBeGreaterThan(0);
  });

  it('of an area rating in its own wind gives back its own area', async () => {
    for (const { units, rated, top } of fc.sample(said, { numRuns: RUNS })) {
      if (rated.method === undefined) continue;
      const { area, areaKind, speed, method } = rated;
      const plain = { units, area, areaKind, speed, method, exposure: 'C', riskCategory: 'II', height: top };
      near(await cell('allowed-area', { ...plain, toSpeed: speed }), area);
    }
  });
});
