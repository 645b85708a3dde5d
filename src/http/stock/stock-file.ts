import { type Fault, readLoadTable, readStock, type StockEntry } from '../../plan/index.ts';
import { repeatedFields } from '../json-body.ts';

/** One thing that does not fit in a file of stock, in words. */
export interface StockFault {
  /** Name of the file; blank for the folder itself. */
  readonly file: string;
  /** Where in the file: a JSON pointer, or a row and its column. */
  readonly at?: string | undefined;
  readonly says: string;
}

export type StockFileReading =
  | { readonly ok: true; readonly entries: readonly StockEntry[] }
  | { readonly ok: false; readonly faults: readonly StockFault[] };

/** Faults told of one file; who mends these finds the rest. */
const FAULTS_AT_MOST = 50;

/** Which files are read, and of a table the units, which stand in its name. */
const JSON_FILE = /\.json$/i;
const TABLE_FILE = /\.(us|si)\.csv$/i;
const CSV_FILE = /\.csv$/i;

export function isStockFile(name: string): boolean {
  return !name.startsWith('.') && (JSON_FILE.test(name) || CSV_FILE.test(name));
}

const refusedBy =
  (file: string, place: (pointer: string) => string) =>
  (faults: readonly Pick<Fault, 'pointer' | 'says'>[]): StockFileReading => ({
    ok: false,
    faults: faults.slice(0, FAULTS_AT_MOST).map(({ pointer, says }) => {
      const at = place(pointer);
      return { file, ...(at === '' ? {} : { at }), says };
    }),
  });

/** Row 1 is the first below the head, as the reader of tables counts. */
function inTable(pointer: string): string {
  const [, row, column] = /^#\/loads\/(\d+)(?:\/(.*))?$/.exec(pointer) ?? [];
  if (row === undefined) return '';
  return `row ${Number(row) + 1}${column === undefined ? '' : `, ${column}`}`;
}

function jsonFile(file: string, text: string): StockFileReading {
  const refused = refusedBy(file, (pointer) => pointer.replace(/^#/, ''));
  let document: unknown;
  try {
    document = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return refused([{ pointer: '#', says: `This is not JSON: ${(error as Error).message}.` }]);
  }
  const repeated = repeatedFields(text);
  if (repeated.length > 0) return refused(repeated.map(({ pointer = '#', says }) => ({ pointer, says })));
  const reading = readStock(document);
  return reading.ok ? reading : refused(reading.faults);
}

function tableFile(file: string, text: string): StockFileReading {
  const refused = refusedBy(file, inTable);
  const units = TABLE_FILE.exec(file)?.[1]?.toLowerCase();
  if (units === undefined) {
    const says = 'Say the units of a table in its name: let it end in .us.csv or .si.csv.';
    return refused([{ pointer: '#', says }]);
  }
  const table = readLoadTable(text);
  if (!table.ok) return refused(table.faults);
  const reading = readStock({ units, loads: table.loads });
  return reading.ok ? reading : refused(reading.faults);
}

/** Reads one file of stock: JSON, or a table with a load a row. */
export function readStockFile(file: string, text: string): StockFileReading {
  return JSON_FILE.test(file) ? jsonFile(file, text) : tableFile(file, text);
}
