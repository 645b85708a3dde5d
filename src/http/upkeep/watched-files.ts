import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';

export interface Watch {
  close(): void;
}

async function stateOf(path: string): Promise<string> {
  try {
    const found = await stat(path, { bigint: true });
    if (!found.isDirectory()) return `${path} ${found.ino} ${found.size} ${found.mtimeNs} ${found.ctimeNs}`;
    const names = (await readdir(path)).sort();
    const inside = await Promise.all(
      names.map(async (name) => {
        const file = await stat(join(path, name), { bigint: true }).catch(() => undefined);
        return file === undefined ? `${name} ?` : `${name} ${file.ino} ${file.size} ${file.mtimeNs} ${file.ctimeNs}`;
      }),
    );
    // The folder's own time tells of a file that came and went between two looks, and may have been read meanwhile.
    return `${path} ${found.ino} ${found.mtimeNs} ${found.ctimeNs} ${inside.join('\n')}`;
  } catch (error) {
    return `${path} ${(error as { code?: string }).code}`;
  }
}

/**
 * Calls back when one of some files, or a file in one of some folders, is another than when this was called. It looks
 * at intervals: notices from the system do not come from every disk, nor where a folder is swapped behind a link.
 * Whoever reads the files after this has resolved misses no change.
 */
export async function watchedFiles(
  paths: readonly string[],
  everyMilliseconds: number,
  changed: () => void,
): Promise<Watch> {
  const state = async () => (await Promise.all(paths.map(stateOf))).join('\n');
  let before = await state();
  let closed = false;
  let timer: NodeJS.Timeout;
  const look = async () => {
    const now = await state();
    if (closed) return;
    if (now !== before) {
      before = now;
      changed();
    }
    timer = setTimeout(look, everyMilliseconds).unref();
  };
  timer = setTimeout(look, everyMilliseconds).unref();
  return {
    close() {
      closed = true;
      clearTimeout(timer);
    },
  };
}
