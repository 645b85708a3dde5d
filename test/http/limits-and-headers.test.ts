import { describe, expect, it } from 'vitest';
import { VERSION } from '../../src/http/version.ts';
import { runningApp } from './running-app.ts';

describe('the limit of requests', () => {
  const running = runningApp({ rateLimit: 3 });

  it('holds for known and unknown addresses, and leaves health alone', async () => {
    const statuses = async (path: string) => {
      const seen: number[] = [];
      for (let count = 0; count < 4; count += 1) seen.push((await running.request().get(path)).status);
      return seen;
    };
    expect(await statuses('/problems')).toEqual([200, 200, 200, 429]);
    expect((await statuses('/nowhere')).at(-1)).toBe(429);
    expect(await statuses('/healthz')).toEqual([200, 200, 200, 200]);

    const refused = await running.request().get('/problems');
    expect(refused.headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(Number(refused.headers['retry-after'])).toBeGreaterThan(0);
    expect(refused.body.type).toBe('/problems/too-many-requests');
  });
});

describe('every response', () => {
  const running = runningApp();

  it.each(['/healthz', '/nowhere', '/openapi.json'])(
    'carries the security headers that suit plain http: %s',
    async (path) => {
      const { headers } = await running.request().get(path);
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['content-security-policy']).toContain("default-src 'none'");
      expect(headers['content-security-policy']).not.toContain('upgrade-insecure-requests');
      expect(headers['content-security-policy']).not.toContain('unsafe');
      expect(headers['strict-transport-security']).toBeUndefined();
      expect(headers['cross-origin-opener-policy']).toBeUndefined();
    },
  );
});

describe('health', () => {
  const running = runningApp();

  it('tells that the service runs, and its version', async () => {
    const { body, headers } = await running.request().get('/healthz').expect(200);
    expect(body).toEqual({ status: 'running', version: VERSION });
    expect(headers['cache-control']).toBe('no-store');
  });
});
