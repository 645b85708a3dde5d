import type { Citation } from './citation.ts';
import type { Formula } from './formula.ts';

/** One line of the working, in SI; the worksheet turns it into the reader's units. */
export interface Step {
  /** What the line is about, outermost first: ["your wind", "beam"]. */
  readonly about: readonly string[];
  readonly formula: Formula;
  readonly inputs: readonly (number | readonly number[])[];
  readonly value: number;
  readonly note?: string;
  /** Where the formula stands in the standard at hand, if not where it is cited from. */
  readonly cite?: Citation;
}

/** Collects the steps behind an answer. Code that computes takes `Trace | undefined`: off, it costs a test of a pointer. */
export class Trace {
  readonly steps: Step[] = [];
  readonly #about: string[] = [];

  /** Records a formula just evaluated and hands its value back. */
  step<A extends readonly unknown[]>(
    formula: Formula<A>,
    inputs: A,
    value: number,
    note?: string,
    cite?: Citation,
  ): number {
    const step = {
      about: [...this.#about],
      formula: formula as unknown as Formula,
      inputs: inputs as unknown as Step['inputs'],
      value,
    };
    this.steps.push({ ...step, ...(note === undefined ? {} : { note }), ...(cite === undefined ? {} : { cite }) });
    return value;
  }

  /** Runs `work` under a heading. */
  under<T>(heading: string, work: () => T): T {
    this.#about.push(heading);
    try {
      return work();
    } finally {
      this.#about.pop();
    }
  }
}

/**
 * Evaluates a formula and, where a trace is kept, records it.
 *
 * @param inputs its inputs in the order of its variables, SI
 * @param note a remark that stands beside the line
 * @param cite where the formula stands in the standard at hand, if not where it is cited from
 * @returns the formula's value, SI [-]
 * @example evaluate(undefined, interpolation, [5, 0, 10, 1, 2]) // 1.5
 */
export function evaluate<A extends readonly unknown[]>(
  trace: Trace | undefined,
  formula: Formula<A>,
  inputs: A,
  note?: string,
  cite?: Citation,
): number {
  const value = formula.of(...inputs);
  if (trace) trace.step(formula, inputs, value, note, cite);
  return value;
}

/**
 * Runs work under a heading of the working, if one is kept.
 *
 * @example under(undefined, 'mast', () => 2) // 2
 */
export function under<T>(trace: Trace | undefined, heading: string, work: () => T): T {
  return trace ? trace.under(heading, work) : work();
}
