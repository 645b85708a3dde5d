import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { VERSION } from '../../src/http/version.ts';
import { assess } from '../../src/margins/index.ts';
import { planHash, readPlan } from '../../src/plan/index.ts';
import { answerText } from '../../src/worksheet/index.ts';

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');

it('the README prints what its own request is answered with, letter for letter', () => {
  const [, body = ''] = readme.match(/as=text' -d '\n([^']+)'/) ?? [];
  const [, printed = ''] = readme.match(/```text\n([\s\S]+?)\n```/) ?? [];
  const reading = readPlan(JSON.parse(body));
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  const traced = { version: VERSION, planHash: planHash(reading) };
  const answer = answerText(assess(reading.input), reading.entryWarnings, traced).trim();
  expect(printed.length).toBeGreaterThan(1000);
  expect(answer.split('\n')).toEqual(printed.split('\n'));
});
