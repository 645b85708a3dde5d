import { execFile } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';

/** What cells show, and their number where they have one, by sheet and address. */
export type RecalculatedSheets = Readonly<Record<string, Readonly<Record<string, readonly [string, number | null]>>>>;

/** The Python of the system: the bridge to LibreOffice belongs to that one. */
const PYTHON = '/usr/bin/python3';
const SCRIPT = new URL('recalculate.py', import.meta.url).pathname;

/** Opens a workbook in LibreOffice, lets it fetch what it asks for, and reads all its cells. */
export async function recalculated(workbook: Uint8Array, locale: string): Promise<RecalculatedSheets> {
  const folder = await mkdtemp(join(tmpdir(), 'gustworthy-sheet-'));
  try {
    const copy = join(folder, 'workbook.xlsx');
    await writeFile(copy, workbook);
    const { stdout } = await promisify(execFile)(PYTHON, [SCRIPT, copy, folder, locale], {
      timeout: 100_000,
      maxBuffer: 16 * 1024 * 1024,
    });
    return JSON.parse(stdout) as RecalculatedSheets;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
