import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { publishedExamples, subjects } from './example-reader.ts';

const notComputed = (reason: string, ids: readonly string[]) => Object.fromEntries(ids.map((id) => [id, reason]));

publishedExamples(
  'hanging-lines',
  {},
  notComputed('the pull of a hanging line is given by the plan, not computed', [
    'shallow-cable',
    'catenary',
    'sag-under-wind',
    'sag-under-ice-and-wind',
  ]),
);

it('leaves no subject of reference/examples without a runner', () => {
  const folder = new URL('.', import.meta.url);
  const spoken = readdirSync(folder)
    .filter((file) => file.endsWith('.test.ts'))
    .flatMap((file) => [
      ...readFileSync(new URL(file, folder), 'utf8').matchAll(/^publishedExamples\(\s*'([a-z-]+)'/gm),
    ])
    .map(([, subject]) => subject);
  expect(spoken.sort()).toEqual(subjects().sort());
});
