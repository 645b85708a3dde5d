import {
  type Counterpoise,
  type Foundation,
  type GuysThere,
  type Held,
  type Point,
  type RaisingGear,
  type Section,
  strandOf,
  type Tower,
} from '../../structure/index.ts';
import { pointerTo } from '../faults/fault.ts';
import type { FoundationFields, HeldFields, HingeFields, TowerFields } from '../schema/tower-schema.ts';
import type { PlanReader } from './plan-reader.ts';
import { present } from './present.ts';
import { readSections } from './read-sections.ts';

/** The tower of a plan in SI, and whether the plan has a rating of it. */
export function readTower(reader: PlanReader, fields: TowerFields, rated: boolean): Tower {
  const { foot, top } = readEnds(reader, fields);
  const sections = readSections(reader, fields, foot, top);
  const hingeHeight = fields.hinge === undefined ? undefined : readHinge(reader, fields.hinge, foot, top);
  return present({
    support: fields.support,
    foot,
    top,
    sections,
    sectionsGiven: fields.sections !== undefined,
    telescopes: fields.telescopes ?? false,
    nestedTop: readNested(reader, fields, sections, foot, top, rated),
    held: readHeld(reader, fields, foot, top),
    heldGiven: fields.supportedAt !== undefined,
    hingeHeight,
    raisedBy: fields.hinge?.raisedBy === undefined ? undefined : readGear(reader, fields.hinge.raisedBy),
    counterpoise:
      fields.hinge?.counterpoise === undefined || hingeHeight === undefined
        ? undefined
        : readCounterpoise(reader, fields.hinge.counterpoise, hingeHeight - foot),
    weight: reader.perhaps(fields.weight, '/tower', 'weight'),
    frequency: reader.perhaps(fields.frequency, '/tower', 'frequency'),
    damping: reader.perhaps(fields.damping, '/tower', 'damping'),
    baseHeld: fields.baseHeld,
    asDrawn: fields.asDrawn ?? false,
    used: fields.used ?? true,
    foundation: fields.foundation === undefined ? undefined : readFoundation(reader, fields.foundation, foot),
  });
}

/** Small antenna towers end below 200 ft [m]. @source common-practice */
const HIGHEST = 61;

function readEnds(reader: PlanReader, fields: TowerFields): { foot: number; top: number } {
  const top = reader.quantity(fields.top, '/tower', 'top');
  const foot = reader.perhaps(fields.base, '/tower', 'base') ?? 0;
  if (top > HIGHEST) {
    const high = `A top at ${reader.say(top, 'length')} is higher than small antenna towers are. Check its unit.`;
    reader.query('/tower/top', 'top-of-no-small-tower', high);
  }
  if (!(foot >= top)) return { foot, top };
  const [low, high] = [reader.say(foot, 'length'), reader.say(top, 'length')];
  const says = `Tower base at ${low} is not below its top at ${high}. Give both as heights above ground.`;
  reader.fault('/tower/base', 'base-above-top', low, `less than ${high}`, says);
  return { foot: Number.NaN, top: Number.NaN };
}

function readNested(
  reader: PlanReader,
  fields: TowerFields,
  sections: readonly Section[],
  foot: number,
  top: number,
  rated: boolean,
): number | undefined {
  if (fields.nested === undefined) return undefined;
  const nested = reader.quantity(fields.nested, '/tower', 'nested');
  const given = reader.say(nested, 'length');
  if (fields.telescopes !== true) {
    const says = 'Tower has a nested height but does not telescope: say "telescopes": true or leave "nested" out.';
    reader.fault('/tower/nested', 'goes-with', given, 'only with telescopes', says);
  } else if (Number.isFinite(top) && (nested <= foot || nested > top)) {
    const allowed = `more than ${reader.say(foot, 'length')}, up to ${reader.say(top, 'length')}`;
    const says = `Tower nested at ${given} is not between its base and its top: give the height of the top when it is down, ${allowed}.`;
    reader.fault('/tower/nested', 'nested-outside', given, allowed, says);
  } else if (fields.sections === undefined) {
    // Without a rating there is nothing to compare the lowered tower with, sections or not.
    if (!rated) return nested;
    const says = `Tower nested at ${given}, and no sections given: nothing is computed for the lowered tower. Give each section with its length.`;
    reader.query('/tower/nested', 'nested-without-sections', says);
  } else {
    refuseSunk(reader, nested, sections, foot, top);
  }
  return nested;
}

/** Every section sinks by an even share; none may reach below the base. */
function refuseSunk(reader: PlanReader, nested: number, sections: readonly Section[], foot: number, top: number): void {
  const leastOf = ({ low }: Section, index: number) =>
    index === 0 ? foot : top - ((low - foot) * (sections.length - 1)) / index;
  const least = sections.reduce((most, section, index) => Math.max(most, leastOf(section, index)), foot);
  // A part of a millimetre is how a typed figure is rounded.
  if (!(nested < least - 1e-4)) return;
  const [given, allowed] = [reader.say(nested, 'length'), reader.say(least, 'length')];
  const says = `Tower nested at ${given}: a section would reach below its base. With these sections give ${allowed} or more, or correct their lengths.`;
  reader.fault('/tower/nested', 'nested-below-base', given, `${allowed} or more`, says);
}

function readHeld(reader: PlanReader, fields: TowerFields, foot: number, top: number): Held[] {
  const { supportedAt } = fields;
  if (supportedAt === undefined) return [];
  if (fields.support === 'free' || fields.support === 'roof') {
    const says = `Tower is "${fields.support}" but has supports: set "support" to "guyed" or "bracketed", or leave "supportedAt" out.`;
    reader.fault('/tower/supportedAt', 'supported-but-free', fields.support, 'guyed, bracketed', says);
  }
  const held = supportedAt.map((row, index) => readSupport(reader, row, `/tower/supportedAt/${index}`, foot, top));
  held.forEach(({ height, guys }, index) => {
    if (!guys) return;
    const crossed = held.find((other) => other.height > height && other.guys && other.guys.radius < guys.radius);
    if (!crossed) return;
    const at = `/tower/supportedAt/${index}`;
    const says = `${reader.words(at)}: its guys end farther out than those at ${reader.say(crossed.height, 'length')}, so the two cross. Check both distances to the anchors.`;
    reader.query(pointerTo(at, 'radius'), 'guys-cross', says);
  });
  return held;
}

/** What describes guys and no bracket. */
const OF_GUYS = ['count', 'diameter', 'radius', 'tension', 'grade', 'breakingStrength', 'ends'] as const;

/** Strand is drawn to a part of what breaks it. */
function refuseBroken(reader: PlanReader, guys: GuysThere, at: string): void {
  const { tension, grade = 'extra-high-strength', breakingStrength, diameter } = guys;
  const breaks = breakingStrength ?? strandOf(diameter)?.breaking[grade];
  if (tension === undefined || breaks === undefined || tension < breaks) return;
  const [given, allowed] = [reader.say(tension, 'force'), reader.say(breaks, 'force')];
  const says = `${reader.words(at)}: a tension of ${given} breaks this strand, which bears ${allowed}. Give what it is drawn to in still air, about a tenth of that.`;
  reader.fault(pointerTo(at, 'tension'), 'guy-broken', given, `less than ${allowed}`, says);
}

function readSupport(reader: PlanReader, row: HeldFields, at: string, foot: number, top: number): Held {
  const height = reader.quantity(row.height, at, 'height');
  if (Number.isFinite(top) && (height <= foot || height > top)) {
    const given = reader.say(height, 'length');
    const allowed = `more than ${reader.say(foot, 'length')}, up to ${reader.say(top, 'length')}`;
    const says = `${reader.words(at)} at ${given} does not meet the tower: give a height of ${allowed}.`;
    reader.fault(pointerTo(at, 'height'), 'support-outside', given, allowed, says);
  }
  const diameter = reader.perhaps(row.diameter, at, 'diameter');
  const radius = reader.perhaps(row.radius, at, 'radius');
  const { count } = row;
  const missing = [
    count === undefined && 'count',
    diameter === undefined && 'diameter',
    radius === undefined && 'radius',
  ].filter(Boolean);
  if (row.by === 'bracket') {
    for (const key of OF_GUYS) {
      if (row[key] === undefined) continue;
      const says = `${reader.words(at)} is a bracket: "${key}" describes guys. Leave it out.`;
      reader.fault(pointerTo(at, key), 'goes-with', key, 'only with guys', says);
    }
  } else if (missing.length > 0 && missing.length < 3) {
    const says = `${reader.words(at)}: ${missing.join(' and ')} of its guys not given, so what the wind does to the guys is not counted.`;
    reader.query(at, 'guys-incomplete', says);
  }
  if (row.by === 'guys' && count !== undefined && count < 3) {
    const says = `${reader.words(at)}: ${count} ${count === 1 ? 'guy holds' : 'guys hold'} the tower from some sides only. Use three or more, evenly spread.`;
    reader.query(pointerTo(at, 'count'), 'guys-too-few', says);
  }
  const tension = reader.perhaps(row.tension, at, 'tension');
  const breakingStrength = reader.perhaps(row.breakingStrength, at, 'breakingStrength');
  const whole = count !== undefined && diameter !== undefined && radius !== undefined;
  if (!whole) return { height, by: row.by };
  const { grade, ends } = row;
  const guys = present({ count, diameter, radius, tension, grade, breakingStrength, ends });
  refuseBroken(reader, guys, at);
  return { height, by: row.by, guys };
}

function readHinge(reader: PlanReader, hinge: HingeFields, foot: number, top: number): number {
  const height = reader.quantity(hinge.height, '/tower/hinge', 'height');
  if (Number.isFinite(top) && (height < foot || height >= top)) {
    const given = reader.say(height, 'length');
    const allowed = `${reader.say(foot, 'length')} to less than ${reader.say(top, 'length')}`;
    const says = `Tower hinge at ${given} is not on the tower: give a height of ${allowed}.`;
    reader.fault('/tower/hinge/height', 'hinge-outside', given, allowed, says);
  }
  return height;
}

type GearFields = NonNullable<HingeFields['raisedBy']>;

function readGear(reader: PlanReader, fields: GearFields): RaisingGear {
  const at = '/tower/hinge/raisedBy';
  const point = (key: 'anchor' | 'raisingPoleTip'): Point | undefined => {
    const given = fields[key];
    if (given === undefined) return undefined;
    const axis = (index: 0 | 1) => reader.perhaps(given[index], `${at}/${key}`, index) ?? Number.NaN;
    return [axis(0), axis(1)];
  };
  const attach = reader.quantity(fields.attach, at, 'attach');
  return present({
    kind: fields.kind,
    anchor: point('anchor') as Point,
    attach: [attach, 0] as Point,
    over: point('raisingPoleTip'),
    workingLoad: reader.perhaps(fields.workingLoad, at, 'workingLoad'),
  });
}

/** @param most from the hinge down to the base [m] */
function readCounterpoise(
  reader: PlanReader,
  fields: NonNullable<HingeFields['counterpoise']>,
  most: number,
): Counterpoise {
  const at = '/tower/hinge/counterpoise';
  const below = reader.quantity(fields.below, at, 'below');
  if (below > most + 1e-6) {
    const [given, allowed] = [reader.say(below, 'length'), reader.say(most, 'length')];
    const says = `Counterpoise ${given} below the hinge would be below the base of the tower. Give ${allowed} or less.`;
    reader.fault(`${at}/below`, 'counterpoise-below-base', given, `up to ${allowed}`, says);
  }
  return { mass: reader.quantity(fields.weight, at, 'weight'), below };
}

const SOIL = ['soilBearing', 'soilLateral', 'bearingNet', 'isolatedPole', 'bothAccepted', 'concrete', 'depth'] as const;
const BLOCK = ['length', 'width', ...SOIL] as const;
const PIER = ['diameter', 'constrained', ...SOIL] as const;
const NEEDED = {
  block: ['length', 'width', 'soilBearing', 'depth'],
  pier: ['diameter', 'soilLateral', 'depth'],
} as const;

function readFoundation(reader: PlanReader, fields: FoundationFields, foot: number): Foundation {
  const at = '/tower/foundation';
  const own: readonly string[] = fields.kind === 'block' ? BLOCK : fields.kind === 'pier' ? PIER : [];
  for (const key of new Set([...BLOCK, ...PIER])) {
    if (fields[key] === undefined || fields.kind === undefined || own.includes(key)) continue;
    const allowed = own.length === 0 ? 'no dimensions' : own.join(', ');
    const says = `Tower foundation: "${key}" does not belong to ${fields.kind}, which has ${allowed}. Leave it out.`;
    reader.fault(pointerTo(at, key), 'goes-with', key, allowed, says);
  }
  const needed = fields.kind === 'block' || fields.kind === 'pier' ? NEEDED[fields.kind] : [];
  for (const key of needed) {
    if (fields[key] !== undefined) continue;
    const says = `Tower foundation: a ${fields.kind} needs "${key}". Give it, or leave the foundation out.`;
    reader.fault(pointerTo(at, key), 'missing', 'nothing', key, says);
  }
  const size = (key: 'length' | 'width' | 'depth' | 'diameter') => reader.perhaps(fields[key], at, key) ?? Number.NaN;
  const soil = {
    density: reader.perhaps(fields.concrete, at, 'concrete'),
    isolatedPole: fields.isolatedPole,
    bearingNet: fields.bearingNet,
    bothAccepted: fields.bothAccepted,
    head: foot,
  };
  const bearing = reader.perhaps(fields.soilBearing, at, 'soilBearing');
  const lateral = reader.perhaps(fields.soilLateral, at, 'soilLateral');
  if (fields.kind === 'block') {
    const sizes = { length: size('length'), width: size('width'), depth: size('depth') };
    return present({ kind: fields.kind, ...sizes, ...soil, bearing: bearing ?? Number.NaN, lateral });
  }
  if (fields.kind === 'pier') {
    const sizes = { diameter: size('diameter'), depth: size('depth'), constrained: fields.constrained ?? false };
    return present({ kind: fields.kind, ...sizes, ...soil, bearing, lateral: lateral ?? Number.NaN });
  }
  return { kind: 'manufacturer' };
}
