import { PIECE_ALIKE } from '../../margins/index.ts';
import type { Section, SectionShape, Tubing } from '../../structure/index.ts';
import { pointerTo } from '../faults/fault.ts';
import type { SectionFields, TowerFields } from '../schema/tower-schema.ts';
import { SECTIONS_AT_MOST } from '../schema/tower-schema.ts';
import type { PlanReader } from './plan-reader.ts';
import { present } from './present.ts';
import { partOfShape, readLattice, readPole } from './read-section-shape.ts';
import { firstShapeField, refuseForeignFields } from './shape-fields.ts';
import { refuseEarlyRupture } from './tube-faults.ts';

/** Lengths off a tape may miss the sum by this much [m]. @source common-practice */
const TAPE = 0.005;

/** What a section tells of its metal. */
const METAL_FIELDS = ['wall', 'legWall', 'material', 'yield', 'ultimate', 'braceWall', 'legFree'] as const;

/** The sections of a tower in SI, from the base up: as given, or pieces of one length counted down from the top. */
export function readSections(reader: PlanReader, tower: TowerFields, foot: number, top: number): Section[] {
  if (tower.sections === undefined) return piecesOf(reader, tower, foot, top);
  const field = tower.shape === undefined ? firstShapeField(tower, []) : 'shape';
  if (field !== undefined) {
    const says = `Tower has sections, and "${field}" beside its top: put the shape into each section.`;
    reader.fault(pointerTo('/tower', field), 'goes-with', field, 'only without sections', says);
  }
  for (const key of METAL_FIELDS) {
    if (tower[key] === undefined) continue;
    const says = `Tower has sections, and "${key}" beside its top: put it into each section.`;
    reader.fault(pointerTo('/tower', key), 'goes-with', key, 'only without sections', says);
  }
  const rows = tower.sections.flatMap((fields, index) => readRow(reader, fields, index));
  if (rows.length > SECTIONS_AT_MOST) {
    const says = `Tower sections: ${rows.length} with their counts, at most ${SECTIONS_AT_MOST} allowed.`;
    reader.fault('/tower/sections', 'too-many', String(rows.length), `at most ${SECTIONS_AT_MOST}`, says);
  }
  if (tower.telescopes === true)
    return placed(rows, foot, top, overlapOf(reader, rows, foot, top)).map(({ section }) => section);
  return placed(rows, foot, top, sumOf(reader, rows, foot, top)).flatMap(({ section, uniformTold }) =>
    uniformTold ? [section] : cutIntoPieces(reader, section),
  );
}

interface Row {
  readonly section: Omit<Section, 'low' | 'high'>;
  readonly length: number;
  readonly uniformTold: boolean;
}

function readRow(reader: PlanReader, fields: SectionFields, index: number): Row[] {
  const at = `/tower/sections/${index}`;
  const length = reader.quantity(fields.length, at, 'length');
  const shape = readSectionShape(reader, fields, at, length);
  const tapered = shape !== undefined && shape.width[0] !== shape.width[1];
  if (tapered && fields.uniform === true) {
    const says = `${reader.words(at)} tapers and is called uniform: leave "uniform" out.`;
    reader.fault(pointerTo(at, 'uniform'), 'tapered-yet-uniform', 'true', 'false for a taper', says);
  }
  const name = fields.name ?? `section ${index + 1}`;
  const count = fields.count ?? 1;
  const common = {
    at,
    make: fields.make,
    uniform: fields.uniform ?? (shape !== undefined && !tapered),
    shape,
    notGiven: notGivenOfShape(fields, shape),
    tubing: readTubing(reader, fields, at, shape),
    weight: reader.perhaps(fields.weight, at, 'weight'),
  };
  return Array.from({ length: count }, (_, number) => ({
    section: present({ name: count === 1 ? name : `${name}, ${number + 1} of ${count}`, ...common }),
    length,
    uniformTold: fields.uniform !== undefined,
  }));
}

/** A section that nobody calls uniform is compared as often as a tower of which no sections are told. */
function cutIntoPieces(reader: PlanReader, section: Section): readonly Section[] {
  const { low: foot, high: top, shape, weight } = section;
  const joints = jointsOfPieces(foot, top);
  if (shape === undefined || joints.length <= 2) return [section];
  const share = (height: number) => (height - foot) / (top - foot);
  return joints.slice(1).map((high, index) => {
    const low = joints[index] ?? foot;
    return {
      ...section,
      name: `${section.name}, ${reader.say(low, 'length')} to ${reader.say(high, 'length')}`,
      low,
      high,
      shape: partOfShape(shape, share(low), share(high)),
      ...(index === 0 ? {} : { within: true }),
      ...(weight === undefined ? {} : { weight: weight * (share(high) - share(low)) }),
    };
  });
}

/** From the foot up, every piece of one length counted down from the top; a rest shorter than the tape can tell is none. */
function jointsOfPieces(foot: number, top: number): readonly number[] {
  if (!(top > foot)) return [];
  const count = Math.max(1, Math.ceil((top - foot - TAPE) / PIECE_ALIKE));
  return Array.from({ length: count + 1 }, (_, number) => (number === 0 ? foot : top - (count - number) * PIECE_ALIKE));
}

/** What of a section's shape nobody told. */
function notGivenOfShape(
  { sides, pattern }: Pick<SectionFields, 'sides' | 'pattern'>,
  shape: SectionShape | undefined,
): Section['notGiven'] {
  if (shape?.kind === 'pole') return sides === undefined ? ['sides'] : undefined;
  return shape?.solid.by === 'members' && pattern === undefined ? ['pattern'] : undefined;
}

/** Wall and material, where both are given and belong to the shape. */
function readTubing(
  reader: PlanReader,
  fields: Omit<SectionFields, 'length'>,
  at: string,
  shape: SectionShape | undefined,
): Tubing | undefined {
  const { wall, legWall, material } = fields;
  if (wall !== undefined && shape?.kind !== 'pole') {
    const says = `${reader.words(at)} has "wall", which is a pole's. For the legs of a lattice give "legWall".`;
    reader.fault(pointerTo(at, 'wall'), 'shape-field-foreign', 'wall', 'only with shape pole', says);
    return undefined;
  }
  if (legWall !== undefined && shape?.kind !== 'lattice') {
    const says = `${reader.words(at)} has "legWall", which is a lattice's. For a pole give "wall".`;
    reader.fault(pointerTo(at, 'legWall'), 'shape-field-foreign', 'legWall', 'only with shape lattice', says);
    return undefined;
  }
  const legs = shape?.kind === 'lattice' && shape.solid.by === 'members' ? shape.solid : undefined;
  if (legWall !== undefined && legs === undefined) {
    const says = `${reader.words(at)} has "legWall": give its legs too, with "leg", "brace" and "panel", or leave it out.`;
    reader.fault(pointerTo(at, 'leg'), 'shape-field-missing', 'nothing', 'leg, brace and panel', says);
    return undefined;
  }
  const key = shape?.kind === 'pole' ? 'wall' : 'legWall';
  const given = fields[key];
  const foreign = (key === 'wall' ? (['braceWall', 'legFree'] as const) : []).find(
    (field) => fields[field] !== undefined,
  );
  if (foreign !== undefined) {
    const says = `${reader.words(at)} has "${foreign}", which is a lattice's. Leave it out of a pole.`;
    reader.fault(pointerTo(at, foreign), 'shape-field-foreign', foreign, 'only with shape lattice', says);
    return undefined;
  }
  const ofMetal = (['yield', 'ultimate', 'braceWall', 'legFree'] as const).find((field) => fields[field] !== undefined);
  if (ofMetal !== undefined && (given === undefined || material === undefined)) {
    const says = `${reader.words(at)} has "${ofMetal}", which goes with "${key}" and "material". Give all, or leave it out.`;
    reader.fault(pointerTo(at, ofMetal), 'goes-with', ofMetal, `with ${key} and material`, says);
    return undefined;
  }
  if (fields.ultimate !== undefined && material === 'steel') {
    const says = `${reader.words(at)} has "ultimate", which is asked of aluminium. Leave it out of steel.`;
    reader.fault(pointerTo(at, 'ultimate'), 'goes-with', 'ultimate', 'with material aluminium', says);
    return undefined;
  }
  if (given === undefined && material === undefined) return undefined;
  if (given === undefined || material === undefined) {
    const [has, lacks] = given === undefined ? ['material', key] : [key, 'material'];
    const says = `${reader.words(at)} has "${has}" and no "${lacks}": give both, or neither; they are for its frequency and strength.`;
    reader.fault(pointerTo(at, lacks), 'missing', 'nothing', lacks, says);
    return undefined;
  }
  const wallOf = (field: 'wall' | 'legWall' | 'braceWall', value: typeof given, outside: number): number => {
    const read = reader.quantity(value, at, field);
    if (read > outside / 2 + TAPE / 1000) {
      const [thick, most] = [reader.say(read, 'diameter'), reader.say(outside / 2, 'diameter')];
      const says = `${reader.words(at)}: a wall of ${thick} does not fit into ${reader.say(outside, 'diameter')}. Give up to ${most}, which is solid.`;
      reader.fault(pointerTo(at, field), 'wall-too-thick', thick, `up to ${most}`, says);
    }
    return read;
  };
  const yieldStrength = reader.perhaps(fields.yield, at, 'yield');
  const ultimateStrength = reader.perhaps(fields.ultimate, at, 'ultimate');
  refuseEarlyRupture(reader, reader.words(at), yieldStrength, ultimateStrength, at);
  const outside = shape?.kind === 'pole' ? Math.min(...shape.width) : (legs?.leg ?? Number.NaN);
  return present({
    wall: wallOf(key, given, outside),
    material,
    yieldStrength,
    ultimateStrength,
    braceWall:
      fields.braceWall === undefined ? undefined : wallOf('braceWall', fields.braceWall, legs?.brace ?? outside),
    legFree: reader.perhaps(fields.legFree, at, 'legFree'),
  });
}

function readSectionShape(
  reader: PlanReader,
  fields: Omit<SectionFields, 'length'>,
  at: string,
  length: number,
): SectionShape | undefined {
  const own = ['length'];
  if (fields.shape === undefined) {
    const field = firstShapeField(fields, own);
    if (field !== undefined) {
      const says = `${reader.words(at)} has "${field}" but no shape: say "shape": "lattice" or "pole".`;
      reader.fault(pointerTo(at, 'shape'), 'shape-missing', 'nothing', 'lattice, pole', says);
    }
    return undefined;
  }
  refuseForeignFields(reader, fields, fields.shape, at, own);
  return fields.shape === 'pole' ? readPole(reader, fields, at) : readLattice(reader, fields, at, length);
}

/** Faults lengths that do not add up; returns the overlap of two neighbours, which is none. */
function sumOf(reader: PlanReader, rows: readonly Row[], foot: number, top: number): number {
  const sum = rows.reduce((total, row) => total + row.length, 0);
  if (Math.abs(sum - (top - foot)) > TAPE) {
    const [given, wanted, missing] = [sum, top - foot, Math.abs(sum - (top - foot))].map((value) =>
      reader.say(value, 'length'),
    );
    const way = sum > top - foot ? `${missing} too much` : `${missing} are missing`;
    const says = `Tower sections add up to ${given}, and from its base to its top it is ${wanted}: ${way}. Correct a length, or say "telescopes": true if they slide into each other.`;
    reader.fault('/tower/sections', 'sections-do-not-add-up', given as string, wanted as string, says);
  }
  return 0;
}

/** The even overlap of telescoping neighbours [m]. */
function overlapOf(reader: PlanReader, rows: readonly Row[], foot: number, top: number): number {
  const sum = rows.reduce((total, row) => total + row.length, 0);
  const overlap = (sum - (top - foot)) / (rows.length - 1);
  const shortest = Math.min(...rows.map((row) => row.length));
  if (rows.length < 2 || overlap <= 0 || overlap >= shortest) {
    const [given, height, least, each] = [sum, top - foot, shortest, overlap].map((value) =>
      reader.say(value, 'length'),
    );
    const why =
      rows.length < 2
        ? 'one section has nothing to slide into: give each section.'
        : overlap <= 0
          ? `sections that slide into each other are together longer than the ${height} from base to top, and these are ${given}.`
          : `they would overlap by ${each} each, and the shortest is ${least}. Check the lengths and the top.`;
    reader.fault(
      '/tower/sections',
      'sections-do-not-overlap',
      `${given} in all`,
      `more than ${height} in all`,
      `Tower telescopes: ${why}`,
    );
  }
  return overlap;
}

function placed(
  rows: readonly Row[],
  foot: number,
  top: number,
  overlap: number,
): readonly { readonly section: Section; readonly uniformTold: boolean }[] {
  let low = foot;
  return rows.map(({ section: row, length, uniformTold }, index) => {
    const section = { ...row, low, high: index === rows.length - 1 ? top : low + length };
    low += length - overlap;
    return { section, uniformTold };
  });
}

function piecesOf(reader: PlanReader, tower: TowerFields, foot: number, top: number): Section[] {
  const whole = readSectionShape(reader, tower, '/tower', top - foot);
  const tubing = readTubing(reader, tower, '/tower', whole);
  const notGiven = notGivenOfShape(tower, whole);
  const uniform = whole === undefined || whole.width[0] === whole.width[1];
  const joints = jointsOfPieces(foot, top);
  return joints.slice(1).map((high, index) => {
    const low = joints[index] ?? foot;
    const share = (height: number) => (height - foot) / (top - foot);
    return present({
      name: `${reader.say(low, 'length')} to ${reader.say(high, 'length')}`,
      at: '/tower',
      low,
      high,
      uniform,
      shape: whole === undefined ? undefined : partOfShape(whole, share(low), share(high)),
      notGiven,
      tubing,
    });
  });
}
