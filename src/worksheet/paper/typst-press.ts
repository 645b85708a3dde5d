import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import type { PaperOrder } from './paper-order.ts';

const FACES = [
  ['source-serif-4', '400Regular', 'SourceSerif4_400Regular.ttf'],
  ['source-serif-4', '400Regular_Italic', 'SourceSerif4_400Regular_Italic.ttf'],
  ['source-serif-4', '500Medium', 'SourceSerif4_500Medium.ttf'],
  ['source-serif-4', '600SemiBold', 'SourceSerif4_600SemiBold.ttf'],
  ['source-serif-4', '600SemiBold_Italic', 'SourceSerif4_600SemiBold_Italic.ttf'],
  ['source-sans-3', '400Regular', 'SourceSans3_400Regular.ttf'],
  ['source-sans-3', '600SemiBold', 'SourceSans3_600SemiBold.ttf'],
] as const;

/** Families and faces as the template has them: a letter counts as had when each of these has it. */
const LOOKS = [
  'font: ("Source Serif 4", "Libertinus Serif", "DejaVu Sans Mono")',
  'font: ("Source Serif 4", "Libertinus Serif", "DejaVu Sans Mono"), weight: 500',
  'font: ("Source Serif 4", "Libertinus Serif", "DejaVu Sans Mono"), weight: 600',
  'font: ("Source Serif 4", "Libertinus Serif", "DejaVu Sans Mono"), style: "italic"',
  'font: ("Source Serif 4", "Libertinus Serif", "DejaVu Sans Mono"), style: "italic", weight: 600',
  'font: ("Source Sans 3", "Libertinus Serif", "DejaVu Sans Mono")',
  'font: ("Source Sans 3", "Libertinus Serif", "DejaVu Sans Mono"), weight: 600',
  'font: ("DejaVu Sans Mono", "Libertinus Serif", "Source Serif 4")',
] as const;

/** Marks that turn the reading direction of what follows them: shown, never obeyed. */
const TURNING = /[\u200e\u200f\u061c\u202a-\u202e\u2066-\u2069]/u;
const PLAIN = /^[\n\u0020-\u007e]$/;
/** Letters beyond the plain ones that are tried for one sheet; more cannot be told apart from noise. */
const TRIED_AT_MOST = 400;

function fileBeside(name: string): string {
  return fileURLToPath(new URL(name, import.meta.url));
}

/** The typesetter: turns orders into PDF. Everything that knows the library stands in this file. */
export class TypstPress {
  readonly #compiler: NodeCompiler;
  readonly #template = readFileSync(fileBeside('sheet.typ'), 'utf8');
  readonly #has = new Map<string, boolean>();

  constructor() {
    // Only our own letters: a sheet must not change with the machine. The library reads this when it is created.
    process.env['FONTCONFIG_FILE'] = fileBeside('no-system-fonts.xml');
    const fontBlobs = FACES.map(([family, face, file]) =>
      readFileSync(fileURLToPath(import.meta.resolve(`@expo-google-fonts/${family}/${face}/${file}`))),
    );
    this.#compiler = NodeCompiler.create({ workspace: fileBeside('.'), fontArgs: [{ fontBlobs }] });
  }

  /** One sheet as tagged PDF/UA-1; the same order gives the same bytes. */
  print(order: PaperOrder): Uint8Array {
    const missing = this.#missingIn(order);
    const inputs = { order: JSON.stringify(withoutMissing(order, missing)) };
    try {
      return this.#compiler.pdf({ mainFileContent: this.#template, inputs, resetRead: true }, { pdfStandard: 'ua-1' });
    } finally {
      this.#compiler.evictCache(1);
    }
  }

  /** Which letters of an order no family has. */
  #missingIn(order: PaperOrder): ReadonlySet<string> {
    const unknown: string[] = [];
    const missing = new Set<string>();
    const found = new Set<string>();
    eachText(order, (text) => {
      for (const letter of text) found.add(letter);
    });
    let tried = 0;
    for (const letter of found) {
      if (PLAIN.test(letter)) continue;
      tried += 1;
      if (TURNING.test(letter) || tried > TRIED_AT_MOST) missing.add(letter);
      else if (this.#has.get(letter) === undefined) unknown.push(letter);
      else if (this.#has.get(letter) === false) missing.add(letter);
    }
    this.#try(unknown);
    for (const letter of unknown) if (this.#has.get(letter) === false) missing.add(letter);
    return missing;
  }

  /** Tries letters together, then halves: nearly always all are there. */
  #try(letters: readonly string[]): void {
    if (letters.length === 0) return;
    const all = this.#prints(letters.join(' '));
    if (all || letters.length === 1) {
      for (const letter of letters) this.#has.set(letter, all);
      return;
    }
    const half = Math.ceil(letters.length / 2);
    this.#try(letters.slice(0, half));
    this.#try(letters.slice(half));
  }

  #prints(text: string): boolean {
    const lines = LOOKS.map((look) => `#text(${look}, fallback: false, sys.inputs.text)`);
    const mainFileContent = [
      '#set document(title: "letters", date: none)',
      '#show regex("\\p{Arabic}+"): set text(style: "normal")',
      ...lines,
    ].join('\n\n');
    try {
      this.#compiler.pdf({ mainFileContent, inputs: { text } }, { pdfStandard: 'ua-1' });
      return true;
    } catch {
      return false;
    }
  }
}

/** The texts of an order that get printed; the plan that goes along as a file is not. */
function eachText(order: PaperOrder, visit: (text: string) => void): void {
  mapTexts({ ...order, plan: null }, (text) => {
    visit(text);
    return text;
  });
}

function withoutMissing(order: PaperOrder, missing: ReadonlySet<string>) {
  const { plan, ...printed } = order;
  const shown = mapTexts(printed, (text, key) =>
    missing.size === 0
      ? text
      : Array.from(text, (letter) => {
          if (!missing.has(letter)) return letter;
          // A drawing has set its lines already: one letter for one.
          return key === 'svg' ? '?' : codeOf(letter);
        }).join(''),
  );
  return { ...(shown as object), plan, replaced: missing.size > 0 };
}

function codeOf(letter: string): string {
  return `(U+${(letter.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0')})`;
}

function mapTexts(value: unknown, change: (text: string, key: string) => string, key = ''): unknown {
  if (typeof value === 'string') return change(value.toWellFormed().normalize('NFC'), key);
  if (Array.isArray(value)) return value.map((each) => mapTexts(each, change, key));
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, mapTexts(each, change, name)]));
  }
  return value;
}
