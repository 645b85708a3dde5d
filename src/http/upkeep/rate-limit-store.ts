import type { FastifyRateLimitStore } from '@fastify/rate-limit';

interface Window {
  count: number;
  /** When it began, by a clock that is never set [ms]. */
  begun: number;
}

/** Callers remembered at once; the one not seen for longest is forgotten first. */
const CALLERS_AT_MOST = 20_000;

/**
 * Counts requests by caller. The windows go by a clock that only moves forward: when the machine's clock is set back,
 * nobody stays shut out until it has caught up.
 */
export class RateLimitStore implements FastifyRateLimitStore {
  readonly #windows = new Map<string, Window>();
  readonly #now: () => number;

  constructor(_options?: unknown, now: () => number = () => performance.now()) {
    this.#now = now;
  }

  incr(
    key: string,
    callback: (error: Error | null, result?: { current: number; ttl: number }) => void,
    timeWindow: number,
  ): void {
    const now = this.#now();
    const before = this.#windows.get(key);
    const window = before !== undefined && now - before.begun < timeWindow ? before : { count: 0, begun: now };
    window.count += 1;
    this.#windows.delete(key);
    this.#windows.set(key, window);
    if (this.#windows.size > CALLERS_AT_MOST) this.#windows.delete(this.#windows.keys().next().value as string);
    callback(null, { current: window.count, ttl: timeWindow - (now - window.begun) });
  }

  child(): RateLimitStore {
    return new RateLimitStore(undefined, this.#now);
  }
}
