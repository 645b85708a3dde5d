import type { Piece } from '../../answer/index.ts';
import type { UnitSystem } from '../../foundation/index.ts';
import type { Verdict } from '../../margins/index.ts';

/** Whose words or number it is: typed by the reader, built or worked out, or the wind and nothing else. */
export type Voice = 'given' | 'built' | 'wind';

/** Words of a cell or a line, already rounded and with their unit. */
export interface Words {
  readonly text: string;
  readonly voice?: Voice;
  readonly strong?: boolean;
  /** A verdict mark stands before the words. */
  readonly mark?: Verdict;
}

export interface Column {
  readonly head: string;
  readonly unit?: string;
  readonly numeric?: boolean;
  readonly voice?: Voice;
}

/** What a worksheet is made of; every form that prints one prints each of these. */
export type Block =
  | { readonly kind: 'subheading'; readonly text: string }
  | { readonly kind: 'paragraph'; readonly words: readonly Words[]; readonly small?: boolean }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | {
      readonly kind: 'caution';
      readonly severity: 'verdict' | 'standing' | 'line';
      readonly says: string;
      readonly action?: string;
    }
  | {
      readonly kind: 'facts';
      readonly rows: readonly { readonly label: string; readonly words: Words; readonly note?: string }[];
    }
  | {
      readonly kind: 'table';
      readonly caption: string;
      /** The first column names the row. */
      readonly columns: readonly Column[];
      readonly rows: readonly (readonly Words[])[];
      readonly totals?: readonly (readonly Words[])[];
    }
  | {
      readonly kind: 'drawing';
      readonly name: string;
      readonly title: string;
      readonly svg: string;
      readonly alternative: string;
    }
  | {
      readonly kind: 'step';
      readonly symbol: string;
      readonly title: string;
      readonly expression: string;
      /** The value alone where it is one number and not a list: "31.12 psf". */
      readonly inputs: readonly { readonly symbol: string; readonly words: string; readonly value?: string }[];
      readonly value: string;
      readonly source: string;
      readonly fromMemory: boolean;
      readonly note?: string;
    }
  | {
      readonly kind: 'blanks';
      readonly rows: readonly { readonly label: string; readonly filled?: string; readonly wide?: boolean }[];
    }
  | { readonly kind: 'ticks'; readonly items: readonly string[] }
  | { readonly kind: 'remarks'; readonly label: string; readonly lines: number }
  | { readonly kind: 'seal'; readonly label: string }
  | { readonly kind: 'plan'; readonly json: string };

export interface SheetPart {
  /** Stable, for checks within the sheet. */
  readonly id: string;
  readonly heading: string;
  readonly blocks: readonly Block[];
}

/** A worksheet before it has a form: its parts in the order a plan checker reads. */
export interface Sheet {
  readonly title: string;
  /** What kind of sheet it is, for the running head. */
  readonly subject: string;
  /** None where the sheet gives no verdict on the station. */
  readonly verdict?: Verdict;
  /** The verdict sentence. */
  readonly says: readonly Piece[];
  readonly units: UnitSystem;
  readonly version: string;
  /** For the foot of every page. */
  readonly foot: string;
  readonly parts: readonly SheetPart[];
}
