import { once } from 'node:events';
import { request as ask, type IncomingHttpHeaders, type OutgoingHttpHeaders } from 'node:http';
import { brotliDecompressSync, gunzipSync, gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { assetAddress } from '../../src/page/index.ts';
import { demoPlan } from '../margins/demo-plan.ts';
import { runningApp } from './running-app.ts';

interface Raw {
  readonly status: number | undefined;
  readonly headers: IncomingHttpHeaders;
  readonly body: Buffer;
}

const JSON_BODY = { 'content-type': 'application/json' };
const PLAN = Buffer.from(JSON.stringify(demoPlan('river-bluff')));

describe('what answers weigh', () => {
  const service = runningApp({ corsOrigins: ['https://club.example'] });

  async function get(path: string, headers: OutgoingHttpHeaders = {}, method = 'GET', sent?: Buffer): Promise<Raw> {
    const asked = ask(`${service.origin}${path}`, { method, headers: { ...headers, connection: 'close' } });
    asked.end(sent);
    const [answer] = await once(asked, 'response');
    const chunks: Buffer[] = [];
    for await (const chunk of answer) chunks.push(chunk);
    return { status: answer.statusCode, headers: answer.headers, body: Buffer.concat(chunks) };
  }

  const texts = ['/', '/?plan=river-bluff', '/docs', '/openapi.json', '/v1/sources', `/${assetAddress('form.css')}`];

  it.each(texts)('is less when packed, and the same when unpacked: %s', async (path) => {
    const { body: plain, headers: bare } = await get(path);
    expect(bare['content-encoding']).toBeUndefined();
    expect(bare.vary).toContain('accept-encoding');
    for (const [wanted, coding, unpacked] of [
      ['gzip, deflate, br, zstd', 'br', brotliDecompressSync],
      ['gzip, deflate', 'gzip', gunzipSync],
      ['br;q=0, gzip;q=0.5', 'gzip', gunzipSync],
    ] as const) {
      const { headers, body } = await get(path, { 'accept-encoding': wanted });
      expect(headers['content-encoding'], wanted).toBe(coding);
      expect(headers.vary).toContain('accept-encoding');
      expect(body.length).toBeLessThan(plain.length / 2);
      expect(unpacked(body).equals(plain), wanted).toBe(true);
    }
    for (const wanted of ['', 'identity', 'deflate', '*;q=0', 'br;q=0']) {
      const { status, headers, body } = await get(path, { 'accept-encoding': wanted });
      expect([status, headers['content-encoding']], wanted).toEqual([200, undefined]);
      expect(body.equals(plain), wanted).toBe(true);
    }
  });

  it.each([...texts, '/healthz', `/${assetAddress('fonts/serif-latin.woff2')}`])(
    'says nothing to HEAD that GET does not: %s',
    async (path) => {
      for (const wanted of ['br', 'gzip', 'identity']) {
        const { headers: got, body } = await get(path, { 'accept-encoding': wanted });
        const { headers: head, body: none } = await get(path, { 'accept-encoding': wanted }, 'HEAD');
        expect(none.length).toBe(0);
        expect([undefined, String(body.length)]).toContain(head['content-length']);
        expect([undefined, got['content-encoding']]).toContain(head['content-encoding']);
        for (const name of ['vary', 'etag', 'cache-control', 'content-type']) expect(head[name], name).toBe(got[name]);
      }
    },
  );

  it('is nothing for who has the page already, in whichever coding', async () => {
    for (const path of ['/', `/${assetAddress('form.mjs')}`]) {
      const { headers } = await get(path, { 'accept-encoding': 'br' });
      const { headers: plain } = await get(path);
      expect(headers.etag).toMatch(/^W\/"[\w-]{27}"$/);
      expect(plain.etag).toBe(headers.etag);
      for (const known of [headers.etag as string, `"other", ${headers.etag}`, '*']) {
        const again = await get(path, { 'accept-encoding': 'gzip', 'if-none-match': known });
        expect([again.status, again.body.length], known).toEqual([304, 0]);
        for (const name of ['vary', 'etag', 'cache-control']) expect(again.headers[name], name).toBe(headers[name]);
      }
      expect((await get(path, { 'if-none-match': '"other"' })).status).toBe(200);
    }
    expect((await get('/', {})).headers.etag).not.toBe((await get('/?units=si', {})).headers.etag);
  });

  it('is less for answers to plans too, for faults and for pages, but paper goes out as it is', async () => {
    const post = (as: string, sent = PLAN) =>
      get(
        `/v1/checks?as=${as}`,
        { ...JSON_BODY, 'accept-encoding': 'br', origin: 'https://club.example' },
        'POST',
        sent,
      );
    const answer = await post('json');
    expect(answer.headers['content-encoding']).toBe('br');
    expect(answer.headers.vary?.toLowerCase()).toMatch(/origin/);
    expect(JSON.parse(brotliDecompressSync(answer.body).toString()).checks.length).toBeGreaterThan(1);
    const faults = await post('json', Buffer.from(JSON.stringify({ loads: Array(40).fill({ shape: 'cone' }) })));
    expect([faults.status, faults.headers['content-encoding']]).toEqual([422, 'br']);
    expect((await post('html')).headers['content-encoding']).toBe('br');
    const paper = await post('pdf');
    expect([paper.status, paper.headers['content-encoding']]).toEqual([200, undefined]);
    expect(paper.body.subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('is as it was for little answers and for fonts', async () => {
    for (const path of ['/healthz', `/${assetAddress('fonts/sans-latin.woff2')}`, `/${assetAddress('mark.svg')}`]) {
      const { headers } = await get(path, { 'accept-encoding': 'br' });
      expect([headers['content-encoding'], headers.vary?.includes('accept-encoding') ?? false], path).toEqual([
        undefined,
        false,
      ]);
    }
  });

  it('never grows on the way in: a packed plan is not unpacked', async () => {
    const packed = gzipSync(PLAN);
    const { status } = await get('/v1/checks', { ...JSON_BODY, 'content-encoding': 'gzip' }, 'POST', packed);
    expect(status).toBeGreaterThanOrEqual(400);
    expect(status).toBeLessThan(500);
  });

  it('is nothing again for who has it, packed or not', async () => {
    for (const path of ['/', '/docs', '/openapi.json', '/problems', '/v1/changes', '/v1/formulas', '/v1/stock']) {
      for (const coding of ['br', 'identity']) {
        const first = await get(path, { 'accept-encoding': coding });
        expect(first.headers.etag, path).toMatch(/^(W\/)?"/);
        const again = await get(path, { 'accept-encoding': coding, 'if-none-match': String(first.headers.etag) });
        expect([again.status, again.body.length], path).toEqual([304, 0]);
        expect(again.headers.etag).toBe(first.headers.etag);
      }
    }
    expect((await get('/healthz')).headers.etag).toBeUndefined();
  });
});
