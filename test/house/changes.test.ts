import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { changesFile } from '../../src/http/documents/reference-files.ts';
import { VERSION } from '../../src/http/version.ts';
import { RENAMED_CHOICES, RENAMED_FIELDS } from '../../src/words/plan-formats.mjs';
import { forbiddenIn } from '../words/forbidden-patterns.ts';
import { PROJECT_ROOT } from './source-files.ts';

// Reading it holds it to its schema: closed lists, dates, versions.
const { versions, changes, renames } = changesFile();
const known = versions.map(({ version }) => version);

function faultsOf(text: string): readonly string[] {
  const long = text.split(/(?<=[.:;])\s/).filter((sentence) => sentence.split(/\s+/).length > 20);
  return [...long.map((sentence) => `more than 20 words: ${sentence}`), ...forbiddenIn(text)];
}

describe('the changes for users', () => {
  it('have a section for the version of package.json', () => {
    expect(known).toContain(VERSION);
  });

  it('name versions that are there, the newest first, with something in each', () => {
    const byNumber = (version: string) =>
      version
        .split('.')
        .map((part) => part.padStart(4, '0'))
        .join();
    expect(known).toEqual([...known].sort((one, other) => byNumber(other).localeCompare(byNumber(one))));
    expect(new Set(known).size).toBe(known.length);
    for (const { version } of [...changes, ...renames]) expect(known).toContain(version);
    for (const version of known) expect(changes.some((change) => change.version === version)).toBe(true);
  });

  it('say each thing once', () => {
    const said = changes.map(({ what }) => what);
    expect(said.filter((what, index) => said.indexOf(what) !== index)).toEqual([]);
    const places = renames.map(({ document, kind, at, from }) => [document, kind, at, from].join(' '));
    expect(places.filter((place, index) => places.indexOf(place) !== index)).toEqual([]);
    for (const { from, to } of renames) expect(from).not.toBe(to);
  });

  it('have a pointer or a parameter where each name stood', () => {
    for (const { document, at } of renames)
      expect(at).toMatch(document === 'address' ? /^[a-z-]+$/ : /^(\/[A-Za-z*]+)*$/);
  });

  it('are the renames that the reader of plans knows', () => {
    const ofPlans = (kind: string) =>
      renames
        .filter((each) => each.document === 'plan' && each.kind === kind)
        .map(({ at, from, to }) => ({ at, from, to }));
    expect(ofPlans('field')).toEqual(RENAMED_FIELDS);
    expect(ofPlans('value')).toEqual(RENAMED_CHOICES);
  });

  it('are in the words of the trade, twenty a sentence at most', () => {
    const texts = [
      ...versions.map(({ says }) => says),
      ...changes.flatMap(({ what, from, to }) => [what, from, to]),
      ...renames.map(({ to }) => to),
    ];
    expect(texts.flatMap(faultsOf)).toEqual([]);
    expect(faultsOf('The maker says that it is not shown.')).toHaveLength(2);
    expect(faultsOf(`${'word '.repeat(20)}word.`)).toHaveLength(1);
  });

  it('are no longer told in the notes for contributors', () => {
    const notes = readFileSync(join(PROJECT_ROOT, 'DEVELOPERS.md'), 'utf8');
    const [, section = ''] = notes.split('## Results that changed\n');
    expect(section.trim().split('\n')).toHaveLength(1);
    expect(section).toContain('reference/changes.json');
  });
});
