import type { CableRun, Load, Mast, Tower } from '../../structure/index.ts';
import { pointerTo } from '../faults/fault.ts';
import type { CableFields, LoadFields } from '../schema/load-schema.ts';
import type { PlanReader } from './plan-reader.ts';
import { present } from './present.ts';
import { readLoadShape, type Span } from './read-load-shape.ts';
import { readRatedWind } from './read-ratings.ts';

const ROUNDING = 1e-6;

/** A load without a name is called by its place in the list. */
export const loadName = (given: string | undefined, index: number) => given ?? `load ${index + 1}`;

/** What hangs on the tower, in SI. */
export function readLoads(
  reader: PlanReader,
  loads: readonly LoadFields[],
  tower: Tower,
  mast: Mast | undefined,
): Load[] {
  const names = new Map<string, number>();
  return loads.map((fields, index) => {
    const at = `/loads/${index}`;
    const name = loadName(fields.name, index);
    refuseSecondName(reader, names, name, index, at);
    return readLoad(reader, { ...fields, name }, at, tower, mast);
  });
}

function readLoad(
  reader: PlanReader,
  fields: LoadFields & { readonly name: string },
  at: string,
  tower: Tower,
  mast: Mast | undefined,
): Load {
  const given = readSpan(reader, fields, at, tower.top);
  const shape = readLoadShape(reader, fields, at, given);
  const span = shape.kind === 'tube' ? spanOfTube(reader, fields, at, given, shape.along, shape.length) : given;
  const on = fields.on ?? (mast !== undefined && (span.low + span.high) / 2 > tower.top + ROUNDING ? 'mast' : 'tower');
  refuseOffTower(reader, at, span, tower);
  if (on === 'mast') refuseOffMast(reader, fields, at, span, mast);
  const boom = reader.perhaps(fields.boom, at, 'boom');
  queryBoom(reader, at, tower, boom);
  const ratedWind =
    fields.ratedWind === undefined ? undefined : readRatedWind(reader, fields.ratedWind, at, 'ratedWind');
  return present({
    name: fields.name,
    at,
    low: span.low,
    high: span.high,
    shape,
    count: fields.count ?? 1,
    ...readWeights(reader, fields, at),
    turns: fields.turns ?? false,
    heading: reader.perhaps(fields.heading, at, 'heading'),
    on,
    offset: reader.perhaps(fields.offset, at, 'offset') ?? 0,
    boom,
    reach: reader.perhaps(fields.reach, at, 'reach'),
    ratedWind: ratedWind?.speed === undefined ? undefined : present({ speed: ratedWind.speed, basis: ratedWind.basis }),
  });
}

function readWeights(reader: PlanReader, fields: LoadFields, at: string): Pick<Load, 'weight' | 'icedWeight'> {
  const weight = reader.perhaps(fields.weight, at, 'weight');
  const icedWeight = reader.perhaps(fields.icedWeight, at, 'icedWeight');
  if (weight !== undefined && icedWeight !== undefined && icedWeight < weight * (1 - ROUNDING)) {
    const [given, least] = [reader.say(icedWeight, 'weight'), reader.say(weight, 'weight')];
    const says = `${reader.words(at)}: ${given} with ice is less than the ${least} it has without. Give its whole weight with ice, ${least} or more.`;
    reader.fault(`${at}/icedWeight`, 'iced-below-bare', given, `${least} or more`, says);
  }
  return present({ weight, icedWeight });
}

function refuseSecondName(
  reader: PlanReader,
  names: Map<string, number>,
  name: string,
  index: number,
  at: string,
): void {
  const key = name.trim().toLowerCase();
  const first = names.get(key);
  if (first === undefined) {
    names.set(key, index);
    return;
  }
  const says = `Loads ${first + 1} and ${index + 1} are both called "${name}": give each its own name, or one load a count.`;
  reader.fault(`${at}/name`, 'name-not-unique', name, 'a name of its own', says);
}

function readSpan(reader: PlanReader, fields: LoadFields, at: string, top: number): Span {
  const { height, above } = fields;
  if ((height === undefined) === (above === undefined)) {
    const given = height === undefined ? 'neither height nor above' : 'height and above';
    const says = `${reader.words(at)}: ${given} given. Give one: its height above ground, or how far above the tower's top.`;
    reader.fault(at, 'height-or-above', given, 'height or above', says);
    if (height === undefined) return { low: Number.NaN, high: Number.NaN, point: true };
  }
  const key = height === undefined ? 'above' : 'height';
  const base = height === undefined ? top : 0;
  const ends = reader.pair(height ?? above, at, key);
  const [low, high] = [base + ends[0], base + ends[1]];
  if (low > high) {
    const [lower, upper] = [reader.say(ends[0], 'length'), reader.say(ends[1], 'length')];
    const says = `${reader.words(at)}: its lower end at ${lower} is above its upper end at ${upper}. Give the lower end first.`;
    reader.fault(pointerTo(at, key), 'low-above-high', `${lower} to ${upper}`, 'low, then high', says);
  }
  const written = height ?? above;
  return { low, high, point: low === high || typeof written === 'number' };
}

/** One height of an upright tube is that of its middle, and the tube reaches half its length to either side. */
function spanOfTube(
  reader: PlanReader,
  fields: LoadFields,
  at: string,
  span: Span,
  along: 'upright' | 'boom' | 'element',
  length: number,
): Span {
  if (along !== 'upright' || !span.point || Number.isNaN(length)) return span;
  const low = span.low - length / 2;
  const high = span.low + length / 2;
  const key = fields.height === undefined ? 'above' : 'height';
  const say = (value: number) => reader.say(value, 'length');
  if (low < 0) {
    const says = `${reader.words(at)}: ${say(length)} long with its middle at ${say(span.low)}, it meets the ground. Give its height as [low, high].`;
    reader.fault(pointerTo(at, key), 'meets-ground', say(span.low), `${say(length / 2)} or more`, says);
    return { low: Number.NaN, high: Number.NaN, point: false };
  }
  const says = `${reader.words(at)}: one height, ${say(span.low)}, is taken as that of its middle, so it reaches from ${say(low)} to ${say(high)}. If that is its lower end, give [low, high].`;
  reader.query(pointerTo(at, key), 'read-as-middle', says);
  return { low, high, point: false };
}

function refuseOffTower(reader: PlanReader, at: string, span: Span, tower: Tower): void {
  if (!(span.low < tower.foot - ROUNDING)) return;
  const [low, foot] = [reader.say(span.low, 'length'), reader.say(tower.foot, 'length')];
  const says = `${reader.words(at)} at ${low} is below the tower's base at ${foot}. Give its height above ground.`;
  reader.fault(at, 'load-below-base', low, `${foot} or more`, says);
}

function refuseOffMast(reader: PlanReader, fields: LoadFields, at: string, span: Span, mast: Mast | undefined): void {
  if (mast === undefined) {
    const says = `${reader.words(at)} is on the mast, and the plan has no mast: describe the mast, or leave "on" out.`;
    reader.fault(`${at}/on`, 'mast-missing', 'mast', 'tower', says);
    return;
  }
  const key = fields.height === undefined ? 'above' : 'height';
  const say = (value: number) => reader.say(value, 'length');
  if (span.low > mast.tip + ROUNDING) {
    const says = `${reader.words(at)} begins at ${say(span.low)}, and the mast ends at ${say(mast.tip)}. Give a lower height or a longer mast.`;
    reader.fault(pointerTo(at, key), 'load-above-mast', say(span.low), `up to ${say(mast.tip)}`, says);
  }
  if (mast.foot !== undefined && span.high < mast.foot - ROUNDING) {
    const says = `${reader.words(at)} at ${say(span.high)} is on the mast, and the mast begins at ${say(mast.foot)}. Give a greater height, or "on": "tower".`;
    reader.fault(pointerTo(at, key), 'load-below-mast', say(span.high), `${say(mast.foot)} or more`, says);
  }
}

/** Lowered flat about its hinge, a beam with its boom upright reaches half its boom below the mast. @source common-practice */
function queryBoom(reader: PlanReader, at: string, tower: Tower, boom: number | undefined): void {
  if (boom === undefined || tower.hingeHeight === undefined || !(boom / 2 > tower.hingeHeight)) return;
  const [whole, hinge] = [reader.say(boom, 'length'), reader.say(tower.hingeHeight, 'length')];
  const says = `${reader.words(at)}: lowered flat about a hinge at ${hinge}, half its boom of ${whole} meets the ground when the boom hangs upright. The answer tells which way it is best turned; else stop short of flat.`;
  reader.query(`${at}/boom`, 'boom-meets-ground', says);
}

/** How the lines of a run are arranged on a ladder; undefined where that is not told, so that they count singly. */
function readRows(reader: PlanReader, fields: CableFields, at: string, diameter: number): CableRun['inRows'] {
  const { arrangement, count, rows } = fields;
  const spacing = reader.perhaps(fields.spacing, at, 'spacing');
  if (arrangement !== 'ladder') {
    for (const key of ['rows', 'spacing'] as const) {
      if (fields[key] === undefined) continue;
      const says = `${reader.words(at)}: "${key}" describes lines on a ladder. Give "arrangement": "ladder", or leave it out.`;
      reader.fault(pointerTo(at, key), 'goes-with', key, 'only with arrangement ladder', says);
    }
    return undefined;
  }
  if (rows !== undefined && rows > count) {
    const says = `${reader.words(at)}: ${rows} rows given for ${count} lines in all. Give at most ${count} rows, or all lines as "count".`;
    reader.fault(pointerTo(at, 'rows'), 'out-of-bounds', String(rows), `1 to ${count}`, says);
  }
  if (spacing !== undefined && spacing < diameter * (1 - ROUNDING)) {
    const [given, least] = [reader.say(spacing, 'diameter'), reader.say(diameter, 'diameter')];
    const says = `${reader.words(at)}: ${given} from line to line is less than their diameter. Give ${least} or more, centre to centre.`;
    reader.fault(pointerTo(at, 'spacing'), 'out-of-bounds', given, `${least} or more`, says);
  }
  if (rows !== undefined && spacing !== undefined) return { rows, spacing };
  const missing = [rows === undefined && 'rows', spacing === undefined && 'spacing'].filter(Boolean);
  const says = `${reader.words(at)}: ${missing.join(' and ')} on its ladder not given, so every line counts singly.`;
  reader.query(at, 'ladder-incomplete', says);
  return undefined;
}

/** The runs of lines in SI. */
export function readCables(
  reader: PlanReader,
  cables: readonly CableFields[],
  tower: Tower,
  mast: Mast | undefined,
): CableRun[] {
  return cables.map((fields, index) => {
    const at = `/cables/${index}`;
    const low = reader.perhaps(fields.from, at, 'from') ?? tower.foot;
    const high = reader.perhaps(fields.to, at, 'to') ?? tower.top;
    const most = Math.max(tower.top, mast?.tip ?? 0);
    const say = (value: number) => reader.say(value, 'length');
    if (low >= high) {
      const says = `${reader.words(at)} runs from ${say(low)} to ${say(high)}: give the lower end as "from".`;
      reader.fault(at, 'low-above-high', `${say(low)} to ${say(high)}`, 'from below to', says);
    } else if (low < tower.foot - ROUNDING || high > most + ROUNDING) {
      const allowed = `${say(tower.foot)} to ${say(most)}`;
      const says = `${reader.words(at)} from ${say(low)} to ${say(high)} leaves the tower and its mast, ${allowed}. Give the part on the tower.`;
      reader.fault(at, 'cable-outside', `${say(low)} to ${say(high)}`, allowed, says);
    }
    const diameter = reader.quantity(fields.diameter, at, 'diameter');
    return present({
      name: fields.name ?? `cable run ${index + 1}`,
      at,
      count: fields.count,
      diameter,
      inRows: readRows(reader, fields, at, diameter),
      low,
      high,
      laid: fields.arrangement ?? 'single',
      weight: reader.perhaps(fields.weight, at, 'weight'),
    });
  });
}
