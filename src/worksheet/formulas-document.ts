import { DISPLAY_UNITS, formulas, type Known, WORDS_FOR_KNOWN } from '../foundation/index.ts';
// The rooms define their formulas when they are loaded.
import '../margins/index.ts';

export interface FormulaDocument {
  readonly id: string;
  readonly title: string;
  readonly symbol: string;
  readonly expression: string;
  readonly units: { readonly us: string; readonly si: string };
  readonly variables: readonly {
    readonly symbol: string;
    readonly meaning: string;
    readonly units: { readonly us: string; readonly si: string };
    readonly list: boolean;
  }[];
  readonly source: string;
  readonly clause: string;
  readonly known: Known;
  readonly knownInWords: string;
}

/** Everything the service computes with, as it shows it. */
export function formulasDocument(): readonly FormulaDocument[] {
  const units = (dimension: keyof (typeof DISPLAY_UNITS)['us']) => ({
    us: DISPLAY_UNITS.us[dimension].label,
    si: DISPLAY_UNITS.si[dimension].label,
  });
  return formulas().map((formula) => ({
    id: formula.id,
    title: formula.title,
    symbol: formula.symbol,
    expression: formula.expression,
    units: units(formula.unit),
    variables: formula.variables.map((variable) => ({
      symbol: variable.symbol,
      meaning: variable.meaning,
      units: units(variable.unit),
      list: variable.list === true,
    })),
    source: formula.cite.source,
    clause: formula.cite.clause,
    known: formula.cite.known,
    knownInWords: WORDS_FOR_KNOWN[formula.cite.known],
  }));
}
