import { type Assessment, assess } from './assess.ts';
import { type LoweredInput, nestedInput } from './lowered-input.ts';
import { once } from './tower-model.ts';

/** The same station with its sections slid together. */
export interface Lowered extends Omit<LoweredInput, 'input'> {
  readonly assessment: Assessment;
}

/**
 * A telescoping tower let down, checked as it then stands: by ratings stated for it so, and by those of the raised tower as far
 * as its sections bear what they were asked for there.
 *
 * @returns the lowered answer; undefined where nothing slides, or the plan does not say how low it goes
 * @throws Refusal where its sections do not nest that low
 */
export function loweredOf(own: Assessment): Lowered | undefined {
  return once(own, nestedOf);
}

function nestedOf({ input: own }: Assessment): Lowered | undefined {
  const nested = nestedInput(own);
  if (!nested) return undefined;
  const { input, ...found } = nested;
  return { assessment: assess(input), ...found };
}
