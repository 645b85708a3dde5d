import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { remember } from '../../foundation/index.ts';
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
const RARER = /[^\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Common}]/u;
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
    const letters = lettersOf(order);
    const missing = this.#missingOf(letters);
    try {
      return this.#printed(order, missing);
    } catch (error) {
      // A letter may be had alone and not where it stands; then only plain scripts are set as letters.
      const rarer = letters.filter((letter) => RARER.test(letter) && !missing.has(letter));
      if (rarer.length === 0) throw error;
      return this.#printed(order, new Set([...missing, ...rarer]));
    }
  }

  #printed(order: PaperOrder, missing: ReadonlySet<string>): Uint8Array {
    const inputs = { order: JSON.stringify(withoutMissing(order, missing)) };
    try {
      return this.#compiler.pdf({ mainFileContent: this.#template, inputs, resetRead: true }, { pdfStandard: 'ua-1' });
    } finally {
      this.#compiler.evictCache(1);
    }
  }

  /** Which of these letters no family has; each is tried once and alone, so that no sheet hangs on the one before. */
  #missingOf(letters: readonly string[]): ReadonlySet<string> {
    const had = (letter: string) => !TURNING.test(letter) && remember(this.#has, letter, () => this.#prints(letter));
    return new Set(letters.filter((letter, index) => index >= TRIED_AT_MOST || !had(letter)));
  }

  #prints(text: string): boolean {
    const lines = LOOKS.map((look) => `#text(${look}, fallback: false, sys.inputs.text)`);
    const mainFileContent = [
      '#set document(title: "letters", date: none)',
      '#show regex("\\\\p{Arabic}+"): set text(style: "normal")',
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

/** The letters that get printed, but the plainest, each once; the plan that goes along as a file is not printed. */
function lettersOf(order: PaperOrder): readonly string[] {
  const found = new Set<string>();
  mapTexts({ ...order, plan: null }, (text) => {
    for (const letter of text) if (!PLAIN.test(letter)) found.add(letter);
    return text;
  });
  return [...found];
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
