import type { FastifyBaseLogger } from 'fastify';
import { type Watch, watchedFiles } from '../upkeep/watched-files.ts';
import { type NamedKey, nameOfKey, readKeysFile } from './keys-file.ts';

/** The keys that open the service, read anew when their file changes. A file gone bad leaves the last good keys. */
export class KeyRing {
  readonly #path: string;
  readonly #log: FastifyBaseLogger;
  #watch: Watch | undefined;
  #keys: readonly NamedKey[] = [];

  private constructor(path: string, log: FastifyBaseLogger) {
    this.#path = path;
    this.#log = log;
  }

  static async watching(path: string, log: FastifyBaseLogger, everyMilliseconds: number): Promise<KeyRing> {
    const ring = new KeyRing(path, log);
    ring.#watch = await watchedFiles([path], everyMilliseconds, () => ring.#read());
    ring.#read();
    return ring;
  }

  #read(): void {
    const { keys, faults } = readKeysFile(this.#path);
    if (faults.length > 0) {
      this.#log.error({ faults, names: this.#names() }, 'the file of keys does not fit; the keys read before stay');
      return;
    }
    this.#keys = keys;
    this.#log.info({ names: this.#names() }, 'keys are read');
  }

  #names(): readonly string[] {
    return this.#keys.map(({ name }) => name);
  }

  nameOf(given: string): string | undefined {
    return nameOfKey(this.#keys, given);
  }

  close(): void {
    this.#watch?.close();
  }
}
