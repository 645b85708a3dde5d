import { describe, expect, it } from 'vitest';
import { formulas } from '../../src/foundation/index.ts';
// The rooms define their formulas when they are loaded.
import '../../src/margins/index.ts';
import { typstMaths, typstSymbol } from '../../src/worksheet/maths/typst-maths.ts';

/** Blanks mean nothing in this notation, but between letters. */
const tight = (text: string) => text.replaceAll(/\s*([^\w\s])\s*/g, '$1').replaceAll(/\s+/g, ' ');

describe('a symbol', () => {
  it.each([
    ['q', 'q'],
    ['K_zt', 'K_(upright("zt"))'],
    ['lambda_s', 'lambda_(upright("s"))'],
    ['K_theta', 'K_(theta)'],
    ['Re', 'upright("Re")'],
    ['z_bar', 'overline(z)'],
    ['z_33', 'z_(upright("33"))'],
  ])('%s is written as in print', (symbol, expected) => {
    expect(tight(typstSymbol(symbol))).toBe(tight(expected));
  });

  it.each(['', '1a', 'a b', 'a#b', 'x")', 'a__b', 'a_'])('is none: %j', (symbol) => {
    expect(() => typstSymbol(symbol)).toThrow(/no symbol/);
  });
});

describe('a formula', () => {
  it.each([
    // A fraction keeps to what is divided, and needs no parentheses.
    ['K * (a / b)', 'K dot.op lr((frac(a, b)))'],
    ['a * b / c', 'frac(a thin b, c)'],
    ['(M + N) / (2 * s)', 'frac(M + N, 2 thin s)'],
    // An exponent that is a fraction stands in line; an index and an exponent stand together.
    ['2.01 * (z / z_g)^(2 / alpha)', '2.01 thin lr((frac(z, z_(upright("g")))))^(2 \\/ alpha)'],
    ['c * K_z * V^2', 'c thin K_(upright("z")) thin V^(2)'],
    ['v_m^2', 'v_(upright("m"))^(2)'],
    // A sign stands where its absence would join two numbers or look like a function.
    ['a * 2', 'a dot.op 2'],
    ['f * (1 + x)', 'f dot.op lr((1 + x))'],
    ['2 * (1 + x)', '2 thin lr((1 + x))'],
    // Names of functions as in print.
    ['log(x)', 'op("ln") lr((x))'],
    ['log10(x / 2)', 'op("log")_10 lr((frac(x, 2)))'],
    ['-expm1(-exp(x))', '1 - op("exp") lr((-op("exp") lr((x))))'],
    ['log1p(-p)', 'op("ln") lr((1 + - p))'],
    ['sqrt((1 - u_0) / u_w)', 'sqrt(frac(1 - u_(upright("0")), u_(upright("w"))))'],
    ['max(a, min(b, c))', 'op("max") lr((a, op("min") lr((b, c))))'],
    ['abs(F) / P', 'frac(abs(F), P)'],
    ['sum(F .* a) / s', 'frac(sum F thin a, s)'],
    ['sum((x - y).^2)', 'sum lr((x - y))^(2)'],
    ['1e6 * x', '10^(6) thin x'],
  ])('%s is written as in print', (expression, expected) => {
    expect(tight(typstMaths(expression))).toBe(tight(expected));
  });

  it.each(['x = 2', 'f(x) = x', '[1, 2]', '"text"', 'x ? 1 : 2', 'import("a")', 'x.y', '1:2', 'evaluate(x)'])(
    'is none of ours: %s',
    (expression) => {
      expect(() => typstMaths(expression)).toThrow();
    },
  );

  it('is written from letters, figures and a few signs alone, whichever of ours it is', () => {
    const ours = formulas();
    expect(ours.length).toBeGreaterThan(100);
    for (const { expression, symbol, variables } of ours) {
      const written = [
        typstMaths(expression),
        typstSymbol(symbol),
        ...variables.map((each) => typstSymbol(each.symbol)),
      ];
      for (const text of written) expect(text).toMatch(/^[\w\s.,"()^+\-\\/]*$/);
    }
  });
});
