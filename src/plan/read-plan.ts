import { z } from 'zod';
import { type CheckInput, heldAsRated, type Rating, type Wanted } from '../margins/index.ts';
import { METHOD_BY_ID, type SiteMethodId } from '../methods/index.ts';
import { type Load, type Station, stationsAt } from '../structure/index.ts';
import { asItWas, formatOf, inNewestFormat, PLAN_FORMAT, placeAsSent } from '../words/index.ts';
import { documentFaults } from './faults/document-faults.ts';
import type { EntryWarning, Fault } from './faults/fault.ts';
import type { DecimalSign } from './quantities/number-text.ts';
import { assumedIn } from './reading/assumed.ts';
import { notGivenIn } from './reading/not-given.ts';
import { PlanReader } from './reading/plan-reader.ts';
import { present } from './reading/present.ts';
import { readCables, readLoads } from './reading/read-loads.ts';
import { readMast, readRotator, readRotatorHeight } from './reading/read-mast.ts';
import { readRatings } from './reading/read-ratings.ts';
import { readSite } from './reading/read-site.ts';
import { readTower } from './reading/read-tower.ts';
import { type PlanDocument, planDocumentSchema } from './schema/plan-document.ts';

export interface PlanOptions {
  /** How a comma in a number is read; 'point' still takes a comma that can be nothing but a decimal sign. */
  readonly decimal?: DecimalSign;
}

export type PlanReading =
  | {
      readonly ok: true;
      /** The plan in SI, with the document's defaults filled in. */
      readonly input: CheckInput;
      /** The plan as written, in the newest format. */
      readonly document: PlanDocument;
      /** Where it came in format 1: as it was there. */
      readonly documentFormat1?: Readonly<Record<string, unknown>>;
      /** What deserves a second look, and what is kept but not computed yet. */
      readonly entryWarnings: readonly EntryWarning[];
    }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** The margin of a plan that names none. */
const DEFAULT_MARGIN = 0.1;

/** Checks the form of a document by generated code where it can; a refusal is worded by the schema itself. */
const compiledSchema = z.compile(planDocumentSchema);

/**
 * Reads a plan document into what a check needs, or says everything that is wrong with it at once.
 *
 * @param document anything, as parsed from JSON
 * @returns the inquiry in SI and the document, or the faults
 * @example readPlan(5).ok // false
 */
export function readPlan(document: unknown, options: PlanOptions = {}): PlanReading {
  const format = formatOf(document);
  if (typeof format === 'number' && format > PLAN_FORMAT) return { ok: false, faults: [newerFormat(format)] };
  const reading = readNewest(inNewestFormat(document, format), options);
  if (format !== 1) return reading;
  if (reading.ok) return { ...reading, documentFormat1: asItWas(reading.document, document) };
  const placed = ({ pointer }: Fault) => `#${placeAsSent(pointer.slice(1), document)}`;
  return { ok: false, faults: reading.faults.map((fault) => ({ ...fault, pointer: placed(fault) })) };
}

function newerFormat(format: number): Fault {
  const allowed = Array.from({ length: PLAN_FORMAT }, (_, index) => index + 1).join(' and ');
  const says = `The plan is of format ${format}, newer than this version: formats ${allowed} are read. Ask a newer version.`;
  return { pointer: '#/format', code: 'newer-format', given: String(format), allowed, says };
}

function readNewest(document: unknown, options: PlanOptions): PlanReading {
  const decimal = options.decimal ?? 'point';
  const parsed = compiledSchema.safeParse(document);
  if (parsed.success) {
    const reader = new PlanReader(parsed.data, parsed.data.units, decimal);
    const input = readCheckInput(reader, parsed.data);
    if (reader.faults.length > 0) return { ok: false, faults: eachOnce(reader.faults) };
    return { ok: true, input, document: { format: PLAN_FORMAT, ...parsed.data }, entryWarnings: reader.entryWarnings };
  }
  const { faults, rest } = documentFaults(document, parsed.error.issues);
  if (rest?.units === undefined) return { ok: false, faults };
  const reader = new PlanReader(document, rest.units, decimal);
  // What has only begun to be given is read as far as it goes.
  readCheckInput(reader, { ...rest, site: rest.site ?? {}, tower: rest.tower ?? {} } as PlanDocument);
  return { ok: false, faults: eachOnce([...faults, ...reader.faults.filter((fault) => !causedBy(fault, faults))]) };
}

/** A maker who names no standard may have meant one of the plan's own place. */
function placed(rating: Rating, method: SiteMethodId | undefined): Rating {
  if (method === undefined || rating.wind === undefined || rating.wind.method !== undefined) return rating;
  return { ...rating, wind: { ...rating.wind, place: METHOD_BY_ID[method].place } };
}

function readCheckInput(reader: PlanReader, document: PlanDocument): CheckInput {
  const site = readSite(reader, document.site, document.method);
  const rated = (document.ratings ?? []).some(({ of }) => of === 'tower');
  const tower = readTower(reader, document.tower, rated);
  const rotatorHeight = document.rotator === undefined ? undefined : readRotatorHeight(reader, document.rotator);
  const mast = document.mast === undefined ? undefined : readMast(reader, document.mast, rotatorHeight, tower);
  const rotator = document.rotator === undefined ? undefined : readRotator(reader, document.rotator);
  const loads = readLoads(reader, document.loads ?? [], tower, mast);
  const cables = readCables(reader, document.cables ?? [], tower, mast);
  const ratings = readRatings(reader, document.ratings ?? [], tower);
  const whole: Station = present({
    units: document.units,
    tower: heldAsRated(tower, ratings),
    mast,
    rotator,
    loads,
    cables,
  });
  const standing = document.tower.standsAt === undefined ? whole : readStanding(reader, document.tower.standsAt, whole);
  const [now, later] = [false, true].map((isLater) =>
    standing.loads.filter((_, number) => (document.loads?.[number]?.later ?? false) === isLater),
  ) as [Load[], Load[]];
  const station: Station = { ...standing, loads: now };
  return {
    title: document.title ?? '',
    method: document.method,
    site,
    station,
    ...(later.length === 0 ? {} : { later }),
    ratings: ratings.map((rating) => placed(rating, document.method)),
    wanted: readWanted(reader, document.wanted),
    notGiven: notGivenIn(document, site, station),
    assumed: assumedIn(document, whole, ratings),
  };
}

/** The station with its tower cranked to where the plan has it stand. */
function readStanding(reader: PlanReader, standsAt: string | number, whole: Station): Station {
  const { foot, top, telescopes, sectionsGiven, nestedTop } = whole.tower;
  const height = reader.quantity(standsAt, '/tower', 'standsAt');
  const given = reader.say(height, 'length');
  const refuse = (code: Fault['code'], allowed: string, says: string) =>
    reader.fault('/tower/standsAt', code, given, allowed, says);
  if (!Number.isFinite(height) || !Number.isFinite(top)) return whole;
  if (!telescopes || !sectionsGiven) {
    const says = `Tower cranked to ${given}: say "telescopes": true and give each section with its length, or leave "standsAt" out.`;
    refuse('goes-with', 'only with telescopes and sections', says);
    return whole;
  }
  const lowest = nestedTop ?? foot;
  if (height > top + 1e-6 || height < lowest - 1e-6) {
    const [low, high] = [reader.say(lowest, 'length'), reader.say(top, 'length')];
    const says = `Tower cranked to ${given} is not between nested and fully up: give the height of its top, ${low} to ${high}.`;
    refuse('stands-outside', `${low} to ${high}`, says);
    return whole;
  }
  const [cranked] = stationsAt(whole, height);
  if (cranked === undefined) {
    const says = `Tower cranked to ${given}: its sections do not come to stand there, or it is held above its fixed section. Correct the height, or leave "standsAt" out.`;
    refuse('stands-outside', 'a height its sections reach', says);
    return whole;
  }
  if (cranked.clashes.length > 0) {
    const says = `Tower cranked to ${given}: there “${cranked.clashes.join('”, “')}” would meet the section below. Take it off, or give a greater height.`;
    refuse('stands-in-the-way', 'a height at which nothing is in the way', says);
    return whole;
  }
  return cranked.station;
}

function readWanted(reader: PlanReader, wanted: PlanDocument['wanted']): Wanted {
  return {
    margin: reader.perhaps(wanted?.margin, '/wanted', 'margin') ?? DEFAULT_MARGIN,
    forecast: reader.perhaps(wanted?.forecastError, '/wanted', 'forecastError') ?? 0.1,
    years: wanted?.years ?? 30,
  };
}

/** Faults that say something is absent or out of place, which it may be only because what stood there had the wrong form. */
const OF_ABSENCE: ReadonlySet<Fault['code']> = new Set<Fault['code']>([
  'missing',
  'one-of',
  'height-or-above',
  'span-missing',
  'shape-missing',
  'shape-field-missing',
  'shape-field-foreign',
  'kind-field-missing',
  'kind-field-foreign',
]);
/** Faults of a whole that may come from a part whose form was wrong. */
const OF_A_WHOLE: ReadonlySet<Fault['code']> = new Set<Fault['code']>([
  'sections-do-not-add-up',
  'sections-do-not-overlap',
]);

function causedBy(fault: Fault, faults: readonly Fault[]): boolean {
  if (faults.some(({ code, pointer }) => code === 'missing' && fault.pointer.startsWith(`${pointer}/`))) return true;
  if (fault.code === 'mast-missing') return faults.some(({ pointer }) => pointer.startsWith('#/mast'));
  const absent = OF_ABSENCE.has(fault.code);
  if (!absent && !OF_A_WHOLE.has(fault.code)) return false;
  const [, owner = '', field = ''] = /^(.*\/)([^/]*)$/.exec(fault.pointer) ?? [];
  const ofField = absent && owner !== '#/' && !/^\d+$/.test(field);
  return faults.some(({ pointer, code }) => {
    if (pointer === fault.pointer) return true;
    if (code === 'missing') return false;
    const inside = pointer.startsWith(`${fault.pointer}/`);
    return inside || (ofField && pointer.startsWith(owner) && !pointer.slice(owner.length).includes('/'));
  });
}

function eachOnce(faults: readonly Fault[]): Fault[] {
  const kept = new Map<string, Fault>();
  for (const fault of faults) {
    const key = `${fault.pointer} ${fault.code}`;
    if (!kept.has(key)) kept.set(key, fault);
  }
  return [...kept.values()];
}
