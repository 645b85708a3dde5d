import { connect } from 'node:net';
import { PassThrough } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { Refusal } from '../../src/foundation/index.ts';
import { PROBLEM_CODES, PROBLEM_KINDS } from '../../src/http/problems/catalogue.ts';
import { runningApp } from './running-app.ts';

const PROBLEM = /^application\/problem\+json/;

const logged: string[] = [];
const log = new PassThrough();
log.on('data', (chunk) => logged.push(String(chunk)));

const running = runningApp({
  bodyLimit: 2048,
  logLevel: 'info',
  logTo: log,
  prepare: (app) => {
    app.get('/test-failure', () => {
      throw new Error('secret inside');
    });
    app.get('/test-refusal', () => {
      throw new Refusal('impossible', 'A mast of no length holds nothing: give a length.', '/mast/length');
    });
    app.get('/test-answer', { schema: { response: { 200: z.object({ ratio: z.number() }) } } }, () => ({
      ratio: Number.NaN,
    }));
    app.get(
      '/test-query',
      { schema: { querystring: z.strictObject({ as: z.enum(['json', 'text']).optional() }) } },
      () => 'fine',
    );
    app.post('/test-body', () => 'fine');
  },
});

describe('a problem', () => {
  it('answers an unknown address', async () => {
    const { status, body, headers } = await running.request().get('/nowhere/<b>x</b>?y=<script>');
    expect(status).toBe(404);
    expect(headers['content-type']).toMatch(PROBLEM);
    expect(body).toEqual({
      type: '/problems/not-found',
      title: PROBLEM_KINDS['not-found'].title,
      status: 404,
      detail: 'No such address.',
    });
  });

  it('answers a method that an address does not have, and names those it has', async () => {
    const { status, headers, body } = await running.request().delete('/problems/not-json');
    expect(status).toBe(405);
    expect(headers['allow']).toBe('GET, HEAD');
    expect(body.type).toBe('/problems/method-not-allowed');
    expect((await running.request().get('/test-body')).headers['allow']).toBe('POST');
  });

  it('answers an address that cannot be decoded', async () => {
    const { status, headers, body } = await running.request().get('/%zz');
    expect(status).toBe(400);
    expect(headers['content-type']).toMatch(PROBLEM);
    expect(body.type).toBe('/problems/bad-request');
  });

  it.each([
    ['{"units": "us"', 'not-json', 400],
    ['', 'not-json', 400],
    ['{"__proto__": {"x": 1}}', 'not-json', 400],
    ['{"constructor": {"prototype": {"x": 1}}}', 'not-json', 400],
    [JSON.stringify({ note: 'x'.repeat(3000) }), 'too-large', 413],
  ])('answers the body %j with %s', async (text, code, wanted) => {
    const { status, headers, body } = await running
      .request()
      .post('/test-body')
      .set('content-type', 'application/json')
      .send(text);
    expect(status).toBe(wanted);
    expect(headers['content-type']).toMatch(PROBLEM);
    expect(body.type).toBe(`/problems/${code}`);
  });

  it('answers a body of another kind', async () => {
    const { status, body } = await running.request().post('/test-body').set('content-type', 'text/csv').send('a,b');
    expect(status).toBe(415);
    expect(body.type).toBe('/problems/unsupported-media-type');
  });

  it('answers a query that does not fit, all faults at once', async () => {
    const { status, body } = await running.request().get('/test-query?as=gif&size=3&hue=red');
    expect(status).toBe(400);
    expect(body.type).toBe('/problems/bad-query');
    expect(body.faults.map((fault: { parameter: string }) => fault.parameter)).toEqual(['as', 'size', 'hue']);
    expect(body.faults[0].allowed).toBe('json, text');
    expect(body.faults[0].says).toBe('as: one of json, text allowed. Give it once, or leave it out.');
    expect(body.faults[1].says).toBe('There is no parameter size here. Leave it out.');
  });

  it('answers what the domain refuses, with its place', async () => {
    const { status, body } = await running.request().get('/test-refusal');
    expect(status).toBe(422);
    expect(body.type).toBe('/problems/refused');
    expect(body.faults).toEqual([
      { pointer: '#/mast/length', code: 'impossible', says: 'A mast of no length holds nothing: give a length.' },
    ]);
  });

  it('says nothing of the inside, but logs it', async () => {
    const { status, headers, body, text } = await running.request().get('/test-failure');
    expect(status).toBe(500);
    expect(headers['content-type']).toMatch(PROBLEM);
    expect(body.type).toBe('/problems/internal');
    expect(text).not.toMatch(/secret|\.ts|node_modules/);
    const number = /The number of the request is (\S+)\./.exec(body.detail)?.[1];
    const line = logged.find((entry) => entry.includes('secret inside'));
    expect(line).toContain(`"reqId":"${number}"`);
  });

  it('stands in place of an answer that is not a number', async () => {
    const { status, body } = await running.request().get('/test-answer');
    expect(status).toBe(500);
    expect(body.type).toBe('/problems/internal');
  });

  it('answers bytes that are not HTTP', async () => {
    const { port } = new URL(running.origin);
    const answer = await new Promise<string>((resolve, reject) => {
      const socket = connect(Number(port), '127.0.0.1', () => socket.end('so much wind\r\n\r\n'));
      let text = '';
      socket.on('data', (chunk) => {
        text += String(chunk);
      });
      socket.on('end', () => resolve(text));
      socket.on('error', reject);
    });
    expect(answer).toMatch(/^HTTP\/1\.1 400 Bad Request\r\ncontent-type: application\/problem\+json\r\n/);
    expect(JSON.parse(answer.split('\r\n\r\n')[1] as string).type).toBe('/problems/bad-request');
  });

  it('has a page for each kind', async () => {
    const { body: list } = await running.request().get('/problems').expect(200);
    expect(list.map((page: { code: string }) => page.code)).toEqual(PROBLEM_CODES);
    for (const code of PROBLEM_CODES) {
      const { body } = await running.request().get(`/problems/${code}`).expect(200);
      expect(body).toEqual({ code, ...PROBLEM_KINDS[code] });
    }
    const { status, body } = await running.request().get('/problems/toString');
    expect(status).toBe(404);
    expect(body.type).toBe('/problems/not-found');
  });
});
