import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { runningApp } from '../http/running-app.ts';
import { keptPlan, openPage, settled } from './form-page.ts';
import { realBrowser } from './real-browser.ts';

/** What an owner with the data sheet of a free-standing tower of the 2010s types and chooses; a choice stands in brackets. */
const VALUES = [
  ['18', '100', '[ANSI/TIA-222-G]'],
  ['48'],
  ['[free-standing]'],
  ['105', '[houses or trees all round]'],
  ['5.5', '2'],
] as const;

const focused = (page: Page) =>
  page.evaluate(`(() => {
    const { type, value, textContent, labels } = document.activeElement;
    return { type, value, says: labels?.[0]?.textContent ?? textContent };
  })()`) as Promise<{ type: string; value: string; says: string }>;

/** Presses Tab until something has the keyboard. */
async function tabTo(page: Page, isIt: (on: Awaited<ReturnType<typeof focused>>) => boolean): Promise<void> {
  for (let press = 0; press < 40; press += 1) {
    await page.keyboard.press('Tab');
    if (isIt(await focused(page))) return;
  }
  throw new Error('nothing to type in or to choose was reached by Tab');
}

/** Answers the steps by keyboard alone; how many values that took. */
async function byKeyboard(page: Page): Promise<number> {
  let values = 0;
  for (const [index, step] of VALUES.entries()) {
    if (index === 0) await tabTo(page, ({ says }) => says === 'The whole form');
    for (const value of step) {
      const choice = /^\[(.*)\]$/.exec(value)?.[1];
      if (choice === undefined) {
        await tabTo(page, (on) => on.type === 'text' && on.value === '');
        await page.keyboard.type(value);
      } else {
        await tabTo(page, ({ type }) => type === 'radio');
        for (let press = 0; press < 8 && !(await focused(page)).says.startsWith(choice); press += 1)
          await page.keyboard.press('ArrowDown');
        await page.keyboard.press('Space');
        expect((await focused(page)).says).toContain(choice);
      }
      values += 1;
    }
    await tabTo(page, ({ says }) => says === 'Next');
    await page.keyboard.press('Enter');
    // The next step must stand there before Tab goes on.
    await page.getByText(`Step ${index + 2} of`).waitFor();
  }
  return values;
}

/** The verdict of the tower for the plan that the page holds. */
async function towerOf(page: Page, origin: string): Promise<string> {
  const response = await fetch(`${origin}/v1/checks`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(await keptPlan(page)),
  });
  const { parts } = (await response.json()) as { parts: { kind: string; verdict?: string }[] };
  return parts.find(({ kind }) => kind === 'tower')?.verdict ?? '';
}

const sideways = (page: Page) =>
  page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth');

async function findings(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`);
}

describe('a first visit', () => {
  const service = runningApp();
  const browser = realBrowser();

  it.each([
    ['a desk', 1440, 900],
    ['a phone', 390, 844],
  ])('comes to a firm tower with nine values by keyboard alone, on %s', async (_, width, height) => {
    const { page } = await browser.open({ viewport: { width, height } });
    await openPage(page, service.origin);
    expect(await page.locator('.answer .says').textContent()).toBe('4 entries to the first answer.');
    const values = await byKeyboard(page);
    expect(values).toBeLessThanOrEqual(9);
    await settled(page);
    await page.locator('.answer .progress').waitFor();
    expect(await page.locator('.answer .says').textContent()).not.toContain('entries to the first answer');
    expect(await page.locator('.answer .drawn svg').count()).toBe(1);
    expect(await towerOf(page, service.origin)).toBe('within');
  });

  it('writes into the plan of the whole form, and back', async () => {
    const { page } = await browser.open();
    await openPage(page, service.origin);
    await page.getByLabel('Rated area').fill('18');
    await page.getByRole('radio', { name: 'nothing is printed' }).check();
    await page.getByRole('button', { name: 'The whole form' }).click();
    expect(await page.locator('#at-ratings-0').getByLabel('Rated area').inputValue()).toBe('18');
    expect(await keptPlan(page)).toEqual({
      format: 2,
      units: 'us',
      method: 'tia222-h',
      ratings: [{ of: 'tower', area: 18 }],
    });
    await page.getByRole('button', { name: 'A few questions at a time' }).click();
    expect(await page.getByLabel('Rated area').inputValue()).toBe('18');
    expect(await page.getByRole('radio', { name: 'nothing is printed' }).isChecked()).toBe(true);
    await page.getByRole('radio', { name: 'only a year' }).check();
    await page.getByLabel('Year', { exact: false }).last().fill('1994');
    expect(await keptPlan(page)).toMatchObject({ ratings: [{ area: 18, wind: { year: 1994 } }] });
  });

  it('says a fault at its step', async () => {
    const { page } = await browser.open();
    await openPage(page, service.origin);
    const speed = page.getByLabel('at a wind of', { exact: true });
    await speed.fill('one hundred');
    await page.locator('.guide .why').getByText('"one hundred" is not a speed').waitFor();
    expect(await speed.getAttribute('aria-invalid')).toBe('true');
  });

  it('asks how a tilting tower is lowered, and keeps a line for another height apart', async () => {
    const { page } = await browser.open();
    await openPage(page, service.origin);
    await page.getByRole('button', { name: 'Next' }).click();
    await page.getByLabel('Top of your tower, and of the tower the line is for', { exact: true }).fill('48');
    await page.getByLabel('Top above ground').fill('40');
    await page.getByLabel('Top of your tower, and of the tower the line is for', { exact: true }).fill('50');
    await page.getByRole('button', { name: 'Next' }).click();
    expect(await page.getByText('How it is lowered').count()).toBe(0);
    await page.getByRole('radio', { name: 'tilting' }).check();
    await page.locator('#at-tower-hinge-height').fill('3');
    expect(await keptPlan(page)).toMatchObject({
      tower: { top: 40, support: 'free', hinge: { height: 3 } },
      ratings: [{ of: 'tower', top: 50 }],
    });
  });

  it('shows the form as it is to who has a plan, and to who runs no script', async () => {
    const opened = await browser.open();
    await openPage(opened.page, service.origin, '/?plan=river-bluff');
    expect(await opened.page.locator('.guide').count()).toBe(0);
    const { page } = await browser.open({ javaScriptEnabled: false });
    await page.goto(service.origin);
    expect(await page.locator('.guide').count()).toBe(0);
    expect(await page.locator('#part-wind').count()).toBe(1);
  });

  it.each([[1440], [390]])('has nothing that axe finds, and nothing sideways, at any step, %d wide', async (width) => {
    const { page } = await browser.open({ viewport: { width, height: 900 } });
    await openPage(page, service.origin);
    const found: string[] = [];
    for (let step = 0; step < 7; step += 1) {
      if (step > 0) await page.getByRole('button', { name: 'Next' }).click();
      if (step === 2) await page.getByRole('radio', { name: 'crank-up' }).check();
      if (step === 6) await page.getByRole('radio', { name: 'lattice' }).check();
      expect(await sideways(page)).toBe(0);
      found.push(...(await findings(page)));
    }
    expect(found).toEqual([]);
  });
});

describe('a visit without a tower', () => {
  const service = runningApp();
  const browser = realBrowser();

  it.each([
    ['a desk', 1440, 900],
    ['a phone', 390, 844],
  ])('comes to a sheet for manufacturers, on %s', async (_, width, height) => {
    const { page, context } = await browser.open({ viewport: { width, height } });
    await openPage(page, service.origin);
    await page.getByRole('button', { name: 'I have no tower yet' }).click();
    await page.getByLabel('Top above ground').fill('45');
    await page.getByRole('radio', { name: 'free-standing' }).check();
    expect(await findings(page)).toEqual([]);
    expect(await sideways(page)).toBe(0);
    await page.getByRole('button', { name: 'Next' }).click();
    await page.getByLabel('Wind speed you were given').fill('115');
    await page.getByRole('radio', { name: 'open country' }).first().check();
    await page.getByRole('button', { name: 'Next' }).click();
    await page.getByLabel('Its area', { exact: true }).fill('8');
    await page.getByLabel('Height above the tower’s top').fill('3');
    await page.getByRole('button', { name: 'Next' }).click();
    await page.getByRole('button', { name: 'Next' }).click();
    const [sheet] = await Promise.all([
      context.waitForEvent('page'),
      page.getByRole('button', { name: 'What to ask for' }).click(),
    ]);
    await sheet.getByText('Any one row is enough').first().waitFor();
    expect(await sheet.locator('body').textContent()).toContain('ask for this rating or any other listed');
    expect(await sheet.locator('body').textContent()).toContain('45 ft');
  });

  it('compares towers and winds, in the units of the plan', async () => {
    const { page, context } = await browser.open({ viewport: { width: 390, height: 844 } });
    await openPage(page, service.origin, '/?plan=river-bluff');
    await page.getByRole('button', { name: 'A few questions at a time' }).click();
    await page.getByRole('button', { name: 'I have no tower yet' }).click();
    for (let step = 0; step < 4; step += 1) await page.getByRole('button', { name: 'Next' }).click();
    await page.getByRole('button', { name: 'Add a tower you were offered' }).click();
    const tower = page.getByRole('group', { name: 'Tower 1' });
    expect(await tower.getByLabel('Its name').evaluate((place) => place === document.activeElement)).toBe(true);
    await tower.getByLabel('Its name').fill('the one by the river');
    await tower.getByLabel('Rated area').fill('20');
    await tower.getByLabel('at a wind of').fill('90');
    await page.getByRole('button', { name: 'Add a wind that a manufacturer states' }).click();
    const wind = page.getByRole('group', { name: 'Wind 1', exact: true });
    await wind.getByLabel('at a wind of').fill('100');
    await wind.getByLabel('by which standard').selectOption('tia222-h');
    await wind.getByLabel('for which exposure').selectOption('C');
    await page.getByRole('button', { name: 'Add a stronger wind that you wish for' }).click();
    await page.getByRole('group', { name: 'Wished wind 1' }).getByLabel('at a wind of').fill('130');
    expect(await findings(page)).toEqual([]);
    expect(await sideways(page)).toBe(0);
    const ask = async () => {
      const [sheet] = await Promise.all([
        context.waitForEvent('page'),
        page.getByRole('button', { name: 'What to ask for' }).click(),
      ]);
      await sheet.getByText('Any one row is enough').first().waitFor();
      return (await sheet.locator('body').textContent()) ?? '';
    };
    const inFeet = await ask();
    for (const words of ['the one by the river', '100 mph strength-level gust', '130 mph nominal gust']) {
      expect(inFeet).toContain(words);
    }
    await page.getByRole('radio', { name: 'metres, m/s' }).check();
    expect(await wind.getByLabel('at a wind of').inputValue()).toBe('44.704');
    await page.getByRole('button', { name: 'Drop Tower 1' }).click();
    expect(await ask()).not.toContain('the one by the river');
  });

  it('goes back to the data sheet', async () => {
    const { page } = await browser.open();
    await openPage(page, service.origin);
    await page.getByRole('button', { name: 'I have no tower yet' }).click();
    await page.getByRole('button', { name: 'I have a data sheet' }).click();
    expect(await page.getByText('What does the data sheet of your tower say?').count()).toBe(1);
  });
});
