import { once } from 'node:events';
import { connect } from 'node:net';
import { PassThrough } from 'node:stream';
import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { Pressure } from '../../src/http/upkeep/pressure.ts';
import { RateLimitStore } from '../../src/http/upkeep/rate-limit-store.ts';
import { demoPlan } from '../margins/demo-plan.ts';
import { runningApp } from './running-app.ts';

const block = (milliseconds: number) => {
  const until = performance.now() + milliseconds;
  while (performance.now() < until);
};

describe('readiness', () => {
  const running = runningApp();

  it('is told apart from health: once the service is about to stop, others are to be asked', async () => {
    const ready = await running.request().get('/readyz').expect(200);
    expect(ready.body).toEqual({ status: 'ready' });
    expect(ready.headers['cache-control']).toBe('no-store');

    running.app.draining.begin();
    const stopping = await running.request().get('/readyz').expect(503);
    expect(stopping.body.type).toBe('/problems/closing');
    expect(stopping.headers['connection']).toBe('close');
    const { headers } = await running.request().get('/healthz').expect(200);
    expect(headers['connection']).toBe('close');
    await running.request().post('/v1/checks').send(demoPlan('ten-numbers')).expect(200);
  });
});

/** Values of the text form of Prometheus, by name and labels. */
function counts(text: string): Map<string, number> {
  const lines = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  return new Map(
    lines.map((line) => {
      const cut = line.lastIndexOf(' ');
      return [line.slice(0, cut), Number(line.slice(cut + 1))];
    }),
  );
}

describe('the metrics', () => {
  const running = runningApp();

  it('count answers by route and verdicts, and hold no address and no plan', async () => {
    await running.request().post('/v1/checks').send(demoPlan('river-bluff')).expect(200);
    await running.request().post('/v1/checks').send({}).expect(422);
    await running.request().get('/v1/demo-plans/ten-numbers').expect(200);
    await running.request().get('/nowhere/secret-place').expect(404);
    await running.request().get('/v1/cells/bundle-width?count=5&diameter=0.405').expect(200);
    const { text, headers } = await running.request().get('/metrics').expect(200);
    expect(headers['content-type']).toMatch(/^text\/plain; version=0\.0\.4/);
    const seen = counts(text);
    const answers = (method: string, route: string, status: number) =>
      seen.get(`gustworthy_answer_seconds_count{method="${method}",route="${route}",status="${status}"}`);
    expect(answers('POST', '/v1/checks', 200)).toBe(1);
    expect(answers('POST', '/v1/checks', 422)).toBe(1);
    expect(answers('GET', '/v1/demo-plans/:id', 200)).toBe(1);
    expect(answers('GET', 'none', 404)).toBe(1);
    expect(seen.get('gustworthy_verdicts_total{call="check",verdict="open"}')).toBe(1);
    expect(seen.get('gustworthy_event_loop_delay_seconds{quantile="0.99"}')).toBeGreaterThanOrEqual(0);
    expect(seen.get('process_resident_memory_bytes')).toBeGreaterThan(20e6);
    expect(seen.get('gustworthy_under_way')).toBe(1);
    expect(text).not.toMatch(/secret-place|127\.0\.0\.1|Heron|ten-numbers/);
  });

  it('count who went away, and lose none that is under way', async () => {
    const gone = new AbortController();
    const unfinished = {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: new ReadableStream({ start: (stream) => stream.enqueue(new TextEncoder().encode('{"units":')) }),
      duplex: 'half',
      signal: gone.signal,
    };
    const asked = fetch(`${running.origin}/v1/checks`, unfinished).catch((error: unknown) => error);
    await setTimeout(100);
    gone.abort();
    expect(await asked).toBeInstanceOf(Error);
    let seen = counts('');
    for (let tries = 0; tries < 100 && !(Number(seen.get('gustworthy_aborted_total')) > 0); tries += 1) {
      await setTimeout(20);
      seen = counts((await running.request().get('/metrics')).text);
    }
    expect(seen.get('gustworthy_aborted_total')).toBe(1);
    expect(seen.get('gustworthy_under_way')).toBe(1);
  });
});

describe('metrics switched off', () => {
  const running = runningApp({ metrics: false });

  it('are nowhere', async () => {
    await running.request().get('/metrics').expect(404);
  });
});

describe('pressure', () => {
  const CALM = { delay: 3, heap: 0.2 };
  const LATE = { delay: 900, heap: 0.2 };
  const FULL = { delay: 3, heap: 0.95 };

  it('is what lasts, not a single late sample, and is over with the first good one', () => {
    const pressure = new Pressure(250);
    const causes = [CALM, LATE, CALM, LATE, LATE, LATE, CALM, FULL, FULL, CALM].map((strain) => {
      pressure.sampled(strain);
      return pressure.cause();
    });
    const none = undefined;
    expect(causes).toEqual([none, none, none, none, 'delay', 'delay', none, none, 'memory', none]);
  });

  it('is felt at once by who has waited four limits', () => {
    const pressure = new Pressure(250);
    expect(pressure.cause(1000)).toBeUndefined();
    expect(pressure.cause(1001)).toBe('delay');
    expect(pressure.cause()).toBeUndefined();
  });
});

describe('a service under pressure', () => {
  const running = runningApp({
    pressureLimit: 40,
    prepare: (app) => {
      app.get('/test-slow', async () => {
        block(120);
        return 'slow';
      });
    },
  });

  it('sends requests away with 503 and when to come again, answers health, and recovers at once', async () => {
    let jam = true;
    const jammed = Promise.all(
      [1, 2, 3].map(async () => {
        while (jam) await fetch(`${running.origin}/test-slow`).then((answer) => answer.text());
      }),
    );
    let away: Response | undefined;
    for (let tries = 0; tries < 200 && away === undefined; tries += 1) {
      const answer = await fetch(`${running.origin}/v1/demo-plans`);
      if (answer.status === 503) away = answer;
      else await answer.text();
    }
    expect((await fetch(`${running.origin}/healthz`)).status).toBe(200);
    expect((await fetch(`${running.origin}/readyz`)).status).toBe(200);
    jam = false;
    await jammed;
    expect(away?.headers.get('content-type')).toMatch(/^application\/problem\+json/);
    expect(Number(away?.headers.get('retry-after'))).toBeGreaterThan(0);
    expect(await away?.json()).toMatchObject({ type: '/problems/overloaded', status: 503 });

    let tries = 0;
    while ((await fetch(`${running.origin}/v1/demo-plans`)).status !== 200 && tries < 100) {
      tries += 1;
      await setTimeout(50);
    }
    expect(tries).toBeLessThan(100);
    const seen = counts(await (await fetch(`${running.origin}/metrics`)).text());
    expect(seen.get('gustworthy_sent_away_total{cause="delay"}')).toBeGreaterThan(0);
  });
});

describe('a crowd that comes at once', () => {
  const running = runningApp({
    pressureLimit: 40,
    prepare: (app) => {
      app.get('/test-slow', async () => {
        block(60);
        return 'slow';
      });
    },
  });

  it('is not kept waiting in line: those at its end are sent away', async () => {
    const { hostname, port } = new URL(running.origin);
    const callers = Array.from({ length: 30 }, () => connect(Number(port), hostname));
    const asked = async (path: string): Promise<number[]> => {
      const answers = callers.map((caller) => once(caller.setEncoding('latin1'), 'data'));
      for (const caller of callers) caller.write(`GET ${path} HTTP/1.1\r\nhost: a\r\n\r\n`);
      return (await Promise.all(answers)).map(([head]) => Number(head.slice(9, 12)));
    };
    // Only on connections that are open already do many requests come in one turn.
    expect(new Set(await asked('/healthz'))).toEqual(new Set([200]));
    const statuses = await asked('/test-slow');
    for (const caller of callers) caller.destroy();
    expect(statuses).toContain(200);
    expect(statuses.filter((status) => status === 503).length).toBeGreaterThan(10);
  });
});

describe('the windows of the limit of requests', () => {
  it('go by a clock that is never set, whatever the clock on the wall does', () => {
    let now = 1000;
    const store = new RateLimitStore(undefined, () => now);
    const count = (key: string) => {
      const seen = { current: 0, ttl: 0 };
      store.incr(key, (_error, result) => Object.assign(seen, result), 60_000);
      return seen;
    };
    expect(count('a')).toEqual({ current: 1, ttl: 60_000 });
    now += 20_000;
    expect(count('a')).toEqual({ current: 2, ttl: 40_000 });
    expect(count('b')).toEqual({ current: 1, ttl: 60_000 });
    now += 40_000;
    expect(count('a')).toEqual({ current: 1, ttl: 60_000 });
    expect(count('b')).toEqual({ current: 2, ttl: 20_000 });
  });

  it('are kept for so many callers only', () => {
    const store = new RateLimitStore(undefined, () => 0);
    const counted = (key: string) => {
      let current = 0;
      store.incr(key, (_error, result) => (current = result?.current ?? 0), 60_000);
      return current;
    };
    counted('first');
    for (let index = 0; index < 19_999; index += 1) counted(`caller ${index}`);
    expect(counted('first')).toBe(2);
    for (let index = 0; index < 20_000; index += 1) counted(`other ${index}`);
    expect(counted('first')).toBe(1);
  });
});

describe('the log', () => {
  const lines = (logged: readonly string[]) =>
    logged
      .join('')
      .split('\n')
      .filter((line) => line !== '')
      .map((line) => JSON.parse(line) as Record<string, unknown>);
  const kept: string[] = [];
  const open: string[] = [];
  const into = (target: string[]) => {
    const stream = new PassThrough();
    stream.on('data', (chunk) => target.push(String(chunk)));
    return stream;
  };
  const plain = runningApp({ logLevel: 'trace', logTo: into(kept) });
  const withAddresses = runningApp({ logLevel: 'info', logAddresses: true, logTo: into(open) });

  it('has a line an answer with its number, and no plan, query, body or address', async () => {
    const plan = { ...demoPlan('river-bluff'), title: 'Hidden Hill', titleBlock: { address: '12 Hidden Lane' } };
    const { headers } = await plain.request().post('/v1/checks?working=full').set('x-secret', 'hidden').send(plan);
    const faulty = { ...plan, tower: 'Hidden tower' };
    await plain.request().post('/v1/checks').send(faulty).expect(422);
    await plain.request().get('/v1/demo-plans/hidden?hidden=1').set('cookie', 'hidden=1').expect(404);
    await plain.request().get('/%hidden').expect(400);
    const text = kept.filter((line) => !line.includes('Server listening')).join('');
    expect(text).not.toMatch(/hidden|127\.0\.0\.1|Heron/i);
    const line = lines(kept).find(({ reqId }) => reqId === headers['x-request-id']);
    expect(line).toMatchObject({ method: 'POST', route: '/v1/checks', status: 200, msg: 'answered' });
    expect(line?.['ms']).toBeGreaterThan(0);
  });

  it('gives no two requests one number, and believes none that a caller brings', async () => {
    const number = async () =>
      (await plain.request().get('/healthz').set('x-request-id', 'mine').set('request-id', 'mine')).headers[
        'x-request-id'
      ];
    const numbers = [await number(), await number()];
    expect(new Set(numbers).size).toBe(2);
    for (const each of numbers) expect(each).toMatch(/^[0-9a-f]{8}-\d+$/);
  });

  it('has addresses where they are asked for', async () => {
    await withAddresses.request().get('/v1/sources').expect(200);
    expect(lines(open).find(({ route }) => route === '/v1/sources')?.['address']).toBe('127.0.0.1');
  });
});
