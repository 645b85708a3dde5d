import { describe, expect, it } from 'vitest';
import { agreed } from '../../src/http/worksheets/answer-worksheet.ts';
import { demoPlan, demoPlans } from '../margins/demo-plan.ts';
import { isSaid } from '../worksheet/caution-said.ts';
import { crowded, GAPS, givenFor, HOSTILE_NAMES } from '../worksheet/sheet-of.ts';
import { runningApp } from './running-app.ts';

const running = runningApp();
const BROWSER = 'text/html,application/xhtml+xml,application/xml;q=0.9,image/avif,image/webp,*/*;q=0.8';

const post = (path: string, body: unknown, accept?: string) => {
  const request = running.request().post(path);
  if (accept !== undefined) request.set('accept', accept);
  return request.send(body as object);
};

const CONTENT = /<(script|b|textarea)\b[^>]*>/g;
const letters = (text: string) =>
  text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;')
    .replaceAll('\u202e', '\ufffd');

describe('POST /v1/checks as a page', () => {
  it('is what a browser gets, and JSON what a program gets', async () => {
    const plan = demoPlan('river-bluff');
    const page = await post('/v1/checks', plan, BROWSER).expect(200);
    expect(page.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(page.headers['vary']).toContain('accept');
    for (const accept of [undefined, '*/*', 'application/json']) {
      const answer = await post('/v1/checks', plan, accept).expect(200);
      expect(answer.headers['content-type']).toBe('application/json; charset=utf-8');
    }
    const asked = await post('/v1/checks?as=html', plan).expect(200);
    expect(asked.text).toBe(page.text);
  });

  it('says every link, caution and number of the JSON for every demo plan', async () => {
    for (const { plan } of demoPlans()) {
      const { body } = await post('/v1/checks', plan).expect(200);
      const { text } = await post('/v1/checks?as=html', plan).expect(200);
      for (const { says } of body.checks) expect(text).toContain(letters(says));
      for (const caution of body.cautions) expect(isSaid(caution, text.split('<li'), letters), caution.says).toBe(true);
      for (const { name } of body.windLoads.rows) expect(text).toContain(letters(name));
      for (const what of body.notCovered) expect(text).toContain(what);
    }
  });

  it('keeps hostile names as letters', async () => {
    const { text } = await post('/v1/checks?as=html&working=full', GAPS).expect(200);
    for (const name of HOSTILE_NAMES) expect(text).toContain(letters(name));
    expect(text).not.toMatch(/<script|<b>x|\u202e/);
    expect([...text.matchAll(CONTENT)].filter(([, name]) => name === 'textarea')).toHaveLength(2);
  });

  it('has no script, and no style but the one the policy knows by its hash', async () => {
    const { text, headers } = await post('/v1/checks?as=html&working=full', demoPlan('river-bluff')).expect(200);
    expect(text).not.toMatch(/<script| on[a-z]+="| style="/);
    expect(headers['content-security-policy']).toContain("default-src 'none'");
    expect(new Set(text.match(/<style>.*?<\/style>/g)).size).toBe(1);
  });

  it('has headings in order, ids once, a caption and scoped heads in every table, a label for every field', async () => {
    for (const plan of [demoPlan('river-bluff'), GAPS, crowded(demoPlan('river-bluff'), 40)]) {
      const { text } = await post('/v1/checks?as=html&working=full', plan).expect(200);
      let last = 0;
      for (const [, level] of text.matchAll(/<h([1-6])\b/g)) {
        expect(Number(level)).toBeLessThanOrEqual(last + 1);
        last = Number(level);
      }
      const ids = [...text.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
      expect(new Set(ids).size).toBe(ids.length);
      const tables = text.match(/<table\b.*?<\/table>/gs) ?? [];
      expect(tables.length).toBeGreaterThan(5);
      for (const table of tables) {
        expect(table).toMatch(/^<table[^>]*><caption id="[^"]+">[^<]+<\/caption>\s*<thead>/);
        expect(table.match(/<th\b(?! scope=)/g)).toBeNull();
      }
      for (const [, id] of text.matchAll(/<(?:input|textarea)[^>]* id="([^"]+)"/g))
        expect(text).toContain(`<label for="${id}"`);
    }
  });

  it('takes a hundred loads and their forty links and more', async () => {
    const plan = crowded(demoPlan('river-bluff'), 100);
    const { body } = await post('/v1/checks', plan).expect(200);
    const { text } = await post('/v1/checks?as=html', plan).expect(200);
    expect(body.checks.length).toBeGreaterThan(100);
    for (const { says } of body.checks) expect(text).toContain(letters(says));
  });

  it('answers a plan that does not fit in the words of its faults', async () => {
    const { body } = await post('/v1/checks?as=html', { units: 'us' }).expect(422);
    expect(body.faults.length).toBeGreaterThan(1);
  });

  it('is refused by a problem that names the step that does not come out twice', () => {
    const { testimony } = givenFor(demoPlan('ten-numbers'));
    expect(agreed(testimony)).toBe(testimony);
    const [first, ...rest] = testimony;
    if (!first) throw new Error('there are steps');
    try {
      agreed([{ ...first, agrees: false }, ...rest]);
      expect.unreachable();
    } catch (error) {
      expect(error).toMatchObject({ code: 'recalculation-differs', statusCode: 500 });
      expect((error as Error).message).toContain(first.step.title);
    }
  });
});

describe('POST /v1/additions as a page', () => {
  const request = {
    plan: demoPlan('river-bluff'),
    proposals: [
      { name: HOSTILE_NAMES[0], remove: ['vertical'] },
      { name: 'more wind', set: { site: { wind: { speed: '120 mph' } } } },
    ],
  };

  it('sets proposals side by side, the best first, with what each changes', async () => {
    const { body } = await post('/v1/additions', request).expect(200);
    const { text, headers } = await post('/v1/additions', request, BROWSER).expect(200);
    expect(headers['content-type']).toBe('text/html; charset=utf-8');
    const headings = [...text.matchAll(/<h2[^>]*>([^<]*)<\/h2>/g)].map(([, heading]) => heading);
    const ranked = body.after.toSorted((a: { rank: number }, b: { rank: number }) => a.rank - b.rank);
    const names = ranked.map(({ rank, name }: { rank: number; name: string }) => `${rank}. ${letters(name)}`);
    expect(headings.slice(2, 4)).toEqual(names);
    for (const { says } of body.after) expect(text).toContain(letters(says));
    for (const what of body.notCovered) expect(text).toContain(what);
    expect(text).not.toContain('<script');
  });
});
