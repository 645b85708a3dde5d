import { AxeBuilder } from '@axe-core/playwright';
import { describe, expect, it } from 'vitest';
import { ASSETS, ASSETS_VERSION, assetAddress } from '../../src/page/index.ts';
import { runningApp } from '../http/running-app.ts';
import { OTHER_HOST, realBrowser } from './real-browser.ts';

describe('the files of the pages', () => {
  const service = runningApp();
  const browser = realBrowser();

  it('come with their kind, and may be kept for ever', async () => {
    for (const { name, type, content } of ASSETS.values()) {
      const answer = await service
        .request()
        .get(`/${assetAddress(name)}`)
        .set('accept-encoding', 'identity')
        .buffer(true);
      expect(answer.status, name).toBe(200);
      expect(answer.headers['content-type'], name).toBe(type);
      expect(answer.headers['cache-control'], name).toBe('public, max-age=31536000, immutable');
      expect(Number(answer.headers['content-length']), name).toBe(content.length);
    }
  });

  it('are not to be had under another version, nor any file beside them', async () => {
    for (const path of [
      '/assets/000000000000/sheet.css',
      `/assets/${ASSETS_VERSION}/package.json`,
      `/assets/${ASSETS_VERSION}/..%2f..%2fpackage.json`,
      `/assets/${ASSETS_VERSION}/form/../../index.ts`,
    ]) {
      expect((await service.request().get(path)).status, path).toBe(404);
    }
  });

  it('are what the style sheets ask for', () => {
    for (const { name, content } of ASSETS.values()) {
      if (!name.endsWith('.css')) continue;
      for (const [, target] of content.toString('utf8').matchAll(/url\("([^"]+)"\)/g)) {
        expect(ASSETS.has(target as string), `${name} asks for ${target}`).toBe(true);
      }
    }
  });

  it('bring our own letters into a browser, also under another host name', async () => {
    const { page, messages, requests } = await browser.open();
    await page.goto(`http://${OTHER_HOST}:${new URL(service.origin).port}/`);
    const family = await page.evaluate('document.fonts.ready.then(() => getComputedStyle(document.body).fontFamily)');
    expect(family).toContain('Sheet Serif');
    expect(requests.filter((address) => address.endsWith('.woff2')).length).toBeGreaterThan(0);
    expect(requests.filter((address) => new URL(address).hostname !== OTHER_HOST)).toEqual([]);
    expect(messages).toEqual([]);
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
  });
});
