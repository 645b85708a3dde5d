import { describe, expect, it } from 'vitest';
import { formulas } from '../../src/foundation/index.ts';
// The rooms define their formulas when they are loaded.
import '../../src/margins/index.ts';
import { formulaMathml, loneSymbolMathml, reckonedMathml } from '../../src/worksheet/maths/mathml.ts';
import { wellFormed } from '../drawing/well-formed.ts';

const xml = (mathml: string) => mathml.replaceAll('&#x2062;', '').replaceAll('&nbsp;', ' ');

describe('formulas on a page', () => {
  it.each(formulas().map(({ id, symbol, expression }) => [id, symbol, expression] as const))(
    '%s is well-formed MathML with its plain expression beside it',
    (_, symbol, expression) => {
      const read = wellFormed(xml(formulaMathml(symbol, expression)));
      expect(read.name).toBe('math');
      expect(read.attributes['alttext']).toBe(`${symbol} = ${expression}`);
      // Nothing of a program's signs is left among the letters.
      expect(formulaMathml(symbol, expression)).not.toMatch(/>[^<]*[_^*][^<]*</);
    },
  );

  it('set a power on a symbol with a subscript as one', () => {
    expect(formulaMathml('q', 'K_z^2')).toContain(
      '<msubsup><mi>K</mi><mi mathvariant="normal">z</mi><mrow><mn>2</mn></mrow></msubsup>',
    );
  });

  it('draw fractions, but not in an exponent', () => {
    expect(formulaMathml('u', 'a / (b + c)')).toContain(
      '<mfrac><mrow><mi>a</mi></mrow><mrow><mrow><mi>b</mi><mo>+</mo><mi>c</mi></mrow></mrow></mfrac>',
    );
    expect(formulaMathml('K', 'z^(2 / alpha)')).toContain('<mn>2</mn><mo>/</mo><mi>α</mi>');
    expect(formulaMathml('K', 'z^(2 / alpha)')).not.toContain('mfrac');
  });

  it('keep a factor before a fraction out of it', () => {
    expect(formulaMathml('F', 'K * (a / b)')).toMatch(/<mi>K<\/mi>.*<mfrac><mrow><mi>a<\/mi><\/mrow>/);
  });

  it('write Greek letters and means', () => {
    expect(loneSymbolMathml('lambda_s')).toContain('<msub><mi>λ</mi><mi mathvariant="normal">s</mi></msub>');
    expect(loneSymbolMathml('z_bar')).toContain('<mover accent="true"><mi>z</mi><mo>¯</mo></mover>');
  });

  it('put numbers with their units in place of symbols', () => {
    const values = new Map([
      ['F', '110 lbf'],
      ['z', '-3 ft'],
    ]);
    const text = reckonedMathml('F * z', values, '-330 lbf·ft')
      .replaceAll(/<[^>]+>/g, '')
      .replaceAll('&nbsp;', ' ');
    expect(text).toBe('=110 lbf·(−3 ft)=−330 lbf·ft');
  });

  it('escape the letters of a unit and the words beside', () => {
    expect(reckonedMathml('a', new Map([['a', '1 <x>']]), '1 "y"')).not.toMatch(/<x>|"y"/);
  });

  it('refuse what no formula of ours uses', () => {
    expect(() => formulaMathml('x', 'gamma(3)')).toThrow(/gamma/);
    expect(() => formulaMathml('x', '[1, 2]')).toThrow(/ArrayNode/);
  });
});
