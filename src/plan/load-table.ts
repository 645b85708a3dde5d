import { type Fault, faultAt } from './faults/fault.ts';
import { nearestName } from './faults/nearest-name.ts';
import { fromFormText } from './form-text.ts';
import { loadSchema } from './schema/load-schema.ts';

/** Fields of a load that one cell of a sheet cannot hold. */
const NOT_FLAT: ReadonlySet<string> = new Set(['tubes', 'to']);
const FIELDS = Object.keys(loadSchema.shape).filter((field) => !NOT_FLAT.has(field));

const SEPARATORS = ['\t', ';', ','] as const;
type Separator = (typeof SEPARATORS)[number];

/** More rows than a plan has loads, so that the reader of plans can say that there are too many. */
const ROWS_AT_MOST = 1000;

export type LoadTable =
  | { readonly ok: true; readonly loads: readonly unknown[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * Loads as a sheet writes them: one a row, headed by the names of their fields, with commas, semicolons or tabs between
 * (RFC 4180). Blank cells are not given, blank rows vanish.
 *
 * @returns the loads as a plan has them, for `readAreasRequest` to read, or what is wrong with the table
 * @example readLoadTable('name,height,area').ok // false
 * @source rfc4180
 */
export function readLoadTable(text: string): LoadTable {
  const plain = text.replace(/^\uFEFF/, '');
  const separator = separatorOf(plain);
  const cut = cutIntoRows(plain, separator);
  if (cut === undefined)
    return refused('#', 'unreadable', 'a quote', 'each quote closed', 'The table has a quote that is not closed.');
  const [heads = [], ...rows] = cut.filter((row) => row.some((cell) => cell.trim() !== ''));
  const names = heads.map((head) => head.trim());
  const faults = headFaults(names);
  if (rows.length === 0 && faults.length === 0) {
    return refused(
      '#/loads',
      'missing',
      'no row',
      'a load a row',
      'The table has no row below its head: give a load a row.',
    );
  }
  rows.slice(0, ROWS_AT_MOST).forEach((row, index) => {
    const beyond = row.slice(names.length).findIndex((cell) => cell.trim() !== '');
    if (beyond < 0) return;
    const given = `${names.length + beyond + 1} cells`;
    const says = `Row ${index + 1} has more cells than the head has names. Put quotes round a text, or a number, that holds the separator.`;
    faults.push(faultAt(`#/loads/${index}`, 'too-many', given, `at most ${names.length}`, says));
  });
  if (faults.length > 0) return { ok: false, faults };
  const loads = rows
    .slice(0, ROWS_AT_MOST)
    .map((row) => Object.fromEntries(names.map((name, column) => [name, row[column] ?? ''] as const)));
  const document = fromFormText({ loads }) as { readonly loads?: readonly unknown[] };
  return { ok: true, loads: document.loads ?? [] };
}

function refused(...parts: Parameters<typeof faultAt>): LoadTable {
  return { ok: false, faults: [faultAt(...parts)] };
}

/** The one that stands most often in the head, where names hold none of them. */
function separatorOf(text: string): Separator {
  const head = /^[^\r\n]*/.exec(text.trimStart())?.[0] ?? '';
  const count = (separator: string) => head.split(separator).length;
  return SEPARATORS.reduce((most, each) => (count(each) > count(most) ? each : most), ',');
}

function headFaults(names: readonly string[]): Fault[] {
  const allowed = FIELDS.join(', ');
  return names.flatMap((name, column): Fault[] => {
    const shown = name.length > 60 ? `${name.slice(0, 57)}…` : name;
    if (name === '') {
      const says = `Column ${column + 1} has no name: head it by a field of a load.`;
      return [faultAt('#/loads', 'missing', 'nothing', allowed, says)];
    }
    if (names.indexOf(name) < column) {
      const says = `Two columns are headed "${shown}": keep one.`;
      return [faultAt('#/loads', 'too-many', shown, 'each name once', says)];
    }
    if (FIELDS.includes(name)) return [];
    const nearest = nearestName(name, FIELDS);
    const advice = NOT_FLAT.has(name)
      ? 'it does not fit into one cell: give such a load as JSON.'
      : nearest === undefined
        ? `head it by one of ${allowed}.`
        : `did you mean "${nearest}"?`;
    return [
      faultAt('#/loads', 'unknown-field', shown, allowed, `Column ${column + 1} is headed "${shown}": ${advice}`),
    ];
  });
}

/** Rows of cells, quotes taken off; undefined where a quote is never closed. */
function cutIntoRows(text: string, separator: Separator): string[][] | undefined {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  const endCell = () => {
    row.push(cell);
    cell = '';
  };
  const endRow = () => {
    endCell();
    rows.push(row);
    row = [];
  };
  for (let index = 0; index < text.length; index += 1) {
    const letter = text[index] as string;
    if (quoted) {
      if (letter !== '"') cell += letter;
      else if (text[index + 1] === '"') {
        cell += '"';
        index += 1;
      } else quoted = false;
    } else if (letter === '"' && cell.trim() === '') {
      cell = '';
      quoted = true;
    } else if (letter === separator) endCell();
    else if (letter === '\n') endRow();
    else if (letter !== '\r' || text[index + 1] !== '\n') cell += letter;
  }
  if (quoted) return undefined;
  if (cell !== '' || row.length > 0) endRow();
  return rows;
}
