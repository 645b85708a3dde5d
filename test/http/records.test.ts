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
  return textOf(wellFormed(answer.text.replace('<!doctype html>\n', '').trimEnd()));
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

it('the page of calls leads to both', async () => {
  const { text } = await running.request().get('/docs').expect(200);
  expect(text).toContain('href="v1/changes"');
  expect(text).toContain('href="v1/clauses"');
});
