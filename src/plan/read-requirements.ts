import type { z } from 'zod';
import { FOOT } from '../foundation/index.ts';
import type { CheckInput, QuotedWind, RatedWind, RequirementsAsked } from '../margins/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import { convertSpeed, RISK_CATEGORIES, type SpeedBasis } from '../wind/index.ts';
import { type EntryWarning, type Fault, inPlan } from './faults/fault.ts';
import { planHash } from './plan-hash.ts';
import { BOUNDS } from './quantities/field-bounds.ts';
import { quantityWords } from './quantities/plan-dimension.ts';
import { readBesidePlan } from './read-beside-plan.ts';
import { type PlanOptions, readPlan } from './read-plan.ts';
import type { PlanReader } from './reading/plan-reader.ts';
import { present } from './reading/present.ts';
import type { PlanDocument } from './schema/plan-document.ts';
import { requirementsFormSchema } from './schema/requirements-request.ts';

/** The plan with one of the towers it may get. */
export interface ReadCandidate {
  readonly name: string;
  readonly input: CheckInput;
  readonly entryWarnings: readonly EntryWarning[];
  readonly planHash: ReturnType<typeof planHash>;
  /** Turns a pointer into that plan into one into the request. */
  readonly placed: (pointer: string) => { readonly pointer: string };
}

export type RequirementsReading =
  | {
      readonly ok: true;
      readonly input: CheckInput;
      readonly asked: RequirementsAsked;
      readonly candidates: readonly ReadCandidate[];
      readonly entryWarnings: readonly EntryWarning[];
      readonly planHash: ReturnType<typeof planHash>;
    }
  | { readonly ok: false; readonly faults: readonly Fault[] };

type Form = Partial<z.output<typeof requirementsFormSchema>>;
type CandidateForm = NonNullable<Form['candidates']>[number];

/**
 * Reads a plan whose tower is still to be chosen, what is to be asked for, and the towers to choose from; or everything that is
 * wrong with any of them.
 *
 * @param document anything, as parsed from JSON: `plan`, and `above`, `wished`, `quotes`, `candidates`
 * @returns all in SI, or the faults, each pointing into the request
 * @example readRequirementsRequest(5).ok // false
 */
export function readRequirementsRequest(document: unknown, options: PlanOptions = {}): RequirementsReading {
  const beside = readBesidePlan(document, requirementsFormSchema, 'what is asked for', options);
  if (!('reading' in beside)) return { ok: false, faults: beside };
  const { form, formFaults, reading, planFaults, reader } = beside;
  const asked = readAsked(reader, form);
  const quoted: ReadQuotes =
    reading.ok && !formFaults.some(({ pointer }) => pointer.startsWith('#/quotes'))
      ? readQuotes(reading.document, form.quotes, options)
      : { faults: [] };
  const faults: Fault[] = [
    ...formFaults,
    ...reader.faults,
    ...quoted.faults,
    ...planFaults,
    ...(reading.ok ? loadFaults(reading.document.loads ?? []) : []),
    ...namesTwice(form.candidates ?? []),
  ];
  const candidates: ReadCandidate[] = [];
  if (reading.ok) {
    (form.candidates ?? []).forEach((candidate, index) => {
      if (formFaults.some(({ pointer }) => pointer.startsWith(`#/candidates/${index}`))) return;
      const read = readCandidate(reading.document, candidate, index, reading.input.station.tower.top, options);
      if (read.ok) candidates.push(read.candidate);
      else faults.push(...read.faults);
    });
  }
  if (faults.length > 0 || !reading.ok) return { ok: false, faults };
  if (asked.wished) queryWished(reader, reading.input, asked.wished);
  const rated = (reading.document.ratings ?? []).findIndex(({ of }) => of === 'tower');
  if (rated >= 0) reader.query(`/plan/ratings/${rated}`, 'rating-left-out', RATING_LEFT_OUT);
  const entryWarnings = [...reading.entryWarnings.map(inPlan), ...reader.entryWarnings];
  const { quotes } = quoted;
  const whole = quotes === undefined ? asked : { ...asked, quotes };
  return { ok: true, input: reading.input, asked: whole, candidates, entryWarnings, planHash: planHash(reading) };
}

/** More than a tower is ordered for. */
const LOADS_AT_MOST = 30;

function loadFaults({ length }: readonly unknown[]): readonly Fault[] {
  const pointer = '#/plan/loads';
  const allowed = `1 to ${LOADS_AT_MOST} loads`;
  if (length === 0) {
    const says = 'No load given. Give what the tower is to bear, now or marked later.';
    return [{ pointer, code: 'missing', given: 'no load', allowed, says }];
  }
  if (length <= LOADS_AT_MOST) return [];
  const says = `${length} loads given, ${allowed} allowed here. Give those that decide, or one load with a count.`;
  return [{ pointer, code: 'too-many', given: `${length} loads`, allowed, says }];
}

function readAsked(reader: PlanReader, { above, wished }: Form): RequirementsAsked {
  return present({
    above: above === undefined ? undefined : reader.quantity(above, '', 'above', ABOVE),
    wished:
      wished &&
      present({ speed: reader.quantity(wished.speed, '/wished', 'speed', BOUNDS.speed), basis: wished.basis }),
  });
}

const RATING_LEFT_OUT =
  'The plan rates its tower already. That is left out here: what follows is to be asked of any tower. Give it as a candidate.';

/** Beside the site's a weaker wind asks for less, and nobody who reads its lines alone would know. */
function queryWished(
  reader: PlanReader,
  { site, method }: CheckInput,
  { speed, basis = 'gust3-nominal' }: NonNullable<RequirementsAsked['wished']>,
): void {
  const gustOf = (each: number, kind: SpeedBasis) => convertSpeed(each, kind, 'gust3-nominal', 'site');
  if (gustOf(speed, basis) >= gustOf(site.speed, site.basis ?? METHOD_BY_ID[method].basis)) return;
  const says = `The wished wind of ${reader.say(speed, 'speed')} is weaker than the site wind, compared as nominal gusts. Its rows ask for less than the site needs.`;
  reader.query('/wished/speed', 'wished-weaker', says);
}

/** Higher above its top no tower is rated. @source common-practice */
const ABOVE = { dimension: 'length', low: 0, high: 50 * FOOT, aboveLow: false } as const;

type ReadQuotes = { readonly faults: readonly Fault[]; readonly quotes?: readonly QuotedWind[] };

/** What decides an area and is not stated; and ground that its standard does not use. */
function openOf({ method, exposure, riskCategory }: RatedWind, index: number): readonly Fault[] {
  if (method === undefined) return [];
  const { title, ground, classMatters } = METHOD_BY_ID[method];
  const missing = (field: string, allowed: readonly string[]): Fault => {
    const says = `Wind ${index + 1}: an area by ${title} needs "${field}": give one of ${allowed.join(', ')}.`;
    return {
      pointer: `#/quotes/${index}/${field}`,
      code: 'missing',
      given: 'nothing',
      allowed: allowed.join(', '),
      says,
    };
  };
  const unused = (field: string, given: string): Fault => ({
    pointer: `#/quotes/${index}/${field}`,
    code: 'goes-with',
    given,
    allowed: 'nothing',
    says: `Wind ${index + 1}: ${title} does not use "${field}". Leave it out.`,
  });
  return [
    ...(!ground.counts && exposure !== undefined ? [unused(ground.field, exposure)] : []),
    ...(ground.counts && exposure === undefined ? [missing(ground.field, ground.kinds)] : []),
    ...(classMatters && riskCategory === undefined ? [missing('riskCategory', RISK_CATEGORIES)] : []),
  ];
}

/** The winds are read as those of ratings of the plan's tower. */
function readQuotes(plan: PlanDocument, quotes: Form['quotes'], options: PlanOptions): ReadQuotes {
  if (quotes === undefined) return { faults: [] };
  const ratings = quotes.map((wind) => ({ of: 'tower', area: 1, areaKind: 'effective', wind }));
  const reading = readPlan({ ...plan, ratings }, options);
  if (!reading.ok) {
    const placed = (pointer: string) => pointer.replace(/^#\/ratings\/(\d+)(\/wind)?/, '#/quotes/$1');
    const worded = (says: string) => says.replace(/^Rating (\d+)(?: wind)?/, 'Wind $1');
    return {
      faults: reading.faults.map((fault) => ({ ...fault, pointer: placed(fault.pointer), says: worded(fault.says) })),
    };
  }
  const faults = reading.input.ratings.flatMap(({ wind }, index) => openOf(wind as RatedWind, index));
  return {
    faults,
    quotes: reading.input.ratings.map(({ wind }) => {
      const { method, speed, basis, exposure, riskCategory } = wind as RatedWind;
      return present({ method, speed, basis, exposure, riskCategory }) as QuotedWind;
    }),
  };
}

function namesTwice(candidates: readonly { readonly name?: unknown }[]): readonly Fault[] {
  return candidates.flatMap(({ name }, index) => {
    const first = candidates.findIndex((other) => other.name === name);
    if (typeof name !== 'string' || first === index) return [];
    const says = `Towers ${first + 1} and ${index + 1} are both called "${name}": give each a name of its own.`;
    const pointer = `#/candidates/${index}/name`;
    return [{ pointer, code: 'name-not-unique' as const, given: name, allowed: 'a name of its own', says }];
  });
}

/** A lower tower in the same wind has it easier, and only its own line says that it is one. */
function topWarnings(
  plan: PlanDocument,
  name: string,
  { station }: CheckInput,
  wantedTop: number,
): readonly EntryWarning[] {
  const [top, wanted] = [station.tower.top, wantedTop].map((each) => quantityWords(each, 'length', plan.units));
  if (top === wanted) return [];
  const says = `${name} ends at ${top}, the tower of the plan at ${wanted}. Loads given above the top move with it.`;
  return [{ pointer: '#/tower/top', code: 'top-differs', says }];
}

function readCandidate(
  plan: PlanDocument,
  { name, tower, ratings = [] }: CandidateForm,
  index: number,
  wantedTop: number,
  options: PlanOptions,
):
  | { readonly ok: true; readonly candidate: ReadCandidate }
  | { readonly ok: false; readonly faults: readonly Fault[] } {
  const kept = (plan.ratings ?? []).filter(({ of }) => of !== 'tower');
  const at = `/candidates/${index}`;
  const placed = (pointer: string) => {
    const [hash, place] = pointer.startsWith('#') ? ['#', pointer.slice(1)] : ['', pointer];
    const [, first, number] = place.split('/');
    const own = first === 'ratings' && Number(number) >= kept.length;
    const rest = place
      .split('/')
      .slice(3)
      .map((key) => `/${key}`);
    if (own) return { pointer: `${hash}${at}/ratings/${Number(number) - kept.length}${rest.join('')}` };
    return { pointer: first === 'tower' ? `${hash}${at}${place}` : `${hash}/plan${place}` };
  };
  const reading = readPlan({ ...plan, tower, ratings: [...kept, ...ratings] }, options);
  if (reading.ok) {
    const { input } = reading;
    const entryWarnings = [...reading.entryWarnings, ...topWarnings(plan, name, input, wantedTop)];
    return { ok: true, candidate: { name, input, entryWarnings, planHash: planHash(reading), placed } };
  }
  return {
    ok: false,
    faults: reading.faults.map((fault) => {
      const { pointer } = placed(fault.pointer);
      const ofTower = pointer.startsWith(`#${at}`);
      const says = ofTower
        ? `${name}: ${fault.says}`
        : `${name}: with it the rest of the plan does not fit (${pointer}). ${fault.says}`;
      return { ...fault, pointer: ofTower ? pointer : `#${at}`, says };
    }),
  };
}
