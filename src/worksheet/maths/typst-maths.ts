import type { ConstantNode, FunctionNode, MathNode, OperatorNode, ParenthesisNode, SymbolNode } from 'mathjs';
import { remember } from '../../foundation/index.ts';
import { bare, expressionTree } from './expression-tree.ts';

/** Greek letters by the names that expressions give them; the typesetter knows them by the same. */
const GREEK = new Set(
  `alpha beta gamma delta epsilon zeta eta theta kappa lambda mu nu xi pi rho sigma tau phi psi omega
   Gamma Delta Theta Lambda Pi Sigma Phi Psi Omega`.split(/\s+/),
);

const NAMED = new Set(['sin', 'cos', 'tan', 'min', 'max', 'exp']);

const written = new Map<string, string>();

/** A formula of ours in the notation of the typesetter's maths; throws for anything a formula of ours does not use. */
export function typstMaths(expression: string): string {
  return remember(written, expression, () => of(expressionTree(expression)));
}

/** A symbol such as `K_zt`: an italic letter, words and subscripts upright. */
export function typstSymbol(symbol: string): string {
  const [base = '', ...below] = symbol.split('_');
  if (!/^[A-Za-z]\w*$/.test(symbol) || below.length > 2 || below.includes('')) {
    throw new Error(`${symbol} is no symbol of a formula`);
  }
  const [low, ...rest] = below;
  const letter = letterOf(base);
  if (low === undefined) return letter;
  if (low === 'bar') return rest.length === 0 ? `overline(${letter})` : `overline(${letter})_(${lowOf(rest.join(''))})`;
  return `${letter}_(${[low, ...rest].map(lowOf).join(' ')})`;
}

function letterOf(name: string): string {
  if (GREEK.has(name)) return name;
  return name.length === 1 ? name : `upright("${name}")`;
}

function lowOf(name: string): string {
  return GREEK.has(name) ? name : `upright("${name}")`;
}

function of(node: MathNode): string {
  switch (node.type) {
    case 'ConstantNode':
      return constant(node as ConstantNode);
    case 'SymbolNode':
      return typstSymbol((node as SymbolNode).name);
    case 'ParenthesisNode':
      return `lr((${of((node as ParenthesisNode).content)}))`;
    case 'OperatorNode':
      return operator(node as OperatorNode);
    case 'FunctionNode':
      return call(node as FunctionNode);
    default:
      throw new Error(`a formula holds a ${node.type}, which has no way to be written`);
  }
}

function constant({ value }: ConstantNode): string {
  if (typeof value !== 'number' || !Number.isFinite(value))
    throw new Error('a formula holds a constant that is no number');
  const power = /^1e\+?(-?\d+)$/.exec(value.toExponential());
  return power && Math.abs(Number(power[1])) > 4 ? `10^(${power[1]})` : String(value);
}

function operator(node: OperatorNode): string {
  const [left, right] = node.args as readonly MathNode[];
  if (left === undefined) throw new Error(`the operator ${node.op} has nothing to work on`);
  if (right === undefined) {
    if (node.fn !== 'unaryMinus') throw new Error(`the operator ${node.op} has no way to be written`);
    // -expm1(x) is 1 - exp(x), as every book has it.
    if (left.type === 'FunctionNode' && nameOf(left as FunctionNode) === 'expm1') {
      return `1 - ${named('exp', (left as FunctionNode).args)}`;
    }
    return `- ${of(left)}`;
  }
  switch (node.op) {
    case '+':
    case '-':
      return `${of(left)} ${node.op} ${of(right)}`;
    case '*':
    case '.*':
      return product(left, right);
    case '/':
      return `frac(${of(bare(left))}, ${of(bare(right))})`;
    case '^':
    case '.^':
      return `${of(left)}^(${inLine(bare(right))})`;
    default:
      throw new Error(`the operator ${node.op} has no way to be written`);
  }
}

/** The sign between factors is left out between symbols, and stands where leaving it out would read as one thing. */
function product(left: MathNode, right: MathNode): string {
  const before = lastOf(left);
  const after = firstOf(right);
  const apart =
    after.type === 'ConstantNode' ||
    (after.type === 'ParenthesisNode' && before.type !== 'ConstantNode') ||
    isFraction(before) ||
    isFraction(after);
  return `${of(left)} ${apart ? 'dot.op' : 'thin'} ${of(right)}`;
}

function isFraction(node: MathNode): boolean {
  return node.type === 'OperatorNode' && (node as OperatorNode).op === '/';
}

function isSum(node: MathNode): boolean {
  return node.type === 'OperatorNode' && ['+', '-'].includes((node as OperatorNode).op);
}

function lastOf(node: MathNode): MathNode {
  if (node.type !== 'OperatorNode') return node;
  const { op, args } = node as OperatorNode;
  return op === '*' || op === '.*' ? lastOf(args[args.length - 1] as MathNode) : node;
}

function firstOf(node: MathNode): MathNode {
  if (node.type !== 'OperatorNode') return node;
  const { op, args } = node as OperatorNode;
  if (op === '*' || op === '.*' || ((op === '^' || op === '.^') && args.length === 2))
    return firstOf(args[0] as MathNode);
  return node;
}

/** A fraction in an exponent stands in line: set small, it cannot be read. */
function inLine(node: MathNode): string {
  if (!isFraction(node)) return of(node);
  const [above, below] = (node as OperatorNode).args as unknown as readonly [MathNode, MathNode];
  return `${of(above)} \\/ ${of(below)}`;
}

function nameOf(node: FunctionNode): string {
  return (node.fn as unknown as SymbolNode).name;
}

function named(name: string, args: readonly MathNode[]): string {
  return `op("${name}") lr((${args.map((arg) => of(bare(arg))).join(', ')}))`;
}

function call(node: FunctionNode): string {
  const name = nameOf(node);
  const [first] = node.args;
  if (first === undefined) throw new Error(`${name} is given nothing`);
  if (NAMED.has(name)) return named(name, node.args);
  switch (name) {
    case 'sqrt':
      return `sqrt(${of(bare(first))})`;
    case 'abs':
      return `abs(${of(bare(first))})`;
    case 'log':
      return named('ln', node.args);
    case 'log10':
      return `op("log")_10 lr((${of(bare(first))}))`;
    case 'log1p':
      return `op("ln") lr((1 + ${of(first)}))`;
    case 'expm1':
      return `lr((${named('exp', node.args)} - 1))`;
    case 'map': {
      // A function of each of a list.
      const [, applied] = node.args;
      if (applied?.type !== 'SymbolNode' || !NAMED.has((applied as SymbolNode).name))
        throw new Error('map without a name');
      return named((applied as SymbolNode).name, [first]);
    }
    case 'sum':
      return `sum ${isSum(first) ? `lr((${of(first)}))` : of(first)}`;
    default:
      throw new Error(`the function ${name} has no way to be written`);
  }
}
