import { readdirSync, readFileSync } from 'node:fs';

const FOLDER = new URL('../../reference/tables/', import.meta.url);

export type Row = Readonly<Record<string, string>>;

export function tableNames(): string[] {
  return readdirSync(FOLDER)
    .filter((file) => file.endsWith('.csv'))
    .map((file) => file.replace('.csv', ''));
}

/** The rows of a table; its cells hold no commas and no quotes. */
export function tableRows(name: string): readonly Row[] {
  const [head = '', ...lines] = readFileSync(new URL(`${name}.csv`, FOLDER), 'utf8')
    .trim()
    .split('\n');
  const keys = head.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    if (cells.length !== keys.length) throw new Error(`${name}: ${line} has ${cells.length} cells, not ${keys.length}`);
    return Object.fromEntries(keys.map((key, index) => [key, cells[index] as string]));
  });
}

/** A cell as a number; a share may be written 2/3. */
export function number(row: Row, key: string): number {
  const cell = row[key];
  if (cell === undefined || cell === '') throw new Error(`no ${key} in ${JSON.stringify(row)}`);
  const [over, under] = cell.split('/');
  const value = under === undefined ? Number(over) : Number(over) / Number(under);
  if (!Number.isFinite(value)) throw new Error(`${key} is ${cell}`);
  return value;
}
