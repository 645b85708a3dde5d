import type {
  Shape,
  StatedForceShape,
  StatedShape,
  TubePiece,
  TubeRow,
  TubesShape,
  WireShape,
} from '../../areas/index.ts';
import { GRAVITY } from '../../foundation/index.ts';
import { pointerTo } from '../faults/fault.ts';
import type { Quantity } from '../schema/field-schemas.ts';
import type { LoadFields } from '../schema/load-schema.ts';
import type { TubeRowFields } from '../schema/shape-schema.ts';
import type { PlanReader } from './plan-reader.ts';
import { present } from './present.ts';
import { readLattice, readPole } from './read-section-shape.ts';
import { refuseForeignFields, requireFields } from './shape-fields.ts';
import { refuseEarlyRupture, refuseThickWall } from './tube-faults.ts';

/** The same area written in two units may differ by this share. */
const ROUNDING = 1e-6;

/** Where a load hangs, in SI. */
export interface Span {
  readonly low: number;
  readonly high: number;
  /** The plan gave one height, not two. */
  readonly point: boolean;
}

/** The shape of a load in SI. */
export function readLoadShape(reader: PlanReader, fields: LoadFields, at: string, span: Span): Shape {
  const shape = fields.shape ?? 'stated';
  const foreign = refuseForeignFields(reader, fields, shape, at, []);
  switch (shape) {
    case 'stated':
      // Fields of some shape and no word of which: the word is missing, not an area.
      return readStated(reader, fields, at, foreign && fields.shape === undefined);
    case 'tube':
      return readTube(reader, fields, at, span);
    case 'tubes':
      return readTubes(reader, fields, at);
    case 'plate':
      requireFields(reader, fields, 'plate', ['wide', 'tall'], at);
      return {
        kind: 'plate',
        wide: reader.quantity(fields.wide, at, 'wide'),
        tall: reader.quantity(fields.tall, at, 'tall'),
        deep: reader.perhaps(fields.deep, at, 'deep') ?? 0,
      };
    case 'dish':
      requireFields(reader, fields, 'dish', ['diameter'], at);
      return {
        kind: 'dish',
        diameter: readOneDiameter(reader, fields, at),
        solidity: reader.perhaps(fields.solidity, at, 'solidity') ?? 1,
      };
    case 'wire':
      return readWire(reader, fields, at, span);
    case 'lattice':
      requireSpan(reader, fields, 'lattice', at, span);
      return readLattice(reader, fields, at, span.point ? Number.NaN : span.high - span.low);
    case 'pole':
      requireSpan(reader, fields, 'pole', at, span);
      return readPole(reader, fields, at);
  }
}

function readStated(
  reader: PlanReader,
  fields: LoadFields,
  at: string,
  unnamed: boolean,
): StatedShape | StatedForceShape {
  const whole = fields.area !== undefined;
  const sides = fields.front !== undefined || fields.side !== undefined;
  const forced = fields.force !== undefined || fields.wind !== undefined;
  const ways = Number(whole) + Number(sides) + Number(forced);
  if (ways > 1 || (ways === 0 && !unnamed)) {
    const given = [whole && 'area', sides && 'front or side', forced && 'force or wind'].filter(Boolean).join(' and ');
    const says =
      given === ''
        ? `${reader.words(at)} has no area: give "area" from its sheet, or "front" and "side", or a "force" and its "wind", or describe its "shape".`
        : `${reader.words(at)} has ${given}: keep one of area, front and side, force and wind.`;
    reader.fault(at, 'one-of', given === '' ? 'nothing' : given, 'area; or front and side; or force and wind', says);
  }
  if (forced) {
    requireFields(reader, fields, 'stated', whole || sides ? [] : ['force', 'wind'], at);
    for (const field of ['areaKind', 'slenderFlats'] as const) {
      if (fields[field] === undefined || whole || sides) continue;
      const says = `${reader.words(at)}: "${field}" describes an area, and a force is given. Leave it out.`;
      reader.fault(pointerTo(at, field), 'goes-with', field, 'only with an area', says);
    }
    return present({
      kind: 'stated-force' as const,
      force: reader.quantity(fields.force, at, 'force'),
      wind: reader.quantity(fields.wind, at, 'wind'),
      icedArea: reader.perhaps(fields.icedArea, at, 'icedArea'),
    });
  }
  if (sides && !whole) requireFields(reader, fields, 'stated', ['front', 'side'], at);
  const area = reader.quantity(fields.area, at, 'area');
  const front = whole ? area : reader.quantity(fields.front, at, 'front');
  const side = whole ? area : reader.quantity(fields.side, at, 'side');
  const icedArea = reader.perhaps(fields.icedArea, at, 'icedArea');
  const bare = Math.max(front, side);
  if (bare === 0) {
    const says = `${reader.words(at)}: an area of ${reader.say(0, 'area')} catches no wind. Give the area from its sheet.`;
    reader.query(pointerTo(at, whole ? 'area' : 'front'), 'area-of-nothing', says);
  }
  if (icedArea !== undefined && icedArea < bare * (1 - ROUNDING)) {
    const [given, least] = [reader.say(icedArea, 'area'), reader.say(bare, 'area')];
    const says = `${reader.words(at)}: ${given} with ice is less than the ${least} it has without. Give its whole area with ice, ${least} or more.`;
    reader.fault(`${at}/icedArea`, 'iced-below-bare', given, `${least} or more`, says);
  }
  return {
    kind: 'stated',
    front,
    side,
    areaKind: fields.areaKind ?? 'unknown',
    slenderFlats: fields.slenderFlats ?? false,
    ...(icedArea === undefined ? {} : { icedArea }),
  };
}

function readTube(reader: PlanReader, fields: LoadFields, at: string, span: Span): Shape {
  requireFields(reader, fields, 'tube', ['diameter'], at);
  const along = fields.along ?? 'upright';
  const length = reader.perhaps(fields.length, at, 'length');
  const spanned = span.high - span.low;
  if (length === undefined && (span.point || along !== 'upright')) {
    const says =
      along === 'upright'
        ? `${reader.words(at)}: one height does not say how long it is. Give "length", or its height as [low, high].`
        : `${reader.words(at)}: a level tube needs its "length".`;
    reader.fault(pointerTo(at, 'length'), 'span-missing', 'nothing', 'length', says);
  }
  if (length !== undefined && along === 'upright' && !span.point && Math.abs(length - spanned) > 0.01 * spanned) {
    const given = reader.say(length, 'length');
    const allowed = reader.say(spanned, 'length');
    const says = `${reader.words(at)}: its length of ${given} differs from the ${allowed} between its two heights. Leave one of them out.`;
    reader.fault(pointerTo(at, 'length'), 'span-differs', given, allowed, says);
  }
  return {
    kind: 'tube',
    along,
    diameter: reader.pair(fields.diameter, at, 'diameter'),
    length: length ?? spanned,
  };
}

function readTubes(reader: PlanReader, fields: LoadFields, at: string): TubesShape {
  requireFields(reader, fields, 'tubes', ['tubes'], at);
  const rows = fields.tubes ?? [];
  return { kind: 'tubes', rows: rows.map((row, index) => readTubeRow(reader, row, `${at}/tubes/${index}`)) };
}

function readTubeRow(reader: PlanReader, row: TubeRowFields, at: string): TubeRow {
  const simple = row.diameter !== undefined || row.length !== undefined;
  const incomplete = simple && (row.diameter === undefined || row.length === undefined);
  if (simple === (row.taper !== undefined) || incomplete) {
    const given = [row.diameter !== undefined && 'diameter', row.length !== undefined && 'length', row.taper && 'taper']
      .filter(Boolean)
      .join(' and ');
    const says = `${reader.words(at)}: ${given === '' ? 'nothing' : given} given. Give diameter and length, or taper, its pieces from the boom to one tip.`;
    reader.fault(at, 'one-of', given === '' ? 'nothing' : given, 'diameter and length; or taper', says);
  }
  const yieldStrength = reader.perhaps(row.yield, at, 'yield');
  const ultimateStrength = reader.perhaps(row.ultimate, at, 'ultimate');
  refuseEarlyRupture(reader, reader.words(at), yieldStrength, ultimateStrength, at);
  return present({
    along: row.along,
    count: row.count ?? 1,
    pieces: row.taper === undefined ? readPlainTube(reader, row, at) : readTaper(reader, row.taper, `${at}/taper`),
    material: row.material,
    yieldStrength,
    ultimateStrength,
  });
}

function readPlainTube(reader: PlanReader, row: TubeRowFields, at: string): TubePiece[] {
  const diameter = reader.quantity(row.diameter, at, 'diameter');
  return [{ diameter, length: reader.quantity(row.length, at, 'length') }];
}

/** The taper is written from the boom to one tip; the whole member has it on both sides. */
function readTaper(reader: PlanReader, taper: NonNullable<TubeRowFields['taper']>, at: string): TubePiece[] {
  const half = taper.map((piece, index): TubePiece => {
    const here = `${at}/${index}`;
    const diameter = reader.quantity(piece[0], here, 0);
    const length = reader.quantity(piece[1], here, 1);
    const wall = reader.perhaps(piece[2], here, 2);
    if (wall !== undefined) refuseThickWall(reader, reader.words(here), diameter, wall, pointerTo(here, 2));
    return present({ diameter, length, wall });
  });
  return [...half.toReversed(), ...half];
}

function readWire(reader: PlanReader, fields: LoadFields, at: string, span: Span): WireShape {
  requireFields(reader, fields, 'wire', ['diameter', 'to'], at);
  if (!span.point) {
    const says = `${reader.words(at)}: a wire starts at one height. Give that one; its far end is in "to".`;
    const key = fields.height === undefined ? 'above' : 'height';
    reader.fault(pointerTo(at, key), 'wrong-type', 'two heights', 'one height', says);
  }
  const { to } = fields;
  const end = `${at}/to`;
  const distance = reader.quantity(to?.distance, end, 'distance');
  const rise = reader.quantity(to?.height, end, 'height') - span.low;
  return present({
    kind: 'wire' as const,
    diameter: readOneDiameter(reader, fields, at),
    distance,
    rise,
    heading: reader.quantity(to?.heading, end, 'heading'),
    pull: readPull(reader, fields, at, distance, rise),
    conductor: fields.conductor,
  });
}

/**
 * The horizontal share of a wire's pull: of its tension along the chord, or w·L²/(8·sag), the parabola under even
 * weight w. @source derived
 */
function readPull(
  reader: PlanReader,
  fields: LoadFields,
  at: string,
  distance: number,
  rise: number,
): number | undefined {
  if (fields.tension !== undefined && fields.sag !== undefined) {
    const says = `${reader.words(at)} has a tension and a sag: give one, the other follows from it.`;
    reader.fault(at, 'one-of', 'tension and sag', 'tension or sag', says);
  }
  const tension = reader.perhaps(fields.tension, at, 'tension');
  const sag = reader.perhaps(fields.sag, at, 'sag');
  if (tension !== undefined) return (tension * distance) / Math.hypot(distance, rise);
  if (sag === undefined || fields.weight === undefined) return undefined;
  const weight = reader.quantity(fields.weight, at, 'weight');
  const weightPerLength = (weight * GRAVITY) / distance;
  return (weightPerLength * distance ** 2) / (8 * sag);
}

function readOneDiameter(reader: PlanReader, fields: LoadFields, at: string): number {
  const given = fields.diameter;
  if (typeof given === 'object' || (typeof given === 'string' && /\sto\s/.test(given))) {
    const says = `${reader.words(at)}: a ${fields.shape} has one diameter. Give one value.`;
    reader.fault(pointerTo(at, 'diameter'), 'wrong-type', 'two diameters', 'one diameter', says);
    return Number.NaN;
  }
  return reader.quantity(given as Quantity | undefined, at, 'diameter');
}

function requireSpan(reader: PlanReader, fields: LoadFields, shape: 'lattice' | 'pole', at: string, span: Span): void {
  if (!span.point) return;
  const key = fields.height === undefined ? 'above' : 'height';
  const says = `${reader.words(at)}: one height does not say how long this ${shape} is. Give its ${key} as [low, high].`;
  reader.fault(pointerTo(at, key), 'span-missing', 'one height', '[low, high]', says);
}
