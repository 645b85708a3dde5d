import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROJECT_ROOT } from '../house/source-files.ts';

export interface InstalledPackage {
  readonly name: string;
  readonly version: string;
  /** As its own package.json has it, else as the lock file has it; blank where neither says. */
  readonly licence: string;
  /** Needed to run the service, not only to test it. */
  readonly runs: boolean;
  /** For some systems only. */
  readonly optional: boolean;
}

interface LockedPackage {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
  readonly integrity?: string;
}

interface LockFile {
  readonly packages: Readonly<Record<string, LockedPackage>>;
}

export function lockFile(): LockFile {
  return JSON.parse(readFileSync(join(PROJECT_ROOT, 'package-lock.json'), 'utf8')) as LockFile;
}

function licenceOf(path: string): string {
  try {
    const { license } = JSON.parse(readFileSync(join(PROJECT_ROOT, path, 'package.json'), 'utf8')) as {
      license?: string | { type?: string };
    };
    return (typeof license === 'object' ? license.type : license) ?? '';
  } catch {
    return '';
  }
}

/** Every package that the lock file names, by name and version. */
export function installedPackages(): InstalledPackage[] {
  return Object.entries(lockFile().packages)
    .filter(([path]) => path !== '')
    .map(([path, { version = '', license = '', dev = false, optional = false }]) => ({
      name: path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length),
      version,
      licence: licenceOf(path) || license,
      runs: !dev,
      optional,
    }))
    .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.version < b.version ? -1 : 1));
}
