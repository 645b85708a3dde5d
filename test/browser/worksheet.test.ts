import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { runningApp } from '../http/running-app.ts';
import { demoPlan } from '../margins/demo-plan.ts';
import { crowded, GAPS } from '../worksheet/sheet-of.ts';
import { realBrowser } from './real-browser.ts';

describe('the worksheet in a browser', () => {
  const service = runningApp();
  const browser = realBrowser();

  /** Opens the answer to a posted plan, as a form that posts it would. */
  const answered = async (plan: unknown, options: Parameters<typeof browser.open>[0] = {}, path = 'v1/checks') => {
    const opened = await browser.open(options);
    const address = `${service.origin}/${path}`;
    await opened.page.route(`${address}*`, async (route) => {
      const response = await route.fetch({
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        postData: JSON.stringify(plan),
      });
      await route.fulfill({ response });
    });
    await opened.page.goto(`${address}?as=html${path === 'v1/checks' ? '&working=full' : ''}`);
    await opened.page.evaluate('document.fonts.ready');
    return opened;
  };

  /** What is wrong for who cannot see; the steps of the working are alike, so the first few stand for all. */
  const faults = async (page: Page) => {
    const examined = new AxeBuilder({ page }).exclude('.step:nth-of-type(n + 4)');
    const { violations } = await examined.options({ resultTypes: ['violations'] }).analyze();
    return violations.map(({ id, nodes }) => [id, nodes[0]?.html]);
  };

  const PLANS: readonly (readonly [string, Record<string, unknown>])[] = [
    ['river-bluff', demoPlan('river-bluff')],
    ['headland-ridge', demoPlan('headland-ridge')],
    ['a plan of gaps', GAPS],
  ];

  describe.each(PLANS)('of %s', (_, plan) => {
    it.each(['light', 'dark'] as const)('has no message and nothing for axe, %s', async (colorScheme) => {
      const { page, messages, requests } = await answered(plan, { colorScheme });
      expect(messages).toEqual([]);
      expect(await faults(page)).toEqual([]);
      expect(requests.filter((address) => !address.startsWith(service.origin))).toEqual([]);
    });
  });

  it.each([390, 820, 1280])('no page goes sideways at %s px', async (width) => {
    for (const plan of [...PLANS.map(([, each]) => each), crowded(demoPlan('river-bluff'), 40)]) {
      const { page } = await answered(plan, { viewport: { width, height: 800 } });
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
    }
  });

  it('without script has all its words', async () => {
    const { page } = await answered(demoPlan('river-bluff'), { javaScriptEnabled: false });
    const says = page.locator('.says');
    expect(await page.locator('h1').textContent()).toBe('Heron Bluff');
    expect(await page.locator('h2').count()).toBe(18);
    expect(await says.textContent()).toContain('105 mph strength-level gust');
    expect(await says.isVisible()).toBe(true);
  });

  it('is paper with heads on every page of a long table', async () => {
    const { page } = await answered(crowded(demoPlan('river-bluff'), 100));
    await page.emulateMedia({ media: 'print' });
    const display = (selector: string) =>
      page.evaluate(`getComputedStyle(document.querySelector('${selector}')).display`);
    expect(await display('.ledger thead')).toBe('table-header-group');
    expect(await display('.contents')).toBe('none');
    const paper = await page.pdf({ format: 'A4' });
    expect(paper.subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('draws formulas with the letters of our own font', async () => {
    const { page } = await answered(demoPlan('river-bluff'));
    expect(await page.evaluate(`document.fonts.check('16px "Sheet Maths"')`)).toBe(true);
    const fraction = page.locator('.step mfrac').first();
    expect((await fraction.boundingBox())?.height).toBeGreaterThan(16);
  });

  it.each([
    ['storm card', 'v1/storm-cards'],
    ['sheet for manufacturers', 'v1/requirements'],
  ])('of a %s: nothing for axe, nothing sideways', async (_, path) => {
    for (const width of [390, 1280]) {
      for (const colorScheme of ['light', 'dark'] as const) {
        const given = { viewport: { width, height: 800 }, colorScheme };
        const { page, messages } = await answered({ plan: demoPlan('river-bluff') }, given, path);
        expect(messages).toEqual([]);
        expect(await faults(page)).toEqual([]);
        expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
      }
    }
  });

  it('of proposals: nothing for axe, nothing sideways', async () => {
    const proposals = [
      { name: 'no vertical', remove: ['vertical'] },
      { name: 'more wind', set: { site: { wind: { speed: '120 mph' } } } },
    ];
    for (const width of [390, 1280]) {
      const { page, messages } = await answered(
        { plan: demoPlan('river-bluff'), proposals },
        { viewport: { width, height: 800 } },
        'v1/additions',
      );
      expect(messages).toEqual([]);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
      expect(await faults(page)).toEqual([]);
    }
  });
});
