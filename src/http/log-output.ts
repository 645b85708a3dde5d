import { write, writeSync } from 'node:fs';
import type { DestinationStream } from 'pino';

/** What is held while it cannot be written; what comes then is left out, rather than held without end [bytes]. */
const HELD_AT_MOST = 1_000_000;
/** Until a pipe that is full is tried again [ms]. */
const AGAIN_AFTER = 50;
/** A write that takes longer has no reader [ms]. */
const HANGS_AFTER = 1_000;

/**
 * Lines to a file descriptor. Nothing here waits for a line to be written: a full disk behind it, or a reader that no
 * longer reads, costs lines of the log, never the service.
 */
export class LogOutput implements DestinationStream {
  readonly #descriptor: number;
  #held: Buffer[] = [];
  #size = 0;
  #writing = false;
  /** When the write under way began [ms]. */
  #begun = 0;
  #closed = false;

  constructor(descriptor: number) {
    this.#descriptor = descriptor;
    process.once('exit', () => this.#last());
  }

  write(line: string): void {
    const bytes = Buffer.from(line);
    if (this.#closed || this.#size + bytes.length > HELD_AT_MOST) return;
    this.#held.push(bytes);
    this.#size += bytes.length;
    if (!this.#writing) this.#next();
  }

  #next(): void {
    if (this.#held.length === 0) return;
    const bytes = Buffer.concat(this.#held);
    this.#held = [];
    this.#writing = true;
    this.#begun = performance.now();
    write(this.#descriptor, bytes, (error, written) => {
      this.#writing = false;
      if (error?.code === 'EAGAIN') {
        this.#held.unshift(bytes);
        this.#writing = true;
        setTimeout(() => {
          this.#writing = false;
          this.#next();
        }, AGAIN_AFTER).unref();
        return;
      }
      // Nobody is there any more to read.
      if (error?.code === 'EPIPE') this.#closed = true;
      const rest = error === null ? bytes.subarray(written) : Buffer.alloc(0);
      this.#size -= bytes.length - rest.length;
      if (rest.length > 0) this.#held.unshift(rest);
      this.#next();
    });
  }

  /** What is left when the process ends. */
  #last(): void {
    // A write that hangs would keep the process from ending, after all its work is done.
    if (this.#writing && performance.now() - this.#begun > HANGS_AFTER) process.kill(process.pid, 'SIGKILL');
    if (this.#closed || this.#held.length === 0) return;
    try {
      writeSync(this.#descriptor, Buffer.concat(this.#held));
    } catch {
      // The lines are lost with the process; there is nowhere left to say so.
    }
  }
}
