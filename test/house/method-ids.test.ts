import { describe, expect, it } from 'vitest';
import { METHODS } from '../../src/methods/index.ts';
import { projectFiles } from './source-files.ts';

/** Addresses of examples name a method as a caller would. */
const EXAMPLES = new Set(['src/plan/cells/cell-definitions.ts']);

const ID = new RegExp(`(?<![\\w-])(${METHODS.join('|')})(?![\\w-])`, 'g');

/** The ids in the code of a file: not in its comments, nor as the source of a formula. */
function idsIn(text: string): string[] {
  const code = text
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/^\s*\/\/.*$/gm, '')
    .replace(/\bcite\(\s*'[^']+'/g, 'cite(');
  return [...code.matchAll(ID)].map(([id]) => id);
}

const files = projectFiles('src', /\.(ts|mjs)$/).filter(({ path }) => !path.startsWith('src/methods/'));

describe('the id of a method', () => {
  it('stands nowhere outside the room of methods, so that its record decides', () => {
    const found = files
      .filter(({ path }) => !EXAMPLES.has(path))
      .flatMap(({ path, text }) => idsIn(text).map((id) => `${path}: ${id}`));
    expect(found).toEqual([]);
  });

  it('decides nothing in an example either', () => {
    const code = files.filter(({ path }) => EXAMPLES.has(path));
    expect(code.map(({ path }) => path)).toEqual([...EXAMPLES]);
    const deciding = new RegExp(`([!=]==|case) '(${METHODS.join('|')})'`);
    expect(code.filter(({ text }) => deciding.test(text)).map(({ path }) => path)).toEqual([]);
  });

  it('would be seen', () => {
    for (const id of METHODS) {
      expect(idsIn(`if (method === '${id}') return;`)).toEqual([id]);
      expect(idsIn(`const words = \`ground by ${id}\`;`)).toEqual([id]);
      expect(idsIn(`/** @source ${id} */\n// of ${id}\ncite(\n  '${id}', 'Table 1')`)).toEqual([]);
      expect(idsIn(`id: 'kz-${id}-first'`)).toEqual([]);
    }
  });
});
