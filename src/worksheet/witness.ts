import { createRequire } from 'node:module';
import type { EvalFunction } from 'mathjs';
import type { StepInput, WorkingStep } from '../answer/index.ts';
import { DISPLAY_UNITS, type Dimension, remember } from '../foundation/index.ts';

type Mathjs = typeof import('mathjs');

/** Whether a step's shown expression gives its shown value from its shown inputs, units and all. */
export interface Testimony {
  readonly step: WorkingStep;
  readonly evaluated: number;
  readonly agrees: boolean;
}

/** How far a re-evaluation may lie from the shown value; both are double precision. */
const TOLERANCE = 1e-9;

let evaluator: Mathjs | undefined;
const compiled = new Map<string, EvalFunction>();
/** The evaluator's word for every unit that a step may show. */
const evaluatedAs = new Map<string, string>();

function load(): Mathjs {
  if (evaluator) return evaluator;
  // The prebuilt bundle loads in a fifth of the time and memory of the package's own entry.
  const math = createRequire(import.meta.url)('mathjs/lib/browser/math.js') as Mathjs;
  math.createUnit('mph', '1 mile/hour');
  math.createUnit('psf', '1 lbf/ft^2');
  math.createUnit('ksi', '1000 lbf/in^2');
  for (const system of ['us', 'si'] as const) {
    for (const dimension of Object.keys(DISPLAY_UNITS[system]) as Dimension[]) {
      const { label, evaluates } = DISPLAY_UNITS[system][dimension];
      evaluatedAs.set(label, evaluates);
    }
  }
  evaluator = math;
  return math;
}

/** Re-evaluates steps with an independent evaluator that knows units, so that dimensions are checked too. */
export function witness(steps: readonly WorkingStep[]): readonly Testimony[] {
  const math = load();
  return steps.map((step) => {
    const scope = Object.fromEntries(step.inputs.map((input) => [input.symbol, asUnit(math, input)]));
    const expression = remember(compiled, step.expression, () => math.compile(step.expression));
    const evaluated = inUnit(expression.evaluate(scope), step.unit);
    return { step, evaluated, agrees: close(evaluated, step.value) };
  });
}

function close(one: number, other: number): boolean {
  return Math.abs(one - other) <= TOLERANCE * Math.max(1e-6, Math.abs(one), Math.abs(other));
}

function asUnit(math: Mathjs, input: StepInput): unknown {
  const unit = evaluatedAs.get(input.unit);
  if (unit === undefined) throw new Error(`the evaluator has no word for the unit ${input.unit}`);
  const one = (value: number) => (unit === '' ? value : math.unit(value, unit));
  return typeof input.value === 'number' ? one(input.value) : input.value.map(one);
}

function inUnit(result: unknown, label: string): number {
  if (typeof result === 'number') {
    if (label === '') return result;
    // A sum of nothing but zeros loses its unit.
    if (result === 0) return 0;
    throw new Error(`the expression gives a plain number where ${label} is shown`);
  }
  const unit = evaluatedAs.get(label);
  if (!unit) throw new Error(`the expression gives ${String(result)} where a plain number is shown`);
  return (result as { toNumber: (unit: string) => number }).toNumber(unit);
}
