import { type ChildProcess, fork } from 'node:child_process';
import { type PaperOrder, PRESS_PROGRAM, type PressAnswer } from '../../worksheet/index.ts';
import { Problem } from '../problems/problem.ts';

export interface Printing {
  /** What runs as the press. */
  readonly program: URL;
  /** Orders that may wait while one is printed. */
  readonly waiting: number;
  /** A sheet that takes longer is given up [ms]. */
  readonly sheetTime: number;
  /** The typesetter's memory creeps up, so a press is replaced after so many sheets. */
  readonly sheetsOfAPress: number;
  /** A press that nobody needs is closed after this [ms]. */
  readonly idleTime: number;
}

const AS_USUAL: Printing = {
  program: PRESS_PROGRAM,
  waiting: 8,
  sheetTime: 20_000,
  sheetsOfAPress: 200,
  idleTime: 300_000,
};

interface ShopLog {
  error(about: object, message: string): void;
}

interface Job {
  readonly order: PaperOrder;
  readonly done: (outcome: Buffer | Problem | undefined) => void;
}

interface Press {
  readonly process: ChildProcess;
  sheets: number;
}

/** Prints worksheets, one after the other, in a process of its own that can be stopped in mid-sheet. */
export class PrintShop {
  readonly #how: Printing;
  readonly #log: ShopLog;
  readonly #waiting: Job[] = [];
  #press: Press | undefined;
  #printing: Job | undefined;
  #timer: NodeJS.Timeout | undefined;
  #closed = false;

  constructor(log: ShopLog, printing: Partial<Printing> = {}) {
    this.#log = log;
    this.#how = { ...AS_USUAL, ...printing };
  }

  /** How many orders are being printed or waiting. */
  get busy(): number {
    return this.#waiting.length + (this.#printing === undefined ? 0 : 1);
  }

  /** The process that prints, while there is one. */
  get pid(): number | undefined {
    return this.#press?.process.pid;
  }

  /** One sheet as PDF; nothing, and at once, where nobody waits for it any more. Rejects with a problem. */
  print(order: PaperOrder, gone: AbortSignal): Promise<Buffer | undefined> {
    return new Promise((resolve, reject) => {
      if (this.#closed) return reject(closing());
      if (gone.aborted) return resolve(undefined);
      if (this.#printing !== undefined && this.#waiting.length >= this.#how.waiting) {
        return reject(
          new Problem('paper-busy', `${this.busy} worksheets are being printed or waiting already.`, {
            headers: { 'retry-after': '5' },
          }),
        );
      }
      const job: Job = {
        order,
        done: (outcome) => {
          gone.removeEventListener('abort', leave);
          if (outcome instanceof Problem) reject(outcome);
          else resolve(outcome);
        },
      };
      const leave = () => this.#leave(job);
      gone.addEventListener('abort', leave, { once: true });
      this.#waiting.push(job);
      this.#next();
    });
  }

  /** Stops the press; what is still asked for is refused. */
  close(): void {
    this.#closed = true;
    this.#stopPress();
    const jobs = [...(this.#printing ? [this.#printing] : []), ...this.#waiting.splice(0)];
    this.#printing = undefined;
    for (const job of jobs) job.done(closing());
  }

  #leave(job: Job): void {
    const index = this.#waiting.indexOf(job);
    if (index >= 0) {
      this.#waiting.splice(index, 1);
      job.done(undefined);
    } else if (this.#printing === job) {
      this.#stopPress();
      this.#finish(undefined);
    }
  }

  #next(): void {
    clearTimeout(this.#timer);
    if (this.#printing !== undefined) return;
    const job = this.#waiting.shift();
    if (job === undefined) {
      this.#timer = setTimeout(() => this.#stopPress(), this.#how.idleTime).unref();
      return;
    }
    this.#printing = job;
    this.#press ??= this.#startPress();
    const press = this.#press;
    press.sheets += 1;
    this.#timer = setTimeout(() => {
      this.#failed(press, `no sheet within ${this.#how.sheetTime} ms`);
    }, this.#how.sheetTime).unref();
    press.process.send(job.order, (error) => {
      if (error !== null) this.#failed(press, `the press takes no order: ${error.message}`);
    });
  }

  #startPress(): Press {
    const child = fork(this.#how.program, [], {
      execPath: process.execPath,
      execArgv: [],
      // Nothing of the service's settings concerns a press.
      env: {},
      serialization: 'advanced',
      stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
    });
    const press: Press = { process: child, sheets: 0 };
    child.on('message', (answer: PressAnswer) => this.#answered(press, answer));
    child.on('error', (error) => this.#failed(press, `the press does not run: ${error.message}`));
    child.on('exit', (code, signal) => this.#failed(press, `the press ended with ${signal ?? `code ${code}`}`));
    // A waiting press must not keep the service from ending.
    child.unref();
    child.channel?.unref();
    return press;
  }

  #stopPress(): void {
    clearTimeout(this.#timer);
    this.#press?.process.kill('SIGKILL');
    this.#press = undefined;
  }

  #answered(press: Press, answer: PressAnswer): void {
    if (press !== this.#press) return;
    if (press.sheets >= this.#how.sheetsOfAPress) this.#stopPress();
    if ('pdf' in answer) this.#finish(Buffer.from(answer.pdf));
    else {
      this.#log.error({ press: answer.failed }, 'a worksheet could not be printed');
      this.#finish(notPrinted());
    }
  }

  #failed(press: Press, words: string): void {
    if (press !== this.#press) return;
    this.#stopPress();
    if (this.#printing === undefined) return;
    this.#log.error({ press: words }, 'a worksheet could not be printed');
    this.#finish(notPrinted());
  }

  #finish(outcome: Buffer | Problem | undefined): void {
    const job = this.#printing;
    this.#printing = undefined;
    this.#next();
    job?.done(outcome);
  }
}

function closing(): Problem {
  return new Problem('closing', 'The service is being stopped.');
}

function notPrinted(): Problem {
  return new Problem('paper-failed', 'This worksheet could not be printed; as=json has the whole answer all the same.');
}
