import { describe, expect, it } from 'vitest';
import { CHECK_KINDS, type CheckKindName } from '../../src/margins/index.ts';
import {
  AREA_WORDS,
  CHECK_WORDS,
  checkName,
  GROUND_WORDS,
  SPEED_WORDS,
  VERDICT_WORDS,
  verbOf,
} from '../../src/words/index.ts';
import { checkTexts, EVERY_CHECK } from './readers-texts.ts';

type WordsOf = (typeof CHECK_WORDS)[CheckKindName];

/** A kind that somebody adds without words does not compile. */
// @ts-expect-error the words of the bolts are missing
const WITHOUT_WORDS: Record<CheckKindName | 'anchor-bolts', WordsOf> = { ...CHECK_WORDS };

/** Nor does one without a name for drawings. */
const { drawn: _drawn, ...undrawn } = CHECK_WORDS.tower;
// @ts-expect-error its short name is missing
const WITHOUT_DRAWN_NAME: WordsOf = undrawn;

describe('the words of a check', () => {
  it('are there for every kind, and for none besides', () => {
    expect(Object.keys(CHECK_WORDS).sort()).toEqual([...CHECK_KINDS].sort());
    expect([WITHOUT_WORDS, WITHOUT_DRAWN_NAME]).toHaveLength(2);
  });

  it('are whole, and tell kinds apart', () => {
    for (const check of EVERY_CHECK) for (const text of checkTexts(check)) expect(text).toMatch(/^\S.*\S$/);
    const names = CHECK_KINDS.map((kind) => checkName({ kind, name: 'quad' }));
    expect(new Set(names).size).toBe(CHECK_KINDS.length);
  });

  it('name the place that a fall could reach by a field of the check', () => {
    expect(checkName({ kind: 'fall', towards: 'power-line' })).toBe('distance to the power line');
    expect(checkName({ kind: 'fall', towards: 'building' })).toBe('distance to the building');
  });

  it('have the number of their name', () => {
    expect(verbOf({ kind: 'elements' }, 'holds', 'hold')).toBe('hold');
    expect(verbOf({ kind: 'tower' }, 'holds', 'hold')).toBe('holds');
  });
});

describe('the words of choices', () => {
  it.each([
    ['verdicts', VERDICT_WORDS],
    ['types of speed', SPEED_WORDS],
    ['types of area', AREA_WORDS],
    ['grounds', GROUND_WORDS],
  ])('tell %s apart', (_, words) => {
    const texts = Object.values(words);
    expect(new Set(texts).size).toBe(texts.length);
  });
});
