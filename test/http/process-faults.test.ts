import { once } from 'node:events';
import { existsSync, openSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { setTimeout } from 'node:timers/promises';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { demoPlan } from '../margins/demo-plan.ts';
import { runningApp } from './running-app.ts';
import { type StartedService, somePort, startedService } from './started-service.ts';

const PLAN = JSON.stringify(demoPlan('river-bluff'));
const services: StartedService[] = [];

async function started(
  how: Omit<Parameters<typeof startedService>[0], 'port'> & { port?: number },
): Promise<StartedService> {
  const service = await startedService({ port: await somePort(), ...how });
  services.push(service);
  return service;
}

afterEach(() => {
  for (const { child } of services.splice(0))
    if (child.exitCode === null && child.signalCode === null) child.kill('SIGKILL');
});

interface Outcome {
  readonly status?: number;
  /** Why there was no answer. */
  readonly fault?: string;
  /** Whether the answer asks to close the connection. */
  readonly lastOne?: boolean;
}

/** One check over a connection that is kept; an answer that breaks off is a fault of its own. */
function check(origin: string, agent: Agent): Promise<Outcome> {
  const headers = { 'content-type': 'application/json', 'content-length': Buffer.byteLength(PLAN) };
  return new Promise((resolve) => {
    const call = request(`${origin}/v1/checks`, { agent, method: 'POST', headers }, (answer) => {
      let size = 0;
      answer.on('data', (chunk: Buffer) => {
        size += chunk.length;
      });
      answer.on('error', () => resolve({ fault: 'broken off' }));
      answer.on('end', () => {
        if (size !== Number(answer.headers['content-length'])) resolve({ fault: 'broken off' });
        else resolve({ status: answer.statusCode ?? 0, lastOne: answer.headers.connection === 'close' });
      });
    });
    call.on('error', (error: NodeJS.ErrnoException) => resolve({ fault: error.code ?? error.message }));
    call.end(PLAN);
  });
}

describe('the process', { timeout: 60_000 }, () => {
  it('told to stop under load, loses no request that it took on', async () => {
    const service = await started({ environment: { LOG_LEVEL: 'info', STOP_DELAY: '1' } });
    const outcomes: Outcome[] = [];
    const asking = async (goesWhenAsked: boolean) => {
      const agent = new Agent({ keepAlive: true, maxSockets: 1 });
      const own: Outcome[] = [];
      for (;;) {
        const outcome = await check(service.origin, agent);
        if (outcome.fault === 'ECONNREFUSED') break;
        own.push(outcome);
        outcomes.push(outcome);
        if (goesWhenAsked && outcome.lastOne) break;
      }
      agent.destroy();
      return own;
    };
    const polite = Promise.all(Array.from({ length: 6 }, () => asking(true)));
    const stubborn = Promise.all(Array.from({ length: 6 }, () => asking(false)));
    while (outcomes.length < 100) await setTimeout(20);
    const before = outcomes.length;
    service.child.kill('SIGTERM');

    // Who goes elsewhere when asked to, as a proxy does that looks at /readyz, loses nothing.
    for (const own of await polite) {
      expect(own.filter(({ status }) => status !== 200)).toEqual([]);
      expect(own.at(-1)?.lastOne).toBe(true);
    }
    // Who goes on to the last may find a connection closed on which nothing had been read yet; no answer breaks off.
    await stubborn;
    expect(new Set(outcomes.flatMap(({ fault }) => fault ?? []))).toBeOneOf([new Set(), new Set(['ECONNRESET'])]);
    expect(await service.ended()).toEqual([0, null]);
    const logged = service.output.out.split('\n').filter((line) => line.includes('"route":"/v1/checks"'));
    expect(logged.filter((line) => !line.includes('"status":200'))).toEqual([]);
    expect(outcomes.filter(({ status }) => status === 200)).toHaveLength(logged.length);
    expect(outcomes.length).toBeGreaterThan(before);
    expect(service.output.err).toBe('');
  });

  it('killed at once and started again on the same port, answers the same', async () => {
    const port = await somePort();
    const answer = async (service: StartedService) =>
      (
        await fetch(`${service.origin}/v1/checks`, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: PLAN,
        })
      ).text();
    const first = await started({ port });
    const before = await answer(first);
    const under = Array.from({ length: 5 }, () => answer(first).catch(() => 'lost'));
    first.child.kill('SIGKILL');
    expect((await first.ended())[1]).toBe('SIGKILL');
    await Promise.all(under);
    const second = await started({ port });
    expect(await answer(second)).toBe(before);
  });

  it.runIf(existsSync('/dev/full'))('goes on where the disk behind its log is full', async () => {
    const service = await started({ stdio: ['ignore', openSync('/dev/full', 'w'), 'pipe'] });
    for (let count = 0; count < 50; count += 1) {
      expect((await fetch(`${service.origin}/v1/sources`)).status).toBe(200);
    }
    expect(service.child.exitCode).toBeNull();
    service.child.kill('SIGTERM');
    expect(await service.ended()).toEqual([0, null]);
  });

  it('goes on where nobody reads its log any more', async () => {
    const service = await started({});
    service.child.stdout?.destroy();
    for (let count = 0; count < 50; count += 1) {
      expect((await fetch(`${service.origin}/v1/sources`)).status).toBe(200);
    }
    expect(service.child.exitCode).toBeNull();
  });

  it('goes on where its log is held open and not read', async () => {
    const service = await started({ stdio: ['ignore', 'pipe', 'ignore'] });
    service.child.stdout?.removeAllListeners('data').pause();
    // More than a pipe holds, several times over.
    for (let count = 0; count < 2000; count += 1) {
      const answer = await fetch(`${service.origin}/v1/demo-plans`, { signal: AbortSignal.timeout(20_000) });
      await answer.arrayBuffer();
      expect(answer.status).toBe(200);
    }
    service.child.kill('SIGTERM');
    // The work is done; that the last lines have no reader must not keep it from ending.
    const gone = once(service.child, 'exit');
    expect(await Promise.race([gone, setTimeout(20_000, 'still there')])).not.toBe('still there');
  });

  it('writes no file and starts no program to answer', async () => {
    const guard = new URL('no-program-to-answer.mjs', import.meta.url).pathname;
    const service = await started({
      // One program is started before: it joins the modules of the form.
      nodeOptions: [
        '--permission',
        '--allow-fs-read=*',
        '--allow-child-process',
        '--disable-warning=PERM0002',
        '--import',
        guard,
      ],
    });
    const check = (as: string) =>
      fetch(`${service.origin}/v1/checks?working=full&as=${as}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: PLAN,
      });
    for (const as of ['json', 'html']) expect((await check(as)).status, as).toBe(200);
    expect((await fetch(service.origin)).status).toBe(200);
    expect(service.output.err).toBe('');
    // Paper alone is made by another program: so the guard is seen to hold.
    expect((await check('pdf')).status).toBeGreaterThanOrEqual(500);
  });
});

describe("a machine's clock that jumps", () => {
  const running = runningApp({ rateLimit: 10 });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('stops no answer, and neither opens nor bars the door', async () => {
    vi.useFakeTimers({ toFake: ['Date'] });
    const statuses: number[] = [];
    for (const year of ['2026', '1970', '2100', '2026', '2025']) {
      vi.setSystemTime(new Date(`${year}-06-01T00:00:00Z`));
      for (let count = 0; count < 2; count += 1) statuses.push((await running.request().get('/v1/sources')).status);
      expect((await running.request().get('/metrics')).status).toBe(200);
    }
    expect(new Set(statuses)).toEqual(new Set([200]));
    vi.setSystemTime(new Date('1999-01-01T00:00:00Z'));
    const refused = await running.request().get('/v1/sources').expect(429);
    expect(Number(refused.headers['retry-after'])).toBeLessThanOrEqual(60);
    expect(Number(refused.headers['retry-after'])).toBeGreaterThan(0);
  });
});
