import { describe, expect, it } from 'vitest';
import { runningApp } from '../http/running-app.ts';
import { OTHER_HOST, realBrowser } from './real-browser.ts';

/** What a first visit may weigh: all of it, and what must be there before the form can be used [byte]. */
const IN_ALL = 200_000;
const BEFORE_USE = 110_000;

describe('the first visit', () => {
  const service = runningApp();
  const browser = realBrowser();

  /** Every answer to a first visit in the order it was asked for: address and bytes on the wire, heads with them. */
  async function visit(address: string) {
    const { page, context } = await browser.open();
    const wire = await context.newCDPSession(page);
    const asked = new Map<string, { readonly address: string; bytes: number; end?: true }>();
    wire.on('Network.requestWillBeSent', ({ requestId, request }) => {
      asked.set(requestId, { address: new URL(request.url).pathname, bytes: 0 });
    });
    wire.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
      const one = asked.get(requestId);
      if (one !== undefined) Object.assign(one, { bytes: encodedDataLength, end: true });
    });
    await wire.send('Network.enable');
    await page.goto(address, { waitUntil: 'networkidle' });
    expect(await page.locator('html').getAttribute('data-ready')).toBe('yes');
    await page.evaluate('document.fonts.ready.then(() => 0)');
    await expect.poll(() => [...asked.values()].filter(({ end }) => !end)).toEqual([]);
    return [...asked.values()];
  }

  // A browser takes the smaller coding from its own machine or by https alone: under another name it gets gzip.
  it.each([
    ['the empty form', 'localhost', '/'],
    ['the empty form, by gzip', OTHER_HOST, '/'],
    ['a demo plan with its answer', 'localhost', '/?plan=river-bluff'],
  ])('is light: %s', async (_, host, path) => {
    const answers = await visit(`http://${host}:${new URL(service.origin).port}${path}`);
    const fonts = answers.findIndex(({ address }) => address.endsWith('/fonts.css'));
    const before = answers.slice(0, fonts);
    const weight = (part: typeof answers) => part.reduce((sum, { bytes }) => sum + bytes, 0);
    expect(before.some(({ address }) => address.endsWith('/form.mjs'))).toBe(true);
    expect(answers.filter(({ address }) => address.endsWith('.woff2')).length).toBeGreaterThan(1);
    expect(before.filter(({ address }) => address.endsWith('.woff2'))).toEqual([]);
    expect(answers.filter(({ bytes }) => bytes === 0)).toEqual([]);
    expect(answers.length).toBeLessThan(16);
    expect(weight(before)).toBeGreaterThan(30_000);
    expect(weight(before)).toBeLessThan(BEFORE_USE);
    // What the form asks once it is in use is no part of the page.
    expect(weight(answers.filter(({ address }) => !address.startsWith('/v1/checks')))).toBeLessThan(IN_ALL);
  });

  it('brings the same letters without script', async () => {
    const { page, requests } = await browser.open({ javaScriptEnabled: false });
    await page.goto(service.origin, { waitUntil: 'networkidle' });
    expect(requests.filter((address) => address.endsWith('.woff2')).length).toBeGreaterThan(1);
  });
});
