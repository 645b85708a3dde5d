import type { ConstantNode, FunctionNode, MathNode, OperatorNode, ParenthesisNode, SymbolNode } from 'mathjs';
import { escaped } from '../html/markup.ts';
import { bare, expressionTree, symbolParts } from './expression-tree.ts';

/** What stands in a formula in place of its symbols: numbers with their units. */
export type Values = ReadonlyMap<string, string>;

interface Setting {
  readonly values: Values;
  /** In an exponent a fraction stands in one line. */
  readonly inExponent: boolean;
}

/**
 * A formula as MathML Core: "K_z = …", then, where values are given, the same with its numbers, then its result. The plain
 * expression stands beside it for whoever hears the page.
 */
export function formulaMathml(symbol: string, expression: string): string {
  const tree = expressionTree(expression);
  const body = `${symbolMathml(symbol)}${operator('=')}${written(tree, { values: new Map(), inExponent: false })}`;
  return mathElement(`${symbol} = ${expression}`, body);
}

/** The same formula with numbers in place of its symbols, and its result. */
export function reckonedMathml(expression: string, values: Values, result: string): string {
  const tree = expressionTree(expression);
  const body = `${operator('=')}${written(tree, { values, inExponent: false })}${operator('=')}${valueMathml(result)}`;
  const said = [...values].map(([symbol, value]) => `${symbol} = ${value}`).join(', ');
  return mathElement(`with ${said}: ${result}`, body);
}

/** One symbol, as the list of inputs names it. */
export function loneSymbolMathml(symbol: string): string {
  return mathElement(symbol, symbolMathml(symbol), false);
}

function mathElement(alternative: string, body: string, block = true): string {
  return `<math${block ? ' displaystyle="true"' : ''} alttext="${escaped(alternative)}"><mrow>${body}</mrow></math>`;
}

const operator = (sign: string) => `<mo>${escaped(sign)}</mo>`;
const TIMES = '<mo>&#x2062;</mo><mspace width="0.16em"></mspace>';
const DOT = '<mo>·</mo>';
const row = (...parts: readonly string[]) => `<mrow>${parts.join('')}</mrow>`;

/** One letter leans, a word stands. */
function identifier(text: string, upright = false): string {
  const variant = upright && [...text].length === 1 ? ' mathvariant="normal"' : '';
  return `<mi${variant}>${escaped(text)}</mi>`;
}

function scripts(name: string): { readonly base: string; readonly below?: string } {
  const { base, below, mean } = symbolParts(name);
  const letter = identifier(base);
  const over = mean ? `<mover accent="true">${letter}<mo>¯</mo></mover>` : letter;
  return below === undefined ? { base: over } : { base: over, below: identifier(below, true) };
}

function symbolMathml(name: string): string {
  const { base, below } = scripts(name);
  return below === undefined ? base : `<msub>${base}${below}</msub>`;
}

const isNegative = (number: string) => /^[-−]/.test(number);

/** "31.12 psf": the number, and its unit as a word. */
function valueMathml(value: string): string {
  const [number = '', ...unit] = value.split(' ');
  const shown = isNegative(number)
    ? row(operator('−'), `<mn>${escaped(number.slice(1))}</mn>`)
    : `<mn>${escaped(number)}</mn>`;
  return unit.length === 0 ? shown : `${shown}<mtext>&nbsp;${escaped(unit.join(' '))}</mtext>`;
}

function written(node: MathNode, setting: Setting): string {
  switch (node.type) {
    case 'ConstantNode':
      return `<mn>${escaped(String((node as ConstantNode).value))}</mn>`;
    case 'SymbolNode':
      return symbolOrValue((node as SymbolNode).name, setting);
    case 'ParenthesisNode':
      return fenced(written((node as ParenthesisNode).content, setting));
    case 'FunctionNode':
      return functionMathml(node as FunctionNode, setting);
    case 'OperatorNode':
      return operatorMathml(node as OperatorNode, setting);
    default:
      throw new Error(`a formula has a part that is not set in type: ${node.type}`);
  }
}

function symbolOrValue(name: string, { values }: Setting): string {
  const value = values.get(name);
  if (value === undefined) return symbolMathml(name);
  return isNegative(value) ? fenced(valueMathml(value)) : row(valueMathml(value));
}

function fenced(content: string, open = '(', close = ')'): string {
  return row(`<mo fence="true">${open}</mo>`, content, `<mo fence="true">${close}</mo>`);
}

function operatorMathml(node: OperatorNode, setting: Setting): string {
  const [first, second] = node.args as unknown as [MathNode, MathNode];
  switch (node.fn as string) {
    case 'unaryMinus':
      return row(operator('−'), written(first, setting));
    case 'add':
      return row(written(first, setting), operator('+'), written(second, setting));
    case 'subtract':
      return row(written(first, setting), operator('−'), written(second, setting));
    case 'multiply':
    case 'dotMultiply':
      return row(written(first, setting), signBetween(first, second, setting), written(second, setting));
    case 'divide':
      return setting.inExponent
        ? row(written(first, setting), operator('/'), written(second, setting))
        : `<mfrac>${row(written(bare(first), setting))}${row(written(bare(second), setting))}</mfrac>`;
    case 'pow':
    case 'dotPow':
      return power(first, second, setting);
    default:
      throw new Error(`a formula has an operator that is not set in type: ${node.fn}`);
  }
}

/** Between numbers a dot, since two numbers side by side are one. */
function signBetween(first: MathNode, second: MathNode, setting: Setting): string {
  return endsInNumber(first, setting) || beginsWithNumber(second, setting) ? DOT : TIMES;
}

const isNumber = (node: MathNode, { values }: Setting) =>
  node.type === 'ConstantNode' || (node.type === 'SymbolNode' && values.has((node as SymbolNode).name));

function endsInNumber(node: MathNode, setting: Setting): boolean {
  if (setting.values.size === 0) return false;
  if (node.type === 'OperatorNode') {
    const { fn, args } = node as OperatorNode;
    return fn === ('pow' as string) || endsInNumber(args.at(-1) as MathNode, setting);
  }
  return isNumber(node, setting) || node.type === 'FunctionNode' || node.type === 'ParenthesisNode';
}

function beginsWithNumber(node: MathNode, setting: Setting): boolean {
  if (node.type === 'OperatorNode') {
    const { fn, args } = node as OperatorNode;
    return fn !== ('divide' as string) && beginsWithNumber(args[0] as MathNode, setting);
  }
  return isNumber(node, setting);
}

function power(base: MathNode, exponent: MathNode, setting: Setting): string {
  const raised = row(written(bare(exponent), { ...setting, inExponent: true }));
  if (base.type === 'SymbolNode') {
    const { name } = base as SymbolNode;
    if (setting.values.has(name)) {
      const value = setting.values.get(name) as string;
      const bare = !value.includes(' ') && !isNegative(value);
      return `<msup>${bare ? row(valueMathml(value)) : fenced(valueMathml(value))}${raised}</msup>`;
    }
    const { base: letter, below } = scripts(name);
    if (below !== undefined) return `<msubsup>${letter}${below}${raised}</msubsup>`;
  }
  return `<msup>${row(written(base, setting))}${raised}</msup>`;
}

/** Functions that the trade writes otherwise than a program does. */
function functionMathml({ fn, args }: FunctionNode, setting: Setting): string {
  const name = (fn as unknown as { name: string }).name;
  const [first, second] = args as [MathNode, MathNode];
  const inner = () => written(bare(first), setting);
  const exponent = () => row(written(bare(first), { ...setting, inExponent: true }));
  switch (name) {
    case 'sqrt':
      return `<msqrt>${inner()}</msqrt>`;
    case 'abs':
      return fenced(inner(), '|', '|');
    case 'exp':
      return `<msup>${identifier('e', true)}${exponent()}</msup>`;
    case 'expm1':
      return fenced(row(`<msup>${identifier('e', true)}${exponent()}</msup>`, operator('−'), '<mn>1</mn>'));
    case 'log':
      return row(identifier('ln'), fenced(inner()));
    case 'log1p':
      return row(identifier('ln'), fenced(row('<mn>1</mn>', operator('+'), inner())));
    case 'log10':
      return row(`<msub>${identifier('log')}<mn>10</mn></msub>`, fenced(inner()));
    case 'sum':
      return row(
        '<mo>∑</mo>',
        first.type === 'OperatorNode' && isSum(first as OperatorNode) ? fenced(inner()) : inner(),
      );
    case 'map':
      return row(identifier((second as SymbolNode).name), fenced(inner()));
    case 'min':
    case 'max':
    case 'sin':
    case 'cos':
      return row(
        identifier(name),
        fenced(args.map((each) => written(each as MathNode, setting)).join('<mo separator="true">,</mo>')),
      );
    default:
      throw new Error(`a formula has a function that is not set in type: ${name}`);
  }
}

const isSum = ({ fn }: OperatorNode) => ['add', 'subtract'].includes(fn as string);
