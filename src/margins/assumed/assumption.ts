import type { CheckInput } from '../check-input.ts';
import type { CheckKindName } from '../checks/check.ts';
import type { Assumed } from './assumed.ts';

/** Something not given, read at both ends of what is plausible at a station of its kind. */
export interface Assumption extends Assumed {
  /** The owner's name of what it is about. */
  readonly name?: string;
  readonly readings: readonly Reading[];
  /** Further ones between, where what asks most may lie: checks go by them, nobody is asked. */
  readonly between?: readonly Reading[];
}

/** One plausible reading of it. */
export interface Reading {
  /** In SI, where it is a quantity; else a word of the field. */
  readonly value: number | string;
  /** The plan with this said. */
  readonly said: (input: CheckInput) => CheckInput;
}

/** The check that an answer to it is told of. */
export type AskedOf = 'tower' | 'mast' | 'ice';

/** All that sets one kind of assumed thing apart. */
export interface AssumptionKind {
  /**
   * What it may plausibly be: that which asks most first, that which asks least last; none where it does not matter to this
   * plan, or where the model itself reads it, at every level the worse.
   */
  readonly readings: (input: CheckInput, at: string) => readonly Reading[];
  /** Further ones between them, where what asks most may lie there. */
  readonly between?: (input: CheckInput) => readonly Reading[];
  /** It is how the tower sways. */
  readonly sways?: true;
  /** The checks that it moves. */
  readonly moves: readonly CheckKindName[];
  readonly asked: AskedOf;
  /** What of the plan it is about. */
  readonly name?: (input: CheckInput, at: string) => string | undefined;
}
