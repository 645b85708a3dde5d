import { getCompileCacheDir } from 'node:module';
import { setImmediate } from 'node:timers/promises';
import { Piscina } from 'piscina';
import type { DecimalSign } from '../../plan/index.ts';
import type { PostedDocument } from '../posted-document.ts';
import { Problem } from '../problems/problem.ts';
import { readOrRefuse } from '../routes/posted-plans.ts';
import { ANSWERINGS, type AnswerKind, type AskedOf } from './answers.ts';
import { withinBudget } from './budget.ts';
import type { Finished } from './finished.ts';
import type { Job, Outcome } from './worker.ts';

/** What is likely to take less is computed at once: to hand it over would cost as much [ms]. */
const AT_ONCE = 25;
/** An answer that takes longer is given up, however little was expected of it [ms]. */
const DEADLINE = 30_000;
/** Answers that may wait for a thread, for each of them. */
const WAITING = 16;
/** Memory that a thread may hold [MB]; a plan of the largest size takes a fraction of it. */
const MEMORY = 256;

export interface WorkshopOptions {
  /** Threads; 0: everything is computed between other requests. */
  readonly workers: number;
  /** For one check, as estimated [ms]. */
  readonly limit: number;
  readonly deadline?: number;
}

interface WorkshopLog {
  error(about: object, message: string): void;
}

/** Answers to plans: what is cheap at once, what is dear in threads that can be stopped, what is too dear not at all. */
export class Workshop {
  readonly #limit: number;
  readonly #deadline: number;
  readonly #pool: Piscina | undefined;
  #ready: boolean;
  #closing = false;

  constructor(log: WorkshopLog, warm: unknown, { workers, limit, deadline = DEADLINE }: WorkshopOptions) {
    this.#limit = limit;
    this.#deadline = deadline;
    this.#ready = workers === 0;
    if (workers === 0) return;
    const pool = new Piscina({
      filename: new URL('thread.mjs', import.meta.url).href,
      minThreads: workers,
      maxThreads: workers,
      maxQueue: WAITING * workers,
      // A thread that only waits must not burn its core.
      atomics: 'async',
      execArgv: [],
      // Where the service keeps no compiled files, as in a container, its threads keep none.
      env: getCompileCacheDir() === undefined ? {} : { KEEPS_COMPILED: 'yes' },
      resourceLimits: { maxOldGenerationSizeMb: MEMORY },
    });
    this.#pool = pool;
    const look = { styles: [], icon: '', home: '' };
    const first: Job<'check'> = {
      kind: 'check',
      document: warm,
      decimal: 'point',
      asked: { form: 'json', decimal: 'point', drawn: undefined, along: [], full: [], paper: undefined, look },
    };
    // As many as there are threads, so that each has read its modules before the first caller comes.
    Promise.all(Array.from({ length: workers }, () => pool.run(first))).then(
      () => {
        this.#ready = true;
      },
      (error) => {
        if (!this.#closing) log.error({ err: error }, 'the threads that compute do not start');
      },
    );
  }

  /** Whether every thread runs. */
  get ready(): boolean {
    return this.#ready;
  }

  /** Answers that wait for a thread. */
  get waiting(): number {
    return this.#pool?.queueSize ?? 0;
  }

  /**
   * The answer to what was posted; nothing where its caller is gone.
   *
   * @throws Problem for what cannot be read, would take too long, or cannot be computed
   */
  async answer<K extends AnswerKind>(
    kind: K,
    posted: PostedDocument,
    decimal: DecimalSign,
    asked: AskedOf[K],
    gone: AbortSignal,
  ): Promise<Finished | undefined> {
    const { work, answer } = readOrRefuse(ANSWERINGS[kind](posted.document, { decimal }), posted);
    const expected = withinBudget(this.#limit, work(asked));
    if (this.#pool === undefined || this.#closing || expected <= AT_ONCE) {
      // Many parts take a while; others are served in between.
      return answer(asked, () => setImmediate());
    }
    return this.#inThread(this.#pool, { kind, document: posted.document, decimal, asked }, gone);
  }

  async #inThread(pool: Piscina, job: Job, gone: AbortSignal): Promise<Finished | undefined> {
    const late = AbortSignal.timeout(this.#deadline);
    try {
      const outcome: Outcome = await pool.run(job, { signal: AbortSignal.any([gone, late]) });
      if ('finished' in outcome) return outcome.finished;
      const { code, detail, ...more } = outcome.problem;
      throw new Problem(code, detail, more);
    } catch (error) {
      if (error instanceof Problem) throw error;
      if (late.aborted) {
        throw new Problem('too-much-work', `This took longer than ${this.#deadline / 1000} seconds and was given up.`);
      }
      if (gone.aborted) return undefined;
      const { code, message } = error as { code?: string; message?: string };
      if (code === 'ERR_WORKER_OUT_OF_MEMORY') {
        throw new Problem('too-much-work', 'This took more memory than an answer may.');
      }
      if (message === 'Task queue is at limit') {
        const says = `${this.waiting} answers are waiting to be computed already.`;
        throw new Problem('overloaded', says, { headers: { 'retry-after': '2' } });
      }
      throw error;
    }
  }

  /** Finishes what is being computed. What comes meanwhile is computed without threads. */
  async close(): Promise<void> {
    this.#closing = true;
    await this.#pool?.close();
  }
}
