import { readdir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { FastifyBaseLogger } from 'fastify';
import type { StockEntry } from '../../plan/index.ts';
import { readingFault } from '../keys/keys-file.ts';
import { type Watch, watchedFiles } from '../upkeep/watched-files.ts';
import { isStockFile, readStockFile, type StockFault, type StockFileReading } from './stock-file.ts';

const FILES_AT_MOST = 200;
const FILE_SIZE_AT_MOST = 1_000_000;

/** An entry and the name it keeps from one reading to the next. */
export interface OfferedEntry extends StockEntry {
  readonly id: string;
}

export interface StockState {
  readonly entries: readonly OfferedEntry[];
  readonly faults: readonly StockFault[];
}

const slug = (words: string): string =>
  words
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '') || 'thing';

function named(files: ReadonlyMap<string, readonly StockEntry[]>): OfferedEntry[] {
  const taken = new Set<string>();
  return [...files].flatMap(([file, entries]) =>
    entries.map((entry) => {
      const wanted = `${slug(file.replace(/(\.(us|si))?\.\w+$/i, ''))}/${slug(entry.title)}`;
      let id = wanted;
      for (let count = 2; taken.has(id); count += 1) id = `${wanted}-${count}`;
      taken.add(id);
      return { id, ...entry };
    }),
  );
}

const stockFilesIn = async (path: string): Promise<string[]> => (await readdir(path)).filter(isStockFile).sort();

async function readNamed(folder: string, name: string): Promise<StockFileReading> {
  try {
    const path = join(folder, name);
    const { size } = await stat(path);
    if (size > FILE_SIZE_AT_MOST) {
      const says = `It has ${size} bytes; a file of stock has at most ${FILE_SIZE_AT_MOST}.`;
      return { ok: false, faults: [{ file: name, says }] };
    }
    return readStockFile(name, await readFile(path, 'utf8'));
  } catch (error) {
    return { ok: false, faults: [{ file: name, says: `It ${readingFault(error)}.` }] };
  }
}

/** What is wrong in a folder of stock, a line each; for whoever looks before the service is started. */
export async function stockFaults(path: string): Promise<readonly string[]> {
  if (path === '') return [];
  try {
    const readings = await Promise.all((await stockFilesIn(path)).map((name) => readNamed(path, name)));
    const faults = readings.flatMap((reading) => (reading.ok ? [] : reading.faults));
    return faults.map(({ file, at, says }) => `${file}${at === undefined ? '' : ` ${at}`}: ${says}`);
  } catch (error) {
    return [`The folder of stock ${readingFault(error)}.`];
  }
}

/**
 * The club's own towers and antennas, from a folder that is read anew when it changes. A file that goes bad is
 * reported, and what it last held in good order stays; so does all of it when the folder cannot be read.
 */
export class StockFolder {
  readonly #path: string;
  readonly #log: FastifyBaseLogger;
  #files: ReadonlyMap<string, readonly StockEntry[]> = new Map();
  #state: StockState = { entries: [], faults: [] };
  #watch: Watch | undefined;
  #reading: Promise<void> = Promise.resolve();

  private constructor(path: string, log: FastifyBaseLogger) {
    this.#path = path;
    this.#log = log;
  }

  static async watching(path: string, log: FastifyBaseLogger, everyMilliseconds: number): Promise<StockFolder> {
    const folder = new StockFolder(path, log);
    if (path === '') return folder;
    folder.#watch = await watchedFiles([path], everyMilliseconds, () => {
      folder.#reading = folder.#reading.then(() => folder.#read());
    });
    await folder.#read();
    return folder;
  }

  get state(): StockState {
    return this.#state;
  }

  close(): void {
    this.#watch?.close();
  }

  async #read(): Promise<void> {
    const files = new Map<string, readonly StockEntry[]>();
    const faults: StockFault[] = [];
    try {
      const names = await stockFilesIn(this.#path);
      if (names.length > FILES_AT_MOST) {
        const says = `The folder holds ${names.length} files of stock; the first ${FILES_AT_MOST} by name are read.`;
        faults.push({ file: '', says });
      }
      for (const name of names.slice(0, FILES_AT_MOST)) {
        const reading = await readNamed(this.#path, name);
        const before = this.#files.get(name);
        if (reading.ok) files.set(name, reading.entries);
        else {
          faults.push(...reading.faults);
          if (before !== undefined) files.set(name, before);
        }
      }
      this.#files = files;
    } catch (error) {
      faults.push({ file: '', says: `The folder of stock ${readingFault(error)}.` });
    }
    this.#state = { entries: named(this.#files), faults };
    const count = { files: this.#files.size, entries: this.#state.entries.length };
    if (faults.length === 0) this.#log.info(count, 'stock is read');
    else this.#log.error({ ...count, faults }, 'stock does not fit; what was read before in good order stays');
  }
}
