import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sourceIdsOf } from './docblock-reader.ts';
import { PROJECT_ROOT, projectFiles } from './source-files.ts';

const listed: { sources: { id: string; known: string }[] } = JSON.parse(
  readFileSync(join(PROJECT_ROOT, 'reference/sources.json'), 'utf8'),
);
const ids = listed.sources.map((source) => source.id);

/** Every source that code names, in a comment or in a citation. */
function namedSources(): { file: string; id: string }[] {
  return projectFiles('src', /\.ts$/).flatMap(({ path, text }) => {
    const cited = [...text.matchAll(/\bcite\(\s*'([^']+)'/g)].map((match) => match[1] as string);
    return [...cited, ...sourceIdsOf(text)].map((id) => ({ file: path, id }));
  });
}

describe('sources', () => {
  it('have one id each', () => {
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });

  it('say how they are known', () => {
    const words = ['published', 'second-hand', 'memory', 'derived', 'common-practice'];
    expect(listed.sources.filter((source) => !words.includes(source.known)).map((source) => source.id)).toEqual([]);
  });

  it('are all listed, wherever code names one', () => {
    const named = namedSources();
    expect(named.length).toBeGreaterThan(0);
    const unknown = named.filter(({ id }) => !ids.includes(id)).map(({ file, id }) => `${file}: ${id}`);
    expect([...new Set(unknown)]).toEqual([]);
  });
});
