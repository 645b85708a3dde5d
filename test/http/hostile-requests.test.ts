import { connect } from 'node:net';
import { setTimeout } from 'node:timers/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import fc from '../fast-check.ts';
import { demoPlan } from '../margins/demo-plan.ts';
import { Contract } from './contract-reader.ts';
import { answersIn, exchange } from './raw-http.ts';
import { runningApp } from './running-app.ts';

/** More by `npm run soak`. */
const RUNS = Number(process.env['RANDOM_RUNS'] ?? 1000);

const INSIDE = /\.ts:\d|\.js:\d|node_modules|\bat (async )?\w[\w.<>]* \(|node:internal|Error:|FST_ERR/;

const PLAN = JSON.stringify(demoPlan('ten-numbers'));
const PATHS = [
  '/v1/checks',
  '/v1/additions',
  '/v1/areas',
  '/v1/pressures',
  '/v1/ratings',
  '/v1/cells/station',
  '/v1/cells/pressure',
  '/v1/stock',
  '/v1/demo-plans/ten-numbers',
  '/v1/sources',
  '/openapi.json',
  '/problems/not-json',
  '/metrics',
  '/',
];

/** Texts that mean something to somebody: to a path, a page, a sheet, a log, an engine of expressions, a prototype. */
const LOADED = [
  '../../etc/passwd',
  '..%2f..%2fpackage.json',
  '%00',
  '%ff%fe',
  '%zz',
  '__proto__',
  'constructor',
  '<script>alert(1)</script>',
  '"><svg/onload=alert(1)>',
  '=HYPERLINK("http://a.example")',
  '{{7*7}}',
  '#{7*7}',
  'import("fs")',
  'http://169.254.169.254/latest',
  '\u202e\u0000\u0007',
  "'; DROP TABLE loads; --",
  '1e999',
  'NaN',
  '5 ft; createUnit("x")',
  '\ud800',
  'a'.repeat(3000),
];

const loaded = fc.oneof(fc.constantFrom(...LOADED), fc.string({ unit: 'binary', maxLength: 40 }));
/** What may stand in a request line without ending it. */
const inLine = (text: string) => text.replaceAll(/[^!-~]/g, '');

const target = fc
  .record({
    path: fc.oneof(
      { weight: 5, arbitrary: fc.constantFrom(...PATHS) },
      { weight: 2, arbitrary: loaded.map((text) => `/${inLine(text)}`) },
    ),
    query: fc.array(
      fc.tuple(
        fc.oneof(
          fc.constantFrom(
            'as',
            'working',
            'drawing',
            'speed',
            'height',
            'method',
            'decimal',
            'key',
            'known',
            'strict',
            'units',
          ),
          loaded,
        ),
        fc.oneof(loaded, fc.constantFrom('json', 'text', 'csv', 'svg', 'full', 'us', '10;20;30', '1')),
        fc.boolean(),
      ),
      { maxLength: 5 },
    ),
  })
  .map(({ path, query }) => {
    const pair = (text: string, plain: boolean) =>
      plain ? inLine(text).replaceAll('#', '') : encodeURIComponent(text.toWellFormed());
    const asked = query.map(([name, value, plain]) => `${pair(name, plain)}=${pair(value, plain)}`).join('&');
    return asked === '' ? path : `${path}?${asked}`;
  });

const headers = fc.array(
  fc.tuple(
    fc.constantFrom(
      'accept',
      'content-type',
      'content-encoding',
      'transfer-encoding',
      'accept-encoding',
      'if-none-match',
      'x-forwarded-for',
      'x-forwarded-host',
      'authorization',
      'origin',
      'range',
      'expect',
      'upgrade',
      'cookie',
      'x-http-method-override',
      'x-request-id',
      'host',
    ),
    fc.oneof(
      fc.constantFrom(
        'application/json',
        'application/json; charset=utf-16',
        'text/csv',
        'application/x-www-form-urlencoded',
        'multipart/form-data; boundary=x',
        'gzip',
        'br',
        'chunked',
        'identity',
        '*/*;q=0',
        'image/svg+xml',
        '*',
        'W/"x", *',
        'bytes=0-5',
        '100-continue',
        'h2c',
        'DELETE',
        'Basic OjpvOg==',
        'null',
      ),
      loaded.map((text) => text.replaceAll(/\p{Cc}/gu, '')),
    ),
  ),
  { maxLength: 6 },
);

const nested = (depth: number) => `${'[{"a":'.repeat(depth)}1${'}]'.repeat(depth)}`;

const body = fc.oneof(
  { weight: 3, arbitrary: fc.constant(Buffer.alloc(0)) },
  { weight: 3, arbitrary: fc.constant(Buffer.from(PLAN)) },
  { weight: 2, arbitrary: fc.uint8Array({ maxLength: 300 }).map((bytes) => Buffer.from(bytes)) },
  { weight: 2, arbitrary: fc.json({ maxDepth: 6 }).map((text) => Buffer.from(text)) },
  { weight: 2, arbitrary: fc.nat(PLAN.length).map((cut) => Buffer.from(PLAN.slice(0, cut))) },
  {
    weight: 2,
    arbitrary: fc
      .tuple(fc.nat(PLAN.length), loaded)
      .map(([at, text]) => Buffer.from(PLAN.slice(0, at) + text + PLAN.slice(at))),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(nested(20), nested(20_000), '['.repeat(100_000)).map((text) => Buffer.from(text)),
  },
  { weight: 1, arbitrary: fc.constant(Buffer.from(PLAN, 'utf16le')) },
);

const request = fc.record({
  method: fc.oneof(
    { weight: 4, arbitrary: fc.constant('POST') },
    { weight: 4, arbitrary: fc.constant('GET') },
    {
      weight: 1,
      arbitrary: fc.constantFrom(
        'HEAD',
        'OPTIONS',
        'PUT',
        'DELETE',
        'PATCH',
        'TRACE',
        'QUERY',
        'PROPFIND',
        'get',
        'FETCH',
      ),
    },
  ),
  target,
  headers,
  body,
  length: fc.oneof(
    { weight: 8, arbitrary: fc.constant('true') },
    { weight: 1, arbitrary: fc.constantFrom('0', '-1', '1e3', '99999999999999999999', 'none', 'both') },
  ),
});

interface Hostile {
  readonly method: string;
  readonly target: string;
  readonly headers: readonly (readonly [string, string])[];
  readonly body: Buffer;
  readonly length: string;
}

function bytesOf({ method, target: asked, headers: sent, body: content, length }: Hostile): Buffer {
  const lines = [`${method} ${asked} HTTP/1.1`];
  if (!sent.some(([name]) => name === 'host')) lines.push('host: 127.0.0.1');
  if (!sent.some(([name]) => name === 'content-type') && content.length > 0)
    lines.push('content-type: application/json');
  lines.push(...sent.map(([name, value]) => `${name}: ${value}`), 'connection: close');
  if (length === 'both') lines.push(`content-length: ${content.length}`, 'content-length: 3');
  else if (length !== 'none') lines.push(`content-length: ${length === 'true' ? content.length : length}`);
  return Buffer.concat([Buffer.from(`${lines.join('\r\n')}\r\n\r\n`), content]);
}

describe('hostile requests', () => {
  const running = runningApp();
  let contract: Contract;
  beforeAll(async () => {
    contract = new Contract(await (await fetch(`${running.origin}/openapi.json`)).json());
  });

  it(`${RUNS} of them bring no failure, no word of the inside, and no answer outside the contract`, {
    timeout: RUNS * 400,
  }, async () => {
    const statuses = new Map<number, number>();
    await fc.assert(
      fc.asyncProperty(request, async (hostile) => {
        // A body shorter than it says is waited for; that is the business of the time limits.
        const answers = answersIn(await exchange(running.origin, bytesOf(hostile), 1, 300));
        for (const { status, head, body: text } of answers) {
          statuses.set(status, (statuses.get(status) ?? 0) + 1);
          expect(status, JSON.stringify(hostile)).toBeLessThan(500);
          expect(text).not.toMatch(INSIDE);
          expect(head).not.toMatch(INSIDE);
          if (status < 400 || hostile.method === 'HEAD') continue;
          expect(head).toMatch(/\r\ncontent-type: (application\/problem\+json|text\/html)/i);
          if (/text\/html/i.test(head)) continue;
          const type = 'application/problem+json';
          const known = contract.operationOf(hostile.method, hostile.target) !== undefined;
          const heard = text.length > 0 ? Buffer.from(text, 'latin1').toString('utf8') : '{}';
          // What is not even HTTP is refused before any route is found.
          const asIfAt =
            known && contract.operationOf(hostile.method, hostile.target)?.responses[status]
              ? hostile.target
              : '/nowhere';
          expect(contract.faultsOf({ method: hostile.method, target: asIfAt, status, type, body: heard })).toEqual([]);
        }
      }),
      { numRuns: RUNS },
    );
    // The requests were of every sort: answered, refused for their address, body, method, type.
    for (const status of [200, 400, 404, 405, 415, 422]) expect(statuses.get(status), `${status}`).toBeGreaterThan(0);
    expect((await fetch(`${running.origin}/healthz`)).status).toBe(200);
  });
});

describe('a body that goes deep', () => {
  const running = runningApp();

  it.each([
    ['lists', '['.repeat(120_000)],
    ['lists that close', `${'['.repeat(60_000)}${']'.repeat(60_000)}`],
    ['objects', `${'{"a":'.repeat(40_000)}1${'}'.repeat(40_000)}`],
    ['objects in a plan', `{"units":"us","site":${nested(15_000)}}`],
    ['loads', `{"units":"us","loads":[${'{"name":'.repeat(20_000)}1${'}'.repeat(20_000)}]}`],
  ])('in %s is refused', async (_, text) => {
    for (const path of ['/v1/checks', '/v1/additions', '/v1/areas', '/v1/ratings', '/v1/pressures']) {
      const answer = await fetch(`${running.origin}${path}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: text,
      });
      expect([400, 422], path).toContain(answer.status);
      expect(await answer.text()).not.toMatch(INSIDE);
    }
  });
});

describe('a caller that keeps no time or no form', () => {
  const running = runningApp({ rateLimit: 60, connectionLimit: 40 });

  it('sends too many headers, or too long ones', async () => {
    const many = Array.from({ length: 3000 }, (_, index) => `x-${index}: ${index}`).join('\r\n');
    for (const head of [many, `x: ${'y'.repeat(40_000)}`]) {
      const [answer] = answersIn(await exchange(running.origin, `GET /healthz HTTP/1.1\r\nhost: a\r\n${head}\r\n\r\n`));
      expect([200, 431]).toContain(answer?.status);
      if (answer?.status === 431) expect(JSON.parse(answer.body).type).toBe('/problems/header-too-large');
    }
  });

  it('sends a long address', async () => {
    const [answer] = answersIn(
      await exchange(running.origin, `GET /${'a'.repeat(60_000)} HTTP/1.1\r\nhost: a\r\n\r\n`),
    );
    expect(answer?.status).toBe(431);
    const [other] = answersIn(
      await exchange(running.origin, `GET /v1/demo-plans/${'a'.repeat(5_000)} HTTP/1.1\r\nhost: a\r\n\r\n`),
    );
    expect(other?.status).toBe(400);
  });

  it.each([
    ['two lengths', 'POST /v1/checks HTTP/1.1\r\nhost: a\r\ncontent-length: 2\r\ncontent-length: 3\r\n\r\n{}x'],
    [
      'a length and chunks',
      'POST /v1/checks HTTP/1.1\r\nhost: a\r\ncontent-length: 2\r\ntransfer-encoding: chunked\r\n\r\n0\r\n\r\n',
    ],
    ['a chunk of no size', 'POST /v1/checks HTTP/1.1\r\nhost: a\r\ntransfer-encoding: chunked\r\n\r\nzz\r\n\r\n'],
    ['a line feed in a name', 'GET /healthz HTTP/1.1\r\nho st: a\r\n\r\n'],
    ['no host', 'GET /healthz HTTP/1.1\r\n\r\n'],
    ['another protocol', '\x16\x03\x01\x02\x00\x01\x00\x01'],
  ])('sends %s, and is refused', async (_, bytes) => {
    const text = await exchange(running.origin, bytes);
    expect(answersIn(text)[0]?.status).toBe(400);
    expect(text).not.toMatch(INSIDE);
  });

  it('asks for a body to be let through first, with 100-continue', async () => {
    const head = `POST /v1/checks?as=text HTTP/1.1\r\nhost: a\r\nexpect: 100-continue\r\ncontent-type: application/json\r\ncontent-length: ${PLAN.length}\r\n\r\n`;
    expect(answersIn(await exchange(running.origin, head + PLAN))[0]?.status).toBe(200);
    const odd = `GET /healthz HTTP/1.1\r\nhost: a\r\nexpect: the-moon\r\n\r\n`;
    expect(answersIn(await exchange(running.origin, odd))[0]?.status).toBeLessThan(500);
  });

  it('sends many requests on one connection before it hears an answer: each is answered, in order, and counted', async () => {
    const piped = `GET /v1/demo-plans HTTP/1.1\r\nhost: a\r\n\r\n`.repeat(100);
    const answers = answersIn(await exchange(running.origin, piped, 100));
    expect(answers).toHaveLength(100);
    const statuses = answers.map(({ status }) => status);
    const first = statuses.indexOf(429);
    expect(first).toBeGreaterThan(0);
    expect(new Set(statuses.slice(0, first))).toEqual(new Set([200]));
    expect(new Set(statuses.slice(first))).toEqual(new Set([429]));
    // What stands nowhere is counted with the rest.
    expect(answersIn(await exchange(running.origin, 'GET /nowhere HTTP/1.1\r\nhost: a\r\n\r\n'))[0]?.status).toBe(429);
  });

  it('holds more connections than there may be: those beyond are closed, and the service goes on', async () => {
    const { port } = new URL(running.origin);
    let closed = 0;
    const sockets = Array.from({ length: 60 }, () => {
      const socket = connect(Number(port), '127.0.0.1');
      socket.on('error', () => undefined);
      socket.on('close', () => {
        closed += 1;
      });
      return socket;
    });
    for (let tries = 0; tries < 100 && closed < 10; tries += 1) await setTimeout(20);
    expect(closed).toBeGreaterThanOrEqual(10);
    for (const socket of sockets) socket.destroy();
    let status = 0;
    for (let tries = 0; tries < 100 && status !== 200; tries += 1) {
      await setTimeout(20);
      status = answersIn(await exchange(running.origin, 'GET /healthz HTTP/1.1\r\nhost: a\r\n\r\n'))[0]?.status ?? 0;
    }
    expect(status).toBe(200);
  });

  it('goes away in the middle of a request or an answer', async () => {
    const { port } = new URL(running.origin);
    const head = `POST /v1/checks HTTP/1.1\r\nhost: a\r\ncontent-type: application/json\r\ncontent-length: ${PLAN.length}\r\n\r\n`;
    for (const sent of [head, head + PLAN.slice(0, 50), head + PLAN]) {
      await new Promise<void>((resolve) => {
        const socket = connect(Number(port), '127.0.0.1', () => {
          socket.write(sent, () => {
            socket.resetAndDestroy();
            resolve();
          });
        });
        socket.on('error', () => undefined);
      });
    }
    await setTimeout(100);
    expect((await fetch(`${running.origin}/healthz`)).status).toBe(200);
  });
});

describe('a caller that is slow', () => {
  it('is cut off by limits that are set, whatever it drips', () => {
    // The times themselves are waited for in `npm run soak`.
    expect(running.app.server.headersTimeout).toBeLessThanOrEqual(10_000);
    expect(running.app.server.requestTimeout).toBeLessThanOrEqual(30_000);
    expect(running.app.server.timeout).toBeGreaterThan(0);
    expect(running.app.server.keepAliveTimeout).toBeLessThanOrEqual(75_000);
  });
  const running = runningApp();
});
