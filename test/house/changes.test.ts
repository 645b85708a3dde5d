import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { changesFile } from '../../src/http/documents/reference-files.ts';
import { VERSION } from '../../src/http/version.ts';
import { PROJECT_ROOT } from './source-files.ts';

// Reading it holds it to its schema: closed lists, dates, versions.
const { versions, changes, renames } = changesFile();
const known = versions.map(({ version }) => version);

/** Words that users are not to read; names of fields stand in renames alone. */
const FORBIDDEN = [
  /\b(untold|unsaid|unspoken)\b|\bnot told\b|nothing is said/i,
  /\bfalls? well\b|\bhad to read\b|\bread (so|as)\b|credits? (it|the tower) least/i,
  /\b(asked|shown),|\bnot shown\b|\bwhat its rating shows\b|\bprov(es|en)\b/i,
  /\bthin(:| so far)|\buse (is )?[\d.]|\bused to [\d.]|\bused up\b/i,
  /\bwe\b|\bour\b|\b(known|let|tell) (to )?us\b/i,
  /\bh(e|im|is)\b|\bmakers?\b/i,
  /\b(your wind|margin you want(ed)?|(you|as|numbers?|ratings?) typed)\b/i,
  /\bhang(s|ing)? (less|on|off|it|each|here)\b|\bwhat hangs\b/i,
  /\bgoes by\b|\bspeaks? for\b|\bstands? (below|for|bare|by itself at)\b|\btakes hold\b/i,
  /\b(most|least) in (shear|bending)\b|\bdecided by\b|\bknows no\b/i,
  /\bthins no air\b|\bsing and tire\b|\bno worse than\b|\bknowingly\b|\bto mend\b/i,
  /\b(at|of) the foot\b|\bledger\b|\b(this|every|each|weakest|no) links?\b/i,
  /\b(un)?safe(ly)?\b|\bpass(es|ed)?\b|\bcertified\b|\bcompliant\b|\bverified\b|\badequate\b/i,
];

function faultsOf(text: string): readonly string[] {
  const long = text.split(/(?<=[.:;])\s/).filter((sentence) => sentence.split(/\s+/).length > 20);
  return [
    ...long.map((sentence) => `more than 20 words: ${sentence}`),
    ...FORBIDDEN.flatMap((pattern) => pattern.exec(text)?.[0] ?? []).map((found) => `${found}: ${text}`),
  ];
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
      expect(at).toMatch(document === 'address' ? /^[a-z]+$/ : /^(\/[A-Za-z*]+)*$/);
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
