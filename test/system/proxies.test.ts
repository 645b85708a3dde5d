import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildApp, readConfiguration } from '../../src/http/index.ts';
import { demoPlan } from '../margins/demo-plan.ts';
import { type RunningProxy, startedProxy } from './proxied.ts';

type App = Awaited<ReturnType<typeof buildApp>>;

const LIMIT = 20;

describe.each(['nginx', 'caddy'] as const)('the service behind %s, by the example', (kind) => {
  let app: App;
  let proxy: RunningProxy;

  beforeAll(async () => {
    const configuration = readConfiguration({
      LOG_LEVEL: 'silent',
      RATE_LIMIT: String(LIMIT),
      TRUSTED_PROXIES: '127.0.0.1',
    });
    app = await buildApp({ configuration });
    const origin = await app.listen({ host: '127.0.0.1', port: 0 });
    proxy = await startedProxy(kind, Number(new URL(origin).port));
  });
  afterAll(async () => {
    await proxy?.stop();
    await app?.close();
  });

  const lowerAt = '/gustworthy/v1/cells/lower-at?holdsTo=89';

  it('is reached by https under its base path, and nothing else is', async () => {
    const health = await proxy.ask('/gustworthy/healthz');
    expect(health.status).toBe(200);
    expect(JSON.parse(health.text)).toMatchObject({ status: 'running' });
    expect(health.headers['strict-transport-security']).toMatch(/max-age=\d{7}/);
    const moved = await proxy.ask('/gustworthy');
    expect([301, 308]).toContain(moved.status);
    expect(moved.headers.location).toMatch(/\/gustworthy\/$/);
    for (const path of ['/', '/healthz', '/gustworthy/metrics', '/gustworthy/%6Detrics', '/gustworthy//metrics']) {
      expect((await proxy.ask(path)).status, path).toBe(404);
    }
  });

  it('lets cells through as they are asked', async () => {
    expect((await proxy.ask(lowerAt)).text).toBe('75.9895');
    const list = '/gustworthy/v1/cells/pressure?method=asce7-16&exposure=C&speed=105&height=10%3B20;30&as=csv';
    expect((await proxy.ask(list)).text).toBe('\uFEFFpressure [psf]\r\n20.3651\r\n21.6366\r\n23.5646\r\n');
    const words = '/gustworthy/v1/cells/pressure?method=asce7-16&exposure=C&speed=105&height=48%20ft%206%20in';
    expect(Number((await proxy.ask(words)).text)).toBeGreaterThan(26);
    expect((await proxy.ask(lowerAt, { method: 'OPTIONS' })).status).toBe(204);
    expect((await proxy.ask(lowerAt, { method: 'HEAD' })).status).toBe(200);
    const { headers } = await proxy.ask(lowerAt);
    const tag = headers.etag as string;
    expect((await proxy.ask(lowerAt, { headers: { 'if-none-match': tag } })).status).toBe(304);
  });

  it('takes plans, and lets the service say in words what is too large', async () => {
    const post = (body: string) =>
      proxy.ask('/gustworthy/v1/checks', {
        method: 'POST',
        body,
        headers: { 'content-type': 'application/json' },
        from: '127.0.0.3',
      });
    const answer = await post(JSON.stringify(demoPlan('river-bluff')));
    expect(answer.status).toBe(200);
    expect(JSON.parse(answer.text).checks.length).toBeGreaterThan(3);
    const large = await post(`"${'x'.repeat(270_000)}"`);
    expect(large.status).toBe(413);
    expect(large.headers['content-type']).toMatch(/^application\/problem\+json/);
  });

  it('counts each caller by the real address, whatever a caller claims', async () => {
    const statuses = async (from: string, claims?: string) => {
      const seen = new Set<number>();
      for (let count = 0; count <= LIMIT; count += 1) {
        const headers: Record<string, string> =
          claims === undefined ? {} : { 'x-forwarded-for': `${claims}${count}`, forwarded: `for=${claims}${count}` };
        seen.add((await proxy.ask('/gustworthy/problems', { from, headers })).status);
      }
      return [...seen];
    };
    expect(await statuses('127.0.0.4')).toEqual([200, 429]);
    expect(await statuses('127.0.0.5', '10.1.1.')).toEqual([200, 429]);
    expect((await proxy.ask('/gustworthy/problems', { from: '127.0.0.6' })).status).toBe(200);
  });

  if (kind === 'nginx') {
    it('sends plain http to https, and logs no query', async () => {
      const { status, headers } = await proxy.askPlainly('/gustworthy/docs?x=1');
      expect(status).toBe(301);
      expect(headers.location).toBe('https://tower.example.org/gustworthy/docs?x=1');
      const log = proxy.log();
      expect(log).toContain('GET /gustworthy/v1/cells/lower-at HTTP/1.1" 200');
      expect(log).toContain('127.0.0.4 [');
      expect(log).not.toContain('?');
      expect(log).not.toContain('holdsTo');
    });
  }
});

describe.each(['nginx', 'caddy'] as const)('the door of %s, before a service that would take more', (kind) => {
  let app: App;
  let proxy: RunningProxy;

  beforeAll(async () => {
    // The service must not be the one that refuses: it may do so before the proxy has read as far.
    const configuration = readConfiguration({
      LOG_LEVEL: 'silent',
      BODY_LIMIT: '1048576',
      TRUSTED_PROXIES: '127.0.0.1',
    });
    app = await buildApp({ configuration });
    const origin = await app.listen({ host: '127.0.0.1', port: 0 });
    proxy = await startedProxy(kind, Number(new URL(origin).port));
  });
  afterAll(async () => {
    await proxy?.stop();
    await app?.close();
  });

  it('stops what is far too large', async () => {
    const plan = (more: number) => JSON.stringify({ ...demoPlan('river-bluff'), note: 'x'.repeat(more) });
    const post = (body: string) =>
      proxy.ask('/gustworthy/v1/checks', { method: 'POST', body, headers: { 'content-type': 'application/json' } });
    const large = await post(plan(270_000));
    expect(large.headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(large.status).toBe(422);
    const larger = await post(plan(400_000));
    // Caddy stops a body on its way to the service; older ones then blame the service.
    expect(kind === 'nginx' ? [413] : [413, 502]).toContain(larger.status);
    expect(larger.headers['content-type'] ?? '').not.toContain('problem+json');
  });
});
