import { typstMaths, typstSymbol } from '../maths/typst-maths.ts';
import type { Block, Column, Sheet, Words } from '../sheet/sheet.ts';
import { type ColumnWidths, columnWidths } from './column-widths.ts';
import { printInk } from './print-ink.ts';

export const PAPERS = ['letter', 'a4'] as const;

export type Paper = (typeof PAPERS)[number];

/** A formula or a symbol as the typesetter's maths, and in words for those who hear it. */
interface Maths {
  readonly typst: string;
  readonly says: string;
}

type Kind<K extends Block['kind']> = Extract<Block, { kind: K }>;

type PaperStep = Omit<Kind<'step'>, 'symbol' | 'expression' | 'inputs'> & {
  readonly symbol: Maths;
  readonly formula: Maths;
  readonly inputs: readonly { readonly symbol: Maths; readonly words: string }[];
};

type PaperTable = Omit<Kind<'table'>, 'columns'> & {
  readonly columns: readonly (Column & { readonly points: number })[];
  readonly size: number;
};

/** A block as the template lays it out. */
export type PaperBlock =
  | Exclude<Block, { kind: 'table' | 'step' | 'blanks' | 'plan' }>
  | PaperTable
  | PaperStep
  | {
      readonly kind: 'blanks';
      readonly rows: readonly { readonly label: string; readonly filled?: string; readonly span: number }[];
    }
  | { readonly kind: 'plan'; readonly chunks: readonly (readonly string[])[] }
  /** In two columns, down the one and then down the other. */
  | { readonly kind: 'flow'; readonly blocks: readonly PaperBlock[] }
  | {
      readonly kind: 'beside';
      /** Shares of the width; 0 is the seal's own. */
      readonly across: readonly number[];
      readonly cells: readonly (readonly PaperBlock[])[];
    };

/** What is handed to the press: a sheet cut to a paper. */
export interface PaperOrder {
  readonly paper: 'us-letter' | 'a4';
  readonly title: string;
  /** The title as the head of every page has room for it. */
  readonly running: string;
  readonly subject: string;
  readonly verdict: Sheet['verdict'] | null;
  readonly says: string;
  readonly foot: string;
  readonly version: string;
  readonly parts: readonly { readonly heading: string; readonly blocks: readonly PaperBlock[] }[];
  /** The plan itself, that goes along as a file. */
  readonly plan: string | null;
}

/** Width between the margins [pt]. */
const WIDTH: Readonly<Record<Paper, number>> = { letter: 612 - 93.6, a4: 595.27 - 93.6 };

const RUNNING_LENGTH = 30;
/** From so many rows on, facts stand in two columns. */
const LONG_FACTS = 7;
/** Of a column of the plan: less than half a page, so that it begins where one is left. */
const PLAN_LINES = 30;
const PLAN_WIDTH = 60;
const TITLE_BLOCK_COLUMNS = 5;

/** Cuts a worksheet to a paper. */
export function paperOrder(sheet: Sheet, paper: Paper): PaperOrder {
  const plan = sheet.parts.flatMap(({ blocks }) => blocks).find((block) => block.kind === 'plan');
  return {
    paper: paper === 'letter' ? 'us-letter' : 'a4',
    title: loose(sheet.title),
    running: shortened(loose(sheet.title), RUNNING_LENGTH),
    subject: sheet.subject,
    verdict: sheet.verdict ?? null,
    says: loose(sheet.says.map(({ text }) => text).join('')),
    foot: sheet.foot,
    version: sheet.version,
    parts: sheet.parts.map(({ heading, blocks }) => ({
      heading: loose(heading),
      blocks: besideEachOther(blocks.filter(saysAnything).map((block) => laidOut(block, WIDTH[paper]))),
    })),
    plan: plan?.json ?? null,
  };
}

/** A heading without words would be one too many for who hears the sheet. */
function saysAnything(block: Block): boolean {
  return block.kind !== 'subheading' || block.text.trim() !== '';
}

function shortened(text: string, length: number): string {
  const letters = Array.from(text);
  return letters.length <= length ? text : `${letters.slice(0, length - 1).join('')}…`;
}

/** Lets a long word break: names may have 200 letters and no blank. */
function loose(text: string, longest = 20): string {
  return text.replaceAll(/\s/gu, blank).replace(/\S+/gu, (word) => {
    const letters = Array.from(word);
    if (letters.length <= longest) return word;
    return letters
      .map((letter, index) =>
        index > 0 && index % (longest / 2) === 0 && !/\p{M}/u.test(letter) ? `\u200b${letter}` : letter,
      )
      .join('');
  });
}

/** A line ends where the paper does, not where a name says; a blank that holds two words together stays. */
function blank(space: string): string {
  return /[\u00a0\u202f]/u.test(space) ? space : ' ';
}

function looseWords(words: Words): Words {
  return { ...words, text: loose(words.text) };
}

function laidOut(block: Block, width: number): PaperBlock {
  switch (block.kind) {
    case 'subheading':
      return { ...block, text: loose(block.text) };
    case 'paragraph':
      return { ...block, words: block.words.map(looseWords) };
    case 'list':
    case 'ticks':
      return { ...block, items: block.items.map((item) => loose(item)) };
    case 'caution':
      return {
        ...block,
        says: loose(block.says),
        ...(block.action === undefined ? {} : { action: loose(block.action) }),
      };
    case 'facts':
      return {
        ...block,
        rows: block.rows.map((row) => ({
          label: loose(row.label),
          words: looseWords(row.words),
          ...(row.note === undefined ? {} : { note: loose(row.note) }),
        })),
      };
    case 'table':
      return table(block, width);
    case 'drawing':
      return { ...block, svg: printInk(block.svg) };
    case 'step':
      return step(block);
    case 'blanks':
      return { kind: 'blanks', rows: titleBlockRows(block.rows) };
    case 'plan':
      return { kind: 'plan', chunks: planChunks(block.json) };
    default:
      return block;
  }
}

function table(block: Kind<'table'>, width: number): PaperTable {
  const rows = [...block.rows, ...(block.totals ?? [])];
  const { points, size }: ColumnWidths = columnWidths(block.columns, rows, width);
  const cells = (each: readonly (readonly Words[])[]) => each.map((row) => row.map(looseWords));
  return {
    ...block,
    caption: loose(block.caption),
    columns: block.columns.map((column, index) => ({ ...column, points: points[index] as number })),
    rows: cells(block.rows),
    ...(block.totals === undefined ? {} : { totals: cells(block.totals) }),
    size,
  };
}

function step(block: Kind<'step'>): PaperStep {
  const symbol = (name: string): Maths => ({ typst: typstSymbol(name), says: name });
  const { symbol: name, expression, inputs, ...rest } = block;
  return {
    ...rest,
    title: loose(block.title),
    symbol: symbol(name),
    formula: {
      typst: `${typstSymbol(name)} = ${typstMaths(expression)}`,
      says: `${name} = ${expression}`,
    },
    inputs: inputs.map((input) => ({ symbol: symbol(input.symbol), words: loose(input.words) })),
    source: loose(block.source),
    ...(block.note === undefined ? {} : { note: loose(block.note) }),
  };
}

/** Fields fill rows of five; the last of a row takes what is left of it. */
function titleBlockRows(rows: Kind<'blanks'>['rows']) {
  const spans: number[] = [];
  let used = 0;
  for (const { wide } of rows) {
    const wanted = wide ? 3 : 1;
    if (used + wanted > TITLE_BLOCK_COLUMNS) {
      spans[spans.length - 1] = (spans.at(-1) ?? 0) + TITLE_BLOCK_COLUMNS - used;
      used = 0;
    }
    spans.push(wanted);
    used = (used + wanted) % TITLE_BLOCK_COLUMNS;
  }
  if (used > 0) spans[spans.length - 1] = (spans.at(-1) ?? 0) + TITLE_BLOCK_COLUMNS - used;
  return rows.map(({ label, filled }, index) => ({
    label: loose(label),
    ...(filled === undefined ? {} : { filled: loose(filled) }),
    span: spans[index] as number,
  }));
}

/** The plan in pairs of columns, each pair no higher than half a page. */
function planChunks(json: string): readonly (readonly string[])[] {
  const lines = json.split('\n').map((line) => loose(line, 40));
  const height = (line: string) => Math.max(1, Math.ceil(line.length / PLAN_WIDTH));
  const columns: string[][] = [[]];
  const total = lines.reduce((sum, line) => sum + height(line), 0);
  const each = Math.min(PLAN_LINES, Math.ceil(total / 2));
  let used = 0;
  for (const line of lines) {
    if (used > 0 && used + height(line) > each) {
      columns.push([]);
      used = 0;
    }
    columns.at(-1)?.push(line);
    used += height(line);
  }
  const chunks: string[][] = [];
  for (let index = 0; index < columns.length; index += 2) {
    chunks.push(columns.slice(index, index + 2).map((column) => column.join('\n')));
  }
  return chunks;
}

/** Puts side by side what is narrow: halves of long facts, drawings, steps, remarks and their seal. */
function besideEachOther(blocks: readonly PaperBlock[]): readonly PaperBlock[] {
  const placed: PaperBlock[] = [];
  let flow: PaperBlock[] | undefined;
  let drawn: PaperBlock[][] | undefined;
  for (let index = 0; index < blocks.length; index++) {
    const block = blocks[index] as PaperBlock;
    const next = blocks[index + 1];
    if (block.kind === 'step' || (block.kind === 'subheading' && next?.kind === 'step')) {
      if (flow === undefined) {
        flow = [];
        placed.push({ kind: 'flow', blocks: flow });
      }
      flow.push(block);
      continue;
    }
    flow = undefined;
    if (block.kind === 'drawing') {
      if (drawn === undefined) {
        drawn = [];
        placed.push({ kind: 'beside', across: [1, 1], cells: drawn });
      }
      drawn.push([block]);
      continue;
    }
    drawn = undefined;
    if (block.kind === 'facts' && block.rows.length >= LONG_FACTS) {
      const half = Math.ceil(block.rows.length / 2);
      const columns = [block.rows.slice(0, half), block.rows.slice(half)];
      placed.push({ kind: 'beside', across: [1, 1], cells: columns.map((rows) => [{ ...block, rows }]) });
    } else if (block.kind === 'remarks' && next?.kind === 'seal') {
      placed.push({ kind: 'beside', across: [1, 0], cells: [[block], [next]] });
      index++;
    } else placed.push(block);
  }
  return placed;
}
