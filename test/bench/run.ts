import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { additionsOf, assess, crankHeightsOf } from '../../src/margins/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { answerDocument } from '../../src/worksheet/index.ts';
import { CRANK_UP_TOWER } from '../margins/crank-up-tower.ts';

/*
 * CPU per request of POST /v1/checks beside a route that validates the same body and returns a canned answer of the
 * same size, in one run, rounds interleaved, medians: soon after the start, while the engine still compiles, and
 * settled; then the domain alone, on every demo plan and by number of loads. About a minute in all.
 */
const ROUNDS = 21;
const REQUESTS = 200;
const SOON_AFTER = 1_500;
const SETTLED_AFTER = 15_000;
const AT_ONCE = 4;
const PLANS = ['ten-numbers', 'river-bluff', 'light-mast', 'house-bracket', 'guyed-lattice', 'meadow-guyed'];

const planOf = (id: string): Record<string, unknown> =>
  JSON.parse(readFileSync(new URL(`../../reference/plans/${id}.json`, import.meta.url), 'utf8')).plan;

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] as number;

async function answerOf(child: ChildProcess): Promise<Record<string, unknown>> {
  const [message] = await once(child, 'message');
  return message as Record<string, unknown>;
}

const agent = new Agent({ keepAlive: true, maxSockets: AT_ONCE });

function post(port: number, path: string, body: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const call = request(
      {
        agent,
        port,
        path,
        method: 'POST',
        host: '127.0.0.1',
        headers: { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) },
      },
      (response) => {
        const parts: Buffer[] = [];
        response.on('data', (part: Buffer) => parts.push(part));
        response.on('end', () => {
          const text = Buffer.concat(parts).toString();
          if (response.statusCode === 200) resolve(text);
          else reject(new Error(`${path}: ${response.statusCode} ${text.slice(0, 200)}`));
        });
      },
    );
    call.on('error', reject);
    call.end(body);
  });
}

async function many(port: number, path: string, body: string, count: number): Promise<void> {
  let left = count;
  const one = async () => {
    while (left > 0) {
      left -= 1;
      await post(port, path, body);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, one));
}

async function cpuPerRequest(child: ChildProcess, work: () => Promise<void>): Promise<number> {
  const used = async () => {
    child.send({ ask: 'cpu' });
    const { cpu } = (await answerOf(child)) as { cpu: { user: number; system: number } };
    return cpu.user + cpu.system;
  };
  const before = await used();
  await work();
  return ((await used()) - before) / REQUESTS;
}

async function overHttp(): Promise<void> {
  const child = fork(new URL('benched-server.ts', import.meta.url), { serialization: 'advanced' });
  const { port } = (await answerOf(child)) as { port: number };
  const body = JSON.stringify(planOf('river-bluff'));
  const answer = await post(port, '/v1/checks', body);
  child.send({ canned: JSON.parse(answer) });
  await answerOf(child);
  const cannedAnswer = await post(port, '/canned', body);
  if (cannedAnswer.length !== answer.length) throw new Error('the canned answer is of another size');
  console.log(`POST /v1/checks, river-bluff, body ${body.length} bytes, answer ${answer.length} bytes`);
  console.log('µs CPU a request            check  canned  ratio');
  let asked = 0;
  for (const [state, after] of [
    ['soon after the start', SOON_AFTER],
    ['settled', SETTLED_AFTER],
  ] as const) {
    await many(port, '/v1/checks', body, after - asked);
    await many(port, '/canned', body, (after - asked) / 3);
    const check: number[] = [];
    const canned: number[] = [];
    for (let round = 0; round < ROUNDS; round += 1) {
      check.push(await cpuPerRequest(child, () => many(port, '/v1/checks', body, REQUESTS)));
      canned.push(await cpuPerRequest(child, () => many(port, '/canned', body, REQUESTS)));
    }
    asked = after + ROUNDS * REQUESTS;
    const [each, beside] = [median(check), median(canned)];
    const row = [each.toFixed(0).padStart(7), beside.toFixed(0).padStart(6), (each / beside).toFixed(2).padStart(5)];
    console.log(`  ${state.padEnd(24)} ${row.join('  ')}`);
  }
  child.disconnect();
  agent.destroy();
}

/** Microseconds of CPU a call, median of rounds, once the engine has compiled it. */
function timed(work: () => unknown): number {
  const rounds: number[] = [];
  const warmUntil = performance.now() + 800;
  while (performance.now() < warmUntil) work();
  for (let round = 0; round < 15; round += 1) {
    const before = process.cpuUsage();
    for (let call = 0; call < 40; call += 1) work();
    const { user, system } = process.cpuUsage(before);
    rounds.push((user + system) / 40);
  }
  return median(rounds);
}

function checkInputOf(plan: unknown) {
  const reading = readPlan(plan);
  if (!reading.ok) throw new Error('a bench plan must be readable');
  return reading;
}

function domainAlone(): void {
  console.log('\nthe domain alone, µs CPU a call');
  console.log('  plan            read  assess  document');
  for (const id of PLANS) {
    const plan = planOf(id);
    const reading = checkInputOf(plan);
    const answer = assess(reading.input);
    const figures = [
      timed(() => readPlan(plan)),
      timed(() => assess(reading.input)),
      timed(() => answerDocument(answer, reading.document, reading.entryWarnings, 'none')),
    ];
    console.log(`  ${id.padEnd(14)} ${figures.map((figure) => figure.toFixed(0).padStart(6)).join('  ')}`);
  }
}

/** Thirty loads on a tilting tower with a mast, a block, a winch and what their makers state. */
function station(ratedAntennas: number, exposureTold: boolean): Record<string, unknown> {
  const plan = planOf('river-bluff');
  const panels = Array.from({ length: 27 }, (_, index) => ({
    name: `panel ${index}`,
    height: 10 + index,
    heading: 13 * index,
    shape: 'plate',
    wide: 4,
    tall: 6,
    deep: 2,
    offset: 0,
  }));
  const loads = [...(plan['loads'] as object[]), ...panels].map((load, index) => ({
    ...load,
    weight: 10,
    ...(index < ratedAntennas ? { ratedWind: { speed: 120, basis: 'gust3-nominal' } } : {}),
  }));
  const wind = { speed: 90, method: 'tia222-g', riskCategory: 'II', ...(exposureTold ? { exposure: 'C' } : {}) };
  return {
    ...plan,
    tower: {
      ...(plan['tower'] as object),
      weight: 600,
      foundation: { kind: 'block', length: 7, width: 7, depth: 5, soilBearing: 3000 },
      hinge: { height: 4, raisedBy: { kind: 'winch', anchor: [-2, 10], attach: 20, workingLoad: 4000 } },
    },
    rotator: { weight: 30 },
    loads,
    cables: (plan['cables'] as object[]).map((run) => ({ ...run, weight: 0.1 })),
    ratings: [
      {
        of: 'tower',
        area: 60,
        areaKind: 'effective',
        above: 1,
        top: 48,
        wind,
        withCables: { count: 3, diameter: 0.405 },
      },
      { of: 'tower', kind: 'weight', weight: 400 },
      { of: 'bearing', kind: 'force', force: 900 },
      { of: 'rotator', kind: 'weight', weight: 300 },
    ],
  };
}

/** Work of a fixed size, to tell how fast the machine is just now. */
function tenThousandSines(): number {
  let sum = 0;
  for (let index = 1; index <= 10_000; index += 1) sum += Math.hypot(Math.sin(index), Math.cos(index));
  return sum;
}

/** Microseconds of CPU a call, collector and compiler included: medians of rounds that take turns. */
function inTurns(works: readonly (readonly [name: string, calls: number, work: () => unknown])[]): void {
  const spent = works.map(() => [] as number[]);
  for (const [, , work] of works) {
    const warmUntil = performance.now() + 1500;
    while (performance.now() < warmUntil) work();
  }
  for (let round = 0; round < ROUNDS; round += 1) {
    works.forEach(([, calls, work], index) => {
      const before = process.cpuUsage();
      for (let call = 0; call < calls; call += 1) work();
      const { user, system } = process.cpuUsage(before);
      spent[index]?.push((user + system) / calls);
    });
  }
  works.forEach(([name], index) => {
    const figures = spent[index] as number[];
    const [middle, least] = [median(figures), Math.min(...figures)];
    console.log(`  ${name.padEnd(46)} ${middle.toFixed(0).padStart(6)}  ${least.toFixed(0).padStart(6)}`);
  });
}

function stationAlone(): void {
  const { input } = checkInputOf(station(1, true));
  const fuller = checkInputOf(station(30, false)).input;
  const { checks, roomLeft, lowerAt } = assess(input);
  const shown = checks.filter(({ result }) => result !== undefined).length;
  const holding = checks.filter(({ result }) => result?.holdsTo !== undefined).length;
  if (input.station.loads.length !== 30 || shown !== 10 || roomLeft.length === 0 || !lowerAt)
    throw new Error('the bench plan is not the one it is said to be');
  const proposals = (of: typeof input) =>
    Array.from({ length: 20 }, (_, index) => ({ name: `proposal ${index}`, assessment: assess(of) }));
  console.log(`\nthe full station check: 30 loads, ${shown} links, ${holding} that hold to a wind, room, lower at`);
  console.log('µs CPU a call                                    median   least');
  inTurns([
    ['for comparison: 10,000 sines and cosines', 100, tenThousandSines],
    ['the full station check', 100, () => assess(input)],
    [`the same, ${assess(fuller).checks.length} checks, exposure of the rating not stated`, 60, () => assess(fuller)],
    ['additions, 20 proposals', 4, () => additionsOf(assess(input), proposals(input))],
  ]);
}

/** A crank-up with a mast, from nested to fully up. */
function crankUp(): void {
  const { input } = checkInputOf({
    units: 'us',
    method: 'asce7-16',
    site: { wind: 95, exposure: 'C', riskCategory: 'II' },
    tower: {
      ...CRANK_UP_TOWER,
      sections: (CRANK_UP_TOWER['sections'] as object[]).map((each) => ({ ...each, uniform: true })),
    },
    mast: { outside: 2, wall: 0.25, length: 10, inside: 3, bearing: 54, yield: '50 ksi' },
    loads: [{ name: 'beam', above: 2, area: 4, areaKind: 'effective', weight: 40 }],
    cables: [],
    ratings: [
      {
        of: 'tower',
        area: 9,
        areaKind: 'effective',
        top: 54,
        wind: { speed: 80, method: 'tia222-g', exposure: 'C', riskCategory: 'II' },
      },
    ],
  });
  console.log('\na crank-up of three sections, µs CPU a call               median   least');
  inTurns([
    ['assess', 40, () => assess(input)],
    ['assess, and all its heights', 4, () => crankHeightsOf(assess(input))],
  ]);
}

/** Loads of every kind, half of them on the tower. */
function crowd(count: number): Record<string, unknown> {
  const loads = Array.from({ length: count }, (_, index) => {
    const height = index % 2 === 0 ? 2 + ((index * 7) % 45) : 49 + (index % 6);
    const name = `load ${index}`;
    if (index % 3 === 0) return { name, height, area: 0.1, areaKind: 'effective', offset: 0 };
    if (index % 3 === 1)
      return { name, height, shape: 'plate', wide: 6, tall: 6, deep: 2, heading: index % 360, offset: 0 };
    return { name, height, front: 0.2, side: 0.1, areaKind: 'effective', turns: true, offset: 0 };
  });
  return { ...planOf('river-bluff'), loads };
}

function byLoads(): void {
  console.log('\nassess by number of loads, µs CPU');
  for (const count of [10, 100, 300]) {
    const { input } = checkInputOf(crowd(count));
    const time = timed(() => assess(input));
    console.log(
      `  ${String(count).padStart(4)} loads  ${time.toFixed(0).padStart(6)} µs, ${(time / count).toFixed(1)} µs a load`,
    );
  }
}

await overHttp();
domainAlone();
stationAlone();
crankUp();
byLoads();
