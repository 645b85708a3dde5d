import { describe, expect, it } from 'vitest';
import { checkName } from '../../src/words/index.ts';
import fc from '../fast-check.ts';
import { anyPlan } from '../margins/any-plan.ts';
import { demoPlans } from '../margins/demo-plan.ts';
import { ownersWords } from './forbidden-patterns.ts';
import { EVERY_CAUTION, wholeAnswer } from './readers-texts.ts';
import { saidIn, sentencesOf } from './sentence-reader.ts';

const LONGEST = 20;

function tooLong(texts: readonly string[], names: readonly string[]): readonly string[] {
  const long = texts.flatMap((text) => sentencesOf(text, names)).filter(({ words }) => words > LONGEST);
  return [...new Set(long.map(({ words, sentence }) => `${words}: ${sentence}`))];
}

function tooLongOf(plan: unknown): readonly string[] {
  const { assessment, document } = wholeAnswer(plan);
  const names = [...ownersWords(plan), ...assessment.checks.map((check) => checkName(check))];
  return tooLong(
    saidIn(document).map(({ text }) => text),
    names,
  );
}

describe('a sentence', () => {
  it('is counted with names and numbers as one word each', () => {
    expect(sentencesOf('The tower holds to 89 mph actual gust (ASCE/SEI 7-16). Then 1,234 lbf·ft.')).toEqual([
      { sentence: 'The tower holds to 89 mph actual gust (N).', words: 6 },
      { sentence: 'Then 1,234 lbf·ft.', words: 2 },
    ]);
    expect(sentencesOf('Move the big old beam.', ['big old beam'])[0]?.words).toBe(3);
    expect(tooLong([`${'word '.repeat(LONGEST + 1)}end.`], [])).toHaveLength(1);
  });

  it.each(demoPlans().map(({ id, plan }) => [id, plan] as const))(
    'of the answer to %s has at most 20 words',
    (_, plan) => {
      expect(tooLongOf(plan)).toEqual([]);
    },
  );

  it('of any answer has at most 20 words', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        expect(tooLongOf(plan)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('of a caution has at most 20 words', () => {
    expect(tooLong(EVERY_CAUTION, ['quad', 'dish'])).toEqual([]);
  });
});
