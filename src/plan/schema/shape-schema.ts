import { z } from 'zod';
import { FIELDS, FIELDS_OF_SHAPE as FIELDS_OF_EACH } from '../../words/index.ts';
import {
  choice,
  listOf,
  optional,
  quantities,
  quantity,
  quantityPair,
  remarks,
  whole,
  yesOrNo,
} from './field-schemas.ts';

const { load, tubeRow: row, taperPiece: piece, wireEnd } = FIELDS;

/** Fields of a lattice, in a section, beside a tower's top, or in a load. */
export const latticeFields = {
  faces: optional(z.union([z.literal(3), z.literal(4)]).meta({ description: load.faces.description })),
  width: optional(quantityPair(load.width)),
  members: optional(choice(load.members)),
  ...quantities(load, 'leg', 'brace', 'panel'),
  pattern: optional(choice(load.pattern)),
  ...quantities(load, 'solidity', 'roundArea', 'flatArea', 'dragArea'),
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
  along: choice(row.along),
  count: optional(whole(1, 1000, row.count)),
  ...quantities(row, 'diameter', 'length'),
  taper: optional(listOf(taperPiece, 20, row.taper)),
  material: optional(choice(row.material)),
  ...quantities(row, 'yield', 'ultimate'),
  ...remarks(row),
});

/** Fields of the other shapes a load can have. */
export const loadShapeFields = {
  ...quantities(load, 'area', 'front', 'side', 'force', 'wind'),
  areaKind: optional(choice(load.areaKind)),
  slenderFlats: optional(yesOrNo(load.slenderFlats)),
  icedArea: optional(quantity(load.icedArea)),
  diameter: optional(quantityPair(load.diameter)),
  along: optional(choice(load.along)),
  length: optional(quantity(load.length)),
  tubes: optional(listOf(tubeRow, 60, load.tubes)),
  ...quantities(load, 'wide', 'tall', 'deep'),
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
  ...quantities(load, 'tension', 'sag'),
  conductor: optional(choice(load.conductor)),
};

const shapeFields = z.strictObject({ ...latticeFields, ...poleFields, ...loadShapeFields });
/** Every field that describes a shape. */
export type ShapeFields = z.output<typeof shapeFields>;
export type ShapeField = keyof ShapeFields;
export type TubeRowFields = z.output<typeof tubeRow>;

export const SHAPE_NAMES = ['stated', 'tube', 'tubes', 'plate', 'dish', 'wire', 'lattice', 'pole'] as const;
export type ShapeName = (typeof SHAPE_NAMES)[number];

/** Which fields belong to which shape. */
export const FIELDS_OF_SHAPE: Readonly<Record<ShapeName, readonly ShapeField[]>> = FIELDS_OF_EACH;
