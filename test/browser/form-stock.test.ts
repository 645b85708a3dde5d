import { mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import { afterAll, describe, expect, it } from 'vitest';
import { runningApp } from '../http/running-app.ts';
import { keptPlan, openForm, saysNow, settled, typeTenNumbers, verdictSentence } from './form-page.ts';
import { realBrowser } from './real-browser.ts';

const folder = mkdtempSync(join(tmpdir(), 'gustworthy-form-stock-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function write(name: string, content: unknown): void {
  writeFileSync(join(folder, `.${name}`), JSON.stringify(content));
  renameSync(join(folder, `.${name}`), join(folder, name));
}

const HOSTILE = '<img src=x onerror=alert(1)>';
const trailer = {
  title: 'Loan trailer',
  units: 'us',
  source: 'invented: the sheet of the trailer',
  tower: {
    support: 'free',
    top: 40,
    sections: [
      {
        name: 'lower',
        length: 20,
        shape: 'lattice',
        faces: 3,
        width: 15,
        members: 'round',
        leg: 1,
        brace: 0.375,
        panel: 15,
        pattern: 'zigzag',
      },
      {
        name: 'upper',
        length: 20,
        shape: 'lattice',
        faces: 3,
        width: 12,
        members: 'round',
        leg: 1,
        brace: 0.375,
        panel: 15,
        pattern: 'zigzag',
      },
    ],
  },
  ratings: [
    {
      of: 'tower',
      area: 4,
      areaKind: 'effective',
      above: 1,
      wind: { speed: 90, method: 'tia222-g', exposure: 'C', riskCategory: 'II' },
    },
  ],
};

describe('the club’s stock in the form', () => {
  write('trailer.json', trailer);
  write('panel.json', {
    units: 'us',
    source: 'invented: measured',
    loads: [{ name: 'Harbour panel', area: 7, areaKind: 'effective' }],
  });
  write('hostile.json', { units: 'us', source: HOSTILE, loads: [{ name: HOSTILE, area: 1, areaKind: 'effective' }] });
  const service = runningApp({ stockFolder: folder, lookEvery: 20 });
  const browser = realBrowser();

  it('puts a tower and an antenna into the plan with their sources, and takes them back', async () => {
    const { page, messages } = await browser.open();
    await openForm(page, service.origin);
    await typeTenNumbers(page);
    await settled(page);
    const before = await verdictSentence(page);
    const plan = await keptPlan(page);

    const tower = page.locator('#part-tower');
    await tower.getByLabel('From the club’s stock').selectOption({ label: 'Loan trailer' });
    await tower.getByRole('button', { name: 'Put in: tower' }).click();
    await page.getByText('source: invented: the sheet of the trailer').waitFor();
    await settled(page);
    expect(await verdictSentence(page)).not.toBe(before);
    expect(await keptPlan(page)).toMatchObject({
      tower: { top: 40, source: 'invented: the sheet of the trailer' },
      ratings: [{ area: 4, source: 'invented: the sheet of the trailer' }],
      loads: plan['loads'],
    });

    const loads = page.locator('#part-loads');
    await loads.getByLabel('From the club’s stock').selectOption({ label: 'Harbour panel' });
    await loads.getByRole('button', { name: 'Put in: loads' }).click();
    await page.locator('#at-loads-1-above:focus').waitFor();
    await page.keyboard.type('3');
    await settled(page);
    expect((await keptPlan(page))['loads']).toEqual([
      ...(plan['loads'] as object[]),
      { name: 'Harbour panel', area: 7, areaKind: 'effective', source: 'invented: measured', above: 3 },
    ]);

    for (let undone = 0; undone < 3; undone += 1) await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await settled(page);
    expect(await keptPlan(page)).toEqual(plan);
    await saysNow(page, before.slice(0, 20));
    expect(messages.filter((message) => !message.includes('422'))).toEqual([]);
  });

  it('brings figures in the units of the sheet, none changed', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?units=si');
    const loads = page.locator('#part-loads');
    await loads.getByLabel('From the club’s stock').selectOption({ label: 'Harbour panel' });
    await loads.getByRole('button', { name: 'Put in: loads' }).click();
    await page.locator('#at-loads-0-above:focus').waitFor();
    expect((await keptPlan(page))['loads']).toMatchObject([{ name: 'Harbour panel', area: '7 ft²' }]);
  });

  it('takes a hostile title for letters, and is without fault for who cannot see', async () => {
    for (const width of [1280, 390]) {
      const { page, messages } = await browser.open({ viewport: { width, height: 900 } });
      await openForm(page, service.origin);
      const loads = page.locator('#part-loads');
      await loads.getByLabel('From the club’s stock').selectOption({ label: HOSTILE });
      await loads.getByRole('button', { name: 'Put in: loads' }).click();
      await page.locator('#at-loads-0-above:focus').waitFor();
      expect(await page.locator('img').count()).toBe(0);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
      expect(messages.filter((message) => !message.includes('422'))).toEqual([]);
      const { violations } = await new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).analyze();
      expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
    }
  });

  it('says when a thing has left the stock since the page was opened', async () => {
    write('borrowed.json', { units: 'us', source: 'invented', loads: [{ name: 'Borrowed', area: 2 }] });
    const { page } = await browser.open();
    for (let tries = 0; tries < 100; tries += 1) {
      if ((await service.request().get('/v1/stock')).text.includes('Borrowed')) break;
    }
    await openForm(page, service.origin);
    const loads = page.locator('#part-loads');
    await loads.getByLabel('From the club’s stock').selectOption({ label: 'Borrowed' });
    rmSync(join(folder, 'borrowed.json'));
    const stock = async () => (await service.request().get('/v1/stock')).text;
    await expect.poll(stock, { timeout: 15_000 }).not.toContain('Borrowed');
    await loads.getByRole('button', { name: 'Put in: loads' }).click();
    await page.getByText('out of its stock since').waitFor();
    expect((await keptPlan(page))['loads']).toBeUndefined();
  });
});

describe('the form of a club without stock', () => {
  const service = runningApp();
  const browser = realBrowser();

  it('offers nothing', async () => {
    const { page, messages } = await browser.open();
    const [answered] = await Promise.all([page.waitForResponse(/v1\/stock/), openForm(page, service.origin)]);
    expect(answered.status()).toBe(200);
    await typeTenNumbers(page);
    expect(await page.getByLabel('From the club’s stock').count()).toBe(0);
    expect(messages.filter((message) => !message.includes('422'))).toEqual([]);
  });
});
