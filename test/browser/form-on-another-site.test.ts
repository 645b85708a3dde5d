import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { AxeBuilder } from '@axe-core/playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runningApp } from '../http/running-app.ts';
import { demoPlan, tenNumbersAsTyped } from '../margins/demo-plan.ts';
import { OTHER_HOST, realBrowser } from './real-browser.ts';

const SAMPLE = readFileSync(new URL('../../deploy/form-on-another-site/index.html', import.meta.url), 'utf8');

/** What is typed with its unit is another document, of the same answer. */
const withoutHash = (text: string) => text.trim().replace(/SHA-256 [0-9a-f]{64}/, '');

describe('a plain page on another site', () => {
  const service = runningApp();
  const browser = realBrowser();
  const site = createServer((_request, response) => {
    const page = SAMPLE.replace('http://localhost:8080/v1/checks', `${service.origin}/v1/checks?as=text`);
    response.setHeader('content-type', 'text/html; charset=utf-8').end(page);
  });
  beforeAll(() => new Promise<void>((resolve) => site.listen(0, '127.0.0.1', () => resolve())));
  afterAll(() => new Promise((resolve) => site.close(resolve)));

  const opened = async (options = {}) => {
    const opening = await browser.open(options);
    await opening.page.goto(`http://${OTHER_HOST}:${(site.address() as AddressInfo).port}/`);
    return opening;
  };

  const tenNumbers = tenNumbersAsTyped();

  /** The ten numbers of the demo plan, typed as a visitor would. */
  const TYPED: Readonly<Record<string, string>> = {
    'site[wind]': '105 mph',
    'tower[top]': '48 ft',
    'tower[width]': '18',
    'loads[0][above]': '2',
    'loads[0][area]': '5.5',
    'cables[0][count]': '3',
    'cables[0][diameter]': '0.405 in',
    'ratings[0][area]': '18',
    'ratings[0][top]': '48',
    'ratings[0][wind][speed]': '100',
  };

  it('names the service in one place', () => {
    expect(SAMPLE.match(/action="http:/g)).toHaveLength(1);
    expect(SAMPLE).not.toContain('<script');
  });

  it.each([
    [1280, 'light'],
    [390, 'dark'],
  ] as const)('stands by itself and without fault at %i px, %s', async (width, colorScheme) => {
    const { page, requests } = await opened({ viewport: { width, height: 900 }, colorScheme });
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
    expect(requests.filter((address) => !address.includes(OTHER_HOST))).toEqual([]);
    expect((await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual(
      [],
    );
  });

  it('posts ten numbers to the service, which answers as to the plan itself', async () => {
    const { page } = await opened();
    for (const [name, value] of Object.entries(TYPED)) await page.fill(`[name="${name}"]`, value);
    await page.selectOption('[name="ratings[0][wind][method]"]', 'tia222-g');
    await page.click('button');
    await page.waitForURL(/\/v1\/checks/);
    const { text } = await service.request().post('/v1/checks?as=text').send(tenNumbers).expect(200);
    expect(withoutHash((await page.textContent('body')) ?? '')).toBe(withoutHash(text));
  });

  it('says by a tick that no lines run up the tower, and not by blank entries', async () => {
    const { page } = await opened();
    const { 'cables[0][count]': _count, 'cables[0][diameter]': _diameter, ...others } = TYPED;
    for (const [name, value] of Object.entries(others)) await page.fill(`[name="${name}"]`, value);
    await page.selectOption('[name="ratings[0][wind][method]"]', 'tia222-g');
    await page.getByLabel('No lines run up this tower').check();
    await page.click('button');
    await page.waitForURL(/\/v1\/checks/);
    const none = { ...tenNumbers, cables: [] };
    const { text } = await service.request().post('/v1/checks?as=text').send(none).expect(200);
    expect(withoutHash((await page.textContent('body')) ?? '')).toBe(withoutHash(text));
    const { cables: __, ...silent } = tenNumbers;
    const { text: open } = await service.request().post('/v1/checks?as=text').send(silent).expect(200);
    expect(open).not.toBe(text);
  });

  it('brings faults back as a page on which they are mended', async () => {
    const { page } = await opened({ viewport: { width: 390, height: 844 } });
    for (const [name, value] of Object.entries(TYPED)) await page.fill(`[name="${name}"]`, value);
    await page.selectOption('[name="ratings[0][wind][method]"]', 'tia222-g');
    await page.fill('[name="site[wind]"]', '1050');
    await page.fill('[name="cables[0][diameter]"]', '');
    await page.click('button');
    await page.waitForURL(/\/v1\/checks/);
    expect(await page.locator('h1').textContent()).toBe('The plan has errors');
    expect(await page.locator('.faults > li').count()).toBe(2);
    expect(await page.locator('[name="site[wind]"]').inputValue()).toBe('1050');
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(390);
    expect((await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual(
      [],
    );
    for (const target of await page.locator('.act, .mend-entry input').all()) {
      expect((await target.boundingBox())?.height).toBeGreaterThanOrEqual(43);
    }
    await page.getByLabel('site[wind]').fill('105');
    await page.getByLabel('cables[0][diameter]').fill('0.405');
    await page.getByRole('button').click();
    await page.waitForLoadState();
    const { text } = await service.request().post('/v1/checks?as=text').send(tenNumbers).expect(200);
    expect(withoutHash((await page.textContent('body')) ?? '')).toBe(withoutHash(text));
  });

  it('lets no script of another site read an answer, unless the service is told to', async () => {
    const { page } = await opened();
    const read = `fetch('${service.origin}/healthz').then((answer) => answer.text(), () => 'kept')`;
    expect(await page.evaluate(read)).toBe('kept');
  });
});

describe('a script on another site that the service knows', () => {
  const site = createServer((_request, response) =>
    response.setHeader('content-type', 'text/html').end('<title>club</title>'),
  );
  const corsOrigins: string[] = [];
  beforeAll(
    () =>
      new Promise<void>((resolve) =>
        site.listen(0, '127.0.0.1', () => {
          corsOrigins.push(`http://${OTHER_HOST}:${(site.address() as AddressInfo).port}`);
          resolve();
        }),
      ),
  );
  afterAll(() => new Promise((resolve) => site.close(resolve)));
  const service = runningApp({ corsOrigins });
  const browser = realBrowser();

  it('posts a plan as JSON and reads the answer', async () => {
    const { page } = await browser.open();
    await page.goto(`${corsOrigins[0]}/`);
    const verdict = await page.evaluate(
      async ([address, body]) => {
        const answer = await fetch(address, { method: 'POST', headers: { 'content-type': 'application/json' }, body });
        return (await answer.json()).verdict;
      },
      [`${service.origin}/v1/checks`, JSON.stringify(demoPlan('ten-numbers'))] as const,
    );
    expect(verdict).toBe('open');
  });
});
