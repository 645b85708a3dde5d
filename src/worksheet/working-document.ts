import {
  DISPLAY_UNITS,
  type Dimension,
  displayValue,
  type Known,
  type Step,
  type UnitSystem,
  WORDS_FOR_KNOWN,
} from '../foundation/index.ts';

/** One input of a step as the reader sees it. */
export interface StepInput {
  readonly symbol: string;
  readonly meaning: string;
  readonly value: number | readonly number[];
  readonly unit: string;
}

/** One line of the working in the reader's units; it re-evaluates from what it shows. */
export interface StepDocument {
  readonly about: readonly string[];
  readonly formula: string;
  readonly title: string;
  readonly symbol: string;
  readonly expression: string;
  readonly inputs: readonly StepInput[];
  readonly value: number;
  readonly unit: string;
  readonly source: string;
  readonly clause: string;
  readonly known: Known;
  readonly knownInWords: string;
  readonly note?: string;
}

/** The working in the reader's units; a line that stands already is not written twice. */
export function workingDocument(steps: readonly Step[], system: UnitSystem): readonly StepDocument[] {
  const seen = new Set<string>();
  const documents: StepDocument[] = [];
  for (const step of steps) {
    const key = `${step.formula.id} ${JSON.stringify(step.inputs)}`;
    if (seen.has(key)) continue;
    seen.add(key);
    documents.push(stepDocument(step, system));
  }
  return documents;
}

function stepDocument(step: Step, system: UnitSystem): StepDocument {
  const { formula } = step;
  const shown = (value: number | readonly number[], unit: Dimension) =>
    typeof value === 'number'
      ? displayValue(value, unit, system)
      : value.map((each) => displayValue(each, unit, system));
  return {
    about: step.about,
    formula: formula.id,
    title: formula.title,
    symbol: formula.symbol,
    expression: formula.expression,
    inputs: formula.variables.map((variable, index) => ({
      symbol: variable.symbol,
      meaning: variable.meaning,
      value: shown(step.inputs[index] as number, variable.unit),
      unit: DISPLAY_UNITS[system][variable.unit].label,
    })),
    value: displayValue(step.value, formula.unit, system),
    unit: DISPLAY_UNITS[system][formula.unit].label,
    source: formula.cite.source,
    clause: formula.cite.clause,
    known: formula.cite.known,
    knownInWords: WORDS_FOR_KNOWN[formula.cite.known],
    ...(step.note === undefined ? {} : { note: step.note }),
  };
}
