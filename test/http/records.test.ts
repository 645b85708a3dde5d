import { describe, expect, it } from 'vitest';
import { changesFile, clausesFile } from '../../src/http/documents/reference-files.ts';
import { textOf, wellFormed } from '../drawing/well-formed.ts';
import { runningApp } from './running-app.ts';

const running = runningApp();
const BROWSER = 'text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8';
const json = async (path: string) => {
  const answer = await running.request().get(path).expect(200);
  expect(answer.headers['content-type']).toBe('application/json; charset=utf-8');
  expect(answer.headers['vary']).toContain('accept');
  return answer.body;
};
const page = async (path: string) => {
  const answer = await running.request().get(path).set('accept', BROWSER).expect(200);
  expect(answer.headers['content-type']).toBe('text/html; charset=utf-8');
  expect(answer.headers['vary']).toContain('accept');
  // The reader of marks takes the sign of a product that is not seen for an unknown entity.
  const text = answer.text.replace('<!doctype html>\n', '').replaceAll('&#x2062;', '');
  return textOf(wellFormed(text.trimEnd()));
};

describe('what changed', () => {
  it('is handed out whole', async () => {
    expect(await json('/v1/changes')).toEqual(changesFile());
  });

  it('is handed out from a version on', async () => {
    const newer = await json('/v1/changes?since=0.1.0');
    const versions = changesFile().versions.map(({ version }) => version);
    expect(newer.versions.map(({ version }: { version: string }) => version)).toEqual(versions.slice(0, -1));
    expect(newer.changes.length).toBeGreaterThan(0);
    for (const { version } of [...newer.changes, ...newer.renames]) expect(version).not.toBe('0.1.0');
    const newest = await json(`/v1/changes?since=${versions[0]}`);
    expect(newest).toEqual({ versions: [], changes: [], renames: [] });
  });

  it('is refused from a version that is not known', async () => {
    const { body } = await running.request().get('/v1/changes?since=0.0.9').expect(400);
    expect(body.type).toBe('/problems/bad-query');
    await running.request().get('/v1/changes?from=0.1.0').expect(400);
  });

  it('is a page where a browser asks', async () => {
    const all = await page('/v1/changes');
    for (const { what, from, to } of changesFile().changes) {
      for (const told of [what, from, to]) expect(all).toContain(told);
    }
    for (const { to } of changesFile().renames) expect(all).toContain(to);
    expect(await page('/v1/changes?since=0.1.0')).not.toContain('The first release');
  });
});

describe('the clauses', () => {
  it('are handed out whole, or those of one standard', async () => {
    expect(await json('/v1/clauses')).toEqual(clausesFile());
    const { standards, withoutTest } = await json('/v1/clauses?standard=asce7-22');
    expect(standards).toEqual(clausesFile().standards.filter(({ standard }) => standard === 'asce7-22'));
    expect(standards).toHaveLength(1);
    for (const { standard } of withoutTest) expect(standard).toBe('asce7-22');
    expect(withoutTest.length).toBeGreaterThan(0);
  });

  it('name formulas and sources that the service hands out', async () => {
    const ids = async (path: string) =>
      new Set<string>((await running.request().get(path)).body.map(({ id }: { id: string }) => id));
    const [formulas, sources] = [await ids('/v1/formulas'), await ids('/v1/sources')];
    for (const { standard, clauses } of clausesFile().standards) {
      expect(sources).toContain(standard);
      for (const clause of clauses) {
        for (const id of clause.formulas) expect(formulas).toContain(id);
        for (const id of clause.readIn ?? []) expect(sources).toContain(id);
      }
    }
    expect(new Set(clausesFile().standards.flatMap(({ clauses }) => clauses.flatMap((each) => each.formulas)))).toEqual(
      formulas,
    );
  });

  it('are refused for a standard that is not known', async () => {
    const { body } = await running.request().get('/v1/clauses?standard=none').expect(400);
    expect(body.type).toBe('/problems/bad-query');
  });

  it('are a page where a browser asks', async () => {
    const all = await page('/v1/clauses');
    for (const { title, clauses } of clausesFile().standards) {
      expect(all).toContain(title);
      for (const { clause, tests } of clauses) for (const told of [clause, ...tests]) expect(all).toContain(told);
    }
    const one = await page('/v1/clauses?standard=asce7-22');
    expect(one).toContain('26.10.2, Eq. 26.10-1');
    expect(one).toContain('no test of its own');
    expect(one).not.toContain('EN 1993-3-1');
  });
});

describe('the formulas, the sources and the problems', () => {
  it('are lists of JSON where no page is asked for', async () => {
    for (const path of ['/v1/formulas', '/v1/sources', '/problems'])
      expect((await json(path)).length).toBeGreaterThan(10);
    expect((await json('/problems/plan-faults')).code).toBe('plan-faults');
  });

  it('are pages where a browser asks', async () => {
    const told = await page('/v1/formulas');
    for (const { id, title, clause, variables } of await json('/v1/formulas')) {
      for (const each of [id, title, clause, variables[0]?.meaning ?? '']) expect(told).toContain(each);
    }
    const read = await page('/v1/sources');
    for (const { title, seen, used } of await json('/v1/sources')) {
      for (const each of [title, seen, used]) expect(read).toContain(each);
    }
    expect((await page('/v1/sources?known=memory')).length).toBeLessThan(read.length);
    const kinds = await page('/problems');
    for (const { code, title, cause, remedy } of await json('/problems')) {
      for (const each of [title, cause, remedy]) expect(kinds).toContain(each);
      const one = await page(`/problems/${code}`);
      for (const each of [title, cause, remedy]) expect(one).toContain(each);
    }
  });

  it('have no two places of one name on a page', async () => {
    for (const path of ['/v1/formulas', '/v1/sources', '/problems']) {
      const { text } = await running.request().get(path).set('accept', BROWSER).expect(200);
      const ids = [...text.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
      expect(new Set(ids).size).toBe(ids.length);
    }
  });
});

it('the page of calls leads to them', async () => {
  const { text } = await running.request().get('/docs').expect(200);
  expect(text).toContain('href="v1/changes"');
  expect(text).toContain('href="v1/clauses"');
  for (const path of ['v1/formulas', 'v1/sources', 'problems']) expect(text).toContain(`href="${path}"`);
});
