import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Locator, Page } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import { runningApp } from '../http/running-app.ts';
import { demoPlan } from '../margins/demo-plan.ts';
import { keptHere, keptPlan, openForm, settled } from './form-page.ts';
import { realBrowser } from './real-browser.ts';

const folder = mkdtempSync(join(tmpdir(), 'gustworthy-candidates-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Waits for it though other tests take the machine. */
const soon = <T>(see: () => T | Promise<T>) => expect.poll(see, { timeout: 15_000 });
const tableOf = (page: Page) =>
  page.getByRole('region', { name: 'Candidates side by side', exact: true }).getByRole('table');
/** The cell of a row, the plan as it is being the first. */
const cell = (table: Locator, row: string, column: number) =>
  table
    .getByRole('row')
    .filter({ has: table.page().getByRole('rowheader', { name: row, exact: true }) })
    .getByRole('cell')
    .nth(column);

async function fill(candidate: Locator, entries: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, value] of Object.entries(entries)) {
    const entry = candidate.getByLabel(label, { exact: true });
    if (/^(Instead|[Tt]ype) of/.test(label)) await entry.selectOption(value);
    else await entry.fill(value);
  }
}

/** One more antenna in place of the first load. */
async function another(page: Page, entries: Readonly<Record<string, string>>): Promise<Locator> {
  const all = page.locator('.proposal');
  const number = await all.count();
  await page.getByRole('button', { name: 'Try another antenna' }).click();
  await soon(() => all.count()).toBe(number + 1);
  await fill(all.nth(number), entries);
  return all.nth(number);
}

const SIX = {
  'What you call it': 'six elements',
  'Its area': '15.5',
  'Type of area': 'effective',
  'Weight of one': '88',
  'The wind it is rated for': '100',
  'type of speed': 'gust3-nominal',
};
const SHORT = {
  ...SIX,
  'What you call it': 'shortened',
  'Its area': '3.9',
  'Weight of one': '29',
  'The wind it is rated for': '145',
};

describe('candidates beside the plan', () => {
  writeFileSync(
    join(folder, 'beam.json'),
    JSON.stringify({
      units: 'us',
      source: 'invented: measured',
      loads: [
        {
          name: 'Club beam',
          area: 4,
          areaKind: 'effective',
          weight: 30,
          ratedWind: { speed: 120, basis: 'gust3-nominal' },
        },
      ],
    }),
  );
  const service = runningApp({ stockFolder: folder, lookEvery: 20 });
  const browser = realBrowser();

  it('show each part before and after, stay over a reload, go along in a link, and are printed', async () => {
    const { page, context, messages } = await browser.open();
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    await another(page, SIX);
    expect(await page.evaluate("document.activeElement.closest('.proposal') !== null")).toBe(true);
    await another(page, SHORT);
    const table = tableOf(page);
    await soon(() => table.getByRole('columnheader').count()).toBe(4);

    const loadOf = (area: number, weight: number, speed: number) => ({
      ...{ area, areaKind: 'effective', weight, ratedWind: { speed, basis: 'gust3-nominal' } },
    });
    const swapped = (name: string, load: object) => ({
      name,
      swap: [{ load: 'four-element beam', with: { name, ...load } }],
    });
    const proposals = [swapped('six elements', loadOf(15.5, 88, 100)), swapped('shortened', loadOf(3.9, 29, 145))];
    const { body } = await service
      .request()
      .post('/v1/additions')
      .send({ plan: demoPlan('river-bluff'), proposals });
    const stations = [body.before, ...body.after];
    for (const [column, { parts }] of stations.entries()) {
      for (const id of ['tower', 'mast', 'tower-top', 'footing']) {
        const part = parts.find((each: { id: string }) => each.id === id);
        const { title, ratio, verdict } = part as { title: string; ratio: number; verdict: string };
        const said = await cell(table, title.charAt(0).toUpperCase() + title.slice(1), column).textContent();
        expect(said, `${id} ${column}`).toContain(ratio < 1 ? ratio.toPrecision(3) : ratio.toFixed(2));
        expect(said, `${id} ${column}`).toContain(verdict.replace('-', ' '));
      }
    }
    expect(await cell(table, 'rank', 1).textContent()).toBe('2');
    expect(await cell(table, 'rank', 2).textContent()).toBe('1');
    expect(await cell(table, 'weight', 2).textContent()).toBe('29 lb');

    await keptHere(page, 'shortened');
    await page.reload();
    await page.locator('html[data-ready]').waitFor();
    await soon(() => cell(tableOf(page), 'rank', 2).textContent()).toBe('1');
    expect(await page.locator('.proposal').nth(1).getByLabel('The wind it is rated for').inputValue()).toBe('145');

    await page.getByRole('button', { name: 'Copy link with candidates' }).click();
    await page.getByText('Link copied').waitFor();
    const link = (await page.evaluate('navigator.clipboard.readText()')) as string;
    const other = await browser.open();
    await openForm(other.page, '', link);
    await soon(() => cell(tableOf(other.page), 'rank', 1).textContent()).toBe('2');
    expect((await keptPlan(other.page))['title']).toBe('Heron Bluff');
    expect(other.requests.filter((address) => address.includes('plan=') || address.includes('shortened'))).toEqual([]);

    const [sheet] = await Promise.all([
      context.waitForEvent('page'),
      page.getByRole('button', { name: 'Comparison on a sheet' }).click(),
    ]);
    await sheet.getByText('Each part as it is and with each proposal').waitFor();
    await page.emulateMedia({ media: 'print' });
    expect(await tableOf(page).isVisible()).toBe(true);
    expect(await page.locator('.proposal').first().isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });

    await page.getByRole('button', { name: 'Put B in the plan' }).click();
    await settled(page);
    const loads = (await keptPlan(page))['loads'] as { name: string; weight?: number }[];
    expect(loads[0]).toMatchObject({ name: 'shortened', weight: 29 });
    expect(await page.locator('.proposal').getByLabel('Instead of').inputValue()).toBe('shortened');
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    expect(((await keptPlan(page))['loads'] as { name: string }[])[0]?.name).toBe('four-element beam');
    // What is still being typed may be refused.
    expect(messages.filter((message) => !message.includes('422'))).toEqual([]);
  });

  it('wait for what is not given, and say what does not fit, while the others are compared', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    const table = tableOf(page);
    const first = await another(page, { 'What you call it': 'one' });
    await first.getByText('Area not given').waitFor();
    const second = await another(page, { ...SHORT, 'What you call it': 'one' });
    await second.getByText('A and B have the same name. Give each its own.').waitFor();
    await fill(second, { 'What you call it': 'two', 'Its area': '0.4 m²' });
    await soon(() => cell(table, 'area', 1).textContent()).toBe('0.4 m²');
    expect(await table.getByRole('columnheader').count()).toBe(3);
    await fill(first, { 'Its area': 'banana' });
    await first.getByText(/one.*banana/).waitFor();
    expect(await cell(table, 'area', 1).textContent()).toBe('0.4 m²');
    await fill(first, { 'Its area': '-3' });
    await first.getByText(/−3|-3/).waitFor();
    const third = await another(page, { ...SHORT, 'What you call it': 'x'.repeat(200) });
    await soon(() => table.getByRole('columnheader').count()).toBe(4);
    await fill(third, { 'What you call it': 'x'.repeat(201) });
    await third.locator('.over', { hasText: '200' }).waitFor();
    await fill(third, { 'What you call it': 'אנטנה ישנה' });
    await table.getByRole('columnheader', { name: 'אנטנה ישנה' }).waitFor();
    await fill(third, { 'What you call it': 'vertical' });
    await third.getByText('are both called "vertical"').waitFor();
    expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBeLessThanOrEqual(0);
    await page.getByRole('button', { name: 'Drop candidate A' }).click();
    await soon(() => cell(table, 'area', 1).textContent()).toBe('0.4 m²');
    expect(await page.locator('.proposal').first().getByLabel('What you call it').inputValue()).toBe('two');
  });

  it('have their numbers in the units of the plan', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    const candidate = await another(page, SHORT);
    await soon(() => tableOf(page).getByRole('columnheader').count()).toBe(3);
    const before = await cell(tableOf(page), 'Tower', 1).textContent();
    await page.getByRole('radio', { name: 'metres, m/s' }).check();
    // 3.9 ft² and 29 lb.
    await soon(async () => Number(await candidate.getByLabel('Its area').inputValue())).toBeCloseTo(0.3623, 3);
    expect(Number(await candidate.getByLabel('Weight of one').inputValue())).toBeCloseTo(13.154, 2);
    await soon(() => cell(tableOf(page), 'area', 1).textContent()).toContain('m²');
    const ratio = (said: string | null) => Number(/\d\.\d+/.exec(said ?? '')?.[0]);
    await expect
      .poll(async () => ratio(await cell(tableOf(page), 'Tower', 1).textContent()))
      .toBeCloseTo(ratio(before), 2);
  });

  it('come from the club’s stock with their source', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    const candidate = await another(page, {});
    await candidate.getByLabel('From the club’s stock').selectOption({ label: 'Club beam' });
    await soon(() => candidate.getByLabel('What you call it').inputValue()).toBe('Club beam');
    await candidate.getByText('invented: measured').waitFor();
    await soon(() => cell(tableOf(page), 'own rated wind', 1).textContent()).toContain('120 mph');
  });

  it('come out of nothing but what this form keeps', async () => {
    const { page, messages } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    await another(page, SHORT);
    await keptHere(page, 'shortened');
    for (const candidates of [
      '"x"',
      '{"list":[5,null,{"kind":"none"}]}',
      '{"units":7,"list":[{"kind":"swap","name":{},"row":[1]}]}',
    ]) {
      await page.evaluate(
        `addEventListener('pagehide', () => { const kept = JSON.parse(localStorage.getItem('gustworthy-plan')); localStorage.setItem('gustworthy-plan', JSON.stringify({ ...kept, candidates: ${candidates} })); })`,
      );
      await page.reload();
      await page.locator('html[data-ready]').waitFor();
      await settled(page);
      expect(messages, candidates).toEqual([]);
    }
    // The last one is of a kind that there is.
    expect(await page.locator('.proposal').count()).toBe(1);
  });

  it('say what to do where they cannot be compared', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    await page.route('**/besides-*', (route) => route.abort());
    await page.getByRole('button', { name: 'Leave one out' }).click();
    await page.getByText('reload the page once it does').waitFor();
    await keptHere(page, '"kind":"remove"');
    await page.unroute('**/besides-*');
    await page.reload();
    await soon(() => tableOf(page).getByRole('columnheader').count()).toBe(3);
    const without = await browser.open({ javaScriptEnabled: false });
    await without.page.goto(`${service.origin}/?plan=river-bluff`);
    await without.page.getByText('the browser has to run script').waitFor();
  });

  it.each([
    [1280, 'light'],
    [390, 'dark'],
  ] as const)('have nothing for axe to find at %i px, %s, and go nowhere sideways', async (width, colorScheme) => {
    const { page, messages } = await browser.open({ viewport: { width, height: 844 }, colorScheme });
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    await another(page, SIX);
    await another(page, { ...SHORT, 'The wind it is rated for': '' });
    await page.getByRole('button', { name: 'Leave one out' }).click();
    await soon(() => tableOf(page).getByRole('columnheader').count()).toBe(5);
    const { violations } = await new AxeBuilder({ page }).include('.candidates').analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`)).toEqual([]);
    for (const narrower of [width, 820, 320]) {
      await page.setViewportSize({ width: narrower, height: 844 });
      expect(
        await page.evaluate('document.documentElement.scrollWidth - innerWidth'),
        `${narrower}`,
      ).toBeLessThanOrEqual(0);
    }
    expect(messages).toEqual([]);
  });
});
