import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

export const PROJECT_ROOT = fileURLToPath(new URL('../..', import.meta.url));

const NOT_OURS = new Set(['node_modules', '.git', 'coverage']);

export interface ProjectFile {
  /** Path from the project's root, with slashes. */
  readonly path: string;
  readonly text: string;
}

/** The text files under a folder of the project, as they lie on the disk. */
export function projectFiles(folder: string, ending: RegExp): ProjectFile[] {
  const found: ProjectFile[] = [];
  const walk = (directory: string) => {
    for (const entry of readdirSync(directory, { withFileTypes: true })) {
      if (NOT_OURS.has(entry.name)) continue;
      const full = join(directory, entry.name);
      if (entry.isDirectory()) walk(full);
      else if (ending.test(entry.name)) {
        found.push({ path: relative(PROJECT_ROOT, full).split(sep).join('/'), text: readFileSync(full, 'utf8') });
      }
    }
  };
  walk(join(PROJECT_ROOT, folder));
  return found.sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** The names at the top of the project. */
export function topLevelNames(): string[] {
  return readdirSync(PROJECT_ROOT).filter((name) => !NOT_OURS.has(name));
}
