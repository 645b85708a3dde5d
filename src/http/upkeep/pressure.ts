import { constants, PerformanceObserver } from 'node:perf_hooks';
import { getHeapStatistics } from 'node:v8';
import type { FastifyInstance } from 'fastify';
import { Problem } from '../problems/problem.ts';
import { WaitingLine } from './waiting-line.ts';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Answered even while requests are sent away. */
    readonly underPressureToo?: boolean;
  }
}

/** Short, so that the door opens again soon after a rush [ms]. */
const SAMPLE_EVERY = 250;
/** One late sample may be a single long answer, or a machine that was busy elsewhere; a rush lasts. */
const SAMPLES_IN_A_ROW = 2;
/** Who has waited this many limits in the line is sent away at once, before samples tell of a rush. One long answer takes less. */
const LONGEST_WAIT = 4;
/** Share of the heap that may be held, beyond which the engine soon gives up. */
const HEAP_SHARE = 0.9;
const FULL_CLEARING = constants.NODE_PERFORMANCE_GC_MAJOR;
/** How often a turn is asked for, to see how late it comes [ms]. */
const TURN_EVERY = 25;

/** Seconds after which to come again; spread, so that those sent away do not come back all at once. */
const comeBackIn = () => String(1 + Math.floor(Math.random() * 4));

export interface Strain {
  /** How long work waited for its turn, mean of a sample [ms]. */
  readonly delay: number;
  /** Share of the heap that is held. */
  readonly heap: number;
}

/** Tells from samples, one after the other, whether to send requests away. */
export class Pressure {
  readonly #limit: number;
  readonly #inARow = { delay: 0, memory: 0 };

  constructor(limit: number) {
    this.#limit = limit;
  }

  sampled({ delay, heap }: Strain): void {
    this.#inARow.delay = delay > this.#limit ? this.#inARow.delay + 1 : 0;
    this.#inARow.memory = heap > HEAP_SHARE ? this.#inARow.memory + 1 : 0;
  }

  /** Why to send a request away that has waited so long already [ms], if at all. */
  cause(waited = 0): 'delay' | 'memory' | undefined {
    if (this.#inARow.delay >= SAMPLES_IN_A_ROW || waited > LONGEST_WAIT * this.#limit) return 'delay';
    return this.#inARow.memory >= SAMPLES_IN_A_ROW ? 'memory' : undefined;
  }
}

/** The share of the heap that was still held after the last full clearing; what lies about until then is no strain. */
function heapHeld(): { heap: () => number; stop: () => void } {
  let held = 0;
  const observer = new PerformanceObserver((list) => {
    const full = list
      .getEntries()
      .some((entry) => (entry as { detail?: { kind?: number } }).detail?.kind === FULL_CLEARING);
    if (!full) return;
    const { used_heap_size: used, heap_size_limit: most } = getHeapStatistics();
    held = used / most;
  });
  observer.observe({ entryTypes: ['gc'] });
  return { heap: () => held, stop: () => observer.disconnect() };
}

/** How late turns come and how long requests wait, between two samples. */
class Waits {
  #turns = 0;
  #late = 0;
  #let = 0;
  #waited = 0;

  turn(late: number): void {
    this.#turns += 1;
    this.#late += Math.max(0, late);
  }

  letIn(waited: number): void {
    this.#let += 1;
    this.#waited += waited;
  }

  /** The longer of the two means [ms]; counting begins anew. */
  take(): number {
    const delay = Math.max(this.#late / Math.max(1, this.#turns), this.#waited / Math.max(1, this.#let));
    this.#turns = this.#late = this.#let = this.#waited = 0;
    return delay;
  }
}

/** Sends requests away with 503, before they cost anything, while work waits too long or memory runs out. */
export function sendAwayUnderPressure(app: FastifyInstance, limit: number): void {
  const pressure = new Pressure(limit);
  const { heap, stop } = heapHeld();
  const line = new WaitingLine();
  const waits = new Waits();
  let [lastTurn, lastSample] = [performance.now(), performance.now()];
  // Node's own monitor leaves out the first turn after each look, which in a rush is the only one.
  const timer = setInterval(() => {
    const now = performance.now();
    waits.turn(now - lastTurn - TURN_EVERY);
    lastTurn = now;
    if (now - lastSample < SAMPLE_EVERY) return;
    lastSample = now;
    const before = pressure.cause();
    pressure.sampled({ delay: waits.take(), heap: heap() });
    // Once for a rush, not for each caller that is sent away.
    const after = pressure.cause();
    if (after !== before) {
      if (before === undefined) app.log.warn({ cause: after }, 'sending requests away');
      else app.log.warn({ cause: before }, 'letting requests in again');
    }
  }, TURN_EVERY);
  timer.unref();
  app.addHook('onClose', (_instance, done) => {
    clearInterval(timer);
    stop();
    done();
  });

  app.addHook('onRequest', (request, _reply, done) => {
    if (request.routeOptions.config.underPressureToo) return done();
    line.join((waited) => {
      const cause = pressure.cause(waited);
      if (cause === undefined) {
        waits.letIn(waited);
        done();
        return true;
      }
      app.metrics.sentAway(cause);
      const says = 'More requests came than the service can answer in good time; none is kept waiting.';
      done(new Problem('overloaded', says, { headers: { 'retry-after': comeBackIn() } }));
      return false;
    });
  });
}
