/** Turns of the event loop between two that wait: Node takes one new connection a turn, and a crowd brings hundreds. */
const TURNS_BETWEEN = 4;

/** Is let in, or is not; told how long it waited [ms]. */
export type Entrance = (waited: number) => boolean;

/**
 * Lets in one after the other, in the order they came, so that no turn of the event loop holds the work of a whole crowd:
 * new connections, health and those to be sent away are seen to in between. Who comes when nobody waits goes straight in.
 */
export class WaitingLine {
  #waiting: { readonly since: number; readonly enter: Entrance }[] = [];
  #turnsLeft = 0;

  join(enter: Entrance): void {
    if (this.#turnsLeft > 0) this.#waiting.push({ since: performance.now(), enter });
    else if (enter(0)) this.#letPass();
  }

  #letPass(): void {
    this.#turnsLeft = TURNS_BETWEEN;
    setImmediate(this.#turn);
  }

  readonly #turn = (): void => {
    this.#turnsLeft = this.#waiting.length === 0 ? 0 : this.#turnsLeft - 1;
    if (this.#turnsLeft > 0) setImmediate(this.#turn);
    else this.#next();
  };

  /** Those who are not let in cost little: they all go before the next one enters. */
  #next(): void {
    const now = performance.now();
    const entered = this.#waiting.findIndex(({ since, enter }) => enter(now - since));
    this.#waiting = entered < 0 ? [] : this.#waiting.slice(entered + 1);
    if (entered >= 0) this.#letPass();
  }
}
