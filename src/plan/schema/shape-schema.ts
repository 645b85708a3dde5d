import { z } from 'zod';
import { type Along, type AreaKind, type LatticeSolid, MATERIAL_NAMES, type Members } from '../../areas/index.ts';
import { FIELDS, FIELDS_OF_SHAPE as FIELDS_OF_EACH } from '../../words/index.ts';
import { choice, listOf, optional, quantity, quantityPair, remarks, whole, yesOrNo } from './field-schemas.ts';

export const AREA_KINDS = [
  'effective',
  'projected-round',
  'projected-flat',
  'flat-plate',
  'unknown',
] as const satisfies readonly AreaKind[];
const ALONG = ['upright', 'boom', 'element'] as const satisfies readonly Along[];
const MEMBERS = ['round', 'flat'] as const satisfies readonly Members[];
type Pattern = Extract<LatticeSolid, { by: 'members' }>['pattern'];
const PATTERNS = ['zigzag', 'cross', 'rungs'] as const satisfies readonly Pattern[];

const { load, tubeRow: row, taperPiece: piece, wireEnd } = FIELDS;

/** Fields of a lattice, in a section, beside a tower's top, or in a load. */
export const latticeFields = {
  faces: optional(z.union([z.literal(3), z.literal(4)]).meta({ description: load.faces.description })),
  width: optional(quantityPair(load.width)),
  members: optional(choice(MEMBERS, load.members)),
  leg: optional(quantity(load.leg)),
  brace: optional(quantity(load.brace)),
  panel: optional(quantity(load.panel)),
  pattern: optional(choice(PATTERNS, load.pattern)),
  solidity: optional(quantity(load.solidity)),
  roundArea: optional(quantity(load.roundArea)),
  flatArea: optional(quantity(load.flatArea)),
  dragArea: optional(quantity(load.dragArea)),
};

/** Fields of a pole. Its width is that of the lattice fields. */
export const poleFields = {
  sides: optional(
    z
      .union([z.literal(0), z.literal(8), z.literal(12), z.literal(16), z.literal(18)])
      .meta({ description: load.sides.description }),
  ),
};

const taperPiece = z.union([
  z.tuple([quantity(piece[0]), quantity(piece[1])]),
  z.tuple([quantity(piece[0]), quantity(piece[1]), quantity(piece[2])]),
]);

const tubeRow = z.strictObject({
  along: choice(ALONG, row.along),
  count: optional(whole(1, 1000, row.count)),
  diameter: optional(quantity(row.diameter)),
  length: optional(quantity(row.length)),
  taper: optional(listOf(taperPiece, 20, row.taper)),
  material: optional(choice(MATERIAL_NAMES, row.material)),
  yield: optional(quantity(row.yield)),
  ultimate: optional(quantity(row.ultimate)),
  ...remarks(row),
});

/** Fields of the other shapes a load can have. */
export const loadShapeFields = {
  area: optional(quantity(load.area)),
  front: optional(quantity(load.front)),
  side: optional(quantity(load.side)),
  force: optional(quantity(load.force)),
  wind: optional(quantity(load.wind)),
  areaKind: optional(choice(AREA_KINDS, load.areaKind)),
  slenderFlats: optional(yesOrNo(load.slenderFlats)),
  icedArea: optional(quantity(load.icedArea)),
  diameter: optional(quantityPair(load.diameter)),
  along: optional(choice(ALONG, load.along)),
  length: optional(quantity(load.length)),
  tubes: optional(listOf(tubeRow, 60, load.tubes)),
  wide: optional(quantity(load.wide)),
  tall: optional(quantity(load.tall)),
  deep: optional(quantity(load.deep)),
  to: optional(
    z
      .strictObject({
        distance: quantity(wireEnd.distance),
        height: quantity(wireEnd.height),
        heading: quantity(wireEnd.heading),
        ...remarks(wireEnd),
      })
      .meta({ description: load.to.description }),
  ),
  tension: optional(quantity(load.tension)),
  sag: optional(quantity(load.sag)),
};

const shapeFields = z.strictObject({ ...latticeFields, ...poleFields, ...loadShapeFields });
/** Every field that describes a shape. */
export type ShapeFields = z.output<typeof shapeFields>;
export type ShapeField = keyof ShapeFields;
export type TubeRowFields = z.output<typeof tubeRow>;

export const SHAPE_NAMES = ['stated', 'tube', 'tubes', 'plate', 'dish', 'wire', 'lattice', 'pole'] as const;
export type ShapeName = (typeof SHAPE_NAMES)[number];
export const SECTION_SHAPE_NAMES = ['lattice', 'pole'] as const;

/** Which fields belong to which shape. */
export const FIELDS_OF_SHAPE: Readonly<Record<ShapeName, readonly ShapeField[]>> = FIELDS_OF_EACH;
