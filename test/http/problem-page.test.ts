import { describe, expect, it } from 'vitest';
import { PROBLEM_KINDS } from '../../src/http/problems/catalogue.ts';
import { FIELDS } from '../../src/words/index.ts';
import { type Drawn, textOf, wellFormed } from '../drawing/well-formed.ts';
import { demoPlan } from '../margins/demo-plan.ts';
import { runningApp } from './running-app.ts';

const running = runningApp({
  prepare: (app) => {
    app.get('/test-failure', () => {
      throw new Error('secret inside');
    });
  },
});

/** As the browsers that people have send it. */
const BROWSER = 'text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8';

/** The page as its elements; it is written so that the strict reader of drawings reads it too. */
const pageOf = (html: string) => wellFormed(html.replace('<!doctype html>\n', '').trimEnd());

const all = (root: Drawn, name: string): Drawn[] =>
  root.children.flatMap((child) =>
    typeof child === 'string' ? [] : [...(child.name === name ? [child] : []), ...all(child, name)],
  );

const post = (fields: Record<string, string>, path = '/v1/checks') =>
  running.request().post(path).type('form').set('accept', BROWSER).send(new URLSearchParams(fields).toString());

const TEN: Record<string, string> = {
  units: 'us',
  method: 'asce7-16',
  'site[wind]': '105',
  'site[exposure]': 'C',
  'tower[support]': 'free',
  'tower[top]': '48',
  'loads[3][name]': 'beam',
  'loads[3][above]': '2',
  'loads[3][area]': '5.5',
};

describe('a problem, where a browser asks', () => {
  it('is a page that names each fault, holds what was given, and can be sent again', async () => {
    const answer = await post({
      ...TEN,
      'site[wind]': '1200',
      'loads[3][area]': 'wide',
      'site[exposure]': '',
      titel: 'x',
    });
    expect(answer.status).toBe(422);
    expect(answer.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(answer.headers['vary']).toContain('accept');
    expect(answer.headers['content-security-policy']).toContain("default-src 'none'");
    const page = pageOf(answer.text);
    expect(textOf(all(page, 'h1')[0] as Drawn)).toBe(PROBLEM_KINDS['plan-faults'].title);
    const inputs = all(page, 'input');
    const shown = [...inputs, ...all(page, 'select')].filter(({ attributes }) => attributes['type'] !== 'hidden');
    expect(Object.fromEntries(shown.map(({ attributes }) => [attributes['name'], attributes['value']]))).toEqual({
      'site[wind]': '1200',
      'loads[3][area]': 'wide',
      // A choice is chosen, in words.
      'site[exposure]': undefined,
      titel: 'x',
    });
    for (const { attributes } of shown) {
      expect(attributes['aria-invalid']).toBe('true');
      const says = all(page, 'p').find(
        (each) => each.attributes['id'] === attributes['aria-describedby']?.split(' ')[0],
      );
      expect(textOf(says as Drawn).length).toBeGreaterThan(20);
      expect(all(page, 'label').map((each) => each.attributes['for'])).toContain(attributes['id']);
    }
    const [form] = all(page, 'form');
    expect(form?.attributes).toEqual({ method: 'post', 'accept-charset': 'utf-8' });

    const again = Object.fromEntries(
      inputs.map(({ attributes }) => [attributes['name'] as string, attributes['value'] as string]),
    );
    const mended = { ...again, 'site[wind]': '105', 'loads[3][area]': '5.5', 'site[exposure]': 'C', titel: '' };
    const byHand = await running
      .request()
      .post('/v1/checks')
      .type('form')
      .send(new URLSearchParams(TEN).toString())
      .expect(200);
    const byPage = await running
      .request()
      .post('/v1/checks')
      .type('form')
      .send(new URLSearchParams(mended).toString())
      .expect(200);
    expect(byPage.body).toEqual(byHand.body);
  });

  it('has letters where someone sent markup', async () => {
    const hostile = '"><script>alert(1)</script>&lt;\u202e\'';
    const answer = await post({
      ...TEN,
      title: hostile,
      'site[wind]': hostile,
      [`x${hostile.replaceAll(/[[\]]/g, '')}`]: hostile,
    });
    expect(answer.status).toBe(422);
    expect(answer.text).not.toContain('<script');
    const values = all(pageOf(answer.text), 'input').map(({ attributes }) => attributes['value']);
    expect(values.filter((value) => value === hostile)).toHaveLength(3);
  });

  it('keeps a plan that was sent as JSON, to be mended there', async () => {
    const plan = JSON.stringify(
      { ...demoPlan('ten-numbers'), title: '</textarea>\n&amp;', method: 'asce7-61' },
      null,
      2,
    );
    const answer = await post({ plan });
    expect(answer.status).toBe(422);
    const [area] = all(pageOf(answer.text), 'textarea');
    // A browser leaves out the line end right after the tag.
    expect(textOf(area as Drawn).replace(/^\n/, '')).toBe(plan);
  });

  it('asks for what is missing by its name on the form, and says what may be chosen', async () => {
    const page = pageOf((await post({ units: 'us', 'site[terrain]': '' })).text);
    const text = textOf(page);
    expect(text).not.toContain('an object');
    expect(text).toContain('“Wind speed you were given” not given. Enter it.');
    expect(text).toContain('“Support” not given. Choose one.');
    const choices = Object.fromEntries(
      all(page, 'select').map((each) => [each.attributes['name'], all(each, 'option').map(textOf)]),
    );
    expect(Object.keys(choices)).toEqual(['method', 'tower[support]']);
    expect(choices['tower[support]']).toEqual(['choose', ...Object.values(FIELDS.tower.support.choices)]);
    expect(choices['method']).toContain('ANSI/TIA-222-H');
    // What is chosen there is read.
    const again = { ...TEN, method: '' };
    const [select] = all(pageOf((await post(again)).text), 'select');
    expect(select?.attributes['name']).toBe('method');
    expect((await post({ ...TEN, method: 'tia222-h' })).status).toBe(200);
  });

  it('offers no entry where one would not do', async () => {
    const { 'loads[3][above]': _, ...noHeight } = TEN;
    const answer = await post(noHeight);
    const page = pageOf(answer.text);
    expect(textOf(page)).toContain('beam: neither height nor above given');
    expect([...all(page, 'input'), ...all(page, 'select')]).toEqual([]);
    expect(textOf(page)).toContain('Go back in the browser');
  });

  it.each<[string, number]>([
    ['/nowhere', 404],
    ['/v1/nowhere/<b>', 404],
    ['/v1/demo-plans/none', 404],
    ['/%zz', 400],
    ['/v1/checks', 405],
    ['/v1/sources?known=not', 400],
    ['/test-failure', 500],
  ])('goes for every address: %s', async (path, status) => {
    const answer = await running.request().get(path).set('accept', BROWSER);
    expect(answer.status).toBe(status);
    expect(answer.headers['content-type']).toBe('text/html; charset=utf-8');
    const page = pageOf(answer.text);
    expect(all(page, 'h1')).toHaveLength(1);
    expect(answer.text).not.toContain('secret inside');
    const styles = all(page, 'link').map(
      ({ attributes }) => new URL(attributes['href'] as string, `${running.origin}${path}`),
    );
    for (const { pathname } of styles) {
      expect((await running.request().get(pathname)).status, pathname).toBe(200);
    }
  });

  it('lists what does not fit in a query', async () => {
    const answer = await post(TEN, '/v1/checks?as=gif&size=3');
    expect(answer.status).toBe(400);
    const text = textOf(pageOf(answer.text));
    expect(text).toContain('as: one of');
    expect(text).toContain('There is no parameter size here');
  });

  it('stays JSON for who asks for JSON, for anything, or for both alike', async () => {
    for (const accept of ['application/json', '*/*', 'text/html, application/json', undefined]) {
      const asked = running.request().post('/v1/checks').type('form');
      const answer = await (accept === undefined ? asked : asked.set('accept', accept)).send('units=us');
      expect(answer.headers['content-type'], accept).toMatch(/^application\/problem\+json/);
      expect(answer.body.faults.length, accept).toBeGreaterThan(0);
    }
  });
});
