import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { assess } from '../../src/margins/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { answerText } from '../../src/worksheet/index.ts';

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');

it('the README prints what its own request is answered with, letter for letter', () => {
  const [, body = ''] = readme.match(/as=text' -d '\n([^']+)'/) ?? [];
  const [, printed = ''] = readme.match(/```text\n([\s\S]+?)\n```/) ?? [];
  const reading = readPlan(JSON.parse(body));
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  const answer = answerText(assess(reading.input), reading.entryWarnings).trim();
  expect(printed.length).toBeGreaterThan(1000);
  expect(answer.split('\n')).toEqual(printed.split('\n'));
});
