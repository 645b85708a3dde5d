import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { docblockFaults, exampleFault, examplesOf, exportedFunctions, printedTolerance } from './docblock-reader.ts';
import { IMPORT_LAW } from './import-law-reader.ts';
import { PROJECT_ROOT, projectFiles } from './source-files.ts';

const ROOMS = ['foundation', 'wind', 'areas', 'methods', 'structure', 'margins'];

const listed: { sources: { id: string }[] } = JSON.parse(
  readFileSync(join(PROJECT_ROOT, 'reference/sources.json'), 'utf8'),
);
const sourceIds = new Set(listed.sources.map((source) => source.id));

async function door(path: string): Promise<Record<string, unknown>> {
  return import(pathToFileURL(join(PROJECT_ROOT, path)).href);
}

describe.each(ROOMS)('docblocks of the room %s', (room) => {
  const files = existsSync(join(PROJECT_ROOT, 'src', room)) ? projectFiles(`src/${room}`, /\.ts$/) : [];
  const functions = files.flatMap(exportedFunctions);

  it('has exported functions', () => {
    expect(functions.length).toBeGreaterThan(0);
  });

  it('say what each function gives, its parameters and units, and its source', () => {
    expect(functions.flatMap((documented) => docblockFaults(documented, sourceIds))).toEqual([]);
  });

  it('have examples that hold', async () => {
    const scope: Record<string, unknown> = {};
    for (const below of IMPORT_LAW[room]?.rooms ?? []) Object.assign(scope, await door(`src/${below}/index.ts`));
    Object.assign(scope, await door(`src/${room}/index.ts`));
    const faults: (string | undefined)[] = [];
    for (const documented of functions) {
      const own = { ...scope, ...(await door(documented.file)) };
      for (const example of examplesOf(documented)) faults.push(exampleFault(documented, example, own));
    }
    expect(faults.filter((fault) => fault !== undefined)).toEqual([]);
  });
});

describe('the reader of docblocks', () => {
  const text = (docblock: string, signature = 'export function twice(x: number): number {') =>
    exportedFunctions({ path: 'src/wind/twice.ts', text: `${docblock}\n${signature}\n  return 2 * x;\n}\n` });
  const good = [
    '/**',
    ' * Twice a number.',
    ' *',
    ' * y = 2·x',
    ' *',
    ' * @param x the number [-]',
    ' * @returns its double [-]',
    ' * @example twice(2) // 4',
    ' * @source known-source',
    ' */',
  ];
  const faults = (lines: readonly string[], signature?: string) =>
    text(lines.join('\n'), signature).flatMap((documented) =>
      docblockFaults(documented, new Set(['known-source'])).map((fault) => fault.replace(/^.*?: /, '')),
    );
  const without = (word: string) => good.filter((line) => !line.includes(word));

  it('is content with a whole docblock', () => {
    expect(faults(good)).toEqual([]);
  });

  it('names what is missing', () => {
    expect(faults([])).toEqual(['has no docblock']);
    expect(faults(without('Twice'))).toEqual(['does not begin with a sentence that says what it gives']);
    expect(faults(without('@param'))).toEqual(['has no @param x, which is a number']);
    expect(faults(good.map((line) => line.replace('@param x', '@param y')))).toEqual([
      '@param names (y), the function has (x)',
      'has no @param x, which is a number',
    ]);
    expect(faults(without('@returns'))).toEqual(['has 0 @returns, one is wanted']);
    expect(faults(without('@source'))).toEqual(['has no @source']);
    expect(faults(good.map((line) => line.replace('number [-]', 'number')))).toHaveLength(1);
    expect(faults(good.map((line) => line.replace('double [-]', 'double')))).toHaveLength(1);
    expect(faults(good.map((line) => line.replace('known-source', 'hearsay')))).toEqual([
      '@source hearsay is not in reference/sources.json',
    ]);
    expect(faults(good.map((line) => line.replace(' // 4', '')))).toHaveLength(1);
  });

  it('demands units of numbers, and a source of formulas alone', () => {
    const plain = good.map((line) => line.replace(' [-]', ''));
    const thing = 'export function twice(x: Item): Item {';
    expect(faults(plain, thing)).toEqual([]);
    expect(
      faults(
        plain.filter((line) => !/@param|@returns/.test(line)),
        thing,
      ),
    ).toEqual([]);
    expect(faults(plain, 'export function twice(x: Item | undefined): readonly number[] {')).toHaveLength(1);
    expect(faults(plain, 'export function twice(x: number | undefined): Map<string, number> {')).toHaveLength(1);
    expect(faults(plain, 'export const twice = (x = 2): Item => {')).toHaveLength(1);
    expect(faults(plain, 'export const twice = (x: Item) => {')).toHaveLength(1);
    expect(
      faults(plain, 'export function twice(x: readonly [low: number, high: number]): { y: number } {'),
    ).toHaveLength(1);
    expect(
      faults(
        plain.map((line) => line.replace(' the number', '')),
        thing,
      ),
    ).toHaveLength(1);
    expect(faults(without('@source').filter((line) => !line.includes('y =')))).toEqual([]);
    expect(faults(without('@source'))).toEqual(['has no @source']);
  });

  it('reads parameters through generics, defaults, functions and line ends', () => {
    const [found] = text(
      good.join('\n'),
      'export function many<const T extends readonly (() => void)[]>(\n  a: (b: number, c: number) => boolean,\n  d: Record<string, number> = {},\n  ...e: T\n): number {',
    );
    expect(found?.parameters.map(({ name }) => name)).toEqual(['a', 'd', 'e']);
  });

  it('finds arrow functions, and no constants', () => {
    expect(text('', 'export const half = (x: number): number => {')).toHaveLength(1);
    expect(text('', 'export const HALF = (1 / 2);')).toHaveLength(0);
  });

  it('runs examples and compares to the printed digits', () => {
    const [documented] = text(good.join('\n'));
    if (documented === undefined) throw new Error('the sample function was not found');
    const scope = { twice: (x: number) => 2 * x };
    const run = (expression: string, printed: string) => exampleFault(documented, { expression, printed }, scope);
    expect(examplesOf(documented)).toEqual([{ expression: 'twice(2)', printed: '4' }]);
    expect(run('twice(2)', '4')).toBeUndefined();
    expect(run('twice(2)', '5')).toContain('gives 4, the docblock says 5');
    expect(run('twice(Math.PI)', '6.28')).toBeUndefined();
    expect(run('twice(Math.PI)', '6.29')).toBeDefined();
    expect(run('twice(2.2)', '4')).toBeDefined();
    expect(run('thrice(2)', '6')).toContain('fails');
    expect(run("'a'", "'a'")).toBeUndefined();
    expect(run('NaN', '4')).toBeDefined();
    expect(run('[1, 2]', '[1, 3]')).toBeDefined();
  });

  it('takes its tolerance from the print', () => {
    expect(printedTolerance('0.85')).toBeCloseTo(0.005, 9);
    expect(printedTolerance('599')).toBeCloseTo(0.5, 8);
    expect(printedTolerance('1.2e3')).toBeCloseTo(50, 6);
    expect(printedTolerance('15')).toBe(1e-9);
    expect(printedTolerance("'text'")).toBe(0);
  });
});
