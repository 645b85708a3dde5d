import { createHash, timingSafeEqual } from 'node:crypto';
import { readFileSync } from 'node:fs';

/** A key that opens the service; the key itself is not kept. */
export interface NamedKey {
  readonly name: string;
  readonly digest: Buffer;
}

interface KeysReading {
  readonly keys: readonly NamedKey[];
  /** What is wrong with the file; none of them shows a key. */
  readonly faults: readonly string[];
}

const NAME = /^[a-z0-9][a-z0-9._-]{0,39}$/i;
/** Letters that need no escaping in an address. */
const KEY = /^[\w.~-]{20,200}$/;

const digestOf = (key: string): Buffer => createHash('sha256').update(key).digest();

/** Why a file cannot be read, without its path. */
export function readingFault(error: unknown): string {
  const { code } = (error ?? {}) as { code?: unknown };
  if (code === 'ENOENT') return 'is not there';
  if (code === 'EACCES' || code === 'EPERM') return 'may not be read by the user the service runs as';
  if (code === 'EISDIR') return 'is a folder';
  if (code === 'ENOTDIR') return 'is no folder';
  if (code === 'ELOOP') return 'is a link that leads back to itself';
  return `cannot be read (${typeof code === 'string' ? code : 'unknown cause'})`;
}

/** Reads keys, one a line: a name, white space, the key; blank lines and lines that begin with # are left out. */
export function readKeys(text: string): KeysReading {
  const keys: NamedKey[] = [];
  const faults: string[] = [];
  text
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/)
    .forEach((line, index) => {
      const words = line.trim().split(/\s+/);
      const [name = '', key = ''] = words;
      if (name === '' || name.startsWith('#')) return;
      const at = `line ${index + 1}`;
      if (words.length !== 2) faults.push(`${at}: give a name, a space and the key`);
      else if (!NAME.test(name)) faults.push(`${at}: a name has letters, digits, dots, dashes, at most 40`);
      else if (!KEY.test(key)) faults.push(`${at}: a key has 20 to 200 letters out of A-Z a-z 0-9 . _ ~ -`);
      else if (keys.some((known) => known.name === name)) faults.push(`${at}: the name ${name} stands there twice`);
      else if (isAmong(keys, key)) faults.push(`${at}: the key of ${name} is that of another name too`);
      else keys.push({ name, digest: digestOf(key) });
    });
  if (keys.length === 0 && faults.length === 0) faults.push('holds no key');
  return { keys, faults };
}

export function readKeysFile(path: string): KeysReading {
  try {
    return readKeys(readFileSync(path, 'utf8'));
  } catch (error) {
    return { keys: [], faults: [`${path}: ${readingFault(error)}`] };
  }
}

/** The name of a key; every known key is compared in the same time, whichever fits. */
export function nameOfKey(keys: readonly NamedKey[], given: string): string | undefined {
  const digest = digestOf(given);
  let found: string | undefined;
  for (const key of keys) if (timingSafeEqual(key.digest, digest)) found = key.name;
  return found;
}

const isAmong = (keys: readonly NamedKey[], given: string): boolean => nameOfKey(keys, given) !== undefined;
