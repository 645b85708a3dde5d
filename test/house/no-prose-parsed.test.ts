import { describe, expect, it } from 'vitest';
import { type ProjectFile, projectFiles } from './source-files.ts';

/** Members of an answer that are sentences or names for people. */
const PROSE = 'says|why|ask|action|title|headline|heading|label|detail';
const TAKES_APART =
  'replace|replaceAll|split|startsWith|endsWith|match|matchAll|search|slice|substring|substr|indexOf|lastIndexOf';
const BY_METHOD = new RegExp(`\\b(?:${PROSE})\\)?\\s*(?:\\?\\.|\\.)(?:${TAKES_APART})\\(`);
const BY_EXPRESSION = new RegExp(`/[dgimsuvy]*\\.(?:test|exec)\\(\\s*[\\w.?]*\\b(?:${PROSE})\\b`);

/** Where a text is made markup: its letters are written otherwise, nothing is read from it. */
const WRITTEN_OTHERWISE = /\.replaceAll\('[&<]', '&\w+;'\)/;

/** Lines in which a program reads what people are to read; a field beside it says the same to programs. */
function proseParsed(files: readonly ProjectFile[]): string[] {
  return files.flatMap(({ path, text }) =>
    text
      .split('\n')
      .flatMap((line, index) =>
        (BY_METHOD.test(line) || BY_EXPRESSION.test(line)) && !WRITTEN_OTHERWISE.test(line)
          ? [`${path}:${index + 1}: ${line.trim()}`]
          : [],
      ),
  );
}

describe('what people read', () => {
  it('is taken apart by no program', () => {
    const rooms = ['answer', 'words', 'worksheet', 'drawing', 'page', 'http'];
    const files = rooms.flatMap((room) => projectFiles(`src/${room}`, /\.(ts|mjs)$/));
    expect(files.length).toBeGreaterThan(100);
    expect(proseParsed(files)).toEqual([]);
  });

  it('would be found out', () => {
    const found = (text: string) => proseParsed([{ path: 'src/page/form/a.mjs', text }]).length;
    expect(found("const why = check.says.replace(/^[^:]*: /, '');")).toBe(1);
    expect(found('check.says.split(/(Within|Over)/)')).toBe(1);
    expect(found("if (question.ask?.startsWith('What')) return;")).toBe(1);
    expect(found("(found?.title).split(',')[0]")).toBe(1);
    expect(found('const [wind] = /\\d+ mph/.exec(check.says) ?? [];')).toBe(1);
    expect(found('node.append(check.says);')).toBe(0);
    expect(found("text.split('\\n').map((line) => ({ says: line }))")).toBe(0);
  });
});
