import { describe, expect, it } from 'vitest';
import { requestExamples } from '../../src/http/documents/request-examples.ts';
import { type Drawn, textOf, wellFormed } from '../drawing/well-formed.ts';
import { worksheetFigures } from './exact-rounding.ts';
import { runningApp } from './running-app.ts';

const running = runningApp();
const BROWSER = 'text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8';
const pageOf = (html: string) => wellFormed(html.replace('<!doctype html>\n', '').trimEnd());
const all = (root: Drawn, name: string): Drawn[] =>
  root.children.flatMap((child) =>
    typeof child === 'string' ? [] : [...(child.name === name ? [child] : []), ...all(child, name)],
  );

const example = (operation: string) => requestExamples().find(({ operationId }) => operationId === operation)?.body;
async function asked(path: string, body: unknown) {
  const json = (
    await running
      .request()
      .post(path)
      .send(body as object)
      .expect(200)
  ).body;
  const answer = await running
    .request()
    .post(path)
    .set('accept', BROWSER)
    .send(body as object)
    .expect(200);
  expect(answer.headers['content-type']).toBe('text/html; charset=utf-8');
  expect(answer.headers['vary']).toContain('accept');
  const page = pageOf(answer.text);
  const rows = all(page, 'tbody').flatMap((part) => all(part, 'tr'));
  return { json, text: textOf(page), rows: rows.map((row) => [...all(row, 'th'), ...all(row, 'td')].map(textOf)) };
}
const inWords = ({ value, unit }: { value: number; unit: string }) => `${worksheetFigures(value)} ${unit}`;

describe('answers to a part of a plan, where a browser asks', () => {
  it('have the areas of the JSON answer', async () => {
    const { json, text, rows } = await asked('/v1/areas', example('areas'));
    expect(text).toContain(`Total ${inWords(json.worst)} effective`);
    expect(rows.map(([name, , front, side]) => [name, front, side])).toEqual(
      json.items.map((item: { name: string; front: number; side: number }) => [
        item.name,
        worksheetFigures(item.front),
        worksheetFigures(item.side),
      ]),
    );
    for (const { says } of json.notes) expect(text).toContain(says);
  });

  it('have the wind of the JSON answer', async () => {
    const { json, text, rows } = await asked('/v1/pressures', example('pressures'));
    expect(text).toContain(`${inWords(json.speed)} strength-level gust`);
    expect(rows).toEqual(
      json.heights.map((row: Record<string, { value: number; unit: string }> & Record<string, number>) => [
        inWords(row['height'] as never),
        worksheetFigures(row['exposureCoefficient'] as never),
        worksheetFigures(row['topographicFactor'] as never),
        inWords(row['pressure'] as never),
        inWords(row['forcePerArea'] as never),
      ]),
    );
    for (const { says } of json.notes) expect(text).toContain(says);
  });

  it('have the ratings of the JSON answer', async () => {
    const { json, text, rows } = await asked('/v1/ratings', example('ratings'));
    expect(text).toContain(json.says);
    expect(rows.map(([, force, equal]) => [force, equal])).toEqual(
      json.ratings.map((rating: { force: never[]; equal: never[] }) => [
        inWords(rating.force[0] as never),
        inWords(rating.equal[0] as never),
      ]),
    );
    for (const { says } of json.notes) expect(text).toContain(says);
    const open = await asked('/v1/ratings', { units: 'us', top: 48, ratings: [{ of: 'tower', area: 12, wind: 70 }] });
    const [least, most] = open.json.ratings[0].force;
    expect(open.rows[0]?.[1]).toBe(`${worksheetFigures(least.value)} to ${inWords(most)}`);
    expect(open.rows[0]?.[2]).toBe('–');
  });

  it('come from a form as well, with names as letters', async () => {
    const fields = new URLSearchParams({
      units: 'si',
      method: 'en1991-1-4',
      'loads[0][name]': '<b>"whip"</b>',
      'loads[0][height][0]': '10',
      'loads[0][height][1]': '14',
      'loads[0][shape]': 'tube',
      'loads[0][diameter]': '30',
    });
    const answer = await running
      .request()
      .post('/v1/areas')
      .type('form')
      .set('accept', BROWSER)
      .send(fields.toString());
    expect(answer.status).toBe(200);
    const [row] = all(pageOf(answer.text), 'tbody').flatMap((part) => all(part, 'th'));
    expect(textOf(row as Drawn)).toBe('<b>"whip"</b>');
    expect(answer.text).toContain('10 to 14');
  });

  it('are JSON for programs, and where the steps are asked for', async () => {
    for (const [path, accept] of [
      ['/v1/areas', '*/*'],
      ['/v1/areas', 'application/json'],
    ] as const) {
      const answer = await running
        .request()
        .post(path)
        .set('accept', accept)
        .send(example('areas') as object);
      expect(answer.headers['content-type']).toMatch(/^application\/json/);
    }
    const steps = await running
      .request()
      .post('/v1/ratings?working=full')
      .set('accept', BROWSER)
      .send(example('ratings') as object);
    expect(steps.body.working.length).toBeGreaterThan(5);
  });
});
