import { FOOT } from '../../foundation/index.ts';
import type { RatedWind, Rating, RatingClaim } from '../../margins/index.ts';
import { METHOD_BY_ID } from '../../methods/index.ts';
import type { Tower } from '../../structure/index.ts';
import type { Ground, GroundField } from '../../wind/index.ts';
import { pointerTo } from '../faults/fault.ts';
import { FIELDS_OF_KIND, type RatedWindFields, type RatingFields, type RatingKind } from '../schema/rating-schema.ts';
import type { PlanReader } from './plan-reader.ts';
import { present } from './present.ts';

/** A rating this far above the top is a slip of the pen [m]. @source common-practice */
const ABOVE_TOP_AT_MOST = 50 * FOOT;

const KINDS_OF_FIELD = new Map<string, string[]>();
for (const [kind, fields] of Object.entries(FIELDS_OF_KIND)) {
  for (const field of fields) KINDS_OF_FIELD.set(field, [...(KINDS_OF_FIELD.get(field) ?? []), kind]);
}

/** What the makers say, in SI, with everything they did not state absent. */
export function readRatings(reader: PlanReader, ratings: readonly RatingFields[], tower: Tower): Rating[] {
  return ratings.map((fields, index) => readRating(reader, fields, `/ratings/${index}`, tower));
}

function readRating(reader: PlanReader, fields: RatingFields, at: string, tower: Tower): Rating {
  const kind = fields.of === 'gear' ? 'gear' : (fields.kind ?? 'area');
  const unnamed = refuseForeignKind(reader, fields, kind, at) && fields.kind === undefined;
  const wind = fields.wind === undefined ? undefined : readRatedWind(reader, fields.wind, at, 'wind');
  if (kind === 'wind' && wind?.speed === undefined) {
    const says = `${reader.words(at)} of the bare part needs its speed: give "wind".`;
    reader.fault(`${at}/wind`, 'kind-field-missing', 'nothing', 'wind', says);
  }
  const top = reader.perhaps(fields.top, at, 'top');
  if (top !== undefined && top <= tower.foot) {
    const [given, foot] = [reader.say(top, 'length'), reader.say(tower.foot, 'length')];
    const says = `${reader.words(at)} is for a top at ${given}, and the tower's base is at ${foot}. Give the height above ground.`;
    reader.fault(`${at}/top`, 'base-above-top', given, `more than ${foot}`, says);
  }
  const claim = readClaim(reader, fields, kind, at, unnamed);
  if (claim.kind === 'area' && wind?.speed !== undefined && fields.areasBySpeed !== undefined) {
    const says = `${reader.words(at)} has areas by speed, and a speed in "wind": leave the one in "wind" out.`;
    reader.fault(`${at}/wind`, 'one-of', 'two speeds', 'the speeds of the rows', says);
  }
  return present({
    at,
    of: fields.of,
    claim,
    height: readHeight(reader, fields, kind, at, top ?? tower.top, tower),
    wind,
    top,
    held: fields.supportedAt?.map((height, index) =>
      readSupportHeight(reader, height, `${at}/supportedAt`, index, top ?? tower.top, tower),
    ),
    withCables: fields.withCables && {
      count: fields.withCables.count,
      diameter: reader.quantity(fields.withCables.diameter, `${at}/withCables`, 'diameter'),
      ...(fields.withCables.arrangement === undefined ? {} : { laid: fields.withCables.arrangement }),
    },
  });
}

function refuseForeignKind(reader: PlanReader, fields: RatingFields, kind: RatingKind | 'gear', at: string): boolean {
  let found = false;
  if (fields.of === 'gear' && fields.kind !== undefined) {
    const says = `${reader.words(at)} is of lifting gear, which has no kind: give "workingLoad" or "breakingStrength", and leave "kind" out.`;
    reader.fault(`${at}/kind`, 'goes-with', fields.kind, 'nothing for gear', says);
  }
  const own: readonly string[] = FIELDS_OF_KIND[kind];
  for (const field in fields) {
    const kinds = KINDS_OF_FIELD.get(field);
    if (kinds === undefined || own.includes(field)) continue;
    found = true;
    const advice =
      fields.kind === undefined && fields.of !== 'gear' && !kinds.includes('gear')
        ? `Say "kind": "${kinds[0]}" if that is what is stated.`
        : 'Leave it out.';
    const says = `${reader.words(at)}: "${field}" belongs to ${kinds.join(' or ')}, and this one is of ${kind}. ${advice}`;
    reader.fault(pointerTo(at, field), 'kind-field-foreign', field, own.join(', '), says);
  }
  return found;
}

function readClaim(
  reader: PlanReader,
  fields: RatingFields,
  kind: RatingKind | 'gear',
  at: string,
  unnamed: boolean,
): RatingClaim {
  const level = { level: fields.level ?? 'strength', levelGiven: fields.level !== undefined } as const;
  switch (kind) {
    case 'area':
      return readAreaClaim(reader, fields, at, unnamed);
    case 'force':
      requireOne(reader, fields, ['force'], at);
      return { kind, force: reader.quantity(fields.force, at, 'force'), ...level };
    case 'moment':
      requireOne(reader, fields, ['moment'], at);
      return { kind, moment: reader.quantity(fields.moment, at, 'moment'), ...level };
    case 'wind':
      return { kind };
    case 'weight':
      requireOne(reader, fields, ['weight'], at);
      return { kind, weight: reader.quantity(fields.weight, at, 'weight') };
    case 'torque':
      requireOne(reader, fields, ['torque', 'brake'], at);
      return present({
        kind,
        torque: reader.perhaps(fields.torque, at, 'torque'),
        brake: reader.perhaps(fields.brake, at, 'brake'),
        ...level,
      });
    case 'gear':
      requireOne(reader, fields, ['breakingStrength', 'workingLoad'], at);
      return present({
        kind,
        breaking: reader.perhaps(fields.breakingStrength, at, 'breakingStrength'),
        working: reader.perhaps(fields.workingLoad, at, 'workingLoad'),
      });
  }
}

function readAreaClaim(reader: PlanReader, fields: RatingFields, at: string, unnamed: boolean): RatingClaim {
  if ((fields.area === undefined) === (fields.areasBySpeed === undefined) && !unnamed) {
    const given = fields.area === undefined ? 'neither area nor areasBySpeed' : 'area and areasBySpeed';
    const says = `${reader.words(at)}: ${given} given. Give one: the area at one speed, or areasBySpeed as rows of [speed, area].`;
    reader.fault(at, 'one-of', given, 'area or areasBySpeed', says);
  }
  if (fields.furtherAreas !== undefined && fields.areasBySpeed !== undefined) {
    const says = `${reader.words(at)}: further areas belong to one case, and there are areas by speed. Give each such case as a rating of its own.`;
    reader.fault(`${at}/furtherAreas`, 'goes-with', 'furtherAreas', 'only with area', says);
  }
  const rows = (fields.areasBySpeed ?? []).map((row, index) => ({
    speed: reader.quantity(row[0], `${at}/areasBySpeed/${index}`, 0),
    area: reader.quantity(row[1], `${at}/areasBySpeed/${index}`, 1),
  }));
  for (const [index, row] of rows.entries()) {
    const first = rows.findIndex((other) => Math.abs(other.speed - row.speed) < 1e-6);
    if (first < 0 || first === index) continue;
    const speed = reader.say(row.speed, 'speed');
    const says = `${reader.words(at)}: rows ${first + 1} and ${index + 1} are both for ${speed}. Keep one, or give another case as a rating of its own.`;
    reader.fault(`${at}/areasBySpeed/${index}`, 'speed-twice', speed, 'each speed once', says);
  }
  const stated = fields.areasBySpeed === undefined ? [{ area: reader.quantity(fields.area, at, 'area') }] : rows;
  for (const { area } of stated)
    queryRatedArea(reader, area, fields.areasBySpeed === undefined ? pointerTo(at, 'area') : `${at}/areasBySpeed`);
  for (const row of rows) queryRatedSpeed(reader, row.speed, `${at}/areasBySpeed`);
  return present({
    kind: 'area' as const,
    areaKind: fields.areaKind ?? 'unknown',
    coefficient: reader.perhaps(fields.coefficient, at, 'coefficient'),
    rows: stated,
    also: (fields.furtherAreas ?? []).map((further, index) => ({
      area: reader.quantity(further.area, `${at}/furtherAreas/${index}`, 'area'),
      height: reader.quantity(further.height, `${at}/furtherAreas/${index}`, 'height'),
    })),
  });
}

function requireOne(
  reader: PlanReader,
  fields: RatingFields,
  needed: readonly (keyof RatingFields)[],
  at: string,
): void {
  if (needed.some((field) => fields[field] !== undefined)) return;
  const allowed = needed.join(' or ');
  const says = `${reader.words(at)} of the ${fields.of} needs "${needed.join('" or "')}".`;
  reader.fault(pointerTo(at, needed[0] as string), 'kind-field-missing', 'nothing', allowed, says);
}

/** A moment with no height is meant at the base; anything else at the top, which is left absent. */
function readHeight(
  reader: PlanReader,
  fields: RatingFields,
  kind: RatingKind | 'gear',
  at: string,
  top: number,
  tower: Tower,
): number | undefined {
  if (fields.height !== undefined && fields.above !== undefined) {
    const says = `${reader.words(at)} has a height and an above: give one.`;
    reader.fault(at, 'height-or-above', 'height and above', 'height or above', says);
  }
  const height = reader.perhaps(fields.height, at, 'height');
  const above = reader.perhaps(fields.above, at, 'above');
  const acts = height ?? (above === undefined ? undefined : top + above);
  if (acts !== undefined && Number.isFinite(top) && (acts < tower.foot || acts > top + ABOVE_TOP_AT_MOST)) {
    const given = reader.say(acts, 'length');
    const allowed = `${reader.say(tower.foot, 'length')} to ${reader.say(top + ABOVE_TOP_AT_MOST, 'length')}`;
    const says = `${reader.words(at)} acts at ${given}, and the tower it is stated for ends at ${reader.say(top, 'length')}. Give a height of ${allowed}.`;
    const key = height === undefined ? 'above' : 'height';
    reader.fault(pointerTo(at, key), 'rating-height-absurd', given, allowed, says);
  }
  return acts ?? (kind === 'moment' ? tower.foot : undefined);
}

function readSupportHeight(
  reader: PlanReader,
  given: number | string,
  at: string,
  index: number,
  top: number,
  tower: Tower,
): number {
  const height = reader.quantity(given, at, index);
  if (Number.isFinite(top) && (height <= tower.foot || height > top)) {
    const shown = reader.say(height, 'length');
    const allowed = `more than ${reader.say(tower.foot, 'length')}, up to ${reader.say(top, 'length')}`;
    const says = `${reader.words(`${at}/${index}`)} at ${shown} does not meet the tower it is stated for: give a height of ${allowed}.`;
    reader.fault(`${at}/${index}`, 'support-outside', shown, allowed, says);
  }
  return height;
}

/** The wind a part is rated for, in SI, of a speed or of all the sheet says. */
export function readRatedWind(reader: PlanReader, fields: RatedWindFields, at: string, key: string): RatedWind {
  if (typeof fields !== 'object') {
    const speed = reader.quantity(fields, at, key);
    queryRatedSpeed(reader, speed, pointerTo(at, key));
    return { speed };
  }
  const speed = reader.perhaps(fields.speed, pointerTo(at, key), 'speed');
  queryRatedSpeed(reader, speed, pointerTo(pointerTo(at, key), 'speed'));
  return present({
    speed,
    basis: fields.basis,
    method: fields.method,
    exposure: readRatedGround(reader, fields, pointerTo(at, key)),
    riskCategory: fields.riskCategory,
    year: fields.year,
  });
}

/** Faster than on any map of gusts: 200 mph [m/s]. @source common-practice */
const BEYOND_MAPS = 90;
/** Slower than towers and antennas are rated for: 40 mph [m/s]. @source common-practice */
const SLOWEST_RATED = 17.8;

function queryRatedSpeed(reader: PlanReader, speed: number | undefined, at: string): void {
  if (speed === undefined) return;
  if (speed < SLOWEST_RATED) {
    const slow = `A rated wind of ${reader.say(speed, 'speed')} is slower than data sheets state. Check its unit, and that area and speed were not swapped.`;
    reader.query(at, 'rated-speed-low', slow);
  }
  if (!(speed > BEYOND_MAPS)) return;
  const says = `A rated wind of ${reader.say(speed, 'speed')} is faster than on any map. Check its unit, and that km/h and mph were not confused.`;
  reader.query(at, 'speed-beyond-maps', says);
}

/** No small tower is rated for more [m²]: some hundred square feet. @source common-practice */
const LARGE_AREA = 10;

function queryRatedArea(reader: PlanReader, area: number, at: string): void {
  if (!(area > LARGE_AREA)) return;
  const says = `${reader.say(area, 'area')} is more than small towers are rated for. Check its unit: a square metre is 10.8 square feet.`;
  reader.query(at, 'area-of-no-small-tower', says);
}

function readRatedGround(
  reader: PlanReader,
  { exposure, terrain, method }: Exclude<RatedWindFields, number | string>,
  at: string,
): RatedWind['exposure'] {
  if (exposure !== undefined && terrain !== undefined) {
    const says = `${reader.words(at)} has an exposure and a terrain: give one, as the data sheet states it.`;
    reader.fault(`${at}/terrain`, 'one-of', 'exposure and terrain', 'one of them', says);
  }
  if (method === undefined) return exposure ?? terrain;
  const { title, ground } = METHOD_BY_ID[method];
  const refuse = (field: GroundField, given: Ground) => {
    const says = `${reader.words(at)}: ${title} uses ${ground.field}; give that instead of ${field}.`;
    reader.fault(`${at}/${field}`, 'goes-with', given, ground.field, says);
  };
  if (exposure !== undefined && ground.field !== 'exposure') refuse('exposure', exposure);
  if (terrain !== undefined && ground.field !== 'terrain') refuse('terrain', terrain);
  return exposure ?? terrain;
}
