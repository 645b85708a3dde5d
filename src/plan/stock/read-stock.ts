import { z } from 'zod';
import type { UnitSystem } from '../../foundation/index.ts';
import { STAND_IN_METHOD } from '../../methods/index.ts';
import { FIELDS, placeAsSent, renamed } from '../../words/index.ts';
import { type Fault, faultAt, isObject, pointerTo } from '../faults/fault.ts';
import { givenWords } from '../faults/given-words.ts';
import { nearestName } from '../faults/nearest-name.ts';
import { readPlan } from '../read-plan.ts';
import { choice, optional, remarks, text } from '../schema/field-schemas.ts';
import { cableSchema, loadSchema } from '../schema/load-schema.ts';
import { ratingSchema } from '../schema/rating-schema.ts';
import { mastSchema, rotatorSchema, towerSchema } from '../schema/tower-schema.ts';

export const STOCK_KINDS = ['tower', 'mast', 'rotator', 'load', 'cable'] as const;
export type StockKind = (typeof STOCK_KINDS)[number];

/** Members of a plan that belong together, to be put into one. */
const stockFragmentSchema = z
  .object({
    tower: optional(towerSchema),
    mast: optional(mastSchema),
    rotator: optional(rotatorSchema),
    loads: optional(z.array(loadSchema)),
    cables: optional(z.array(cableSchema)),
    ratings: optional(z.array(ratingSchema)),
  })
  .meta({ description: 'Members of a plan that belong together; loads without a height are given one in the plan' });

/** A file of things that a club owns. */
const stockFileSchema = z
  .strictObject({
    title: optional(text({ description: 'Name of the tower, mast or rotator of this file' })),
    units: choice(FIELDS.plan.units),
    ...stockFragmentSchema.shape,
    ...remarks(FIELDS.plan),
  })
  .meta({ description: 'Things that a club owns, each with the source of its figures' });

/** Members of a plan. */
export type StockFragment = Readonly<Record<string, unknown>>;

/** One thing that a club owns. */
export interface StockEntry {
  readonly kind: StockKind;
  readonly title: string;
  readonly units: UnitSystem;
  /** Where its figures are from. */
  readonly source: string;
  readonly fragment: StockFragment;
}

export type StockReading =
  | { readonly ok: true; readonly entries: readonly StockEntry[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

type Fields = Readonly<Record<string, unknown>>;

const NAMES = Object.keys(stockFileSchema.shape);
const SINGLE = ['tower', 'mast', 'rotator'] as const;
const LISTS = ['loads', 'cables', 'ratings'] as const;

/** A site that the figures are read beside; nothing of it stays. */
const BESIDE = { method: STAND_IN_METHOD, site: { wind: 100, exposure: 'C' } };
const TALL_ENOUGH = '30 ft';

/**
 * Reads a file of things that a club owns: the members of a plan, without a site. Each thing needs a source, its own
 * or that of the file; a load needs no height, since that is the plan's.
 *
 * @param document anything, as parsed from JSON
 * @returns each thing as a part of a plan, or everything that is wrong
 * @example readStock({ units: 'us', loads: [{ name: 'beam', area: 5.5, source: 'sheet 3' }] }).entries[0].title // 'beam'
 */
export function readStock(document: unknown): StockReading {
  if (!isObject(document)) {
    const says = 'A file of stock is one JSON object.';
    return { ok: false, faults: [faultAt('#', 'wrong-type', givenWords(document), 'an object', says)] };
  }
  const fields: Fields = renamed(document);
  const foreign = Object.keys(fields).filter((key) => !NAMES.includes(key));
  const faults = foreign.map(foreignField);
  const { title: _title, ...rest } = Object.fromEntries(
    NAMES.filter((key) => key in fields).map((key) => [key, fields[key]]),
  );
  const beside = {
    ...BESIDE,
    ...rest,
    ...('tower' in rest ? {} : { tower: { support: 'free', top: TALL_ENOUGH } }),
    ...(Array.isArray(rest['loads']) ? { loads: rest['loads'].map((load) => hungUp(load, rest['tower'])) } : {}),
  };
  const reading = readPlan('title' in fields ? { title: fields['title'], ...beside } : beside);
  if (!reading.ok) faults.push(...reading.faults);
  faults.push(...unsourced(fields), ...misfits(fields));
  const placed = ({ pointer }: Fault) => `#${placeAsSent(pointer.slice(1), document)}`;
  return faults.length > 0
    ? { ok: false, faults: faults.map((fault) => ({ ...fault, pointer: placed(fault) })) }
    : { ok: true, entries: entriesOf(fields) };
}

function foreignField(key: string): Fault {
  const nearest = nearestName(key, NAMES);
  const advice = nearest === undefined ? `it has ${NAMES.join(', ')}` : `did you mean "${nearest}"?`;
  const shown = givenWords(key);
  const says = `There is no field ${shown} in a file of stock: ${advice}`;
  return faultAt(`#${pointerTo('', key)}`, 'unknown-field', shown, NAMES.join(', '), says);
}

/** A load with a height to be read at; its own, if it has one. */
function hungUp(load: unknown, tower: unknown): unknown {
  if (typeof load !== 'object' || load === null || 'height' in load || 'above' in load) return load;
  const top = typeof tower === 'object' && tower !== null && 'top' in tower ? tower.top : TALL_ENOUGH;
  return { ...load, height: top };
}

function said(value: unknown): value is string {
  return typeof value === 'string' && value.trim() !== '';
}

/** Every thing in a file, with its pointer. */
function thingsIn(fields: Fields): { readonly at: string; readonly thing: Fields }[] {
  const single = SINGLE.map((name) => ({ at: `/${name}`, thing: fields[name] }));
  const listed = LISTS.flatMap((name) => {
    const list = fields[name];
    return Array.isArray(list) ? list.map((thing: unknown, index) => ({ at: `/${name}/${index}`, thing })) : [];
  });
  return [...single, ...listed].filter((each): each is { at: string; thing: Fields } => isObject(each.thing));
}

function unsourced(fields: Fields): Fault[] {
  if (said(fields['source'])) return [];
  const says = 'Say where these figures are from: a source here, or one for the whole file beside units.';
  return thingsIn(fields)
    .filter(({ thing }) => !said(thing['source']))
    .map(({ at }) => faultAt(`#${at}/source`, 'missing', 'nothing', 'text', says));
}

/** What a file as a whole lacks. */
function misfits(fields: Fields): Fault[] {
  const faults: Fault[] = [];
  const things = thingsIn(fields);
  const main = SINGLE.find((name) => name in fields);
  if (things.length === 0) {
    const says = `A file of stock holds at least one of ${[...SINGLE, ...LISTS].join(', ')}.`;
    faults.push({ pointer: '#', code: 'missing', given: 'nothing', allowed: 'a thing', says });
  }
  if (main !== undefined && !said(fields['title'])) {
    const says = `Give the ${main} a title: what the club calls it.`;
    faults.push({ pointer: '#/title', code: 'missing', given: 'nothing', allowed: 'text', says });
  }
  if ('ratings' in fields && main === undefined) {
    const says = 'Ratings go with a tower, a mast or a rotator: give that too.';
    faults.push({ pointer: '#/ratings', code: 'goes-with', given: 'ratings', allowed: 'with a tower', says });
  }
  return faults;
}

function entriesOf(fields: Fields): StockEntry[] {
  const units = fields['units'] as UnitSystem;
  const ofFile = said(fields['source']) ? fields['source'] : undefined;
  const withSource = (thing: Fields): Fields => (said(thing['source']) ? thing : { ...thing, source: ofFile });
  const list = (name: (typeof LISTS)[number]) => ((fields[name] ?? []) as readonly Fields[]).map(withSource);
  const entry = (kind: StockKind, title: unknown, fragment: StockFragment, thing: Fields): StockEntry => ({
    kind,
    title: String(title).trim(),
    units,
    source: String(thing['source']),
    fragment,
  });

  const entries: StockEntry[] = [];
  const main = SINGLE.find((name) => name in fields);
  const cables = list('cables');
  if (main !== undefined) {
    const parts = SINGLE.filter((name) => name in fields).map(
      (name) => [name, withSource(fields[name] as Fields)] as const,
    );
    const fragment = {
      ...Object.fromEntries(parts),
      ...(main === 'tower' && cables.length > 0 ? { cables } : {}),
      ...('ratings' in fields ? { ratings: list('ratings') } : {}),
    };
    entries.push(entry(main, fields['title'], fragment, parts[0]?.[1] ?? {}));
  }
  if (main !== 'tower') {
    entries.push(...cables.map((cable) => entry('cable', cable['name'] ?? 'lines', { cables: [cable] }, cable)));
  }
  return [...entries, ...list('loads').map((load) => entry('load', load['name'] ?? 'load', { loads: [load] }, load))];
}
