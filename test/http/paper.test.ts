import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { pdfDisposition } from '../../src/http/paper/file-name.ts';
import { demoPlan } from '../margins/demo-plan.ts';
import { runningApp } from './running-app.ts';

const LETTER = [612, 792];
const A4 = [595, 842];

/** Width and height of each page, in whole points. */
function pagesOf(pdf: Buffer): number[][] {
  const boxes = pdf.toString('latin1').matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g);
  return Array.from(boxes, ([, width, height]) => [Math.round(Number(width)), Math.round(Number(height))]);
}

describe('POST /v1/checks?as=pdf', () => {
  const running = runningApp();
  const post = (query: string, plan: unknown) =>
    running
      .request()
      .post(`/v1/checks${query}`)
      .send(plan as object)
      .responseType('blob');

  it('prints the worksheet, the same bytes for the same plan', async () => {
    const plan = demoPlan('river-bluff');
    const { body, headers } = await post('?as=pdf', plan).expect(200).expect('content-type', 'application/pdf');
    expect(body.subarray(0, 5).toString()).toBe('%PDF-');
    expect(new Set(pagesOf(body).map(String))).toEqual(new Set([String(LETTER)]));
    expect(headers['content-disposition']).toBe('inline; filename="worksheet-heron-bluff.pdf"');
    expect(headers['vary']).toContain('accept');
    const again = await post('?as=pdf&paper=letter', plan).expect(200);
    expect(Buffer.compare(again.body, body)).toBe(0);
  });

  it('takes the paper that goes with the units, unless one is named', async () => {
    const si = await post('?as=pdf', demoPlan('light-mast')).expect(200);
    expect(pagesOf(si.body)[0]).toEqual(A4);
    const named = await post('?as=pdf&paper=a4', demoPlan('ten-numbers')).expect(200);
    expect(pagesOf(named.body)[0]).toEqual(A4);
  });

  it('is longer with its working', async () => {
    const plan = demoPlan('ten-numbers');
    const pages = async (query: string) => pagesOf((await post(query, plan).expect(200)).body).length;
    expect(await pages('?as=pdf&working=full')).toBeGreaterThan(await pages('?as=pdf'));
  });

  it('answers an accept header', async () => {
    await post('', demoPlan('ten-numbers')).set('accept', 'application/pdf').expect('content-type', 'application/pdf');
  });

  it('takes a paper with nothing else', async () => {
    const { body } = await running
      .request()
      .post('/v1/checks?paper=a4')
      .send(demoPlan('ten-numbers') as object)
      .expect(400);
    expect(body.faults).toMatchObject([{ parameter: 'paper', given: 'a4' }]);
    await post('?as=pdf&paper=legal', demoPlan('ten-numbers')).expect(400);
  });
});

describe('a press that never ends', () => {
  const program = new URL('pretended-press.ts', import.meta.url);
  const running = runningApp({ printing: { program, waiting: 0 } });
  const ask = (title: string, signal?: AbortSignal) =>
    fetch(`${running.origin}/v1/checks?as=pdf`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ ...demoPlan('ten-numbers'), title }),
      ...(signal === undefined ? {} : { signal }),
    });

  it('keeps others waiting only until its caller goes', async () => {
    const someoneGone = new AbortController();
    const abandoned = ask('never', someoneGone.signal).catch((error: Error) => error.name);
    let refused = await ask('next');
    while (refused.status === 200) refused = await ask('next');
    expect(refused.status).toBe(503);
    expect(refused.headers.get('retry-after')).toBe('5');
    expect(await refused.json()).toMatchObject({ type: '/problems/paper-busy' });

    someoneGone.abort();
    expect(await abandoned).toBe('AbortError');
    let answered = await ask('next');
    while (answered.status === 503) {
      await wait(20);
      answered = await ask('next');
    }
    expect(await answered.text()).toBe('%PDF next');
  });

  it('is a problem when it fails, without its words', async () => {
    const failed = await ask('fails');
    expect(failed.status).toBe(500);
    expect(failed.headers.get('content-type')).toContain('application/problem+json');
    expect(await failed.text()).not.toContain('ink');
  });
});

describe('the name of a downloaded sheet', () => {
  it.each([
    ['Heron Bluff', 'inline; filename="worksheet-heron-bluff.pdf"'],
    ['', 'inline; filename="worksheet.pdf"'],
    ['../../etc/passwd', 'inline; filename="worksheet-etc-passwd.pdf"'],
    ['a"; x="b\r\nset-cookie: c', 'inline; filename="worksheet-a-x-b-set-cookie-c.pdf"'],
    ['Mât', `inline; filename="worksheet-mat.pdf"; filename*=UTF-8''worksheet-m%C3%A2t.pdf`],
    ['塔', `inline; filename="worksheet.pdf"; filename*=UTF-8''worksheet-%E5%A1%94.pdf`],
    ['\ud800 \u202egnp', 'inline; filename="worksheet-gnp.pdf"'],
  ])('is tame for %j', (title, expected) => {
    expect(pdfDisposition(title)).toBe(expected);
  });

  it('is never long', () => {
    expect(pdfDisposition('漢'.repeat(200)).length).toBeLessThan(700);
  });
});
