import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { runningApp } from '../http/running-app.ts';
import { demoPlan, tenNumbersAsTyped } from '../margins/demo-plan.ts';
import { openForm, saysNow, settled, typeTenNumbers, verdictSentence } from './form-page.ts';
import { realBrowser } from './real-browser.ts';

const sideways = (page: Page) =>
  page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth');

/** Contrast takes most of the time and is the same wherever the same inks are: it is looked for in two states. */
async function findings(page: Page, contrast: boolean): Promise<string[]> {
  const axe = new AxeBuilder({ page });
  const { violations } = await (contrast ? axe : axe.disableRules('color-contrast')).analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`);
}

/** Forty loads on a long mast. */
function crowdedPlan(): Record<string, unknown> {
  const plan = demoPlan('river-bluff');
  const loads = Array.from({ length: 40 }, (_, index) => ({
    name: `panel ${index + 1}, ${index % 2 === 0 ? 'east' : 'west'}`,
    height: 6 + index * 1.5,
    shape: 'plate',
    wide: 4 + (index % 5),
    tall: 10 + (index % 7),
    offset: 0,
  }));
  return { ...plan, mast: { ...(plan['mast'] as object), length: 26 }, loads };
}

async function openPlan(page: Page, plan: unknown): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open', exact: true }).click(),
  ]);
  await chooser.setFiles({
    name: 'plan.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(plan)),
  });
  await page.getByText('plan.json opened').waitFor();
}

const STATES: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  empty: async () => {},
  'ten numbers': typeTenNumbers,
  answered: (page) => openPlan(page, demoPlan('river-bluff')),
  'all unfolded': async (page) => {
    await openPlan(page, demoPlan('house-bracket'));
    await page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true; })");
    await page.waitForTimeout(200);
    await page.evaluate("document.querySelectorAll('[aria-expanded=false]').forEach((each) => { each.click(); })");
    await page.waitForTimeout(200);
    await page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true; })");
  },
  'to mend': async (page) => {
    const plan = demoPlan('river-bluff');
    await openPlan(page, { ...plan, mast: { ...(plan['mast'] as object), wall: '1.5', length: '1,250' } });
    await page.locator('.mend').waitFor();
  },
  proposals: async (page) => {
    await openPlan(page, demoPlan('river-bluff'));
    for (const act of ['Try another antenna', 'Move a load', 'Leave one out', 'Another mast']) {
      await page.getByRole('button', { name: act }).click();
    }
    await page.getByRole('region', { name: 'Candidates side by side', exact: true }).waitFor();
  },
  crowded: (page) => openPlan(page, crowdedPlan()),
};

describe('the states of the form', () => {
  const service = runningApp();
  const browser = realBrowser();

  for (const [state, bring] of Object.entries(STATES)) {
    it(`${state}: nothing for axe to find, no sideways scroll, wide and on a phone, light and dark`, async () => {
      for (const [width, colorScheme] of [
        [1280, 'light'],
        [390, 'dark'],
      ] as const) {
        const { page, messages } = await browser.open({ viewport: { width, height: 844 }, colorScheme });
        await openForm(page, service.origin);
        await bring(page);
        await settled(page);
        expect(await sideways(page), `${state} at ${width}`).toBe(0);
        const told = messages.filter((message) => !message.includes('422') || state === 'answered');
        if (state !== 'to mend') expect(told, `${state} at ${width}`).toEqual([]);
        for (const narrower of [820, 320]) {
          await page.setViewportSize({ width: narrower, height: 844 });
          expect(await sideways(page), `${state} at ${narrower}`).toBe(0);
        }
        await page.setViewportSize({ width, height: 844 });
        const thorough = state === 'answered' || state === 'to mend';
        if (width === 390 || thorough) expect(await findings(page, thorough), `${state} at ${width}`).toEqual([]);
      }
    });
  }

  it('gives everything one can press 44 px on a phone', async () => {
    const { page } = await browser.open({ viewport: { width: 390, height: 844 }, hasTouch: true });
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    await page.getByRole('button', { name: 'The tower: Change' }).click();
    const small =
      await page.evaluate(`[...document.querySelectorAll('button, select, input:not([type=radio]):not([type=checkbox]):not([type=hidden]), .choices label, .dk, summary, .units label, a.act, .strip-verdict')]
      .filter((each) => each.offsetParent !== null && !each.closest('details:not([open])') || each.matches('summary'))
      .map((each) => [each.outerHTML.slice(0, 80), each.getBoundingClientRect().height])
      .filter(([, height]) => height > 0 && height < 43.5)`);
    expect(small).toEqual([]);
  });

  it('goes by keyboard alone, from the first question to a verdict and into an error', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=ten-numbers');
    await settled(page);
    await page.getByLabel('Wind speed you were given').focus();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('90');
    await saysNow(page, '90 mph');
    for (let step = 0; step < 2; step += 1) await page.keyboard.press('Tab');
    // Within a group the arrows choose.
    const checked = () => page.evaluate("document.activeElement.value + ' ' + document.activeElement.checked");
    await expect.poll(checked).toBe('C true');
    await page.keyboard.press('ArrowLeft');
    await expect.poll(checked).toBe('B true');
    const reached: unknown[] = [];
    for (let step = 0; step < 160; step += 1) {
      await page.keyboard.press('Tab');
      reached.push(
        await page.evaluate(
          'document.activeElement.textContent?.trim().slice(0, 20) || document.activeElement.name || document.activeElement.tagName',
        ),
      );
      const ring = await page.evaluate(`(() => {
        const seen = document.activeElement.matches('[type=radio]') ? document.activeElement.closest('label') : document.activeElement;
        return document.activeElement === document.body || parseFloat(getComputedStyle(seen).outlineWidth) >= 2;
      })()`);
      expect(ring, String(reached.at(-1))).toBe(true);
    }
    for (const act of ['Add a load', 'Add a rating', 'The mast', 'More about the wind', 'go to it']) {
      expect(
        reached.some((text) => String(text).includes(act)),
        act,
      ).toBe(true);
    }
    await page.getByRole('button', { name: 'Undo', exact: true }).focus();
    await page.keyboard.press('Control+z');
    await expect.poll(() => page.getByLabel('Wind speed you were given').inputValue()).not.toBe('');
  });

  it('names every entry, and tells a screen reader the verdict as one sentence', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    const says = await verdictSentence(page);
    await expect.poll(() => page.locator('#spoken').textContent(), { timeout: 5000 }).toBe(says);
    const nameless = await page.evaluate(`[...document.querySelectorAll('input, select')]
      .filter((each) => !each.labels?.length && !each.getAttribute('aria-label')).map((each) => each.outerHTML.slice(0, 100))`);
    expect(nameless).toEqual([]);
    const ids = (await page.evaluate("[...document.querySelectorAll('[id]')].map((each) => each.id)")) as string[];
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
    const lost =
      await page.evaluate(`[...document.querySelectorAll('[aria-describedby], [aria-controls], [aria-labelledby]')]
      .flatMap((each) => ['aria-describedby', 'aria-controls', 'aria-labelledby'].map((kind) => each.getAttribute(kind)))
      .filter((id) => id && !document.getElementById(id))`);
    expect(lost).toEqual([]);
  });

  it('is a form that can be posted where no script runs, with every answer under its bracketed name', async () => {
    const { page, messages } = await browser.open({ javaScriptEnabled: false });
    await page.goto(`${service.origin}/?plan=river-bluff`);
    const form = page.locator('form#form');
    expect(await form.getAttribute('method')).toBe('post');
    expect(await form.getAttribute('action')).toBe('v1/checks?as=html');
    for (const [name, value] of [
      ['units', 'us'],
      ['title', 'Heron Bluff'],
      ['site[wind][speed]', '105'],
      ['site[hill][halfLength]', '180'],
      ['tower[sections][0][leg]', '1 1/4 in'],
      ['tower[sections][1][count]', '4'],
      ['mast[yield]', '46'],
      ['loads[0][tubes][1][taper][2][0]', '0.5'],
      ['loads[1][height]', '56 to 65'],
      ['ratings[0][withCables][diameter]', '0.405'],
    ]) {
      expect(await page.locator(`[name="${name}"]`).first().inputValue(), name).toBe(value);
    }
    expect(await page.locator('.says').textContent()).toContain('0.943');
    expect(await page.locator('.drawn svg').count()).toBe(2);
    const [request] = await Promise.all([
      page.waitForRequest('**/v1/checks?as=html'),
      page.getByRole('button', { name: 'Answer on a worksheet' }).click(),
    ]);
    const fields = [...new URLSearchParams(request.postData() ?? '')];
    const names = fields.map(([name]) => name);
    expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
    expect(Object.fromEntries(fields)).toMatchObject({
      'loads[0][turns]': 'true',
      'site[exposure]': 'C',
      method: 'asce7-16',
    });
    // The worksheet it is answered with is that of the plan itself.
    await page.locator('h1', { hasText: 'Heron Bluff' }).waitFor();
    const { text } = await service.request().post('/v1/checks?as=html').send(demoPlan('river-bluff')).expect(200);
    const sentence = /<p class="says">(.*?)<\/p>/s.exec(text)?.[1]?.replaceAll(/<[^>]+>/g, '') ?? '';
    expect(sentence).toContain('105 mph');
    expect(await page.locator('.says').textContent()).toBe(sentence);
    expect(messages).toEqual([]);
  });

  it('without script takes ten numbers typed, says what does not fit beside its entry, and answers once it is mended', async () => {
    const { page, messages } = await browser.open({
      javaScriptEnabled: false,
      viewport: { width: 390, height: 844 },
    });
    await page.goto(service.origin);
    for (const fold of ['the tower', 'this load', 'this cable run', 'this rating'])
      await page.getByText(`More about ${fold}`, { exact: true }).click();
    await typeTenNumbers(page);
    await page.getByLabel('Wind speed you were given').fill('fast');
    await page.getByRole('button', { name: 'Answer on a worksheet' }).click();
    await page.waitForURL('**/v1/checks?as=html');
    expect(await page.locator('h1').textContent()).toBe('The plan has errors');
    expect(await page.locator('.faults > li').count()).toBe(1);
    const entry = page.locator('[name="site[wind][speed]"]');
    expect(await entry.inputValue()).toBe('fast');
    await entry.fill('105');
    await page.getByRole('button').click();
    await page.locator('.says').waitFor();
    expect(await sideways(page)).toBe(0);
    const ten = tenNumbersAsTyped();
    const { body } = await service.request().post('/v1/checks').send(ten).expect(200);
    expect(((await page.locator('.says').textContent()) ?? '').replaceAll(/\s+/g, ' ')).toContain(
      String(body.says).slice(0, 60),
    );
    expect(messages.filter((message) => !message.includes('422'))).toEqual([]);
  });

  it('without script says that no lines run up the tower, and which two answers contradict each other', async () => {
    const { page } = await browser.open({ javaScriptEnabled: false });
    await page.goto(`${service.origin}/?plan=ten-numbers`);
    await page.getByLabel('No lines run up this tower').check();
    await page.getByRole('button', { name: 'Answer on a worksheet' }).click();
    await page.getByText('Both cables and cables[0][count] are given').first().waitFor();
    await page.goto(`${service.origin}/?plan=ten-numbers`);
    await page.getByLabel('No lines run up this tower').check();
    for (const field of ['count', 'diameter']) await page.locator(`[name="cables[0][${field}]"]`).fill('');
    await page.getByRole('button', { name: 'Answer on a worksheet' }).click();
    await page.locator('.says').waitFor();
    const { text } = await service
      .request()
      .post('/v1/checks?as=html')
      .send({ ...demoPlan('ten-numbers'), cables: [] });
    const sentence = /<p class="says">(.*?)<\/p>/s.exec(text)?.[1]?.replaceAll(/<[^>]+>/g, '') ?? '';
    expect(await page.locator('.says').textContent()).toBe(sentence);
  });

  it('prints what is given and what follows, and nothing one can only press', async () => {
    const { page } = await browser.open();
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    await page.emulateMedia({ media: 'print' });
    for (const gone of ['.masthead menu', '.strip-verdict', '.units', '.demos', '.proposals', '.rowacts .act']) {
      expect(await page.locator(gone).first().isVisible(), gone).toBe(false);
    }
    for (const there of ['.says', '.ledger', '.standing', '#at-site-wind-speed', '.drawn svg', '.foot']) {
      expect(await page.locator(there).first().isVisible(), there).toBe(true);
    }
    expect(await page.evaluate('getComputedStyle(document.body).backgroundColor')).toBe('rgb(255, 255, 255)');
  });

  it('reads the other way round in the dark, with the drawings in the same inks', async () => {
    const { page } = await browser.open({ colorScheme: 'dark' });
    await openForm(page, service.origin, '/?plan=river-bluff');
    await settled(page);
    const inks = await page.evaluate(
      `[getComputedStyle(document.body).color, getComputedStyle(document.querySelector('.drawn .f-ink')).fill, getComputedStyle(document.querySelector('.drawn .f-wind')).fill]`,
    );
    expect(inks).toEqual(['rgb(237, 229, 211)', 'rgb(237, 229, 211)', 'rgb(140, 196, 232)']);
  });
});

describe('the form of who has the browser show letters twice as large', () => {
  const service = runningApp();
  const browser = realBrowser('--blink-settings=defaultFontSize=32');

  it.each([1280, 820, 390])('goes nowhere sideways and cuts nothing off at %i px', async (width) => {
    const { page } = await browser.open({ viewport: { width, height: 900 } });
    await openForm(page, service.origin, '/?plan=river-bluff');
    await page.evaluate('document.fonts.ready');
    expect(await page.evaluate('getComputedStyle(document.documentElement).fontSize')).toBe('32px');
    const wide = await page
      .locator('body *')
      .evaluateAll((all) =>
        all
          .filter(
            (each) =>
              each.checkVisibility() &&
              each.getBoundingClientRect().right > document.documentElement.clientWidth + 1 &&
              !each.closest('.scroll, svg, .unseen'),
          )
          .map((each) => `${each.tagName} ${each.className} ${each.textContent?.slice(0, 40)}`),
      );
    expect(wide).toEqual([]);
    expect(await sideways(page)).toBe(0);
  });
});
