import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { runningApp } from '../http/running-app.ts';
import { openForm, settled, typeTenNumbers, verdictSentence } from './form-page.ts';
import { realBrowser } from './real-browser.ts';

const KEY = 'redshank-7f3c2a9d10e4b856';
const folder = mkdtempSync(join(tmpdir(), 'gustworthy-form-keys-'));
afterAll(() => rmSync(folder, { recursive: true }));
const keysFile = join(folder, 'keys');
writeFileSync(keysFile, `committee ${KEY}\n`);

describe('the form of a service that answers plans for keys alone', () => {
  const service = runningApp({ keysFile, openEndpoints: ['page', 'background'] });
  const browser = realBrowser();

  it('says so, asks no more until told to, and keeps what is typed', async () => {
    const { page, requests } = await browser.open();
    await openForm(page, service.origin);
    await typeTenNumbers(page);
    await page.getByText('This service requires a key').waitFor();
    const asked = () => requests.filter((address) => address.includes('/v1/checks')).length;
    expect(asked()).toBe(1);
    await page.getByLabel('Top above ground').fill('50');
    await page.waitForTimeout(400);
    expect(asked()).toBe(1);
    await page.getByRole('button', { name: 'Give the key' }).click();
    await expect.poll(asked, { timeout: 15_000 }).toBe(2);
    await page.waitForTimeout(400);
    expect(asked()).toBe(2);
    expect(await page.getByLabel('Top above ground').inputValue()).toBe('50');
  });

  it('answers where the browser has the key, which is in no plan and no address', async () => {
    const { page, context, requests } = await browser.open({ httpCredentials: { username: 'yard', password: KEY } });
    await openForm(page, service.origin);
    await typeTenNumbers(page);
    await settled(page);
    expect(await verdictSentence(page)).toMatch(/^Open: the tower is at/);
    const [sheet] = await Promise.all([
      context.waitForEvent('page'),
      page.getByRole('button', { name: 'Worksheet', exact: true }).click(),
    ]);
    await sheet.locator('.says').waitFor();
    expect(requests.filter((address) => address.includes(KEY))).toEqual([]);
    expect(await page.evaluate('JSON.stringify(Object.entries(localStorage))')).not.toContain(KEY);
  });
});

describe('the form of a service that tells its stock for keys alone', () => {
  const stockFolder = mkdtempSync(join(tmpdir(), 'gustworthy-keyed-stock-'));
  afterAll(() => rmSync(stockFolder, { recursive: true }));
  writeFileSync(
    join(stockFolder, 'panel.json'),
    JSON.stringify({ units: 'us', source: 'invented', loads: [{ name: 'Panel', area: 7, areaKind: 'effective' }] }),
  );
  const service = runningApp({ keysFile, stockFolder, openEndpoints: ['page', 'plans', 'background'] });
  const browser = realBrowser();

  it('asks for no key until somebody wants to see the stock', async () => {
    const { page } = await browser.open({ httpCredentials: { username: 'yard', password: KEY } });
    const asked: (string | undefined)[] = [];
    page.on('response', async (response) => {
      if (response.url().includes('/v1/stock')) asked.push(`${response.status()}`);
    });
    await openForm(page, service.origin);
    const show = page.getByRole('button', { name: 'Show the club’s stock' });
    await show.waitFor();
    expect(asked).toEqual(['401']);
    await show.click();
    await page.locator('#part-loads').getByLabel('From the club’s stock').selectOption({ label: 'Panel' });
    await page.getByRole('button', { name: 'Put in: loads' }).click();
    await page.locator('#at-loads-0-above:focus').waitFor();
  });
});
