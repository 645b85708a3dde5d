import { told, type WorkingStep } from '../answer/index.ts';
import {
  DISPLAY_UNITS,
  type Dimension,
  displayValue,
  type Step,
  type UnitSystem,
  WORDS_FOR_KNOWN,
} from '../foundation/index.ts';

/** The working in the reader's units; a line that stands already is not written twice. */
export function workingDocument(steps: readonly Step[], system: UnitSystem): readonly WorkingStep[] {
  const seen = new Set<string>();
  const documents: WorkingStep[] = [];
  for (const step of steps) {
    const key = `${step.formula.id} ${JSON.stringify(step.inputs)}`;
    if (seen.has(key)) continue;
    seen.add(key);
    documents.push(stepDocument(step, system));
  }
  return documents;
}

function stepDocument(step: Step, system: UnitSystem): WorkingStep {
  const { formula } = step;
  const shown = (value: number | readonly number[], unit: Dimension) =>
    typeof value === 'number'
      ? displayValue(value, unit, system)
      : value.map((each) => displayValue(each, unit, system));
  const { cite = formula.cite } = step;
  return told<WorkingStep>({
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
    source: cite.source,
    clause: cite.clause,
    known: cite.known,
    knownInWords: WORDS_FOR_KNOWN[cite.known],
    note: step.note,
  });
}
