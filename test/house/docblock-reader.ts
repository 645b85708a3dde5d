import type { ProjectFile } from './source-files.ts';

export interface Parameter {
  readonly name: string;
  /** Its type as written, or undefined where none is. */
  readonly type: string | undefined;
}

export interface DocumentedFunction {
  readonly file: string;
  readonly name: string;
  /** Where its declaration begins in the file. */
  readonly at: number;
  readonly parameters: readonly Parameter[];
  /** What it returns as written, or undefined where that is inferred. */
  readonly returns: string | undefined;
  /** The lines of its docblock without stars, or undefined where there is none. */
  readonly docblock: string | undefined;
}

export interface Example {
  readonly expression: string;
  readonly printed: string;
}

const OPENING = '([{<';
const CLOSING = ')]}>';

/** Cuts a parameter list at its outermost commas. */
function parametersOf(list: string): Parameter[] {
  const pieces: string[] = [];
  let depth = 0;
  let piece = '';
  for (let index = 0; index < list.length; index += 1) {
    const letter = list[index] as string;
    const arrow = letter === '>' && list[index - 1] === '=';
    if (!arrow && OPENING.includes(letter)) depth += 1;
    if (!arrow && CLOSING.includes(letter)) depth -= 1;
    if (letter === ',' && depth === 0) {
      pieces.push(piece);
      piece = '';
    } else piece += letter;
  }
  pieces.push(piece);
  return pieces
    .map((text) => text.trim())
    .filter((text) => text !== '')
    .map((text) => {
      const [, name = text, type, given] =
        /^(?:\.\.\.)?([A-Za-z_$][\w$]*)\??(?:\s*:\s*([\s\S]+?))?(?:\s=\s([\s\S]*))?$/.exec(text) ?? [];
      return { name, type: type ?? (given !== undefined && Number.isFinite(Number(given)) ? 'number' : undefined) };
    });
}

/** The type between the parameters of a function and its body, or undefined where it is inferred. */
function returnedType(after: string): string | undefined {
  if (!/^\s*:/.test(after)) return undefined;
  const type = after.replace(/^\s*:\s*/, '');
  return /^(?:readonly |number|undefined|null|[\s|[\]])+(?=\s(?:\{|=>))/.exec(type)?.[0].trim() ?? type.split('\n')[0];
}

/** Whether a type as written is a number, or numbers side by side; then they have a unit. */
export function isNumber(type: string): boolean {
  return (
    /\bnumber\b/.test(type) && /^(?:readonly\b|number\b|undefined\b|null\b|\w+\??:|[\s|()[\],.])+$/.test(type.trim())
  );
}

/** Whether a docblock states a formula; then it names its source. */
export function statesFormula(docblock: string): boolean {
  return /[=≤≥≈√Σ∂½·²]/.test(tagsOf(docblock).opening.replaceAll(/\[[^\]]*\]/g, ''));
}

/** The text between the parenthesis at `start` and its partner. */
function insideParentheses(text: string, start: number): string {
  let depth = 0;
  for (let index = start; index < text.length; index += 1) {
    if (text[index] === '(') depth += 1;
    if (text[index] === ')') {
      depth -= 1;
      if (depth === 0) return text.slice(start + 1, index);
    }
  }
  return text.slice(start + 1);
}

function docblockBefore(text: string, index: number): string | undefined {
  const before = text.slice(0, index).trimEnd();
  if (!before.endsWith('*/')) return undefined;
  const start = before.lastIndexOf('/**');
  if (start < 0) return undefined;
  return before
    .slice(start + 3, -2)
    .split('\n')
    .map((line) => line.replace(/^\s*\*\s?/, '').trimEnd())
    .join('\n')
    .trim();
}

/** Every exported function of a file: declarations and arrow functions. */
export function exportedFunctions(file: ProjectFile): DocumentedFunction[] {
  const found: DocumentedFunction[] = [];
  const declarations = /^export (?:async )?function\*? ([\w$]+)/gm;
  const arrows = /^export const ([\w$]+)(?:: [^=\n]+)? = (?:async )?(?:<[^>]*>)?\((?=[\s\S]*?=>)/gm;
  const add = (match: RegExpExecArray, opening: number) => {
    const list = insideParentheses(file.text, opening);
    found.push({
      file: file.path,
      name: match[1] as string,
      at: match.index,
      parameters: parametersOf(list),
      returns: returnedType(file.text.slice(opening + list.length + 2)),
      docblock: docblockBefore(file.text, match.index),
    });
  };
  for (const match of file.text.matchAll(declarations)) {
    let opening = match.index + match[0].length;
    if (file.text[opening] === '<') {
      let depth = 0;
      do {
        if (file.text[opening] === '<') depth += 1;
        if (file.text[opening] === '>' && file.text[opening - 1] !== '=') depth -= 1;
        opening += 1;
      } while (depth > 0);
    }
    add(match, opening);
  }
  for (const match of file.text.matchAll(arrows)) {
    const opening = match.index + match[0].length - 1;
    const after = file.text.slice(opening + insideParentheses(file.text, opening).length + 2);
    if (/^(?:\s*:[^=]+)?\s*=>/.test(after)) add(match, opening);
  }
  return found;
}

interface Tag {
  readonly name: string;
  readonly text: string;
}

function tagsOf(docblock: string): { opening: string; tags: Tag[] } {
  const [opening = '', ...rest] = docblock.split(/^(?=@\w)/m);
  const tags = rest.map((piece) => {
    const match = /^@(\w+)\s*([\s\S]*)$/.exec(piece);
    return { name: match?.[1] ?? '', text: (match?.[2] ?? '').trim().replaceAll(/\s*\n\s*/g, ' ') };
  });
  return docblock.startsWith('@') ? { opening: '', tags: tagsOf(`.\n${docblock}`).tags } : { opening, tags };
}

const HAS_MEANING = /^\S+\s+\S/;
const ENDS_WITH_UNIT = /\S\s\[[^\]]+\](?:[.;,].*)?$/;

/** Numbers have a unit; where no type is written, it may be one. */
function lacksUnit(text: string, type: string | undefined): boolean {
  return (type === undefined || isNumber(type)) && !ENDS_WITH_UNIT.test(text);
}

/** What a docblock lacks, each a sentence naming file and function. */
export function docblockFaults(documented: DocumentedFunction, sourceIds: ReadonlySet<string>): string[] {
  const where = `${documented.file} ${documented.name}`;
  if (documented.docblock === undefined) return [`${where}: has no docblock`];
  const { opening, tags } = tagsOf(documented.docblock);
  const faults: string[] = [];
  const first = opening.trim().split(/\n\s*\n/)[0] ?? '';
  if (!/^\S.*[.:]$/s.test(first)) faults.push(`${where}: does not begin with a sentence that says what it gives`);

  const parameters = tags.filter((tag) => tag.name === 'param');
  const named = parameters.map((tag) => tag.text.split(/\s/)[0] as string);
  const names = documented.parameters.map(({ name }) => name);
  const strangers = named.filter((name) => !names.includes(name));
  const inOrder = names.filter((name) => named.includes(name));
  if (strangers.length > 0 || inOrder.join() !== named.join()) {
    faults.push(`${where}: @param names (${named.join(', ')}), the function has (${names.join(', ')})`);
  }
  // A thing says by its type what it is; a number says nothing of its unit.
  for (const { name, type } of documented.parameters) {
    if ((type === undefined || isNumber(type)) && !named.includes(name)) {
      faults.push(`${where}: has no @param ${name}, which is a number`);
    }
  }
  const typeOf = new Map(documented.parameters.map(({ name, type }) => [name, type]));
  for (const { text } of parameters) {
    const lacking = !HAS_MEANING.test(text) || lacksUnit(text, typeOf.get(text.split(/\s/)[0] as string));
    if (lacking) faults.push(`${where}: @param ${text} — lacks its meaning or its [unit]`);
  }

  const returns = tags.filter((tag) => tag.name === 'returns');
  const numeric = documented.returns === undefined || isNumber(documented.returns);
  if (returns.length > 1 || (numeric && returns.length === 0)) {
    faults.push(`${where}: has ${returns.length} @returns, one is wanted`);
  }
  for (const { text } of returns) {
    const lacking = text === '' || lacksUnit(text, documented.returns);
    if (lacking) faults.push(`${where}: @returns ${text} — lacks its meaning or its [unit]`);
  }

  const sources = sourceIdsOf(documented.docblock);
  if (sources.length === 0 && statesFormula(documented.docblock)) faults.push(`${where}: has no @source`);
  for (const id of sources) {
    if (!sourceIds.has(id)) faults.push(`${where}: @source ${id} is not in reference/sources.json`);
  }

  for (const tag of tags) {
    if (tag.name === 'example' && !/\S\s+\/\/\s+\S/.test(tag.text)) {
      faults.push(`${where}: @example ${tag.text} — lacks its value, "call // value"`);
    }
  }
  return faults;
}

/** The ids after every @source of a docblock or a one-line comment. */
export function sourceIdsOf(text: string): string[] {
  return [...text.matchAll(/@source[ \t]+([a-z0-9-]+(?:,\s*[a-z0-9-]+)*)/g)].flatMap((match) =>
    (match[1] as string).split(/,\s*/),
  );
}

/** The examples of a docblock: an expression and its value as printed. */
export function examplesOf(documented: DocumentedFunction): Example[] {
  if (documented.docblock === undefined) return [];
  return tagsOf(documented.docblock)
    .tags.filter((tag) => tag.name === 'example')
    .map((tag) => {
      const cut = tag.text.lastIndexOf(' // ');
      return { expression: tag.text.slice(0, cut).trim().replace(/;$/, ''), printed: tag.text.slice(cut + 4).trim() };
    });
}

function evaluated(expression: string, scope: Readonly<Record<string, unknown>>): unknown {
  const names = Object.keys(scope);
  return new Function(...names, `"use strict"; return (${expression});`)(...names.map((name) => scope[name]));
}

/**
 * How far a value may lie from its print: half a unit of the last printed digit. A bare whole number of one or two
 * digits is meant exactly.
 */
export function printedTolerance(printed: string): number {
  const match = /^-?(\d+)(?:\.(\d+))?(?:e([+-]?\d+))?$/i.exec(printed.replaceAll('_', ''));
  if (match === null) return 0;
  const decimals = (match[2] ?? '').length;
  if (decimals === 0 && match[3] === undefined && (match[1] as string).length < 3) return 1e-9;
  return 0.5 * 10 ** (Number(match[3] ?? 0) - decimals) * (1 + 1e-9);
}

function agrees(value: unknown, wanted: unknown, tolerance: number): boolean {
  if (typeof value === 'number' && typeof wanted === 'number') {
    return Object.is(value, wanted) || Math.abs(value - wanted) <= tolerance;
  }
  if (Array.isArray(value) && Array.isArray(wanted)) {
    return value.length === wanted.length && value.every((item, index) => agrees(item, wanted[index], 1e-9));
  }
  if (typeof value === 'object' && value !== null && typeof wanted === 'object' && wanted !== null) {
    return JSON.stringify(value) === JSON.stringify(wanted);
  }
  return Object.is(value, wanted);
}

/** What is wrong with an example when it is run, or undefined. */
export function exampleFault(
  documented: DocumentedFunction,
  example: Example,
  scope: Readonly<Record<string, unknown>>,
): string | undefined {
  const where = `${documented.file} ${documented.name}: @example ${example.expression}`;
  try {
    const wanted = evaluated(example.printed, {});
    const value = evaluated(example.expression, scope);
    if (agrees(value, wanted, printedTolerance(example.printed))) return undefined;
    return `${where} gives ${typeof value === 'number' ? value : JSON.stringify(value)}, the docblock says ${example.printed}`;
  } catch (error) {
    return `${where} fails: ${error instanceof Error ? error.message : String(error)}`;
  }
}
