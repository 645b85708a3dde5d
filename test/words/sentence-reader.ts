import { DISPLAY_UNITS } from '../../src/foundation/index.ts';
import { METHOD_BY_ID } from '../../src/methods/index.ts';
import { SPEED_WORDS } from '../../src/words/index.ts';

/** Stands for a name, or for a number with its unit. */
const ONE = 'N';

const escaped = (text: string) => text.replaceAll(/[.*+?^${}()|[\]\\/]/g, '\\$&');
const longestFirst = (words: readonly string[]) => [...new Set(words)].sort((one, other) => other.length - one.length);
const UNITS = longestFirst(
  Object.values(DISPLAY_UNITS).flatMap((system) => Object.values(system).flatMap(({ label }) => label || [])),
);
const KINDS = longestFirst([...Object.values(SPEED_WORDS), 'peak gust', 'actual gust']);
const NUMBER = '[−-]?\\d[\\d,]*(?:\\.\\d+)?(?:/\\d+)?';
const QUANTITY = new RegExp(
  `(?<![\\w/-])${NUMBER}(?:[ ]?(?:%|°|${UNITS.map(escaped).join('|')})(?![\\w/]))?(?:[ ](?:${KINDS.map(escaped).join('|')}))?`,
  'g',
);
const TITLES = Object.values(METHOD_BY_ID).map(({ title }) => title);

/** The sentences of a text, each with how many words it has: a name, or a number with its unit and kind, is one. */
export function sentencesOf(
  text: string,
  names: readonly string[] = [],
): readonly { sentence: string; words: number }[] {
  const named = longestFirst([...names, ...TITLES]).filter((name) => name !== '');
  const whole = named.reduce(
    (rest, name) => rest.replaceAll(new RegExp(`(?<![\\p{L}\\p{N}])${escaped(name)}(?![\\p{L}\\p{N}])`, 'giu'), ONE),
    text,
  );
  return whole.split(/(?<=[.?!])\s+(?=[\p{Lu}\p{N}“"‹])/u).map((sentence) => ({
    sentence,
    words: sentence
      .replaceAll(QUANTITY, ONE)
      .split(/\s+/)
      .filter((word) => /[\p{L}\p{N}]/u.test(word)).length,
  }));
}

/** Fields of an answer that hold a sentence. */
const SAID = new Set(['says', 'action', 'why', 'ask']);

/** Every sentence of an answer's JSON, with the way to it; the plan it holds is not its own. */
export function saidIn(document: unknown, path = ''): readonly { path: string; text: string }[] {
  if (Array.isArray(document)) return document.flatMap((each, index) => saidIn(each, `${path}/${index}`));
  if (typeof document !== 'object' || document === null) return [];
  return Object.entries(document).flatMap(([key, value]) => {
    if (key === 'plan' || key === 'working') return [];
    if (SAID.has(key) && typeof value === 'string') return [{ path: `${path}/${key}`, text: value }];
    return saidIn(value, `${path}/${key}`);
  });
}
