import { AxeBuilder } from '@axe-core/playwright';
import { describe, expect, it } from 'vitest';
import { requestExamples } from '../../src/http/documents/request-examples.ts';
import { PROBLEM_CODES } from '../../src/http/problems/catalogue.ts';
import { CELL_IDS } from '../../src/plan/index.ts';
import { runningApp } from '../http/running-app.ts';
import { realBrowser } from './real-browser.ts';

interface Document {
  readonly paths: Record<
    string,
    Record<string, { operationId: string; summary: string; parameters?: { name: string }[] }>
  >;
  readonly components: { readonly schemas: Record<string, { properties?: Record<string, unknown> }> };
}

/** A part of each kind that the page is made of. */
const SAMPLES = [
  '.masthead',
  '.title',
  '.contents > div:first-child',
  '.call:has(#cellPressure)',
  '#problem-refused',
  '.foot',
];

/** Rules about the page as a whole; the others are slow on ten thousand words, and alike for all parts of a kind. */
const OF_THE_WHOLE = ['heading-order', 'landmark-one-main', 'page-has-heading-one', 'definition-list', 'dlitem'];

interface Shown {
  readonly id: string;
  readonly head: string;
  readonly text: string;
  readonly words: readonly string[];
}

describe('the page of calls', () => {
  const service = runningApp();
  const browser = realBrowser();

  const opened = async (options = {}) => {
    const opening = await browser.open(options);
    await opening.page.goto(`${service.origin}/docs`);
    return opening;
  };

  it('shows every call with its parameters, every schema with its fields, every refusal', async () => {
    const document: Document = (await service.request().get('/openapi.json').expect(200)).body;
    const { page } = await opened();
    const shown: Shown[] = await page.locator('article.call:has(h3), article.schema').evaluateAll((articles) =>
      articles.map((article) => ({
        id: article.querySelector('h3')?.id ?? '',
        head: article.querySelector('h3')?.textContent ?? '',
        text: article.textContent ?? '',
        words: [...article.querySelectorAll('dt code')].map((code) => code.textContent ?? ''),
      })),
    );
    const of = (id: string) => shown.find((each) => each.id === id);
    for (const [path, operations] of Object.entries(document.paths)) {
      for (const [method, { operationId, summary, parameters = [] }] of Object.entries(operations)) {
        expect(of(operationId)?.head, operationId).toBe(`${method.toUpperCase()} ${path}`);
        expect(of(operationId)?.text).toContain(summary.replaceAll("'", '’'));
        for (const { name } of parameters) expect(of(operationId)?.words, operationId).toContain(name);
      }
    }
    for (const [name, { properties = {} }] of Object.entries(document.components.schemas)) {
      for (const field of Object.keys(properties)) expect(of(`schema-${name}`)?.text, name).toContain(field);
    }
    for (const { text, id } of shown) expect(text, id).not.toContain('..');
    expect(of('schema-Plan')?.words).toEqual(
      expect.arrayContaining(['taper', 'soilLateral', 'withCables', 'powerLine']),
    );
    for (const code of PROBLEM_CODES) expect(await page.locator(`[id="problem-${code}"]`).count()).toBe(1);
  });

  it('leads nowhere in vain', async () => {
    const { page } = await opened();
    const targets: string[] = await page
      .locator('a')
      .evaluateAll((checks) => checks.map((check) => check.getAttribute('href') ?? ''));
    const ids: string[] = await page.locator('[id]').evaluateAll((all) => all.map((each) => each.id));
    expect(new Set(ids).size).toBe(ids.length);
    for (const target of new Set(targets)) {
      if (target.startsWith('#')) expect(ids).toContain(target.slice(1));
      else
        expect((await service.request().get(new URL(target, `${service.origin}/docs`).pathname)).status, target).toBe(
          200,
        );
    }
  });

  it('has examples that can be copied and are answered', async () => {
    const { page } = await opened();
    const commands = (await page.locator('pre').allTextContents()).filter((text) => text.startsWith('curl '));
    expect(commands.filter((text) => text.includes(' -d ')).length).toBe(requestExamples().length);
    for (const command of commands) {
      const words = [...command.matchAll(/'((?:[^']|'\\'')*)'|(\S+)/g)].map(
        ([, quoted, bare]) => quoted?.replaceAll(`'\\''`, "'") ?? bare ?? '',
      );
      expect(words[0]).toBe('curl');
      const address = words.find((word) => word.startsWith('http')) as string;
      const at = words.indexOf('-d');
      const answer =
        at < 0
          ? await fetch(address)
          : await fetch(address, {
              method: 'POST',
              headers: { 'content-type': 'application/json' },
              body: words[at + 1] as string,
            });
      expect(answer.status, address).toBe(200);
      expect(await answer.text(), address).not.toMatch(/^\?/);
    }
  });

  it('has a formula for each cell, which gives what it says', async () => {
    const { page } = await opened();
    const sheets = page.locator('figure', { hasText: 'In a sheet' });
    expect(await sheets.count()).toBe(CELL_IDS.length);
    for (const figure of await sheets.all()) {
      const address = /WEBSERVICE\("([^"]+)"\)/.exec((await figure.locator('pre').textContent()) ?? '')?.[1] as string;
      expect(await (await fetch(address)).text()).toBe(await figure.locator('b').textContent());
    }
  });

  it('names the address somebody came by, and nothing else that a header says', async () => {
    const asked = async (host: string) => (await service.request().get('/docs').set('host', host).expect(200)).text;
    expect(await asked('tower.example:8443')).toContain('curl -s &#39;http://tower.example:8443/healthz&#39;');
    const hostile = await asked('evil.example"><b>');
    expect(hostile).not.toContain('evil.example');
    expect(hostile).toContain('http://localhost:8080/healthz');
  });

  it.each([
    [1280, 'dark'],
    [390, 'light'],
  ] as const)('stands without script, within the screen and without fault at %i px, %s', async (width, colorScheme) => {
    const { page, messages, requests } = await opened({ viewport: { width, height: 900 }, colorScheme });
    for (const narrow of [width, 820, 320]) {
      await page.setViewportSize({ width: narrow, height: 900 });
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(narrow);
    }
    await page.setViewportSize({ width, height: 900 });
    expect(await page.locator('script').count()).toBe(0);
    expect(requests.filter((address) => !address.startsWith(service.origin))).toEqual([]);
    expect(messages).toEqual([]);
    const faults = async (axe: AxeBuilder) =>
      (await axe.options({ resultTypes: ['violations'] }).analyze()).violations.map(({ id, nodes }) => [
        id,
        nodes[0]?.html,
      ]);
    const samples = new AxeBuilder({ page });
    for (const sample of SAMPLES) samples.include(sample);
    expect(await faults(samples)).toEqual([]);
    if (colorScheme === 'light') expect(await faults(new AxeBuilder({ page }).withRules(OF_THE_WHOLE))).toEqual([]);
  });
});
