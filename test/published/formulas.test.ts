import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { type Formula, formulas, type Variable } from '../../src/foundation/index.ts';
import fc from '../fast-check.ts';
// The rooms define their formulas when they are loaded.
import '../../src/margins/index.ts';

const math = createRequire(import.meta.url)('mathjs/lib/browser/math.js') as import('mathjs').MathJsInstance;
// By default its max and min take two numbers that are nearly alike, or both tiny, for the same one.
math.config({ relTol: 1e-15, absTol: 0 });
const { sources } = JSON.parse(readFileSync(new URL('../../reference/sources.json', import.meta.url), 'utf8')) as {
  sources: { id: string }[];
};

/** Functions and constants of the evaluator that an expression may use. */
const FUNCTIONS = new Set([
  'min',
  'max',
  'sqrt',
  'exp',
  'expm1',
  'log',
  'log1p',
  'log10',
  'sum',
  'map',
  'sin',
  'cos',
  'abs',
  'pi',
]);

const one = ({ from, to }: Variable) =>
  from === to ? fc.constant(from) : fc.double({ min: from, max: to, noNaN: true, noDefaultInfinity: true });

/** Where the expression itself has no number (an empty denominator), the function must not have one either. */
function agree(shown: number, computed: number, inputs: readonly unknown[]): boolean {
  if (!Number.isFinite(shown)) return !Number.isFinite(computed) || Math.abs(computed) > 1e12;
  // A sum of terms of both signs may cancel: what is left is good to some last digits of its largest term.
  const terms = Math.max(...inputs.flat().map((input) => Math.abs(input as number)));
  return Math.abs(shown - computed) <= 1e-9 * Math.max(Math.abs(shown), Math.abs(computed), 1e-6 * terms);
}

const alternating = (length: number, first: number, second: number) =>
  Array.from({ length }, (_, index) => (index % 2 === 0 ? first : second));

/** Every corner of the ranges of a formula; a list stands there with one end alone and with both in turn. */
function corners({ variables }: Formula): readonly (readonly unknown[])[] {
  const lengths = variables.some(({ list }) => list) ? [1, 6] : [1];
  return lengths.flatMap((length) =>
    variables.reduce<readonly (readonly unknown[])[]>(
      (some, { from, to, list }) =>
        some.flatMap((corner) =>
          [...new Set([from, to])].map((end) => [
            ...corner,
            list ? alternating(length, end, end === from ? to : from) : end,
          ]),
        ),
      [[]],
    ),
  );
}

/** Inputs over the ranges of a formula; its lists share one length. */
const inputsOf = (formula: Formula) =>
  fc
    .integer({ min: 1, max: 6 })
    .chain((length) =>
      fc.tuple(
        ...formula.variables.map((variable) =>
          variable.list ? fc.array(one(variable), { minLength: length, maxLength: length }) : one(variable),
        ),
      ),
    );

describe.each(formulas().map((formula) => [formula.id, formula] as const))('formula %s', (_, formula) => {
  const expression = math.compile(formula.expression);
  const shownFor = (inputs: readonly unknown[]) =>
    expression.evaluate(
      Object.fromEntries(formula.variables.map(({ symbol }, index) => [symbol, inputs[index]])),
    ) as number;

  it('is computed as it is shown, over its range', () => {
    fc.assert(
      fc.property(inputsOf(formula), (inputs) => agree(shownFor(inputs), formula.of(...inputs), inputs)),
      // Shrinking numbers of fifteen digits takes minutes and tells no more than the case itself.
      { numRuns: 200, endOnFailure: true },
    );
  });

  it('is computed as it is shown at the ends of its range, and has a number at half of them or more', () => {
    const all = corners(formula);
    for (const inputs of all) {
      const shown = shownFor(inputs);
      const computed = formula.of(...inputs);
      expect(agree(shown, computed, inputs), `${JSON.stringify(inputs)}: ${shown} shown, ${computed}`).toBe(true);
    }
    expect(all.filter((inputs) => Number.isFinite(shownFor(inputs))).length).toBeGreaterThanOrEqual(all.length / 2);
  });

  it('shows no symbol but its variables and the functions of the evaluator', () => {
    const symbols = new Set<string>();
    math.parse(formula.expression).traverse((node) => {
      if (node.type === 'SymbolNode') symbols.add((node as unknown as { name: string }).name);
    });
    const own = new Set(formula.variables.map(({ symbol }) => symbol));
    expect([...symbols].filter((symbol) => !own.has(symbol) && !FUNCTIONS.has(symbol))).toEqual([]);
    expect([...own].filter((symbol) => !symbols.has(symbol))).toEqual([]);
  });

  it('names a source that stands in reference/sources.json, and where in it', () => {
    expect(sources.map(({ id }) => id)).toContain(formula.cite.source);
    expect(formula.cite.clause.length).toBeGreaterThan(3);
  });
});
