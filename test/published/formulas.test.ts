import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Formula, formulas, type Variable } from '../../src/foundation/index.ts';
// The rooms define their formulas when they are loaded.
import '../../src/margins/index.ts';

const math = createRequire(import.meta.url)('mathjs/lib/browser/math.js') as typeof import('mathjs');
const { sources } = JSON.parse(readFileSync(new URL('../../reference/sources.json', import.meta.url), 'utf8')) as {
  sources: { id: string }[];
};

/** Functions and constants of the evaluator that an expression may use. */
const FUNCTIONS = new Set(['min', 'max', 'sqrt', 'exp', 'log', 'log10', 'sum', 'map', 'sin', 'cos', 'abs', 'pi']);

const one = ({ from, to }: Variable) =>
  from === to ? fc.constant(from) : fc.double({ min: from, max: to, noNaN: true, noDefaultInfinity: true });

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

  it('is computed as it is shown, over its range', () => {
    fc.assert(
      fc.property(inputsOf(formula), (inputs) => {
        const scope = Object.fromEntries(formula.variables.map(({ symbol }, index) => [symbol, inputs[index]]));
        const shown = expression.evaluate(scope) as number;
        const computed = formula.of(...inputs);
        // Where the expression itself has no number (an empty denominator), the function must not have one either.
        if (!Number.isFinite(shown)) return !Number.isFinite(computed) || Math.abs(computed) > 1e12;
        const size = Math.max(Math.abs(shown), Math.abs(computed));
        // A sum of terms of both signs may cancel; its terms set the scale then.
        const scale = Math.max(size, 1e-9 * Math.max(...inputs.flat().map((input) => Math.abs(input as number))));
        return Math.abs(shown - computed) <= 1e-9 * scale;
      }),
      { numRuns: 200 },
    );
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
