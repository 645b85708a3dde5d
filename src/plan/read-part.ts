import type { UnitSystem } from '../foundation/index.ts';
import type { CheckInput, Rating } from '../margins/index.ts';
import { METHOD_BY_ID, SITE_METHODS, STAND_IN_METHOD } from '../methods/index.ts';
import { type EntryWarning, type Fault, faultAt, isObject } from './faults/fault.ts';
import { givenWords } from './faults/given-words.ts';
import { BOUNDS } from './quantities/field-bounds.ts';
import { type PlanOptions, readPlan } from './read-plan.ts';
import { PlanReader } from './reading/plan-reader.ts';

/** A part of a plan in SI; what was not given stands in only so that the rest can be read. */
export interface Part {
  readonly input: CheckInput;
  readonly siteGiven: boolean;
  readonly towerGiven: boolean;
}

export type PartReading<T extends Part = Part> =
  | { readonly ok: true; readonly part: T; readonly entryWarnings: readonly EntryWarning[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

type Fields = Readonly<Record<string, unknown>>;

const fieldsOf = (document: unknown): Fields | undefined => (isObject(document) ? document : undefined);

/** Stands in for a site: its speed is used by nobody, coefficients without a site are those of slow wind. */
function standInSite(method: unknown) {
  const { field, usual } = METHOD_BY_ID[SITE_METHODS.find((id) => id === method) ?? STAND_IN_METHOD].ground;
  return { wind: 100, [field]: usual };
}
const STAND_IN_TOWER = { support: 'free', top: 1 };

/**
 * Reads any part of a plan whose areas are asked for.
 *
 * @param document anything, as parsed from JSON: a plan in which all but units and method may be absent
 * @returns the part in SI, or the faults
 * @example readAreasRequest(5).ok // false
 */
export function readAreasRequest(document: unknown, options: PlanOptions = {}): PartReading {
  const fields = fieldsOf(document);
  if (!fields) return asPart(document, document, options, false);
  return asPart(document, filled(fields), options, 'site' in fields);
}

function filled(fields: Fields): Fields {
  return {
    ...fields,
    ...('site' in fields ? {} : { site: standInSite(fields['method']) }),
    ...('tower' in fields ? {} : { tower: STAND_IN_TOWER }),
  };
}

function asPart(document: unknown, complete: unknown, options: PlanOptions, siteGiven: boolean): PartReading {
  const towerGiven = fieldsOf(document) !== undefined && 'tower' in (document as Fields);
  const faults: Fault[] = towerGiven ? [] : aboveWithoutTower(document);
  const reading = readPlan(complete, options);
  if (!reading.ok) return { ok: false, faults: [...faults, ...reading.faults] };
  if (faults.length > 0) return { ok: false, faults };
  const stoodIn = (pointer: string) =>
    (!siteGiven && pointer.startsWith('#/site')) || (!towerGiven && pointer.startsWith('#/tower'));
  const entryWarnings = reading.entryWarnings.filter((query) => !stoodIn(query.pointer));
  return { ok: true, part: { input: reading.input, siteGiven, towerGiven }, entryWarnings };
}

/** Without a tower nothing tells what "above its top" is. */
function aboveWithoutTower(document: unknown): Fault[] {
  const loads = fieldsOf(document)?.['loads'];
  if (!Array.isArray(loads)) return [];
  return loads.flatMap((load: unknown, index) => {
    const above = fieldsOf(load)?.['above'];
    if (above === undefined) return [];
    const says = 'A height above the tower’s top needs a tower: give `height` above ground, or the tower.';
    return [faultAt(`#/loads/${index}/above`, 'goes-with', givenWords(above), 'with a tower', says)];
  });
}

/** A site in SI and the heights asked for [m]. */
export interface PressuresPart extends Part {
  readonly heights: readonly number[];
  /** Said by a tower or by word; else read as a pole, which credits least. */
  readonly structureGiven: boolean;
}

/**
 * Reads a site and the heights at which its wind is asked for.
 *
 * @param document anything, as parsed from JSON: a plan with a site, `heights`, and a tower or the word `structure`
 * @returns the part in SI, or the faults
 * @example readPressuresRequest(5).ok // false
 */
export function readPressuresRequest(document: unknown, options: PlanOptions = {}): PartReading<PressuresPart> {
  const fields = fieldsOf(document);
  if (!fields) return asPart(document, document, options, false) as PartReading<PressuresPart>;
  const { heights, structure, ...rest } = fields;
  const faults: Fault[] = [...structureFaults(structure)];
  const units: UnitSystem = rest['units'] === 'si' ? 'si' : 'us';
  const reader = new PlanReader(document, units, options.decimal ?? 'point');
  const read = readHeights(heights, reader);
  faults.push(...reader.faults);
  const shape =
    structure === 'lattice' ? { shape: 'lattice', faces: 3, width: 1, members: 'round' } : { shape: 'pole', width: 1 };
  const complete = 'tower' in rest ? rest : { ...rest, tower: { ...STAND_IN_TOWER, ...shape } };
  const reading = asPart(rest, complete, options, true);
  if (!reading.ok) return { ok: false, faults: [...faults, ...reading.faults] };
  if (faults.length > 0) return { ok: false, faults };
  const structureGiven = reading.part.towerGiven || structure !== undefined;
  return { ok: true, entryWarnings: reading.entryWarnings, part: { ...reading.part, heights: read, structureGiven } };
}

const HEIGHTS_AT_MOST = 200;

function readHeights(heights: unknown, reader: PlanReader): readonly number[] {
  if (!Array.isArray(heights) || heights.length === 0 || heights.length > HEIGHTS_AT_MOST) {
    const given = Array.isArray(heights) ? `${heights.length} heights` : givenWords(heights);
    const says = 'Give the heights at which the wind is asked for, as a list.';
    reader.fault('/heights', 'missing', given, `a list of 1 to ${HEIGHTS_AT_MOST} heights`, says);
    return [];
  }
  return heights.map((height: unknown, index) => {
    if (typeof height === 'number' || typeof height === 'string')
      return reader.quantity(height, '/heights', index, BOUNDS.height);
    const says = 'A height is a number or text with its unit.';
    reader.fault(`/heights/${index}`, 'wrong-type', givenWords(height), 'a height', says);
    return 0;
  });
}

/** Ratings in SI, and the wind they are to be turned into. */
export interface RatingsPart extends Part {
  readonly ratings: readonly Rating[];
  /** One unit of effective area in the wind asked for. */
  readonly target?: Rating;
}

/**
 * Reads ratings that are to be set side by side, and the wind they are to be turned into.
 *
 * @param document anything, as parsed from JSON: units, ratings, a tower or its `top` and `structure`, and `to`
 * @returns the ratings in SI, or the faults
 * @example readRatingsRequest(5).ok // false
 */
export function readRatingsRequest(document: unknown, options: PlanOptions = {}): PartReading<RatingsPart> {
  const fields = fieldsOf(document);
  if (!fields) return asPart(document, document, options, false) as PartReading<RatingsPart>;
  const { to, top, structure, ...rest } = fields;
  const faults: Fault[] = [...structureFaults(structure)];
  if (!('tower' in rest) && top === undefined) {
    const says = 'Gust factors go with the height of the tower: give its top, or the tower.';
    faults.push({ pointer: '#/top', code: 'missing', given: 'nothing', allowed: 'a height', says });
  }
  const ratings: unknown[] = Array.isArray(rest['ratings']) ? rest['ratings'] : [];
  if (ratings.length === 0) {
    const says = 'Give the ratings that are to be compared, as a list.';
    faults.push(faultAt('#/ratings', 'missing', givenWords(rest['ratings']), 'a list of ratings', says));
  }
  const shape = {
    shape: structure === 'pole' ? 'pole' : 'lattice',
    ...(structure === 'pole' ? {} : { faces: 3, members: 'round' }),
    width: 1,
  };
  const complete = {
    method: STAND_IN_METHOD,
    ...rest,
    site: standInSite(rest['method']),
    ...('tower' in rest ? {} : { tower: { support: 'free', top: top ?? 1, ...shape } }),
    ratings:
      to === undefined ? ratings : [...ratings, { of: 'tower', area: 1, areaKind: 'effective', ...fieldsOf(to) }],
  };
  const reading = asPart({ ...rest, tower: true }, complete, options, false);
  if (!reading.ok) {
    const placed = reading.faults.map((fault) => ({
      ...fault,
      pointer: pointerInRequest(fault.pointer, ratings.length),
    }));
    return { ok: false, faults: [...faults, ...placed] };
  }
  if (faults.length > 0) return { ok: false, faults };
  const read = reading.part.input.ratings;
  const target = to === undefined ? undefined : read[ratings.length];
  return {
    ok: true,
    entryWarnings: reading.entryWarnings.filter((query) => query.pointer.startsWith('#/ratings')),
    part: {
      ...reading.part,
      ratings: read.slice(0, ratings.length),
      ...(target === undefined ? {} : { target: { ...target, at: '/to' } }),
    },
  };
}

/** The wind asked for was read as one more rating, and the top as that of a tower. */
function pointerInRequest(pointer: string, ratings: number): string {
  const asRating = `#/ratings/${ratings}`;
  if (pointer === asRating || pointer.startsWith(`${asRating}/`)) return `#/to${pointer.slice(asRating.length)}`;
  return pointer === '#/tower/top' ? '#/top' : pointer;
}

function structureFaults(structure: unknown): readonly Fault[] {
  if (structure === undefined || structure === 'lattice' || structure === 'pole') return [];
  const given = givenWords(structure);
  const says = `Structure ${given}: give lattice or pole.`;
  return [faultAt('#/structure', 'not-a-choice', given, 'lattice or pole', says)];
}
