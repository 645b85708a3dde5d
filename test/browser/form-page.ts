import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** Opens the page and waits until it is alive. */
export async function openPage(page: Page, origin: string, path = '/'): Promise<void> {
  page.setDefaultTimeout(15_000);
  await page.goto(`${origin}${path}`);
  await page.locator('html[data-ready]').waitFor();
}

/** Opens the whole form, past the steps of a first visit. */
export async function openForm(page: Page, origin: string, path = '/'): Promise<void> {
  await openPage(page, origin, path);
  const whole = page.getByRole('button', { name: 'The whole form' });
  if ((await whole.count()) > 0) await whole.click();
}

/** The ten numbers of the smallest useful plan, typed as a newcomer would. */
export async function typeTenNumbers(page: Page): Promise<void> {
  await page.getByLabel('Standard for towers').selectOption('asce7-16');
  await page.getByLabel('Wind speed you were given').fill('105');
  await page.getByRole('radio', { name: 'open country' }).first().check();
  await page.getByRole('radio', { name: 'none, free-standing' }).check();
  await page.getByLabel('Top above ground').fill('48');
  await page.locator('#part-tower').getByRole('radio', { name: 'lattice' }).check();
  await page.locator('#part-tower').getByLabel('Width', { exact: true }).fill('18');
  await page.locator('#part-tower').getByRole('radio', { name: 'three' }).check();
  await page.locator('#part-tower').getByRole('radio', { name: 'round tube or rod' }).check();
  const load = page.locator('#at-loads-0');
  await load.getByLabel('What you call it').fill('beam');
  await load.getByLabel('Height above the tower’s top').fill('2');
  await load.getByLabel('Its area', { exact: true }).fill('5.5');
  const cables = page.locator('#part-cables .row').first();
  await cables.getByLabel('How many', { exact: true }).fill('3');
  await cables.getByLabel('Outside diameter of one').fill('0.405');
  const rating = page.locator('#at-ratings-0');
  await rating.getByLabel('Rated area').first().fill('18');
  await rating.getByLabel('at a wind of', { exact: true }).fill('100');
  await rating.getByLabel('for a tower with its top at', { exact: true }).fill('48');
  await rating.getByLabel('by which standard').selectOption('tia222-g');
}

/** The sentence of the answer, as it is read. */
export async function verdictSentence(page: Page): Promise<string> {
  const said = await page.locator('.answer .says, .answer .scope').allTextContents();
  return said.join(' ').replaceAll(/\s+/g, ' ').trim();
}

/** Waits until nothing is on its way to the service or back. */
export async function settled(page: Page): Promise<void> {
  await page.waitForTimeout(120);
  await page.locator('.answer[data-state="rest"]').waitFor();
}

/** The plan the form holds, as a saved file has it. */
export async function keptPlan(page: Page): Promise<Record<string, unknown>> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save', exact: true }).click(),
  ]);
  const stream = await download.createReadStream();
  let text = '';
  for await (const piece of stream) text += piece;
  return JSON.parse(text) as Record<string, unknown>;
}

/** Waits until the plan that this browser keeps has a text in it. */
export async function keptHere(page: Page, text: string): Promise<void> {
  const kept = () => page.evaluate("localStorage.getItem('gustworthy-plan')");
  await expect.poll(kept, { timeout: 15_000 }).toContain(text);
}

/** Waits until the sentence of the answer holds a text. */
export async function saysNow(page: Page, text: string): Promise<void> {
  await page.locator('.answer .says', { hasText: text }).waitFor();
}
