import type { UnitSystem } from '../../foundation/index.ts';
import { type CheckInput, type Rating, siteWind } from '../../margins/index.ts';
import { type Tube, windStructureOf } from '../../structure/index.ts';
import type { Climate, SpeedBasis } from '../../wind/index.ts';
import type { Fault } from '../faults/fault.ts';
import { givenWords } from '../faults/given-words.ts';
import { nearestName } from '../faults/nearest-name.ts';
import { BOUNDS } from '../quantities/field-bounds.ts';
import type { DecimalSign } from '../quantities/number-text.ts';
import { readAreasRequest, readPressuresRequest, readRatingsRequest } from '../read-part.ts';
import { readPlan } from '../read-plan.ts';
import { PlanReader } from '../reading/plan-reader.ts';
import {
  CELLS,
  type CellDefinition,
  type CellId,
  type CellParameter,
  FLAT_SHAPES,
  FORM_PARAMETERS,
  RENAMED_GIVE,
  RENAMED_PARAMETERS,
  STATION_GIVES,
  type StationGives,
} from './cell-definitions.ts';
import { cellDocument, hasSite } from './cell-document.ts';
import { type CellFault, cellFault } from './cell-faults.ts';

/** What one row of a cell asks, in SI. */
export type CellQuestion =
  | { readonly cell: 'pressure'; readonly input: CheckInput; readonly height: number }
  | { readonly cell: 'force'; readonly input: CheckInput }
  | { readonly cell: 'area'; readonly input: CheckInput; readonly siteGiven: boolean }
  | { readonly cell: 'speed'; readonly speed: number; readonly from: SpeedBasis; readonly to: SpeedBasis }
  | {
      readonly cell: 'rating' | 'allowed-area';
      readonly input: CheckInput;
      readonly ratings: readonly Rating[];
      readonly target?: Rating;
    }
  | { readonly cell: 'mast-moment'; readonly tube: Tube }
  | { readonly cell: 'bundle-width'; readonly count: number; readonly diameter: number }
  | { readonly cell: 'chance'; readonly climate: Climate; readonly speed: number; readonly years: number }
  | { readonly cell: 'lower-at'; readonly holdsTo: number; readonly margin: number; readonly forecast: number }
  | { readonly cell: 'station'; readonly input: CheckInput; readonly give: StationGives };

export type CellRow =
  | { readonly ok: true; readonly question: CellQuestion }
  | { readonly ok: false; readonly faults: readonly CellFault[] };

/** The address of a cell as read. */
export interface CellReading {
  readonly units: UnitSystem;
  readonly decimal: DecimalSign;
  readonly strict: boolean;
  readonly as?: 'text' | 'csv';
  /** One; where a parameter is a list, one for each value. */
  readonly rows: readonly CellRow[];
}

/** Rows that one address may ask for; a station is a whole check. */
const rowsAtMost = (id: CellId) => (id === 'station' ? 40 : 200);

type Given = ReadonlyMap<string, string>;
type Named = Readonly<Record<string, unknown>>;

/**
 * Reads the parameters of a cell by the readers of plans, so that one set of bounds and words stands.
 *
 * @param query its parameters by name: text, or a list where one stood more than once
 * @returns its rows, each a question in SI or what does not fit
 * @example readCell('bundle-width', { count: '5', diameter: '0.405' }).rows[0].question.count // 5
 */
export function readCell(id: CellId, query: Named): CellReading {
  const definition = CELLS[id];
  const faults: CellFault[] = [];
  const given = givenTexts(definition, query, faults);
  const form = {
    units: (choiceOf('units', given, faults) ?? 'us') as UnitSystem,
    decimal: (choiceOf('decimal', given, faults) ?? 'point') as DecimalSign,
    strict: choiceOf('strict', given, faults) === '1',
  };
  const as = choiceOf('as', given, faults) as CellReading['as'];
  for (const name of Object.keys(FORM_PARAMETERS)) given.delete(name);
  const rows = rowsOf(definition, rowsAtMost(id), given, faults);
  return {
    ...form,
    ...(as === undefined ? {} : { as }),
    rows: faults.length > 0 ? [{ ok: false, faults }] : rows.map((row) => readRow(id, row, form.units, form.decimal)),
  };
}

/** Every known parameter once, as text; blank is not given. */
function givenTexts(definition: CellDefinition, query: Named, faults: CellFault[]): Map<string, string> {
  const known = [...Object.keys(definition.parameters), ...Object.keys(FORM_PARAMETERS)];
  const given = new Map<string, string>();
  for (const [key, value] of Object.entries(query)) {
    const name = newParameter(key, known);
    if (name !== key && Object.hasOwn(query, name)) faults.push(bothNames(key, name));
    else if (!known.includes(name)) faults.push(unknownParameter(name, known));
    else if (typeof value !== 'string') {
      faults.push({
        parameter: name,
        code: 'wrong-type',
        given: givenWords(value),
        allowed: 'once',
        says: `${name} is given more than once: give it once, a list as 10;20;30.`,
      });
    } else if (value.trim() !== '') given.set(name, name === 'give' ? newGive(value.trim()) : value.trim());
  }
  return given;
}

function newParameter(name: string, known: readonly string[]): string {
  const now = Object.entries(RENAMED_PARAMETERS).find(([old]) => old === name)?.[1];
  return now !== undefined && known.includes(now) ? now : name;
}

function newGive(text: string): string {
  return Object.entries(RENAMED_GIVE).find(([old]) => old === text)?.[1] ?? text;
}

function bothNames(old: string, name: string): CellFault {
  const says = `${old} and ${name} are one parameter: leave ${old} out.`;
  return { parameter: old, code: 'one-of', given: `${old} and ${name}`, allowed: name, says };
}

function unknownParameter(name: string, known: readonly string[]): CellFault {
  const shown = name.length > 60 ? `${name.slice(0, 57)}…` : name;
  const allowed = known.join(', ');
  const nearest = nearestName(name, known);
  const advice = nearest === undefined ? `give ${allowed}.` : `did you mean ${nearest}?`;
  return {
    parameter: shown,
    code: 'unknown-field',
    given: shown,
    allowed,
    says: `There is no parameter "${shown}" here: ${advice}`,
  };
}

function choiceOf(name: keyof typeof FORM_PARAMETERS, given: Given, faults: CellFault[]): string | undefined {
  const text = given.get(name);
  const { choices } = FORM_PARAMETERS[name];
  if (text === undefined || (choices as readonly string[]).includes(text)) return text;
  faults.push(notAChoice(name, text, choices));
  return undefined;
}

function notAChoice(parameter: string, text: string, choices: readonly string[]): CellFault {
  const given = givenWords(text);
  const allowed = choices.join(', ');
  const nearest = nearestName(text, choices);
  const meant = nearest === undefined ? '' : ` Did you mean ${nearest}?`;
  return {
    parameter,
    code: 'not-a-choice',
    given,
    allowed,
    says: `${parameter}: ${given} given, ${allowed} allowed.${meant}`,
  };
}

/** Lists side by side, a value of each a row; what is no list is the same in every row. */
function rowsOf(definition: CellDefinition, most: number, given: Given, faults: CellFault[]): readonly Given[] {
  const lists = new Map<string, readonly string[]>();
  for (const [name, text] of given) {
    if (definition.parameters[name]?.list && text.includes(';'))
      lists.set(
        name,
        text.split(';').map((one) => one.trim()),
      );
  }
  const [first, ...others] = [...lists];
  if (first === undefined) return [given];
  const [firstName, { length }] = first;
  const other = others.find(([, values]) => values.length !== length);
  if (other !== undefined) {
    const [name, values] = other;
    const says = `${name} is a list of ${values.length}, and ${firstName} one of ${length}: give lists of one length.`;
    faults.push({ parameter: name, code: 'wrong-type', given: `${values.length}`, allowed: `${length}`, says });
  }
  if (length > most) {
    const says = `${firstName}: a list of ${length} given, at most ${most} allowed.`;
    faults.push({
      parameter: firstName,
      code: 'too-many',
      given: `${length}`,
      allowed: `at most ${most}`,
      says,
    });
  }
  return Array.from({ length: Math.min(length, most) }, (_, index) => {
    const row = new Map<string, string>();
    for (const [name, text] of given) {
      const value = lists.has(name) ? (lists.get(name)?.[index] ?? '') : text;
      if (value !== '') row.set(name, value);
    }
    return row;
  });
}

function readRow(id: CellId, given: Given, units: UnitSystem, decimal: DecimalSign): CellRow {
  const faults = [...missingOf(id, given), ...choiceFaults(id, given)];
  const structure = given.get('structure') === 'pole' ? 'pole' : 'lattice';
  const settled = new Set(faults.map(({ parameter }) => parameter));
  const reading = readAs(id, given, units, decimal, structure);
  for (const fault of reading.ok ? [] : reading.faults) {
    if (!repeats(fault, faults, settled, given)) faults.push(fault);
  }
  if (faults.length > 0 || !reading.ok) return { ok: false, faults };
  return given.has('kd') ? withDirectionFactor(id, given, units, decimal, reading.question) : reading;
}

/** What is missing has been said; what the readers say besides would only repeat it in the words of a plan. */
function repeats(
  { parameter, code }: CellFault,
  faults: readonly CellFault[],
  settled: ReadonlySet<string | undefined>,
  given: Given,
): boolean {
  if (parameter === undefined) return faults.length > 0;
  if (faults.some((fault) => fault.parameter === parameter)) return true;
  if (settled.size === 0 || given.has(parameter)) return false;
  return code !== 'missing' || settled.has('method');
}

function missingOf(id: CellId, given: Given): CellFault[] {
  const needed = Object.entries<CellParameter>(CELLS[id].parameters).filter(([, { required }]) => required);
  const missing = needed.filter(([name]) => !given.has(name)).map(([name, { says }]) => ({ name, says }));
  if (id === 'area') {
    const names = [...(hasSite(given) ? ['method', 'speed', 'height'] : []), ...(needsLength(given) ? ['length'] : [])];
    for (const name of names) {
      if (!given.has(name)) missing.push({ name, says: CELLS.area.parameters[name]?.says ?? name });
    }
  }
  return missing.map(({ name, says }) => ({
    parameter: name,
    code: 'missing',
    given: 'nothing',
    allowed: says,
    says: `${name} is missing: ${says.charAt(0).toLowerCase()}${says.slice(1)}.`,
  }));
}

function needsLength(given: Given): boolean {
  const shape = given.get('shape');
  return shape === 'tube' || ((shape === 'lattice' || shape === 'pole') && !given.has('height'));
}

/** Choices that belong to the cell and to no plan. */
function choiceFaults(id: CellId, given: Given): CellFault[] {
  const own: readonly (readonly [string, readonly string[]])[] = [
    ...(id === 'station' ? [['give', STATION_GIVES] as const] : []),
    ...(id === 'area' ? [['shape', FLAT_SHAPES] as const] : []),
    ...('structure' in CELLS[id].parameters ? [['structure', ['lattice', 'pole']] as const] : []),
  ];
  const chosen = own.flatMap(([name, choices]) => {
    const text = given.get(name);
    return text === undefined || choices.includes(text) ? [] : [notAChoice(name, text, choices)];
  });
  const returnPeriods = id === 'chance' ? given.get('returnPeriods') : undefined;
  if (returnPeriods === undefined || returnPeriods.split(';').every((pair) => pair.split(':').length === 2))
    return chosen;
  const [shown, allowed] = [givenWords(returnPeriods), 'years and speed with a colon between, as 10:76;50:92'];
  const says = `returnPeriods: ${shown} given, ${allowed} allowed.`;
  return [...chosen, { parameter: 'returnPeriods', code: 'wrong-type', given: shown, allowed, says }];
}

type Reading =
  | { readonly ok: true; readonly question: CellQuestion }
  | { readonly ok: false; readonly faults: readonly CellFault[] };

function readAs(
  id: CellId,
  given: Given,
  units: UnitSystem,
  decimal: DecimalSign,
  structure: 'lattice' | 'pole',
): Reading {
  const document = cellDocument(id, given, units, structure);
  const refused = (faults: readonly Fault[]): Reading => ({
    ok: false,
    faults: faults.map((fault) => cellFault(id, given, document, fault)),
  });
  switch (id) {
    case 'pressure': {
      const reading = readPressuresRequest(document, { decimal });
      if (!reading.ok) return refused(reading.faults);
      const { input, heights } = reading.part;
      return { ok: true, question: { cell: id, input, height: heights[0] as number } };
    }
    case 'area': {
      const reading = readAreasRequest(document, { decimal });
      if (!reading.ok) return refused(reading.faults);
      const { input, siteGiven } = reading.part;
      return { ok: true, question: { cell: id, input, siteGiven } };
    }
    case 'rating':
    case 'allowed-area': {
      const reading = readRatingsRequest(document, { decimal });
      if (!reading.ok) return refused(reading.faults);
      return { ok: true, question: { cell: id, ...reading.part } };
    }
    default: {
      const reading = readPlan(document, { decimal });
      if (!reading.ok) return refused(reading.faults);
      return { ok: true, question: questionOf(id, given, reading.input) };
    }
  }
}

type PlanCell = Exclude<CellId, 'pressure' | 'area' | 'rating' | 'allowed-area'>;

function questionOf(id: PlanCell, given: Given, input: CheckInput): CellQuestion {
  const { site, station, wanted, ratings } = input;
  switch (id) {
    case 'force':
      return { cell: id, input };
    case 'speed': {
      const to = ratings[0]?.wind?.basis;
      return { cell: id, speed: site.speed, from: site.basis as SpeedBasis, to: to as SpeedBasis };
    }
    case 'mast-moment': {
      const { outside, wall, material, yieldStrength, ultimateStrength } = station.mast as Required<
        NonNullable<typeof station.mast>
      >;
      const tube = { outside, wall, material, yieldStrength };
      return { cell: id, tube: ultimateStrength === undefined ? tube : { ...tube, ultimateStrength } };
    }
    case 'bundle-width': {
      const { count, diameter } = station.cables[0] as (typeof station.cables)[number];
      return { cell: id, count, diameter };
    }
    case 'chance':
      return { cell: id, climate: site.climate as Climate, speed: site.speed, years: wanted.years };
    case 'lower-at':
      return { cell: id, holdsTo: site.speed, margin: wanted.margin, forecast: wanted.forecast };
    case 'station':
      return { cell: id, input, give: given.get('give') as StationGives };
  }
}

/** A direction factor says what stands in the wind: it must be the one that the method has for it. */
function withDirectionFactor(
  id: CellId,
  given: Given,
  units: UnitSystem,
  decimal: DecimalSign,
  asRead: CellQuestion,
): CellRow {
  const text = given.get('kd') as string;
  const reader = new PlanReader({ kd: text }, units, decimal);
  const factor = reader.quantity(text, '', 'kd', { ...BOUNDS.coefficient, high: 1 });
  const [fault] = reader.faults;
  if (fault) return { ok: false, faults: [{ ...fault, parameter: 'kd', says: fault.says.replace(/^Kd/, 'kd') }] };
  const named = given.get('structure');
  const factors: string[] = [];
  for (const structure of ['lattice', 'pole'] as const) {
    if (named !== undefined && named !== structure) continue;
    const reading =
      structure === named ? { ok: true as const, question: asRead } : readAs(id, given, units, decimal, structure);
    if (!reading.ok || !('input' in reading.question)) continue;
    const { input } = reading.question;
    const own = siteWind(input, windStructureOf(input.station, structure), false).directionFactor;
    if (Math.abs(own - factor) < 1e-9) return reading;
    factors.push(`${own} for a ${structure}`);
  }
  const allowed = factors.join(', ');
  const says = `kd: ${text} given, ${allowed} allowed by this method.`;
  return { ok: false, faults: [{ parameter: 'kd', code: 'not-a-choice', given: givenWords(text), allowed, says }] };
}
