import type { LatticeShape, LatticeSolid, PoleShape } from '../../areas/index.ts';
import type { SectionShape } from '../../structure/index.ts';
import { pointerTo } from '../faults/fault.ts';
import type { ShapeFields } from '../schema/shape-schema.ts';
import type { PlanReader } from './plan-reader.ts';
import { requireFields } from './shape-fields.ts';

/** A lattice as written, in SI; its areas are those of its length [m]. */
export function readLattice(reader: PlanReader, fields: ShapeFields, at: string, length: number): LatticeShape {
  requireFields(reader, fields, 'lattice', ['faces', 'width', 'members'], at);
  const width = reader.pair(fields.width, at, 'width');
  return {
    kind: 'lattice',
    faces: fields.faces ?? 3,
    width,
    members: fields.members ?? 'round',
    solid: readSolid(reader, fields, at, { width, length }),
  };
}

/** A pole as written, in SI. */
export function readPole(reader: PlanReader, fields: ShapeFields, at: string): PoleShape {
  requireFields(reader, fields, 'pole', ['width'], at);
  return { kind: 'pole', width: reader.pair(fields.width, at, 'width'), sides: fields.sides ?? 0 };
}

/** One face of a lattice: its width at both ends, and its length [m]. */
interface Face {
  readonly width: readonly [number, number];
  readonly length: number;
}

function readSolid(reader: PlanReader, fields: ShapeFields, at: string, face: Face): LatticeSolid {
  const ways = [
    given(fields, ['leg', 'brace', 'panel', 'pattern']),
    given(fields, ['solidity']),
    given(fields, ['roundArea', 'flatArea']),
    given(fields, ['dragArea']),
  ].filter((way) => way !== '');
  if (ways.length > 1) {
    const says = `${reader.words(at)} says in several ways how solid it is (${ways.join('; ')}): keep one of them.`;
    const allowed = 'leg, brace and panel; or solidity; or roundArea and flatArea; or dragArea';
    reader.fault(at, 'one-of', ways.join('; '), allowed, says);
  }
  if (fields.dragArea !== undefined) {
    return { by: 'drag', dragArea: reader.quantity(fields.dragArea, at, 'dragArea') };
  }
  if (fields.roundArea !== undefined || fields.flatArea !== undefined) return readAreas(reader, fields, at, face);
  if (fields.solidity !== undefined) return { by: 'solidity', solidity: readSolidity(reader, fields, at) };
  if (ways.length === 0) return { by: 'unknown' };
  return readMembers(reader, fields, at, face);
}

function readSolidity(reader: PlanReader, fields: ShapeFields, at: string): number {
  const solidity = reader.quantity(fields.solidity, at, 'solidity');
  if (solidity >= 1) {
    const says = `${reader.words(at)}: a face ${fields.solidity} solid is no lattice. Give less than 1, or describe a pole or a plate.`;
    reader.fault(pointerTo(at, 'solidity'), 'solidity-too-high', String(fields.solidity), 'less than 1', says);
  }
  return solidity;
}

function readAreas(reader: PlanReader, fields: ShapeFields, at: string, face: Face): LatticeSolid {
  const missing = fields.roundArea === undefined ? 'roundArea' : fields.flatArea === undefined ? 'flatArea' : undefined;
  const wanted = fields.members === 'flat' ? 'flatArea' : 'roundArea';
  if (missing === wanted && fields.members !== undefined) {
    const says = `${reader.words(at)} has ${fields.members} members but no ${wanted}: give both areas of one face.`;
    reader.fault(pointerTo(at, wanted), 'shape-field-missing', 'nothing', wanted, says);
  }
  const round = reader.perhaps(fields.roundArea, at, 'roundArea') ?? 0;
  const flat = reader.perhaps(fields.flatArea, at, 'flatArea') ?? 0;
  const whole = ((face.width[0] + face.width[1]) / 2) * face.length;
  if (round + flat >= whole) {
    const solid = reader.say(round + flat, 'area');
    const most = reader.say(whole, 'area');
    const says = `${reader.words(at)}: members of ${solid} do not leave a lattice in a face of ${most}. Give the area of one face, in all less than that.`;
    reader.fault(at, 'face-overfull', solid, `less than ${most}`, says);
  }
  return { by: 'areas', round, flat };
}

function readMembers(reader: PlanReader, fields: ShapeFields, at: string, face: Face): LatticeSolid {
  requireFields(reader, fields, 'lattice', ['leg', 'brace', 'panel'], at);
  const leg = reader.quantity(fields.leg, at, 'leg');
  const brace = reader.quantity(fields.brace, at, 'brace');
  const panel = reader.quantity(fields.panel, at, 'panel');
  const half = Math.min(...face.width) / 2;
  const say = (value: number) => reader.say(value, 'diameter');
  if (leg >= half) {
    const says = `${reader.words(at)}: legs of ${say(leg)} fill a face of ${say(2 * half)}. Give less than ${say(half)}.`;
    reader.fault(pointerTo(at, 'leg'), 'leg-too-wide', say(leg), `less than ${say(half)}`, says);
  }
  const most = Math.min(half, panel / 2);
  if (brace >= most) {
    const says = `${reader.words(at)}: braces of ${say(brace)} fill panels of ${say(panel)} in a face of ${say(2 * half)}. Give less than ${say(most)}.`;
    reader.fault(pointerTo(at, 'brace'), 'brace-too-wide', say(brace), `less than ${say(most)}`, says);
  }
  if (panel > face.length * 1.001) {
    const says = `${reader.words(at)}: a panel of ${say(panel)} is longer than the ${reader.say(face.length, 'length')} it is part of. Give the height of one panel of the bracing.`;
    reader.fault(pointerTo(at, 'panel'), 'panel-too-long', say(panel), `up to ${say(face.length)}`, says);
  }
  return { by: 'members', leg, brace, panel, pattern: fields.pattern ?? 'zigzag' };
}

/**
 * A lattice or pole as it stands between two shares of its length from below, its taper interpolated and its areas
 * shared out.
 */
export function partOfShape(shape: SectionShape, from: number, to: number): SectionShape {
  const [low, high] = shape.width;
  const at = (share: number) => low + (high - low) * share;
  const width: [number, number] = [at(from), at(to)];
  if (shape.kind === 'pole') return { ...shape, width };
  // One solidity over the whole: each part has its share of the face.
  const share = ((to - from) * (width[0] + width[1])) / (low + high);
  const { solid } = shape;
  if (solid.by === 'areas') {
    return { ...shape, width, solid: { by: 'areas', round: solid.round * share, flat: solid.flat * share } };
  }
  if (solid.by === 'drag') return { ...shape, width, solid: { by: 'drag', dragArea: solid.dragArea * share } };
  return { ...shape, width };
}

function given(fields: ShapeFields, names: readonly (keyof ShapeFields)[]): string {
  return names.filter((field) => fields[field] !== undefined).join(', ');
}
