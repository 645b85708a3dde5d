import { describe, expect, it } from 'vitest';
import { demoPlan } from '../margins/demo-plan.ts';
import { runningApp } from './running-app.ts';

const BROWSER = 'text/html,application/xhtml+xml,*/*;q=0.8';

describe('a service under a base path', () => {
  const service = runningApp({ basePath: '/gustworthy' });
  const page = async (path: string, plan?: unknown): Promise<string> => {
    const answer = await fetch(`${service.origin}${path}`, {
      headers: { accept: BROWSER, ...(plan === undefined ? {} : { 'content-type': 'application/json' }) },
      ...(plan === undefined ? {} : { method: 'POST', body: JSON.stringify(plan) }),
    });
    expect(answer.headers.get('content-type')).toContain('text/html');
    return answer.text();
  };

  it('answers with the path and, where a proxy has taken it off, without', async () => {
    for (const path of ['/gustworthy/healthz', '/healthz', '/gustworthy/v1/demo-plans?x', '/v1/demo-plans']) {
      expect((await service.request().get(path)).status, path).not.toBe(404);
    }
    for (const path of ['/gustworthyx/healthz', '/other/healthz', '/gustworthy/gustworthy/healthz']) {
      await service.request().get(path).expect(404);
    }
    const { body } = await service.request().post('/gustworthy/v1/checks').send(demoPlan('ten-numbers')).expect(200);
    expect(body.checks.length).toBeGreaterThan(1);
  });

  it('is in the type of every problem, which is the address of a page', async () => {
    const { body } = await service.request().post('/gustworthy/v1/checks').send({}).expect(422);
    expect(body.type).toBe('/gustworthy/problems/plan-faults');
    await service.request().get(body.type).expect(200);
  });

  it('leads to its page with the slash that its links need', async () => {
    const { headers } = await service.request().get('/gustworthy').expect(308);
    expect(headers['location']).toBe('/gustworthy/');
  });

  it('has no link that leaves it or leads nowhere, on any kind of page', async () => {
    const plan = demoPlan('ten-numbers');
    const pages: readonly (readonly [string, string])[] = [
      ['/gustworthy/', await page('/gustworthy/')],
      ['/gustworthy/docs', await page('/gustworthy/docs')],
      ['/gustworthy/no/such/page', await page('/gustworthy/no/such/page')],
      ['/gustworthy/v1/checks', await page('/gustworthy/v1/checks', plan)],
      ['/gustworthy/v1/checks', await page('/gustworthy/v1/checks', { units: 'us' })],
      ['/gustworthy/v1/areas', await page('/gustworthy/v1/areas', { units: 'us', loads: plan['loads'] })],
    ];
    const addresses = new Set<string>();
    for (const [path, text] of pages) {
      for (const [, address = ''] of text.matchAll(/ (?:href|src)="([^"#][^"]*)"/g)) {
        const { pathname, search } = new URL(address, `${service.origin}${path}`);
        expect(pathname, `${address} on ${path}`).toMatch(/^\/gustworthy\//);
        addresses.add(pathname + search);
      }
    }
    expect(addresses.size).toBeGreaterThan(30);
    for (const address of addresses) {
      expect((await service.request().get(address).set('accept', BROWSER)).status, address).toBe(200);
    }
  });

  it('is named by its whole address in the contract and on the page of calls', async () => {
    const { body } = await service.request().get('/gustworthy/openapi.json').expect(200);
    expect(body.servers).toEqual([{ url: '/gustworthy' }]);
    expect(await page('/gustworthy/docs')).toContain(`${service.origin}/gustworthy/healthz`);
  });
});
