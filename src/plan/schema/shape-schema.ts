import { z } from 'zod';
import {
  type Along,
  type AreaKind,
  type LatticeSolid,
  type Lay,
  MATERIAL_NAMES,
  type Members,
} from '../../areas/index.ts';
import { choice, optional, quantity, quantityPair, remarks, text, whole, yesOrNo } from './field-schemas.ts';

export const AREA_KINDS = [
  'effective',
  'projected-round',
  'projected-flat',
  'flat-plate',
  'unknown',
] as const satisfies readonly AreaKind[];
/** How a run of lines lies. */
export const LAYS = ['single', 'ribbon', 'bundle', 'inside'] as const satisfies readonly Lay[];
const ALONG = ['upright', 'boom', 'element'] as const satisfies readonly Along[];
const MEMBERS = ['round', 'flat'] as const satisfies readonly Members[];
type Pattern = Extract<LatticeSolid, { by: 'members' }>['pattern'];
const PATTERNS = ['zigzag', 'cross', 'rungs'] as const satisfies readonly Pattern[];

export const areaKind = choice(AREA_KINDS, 'Which area the sheet means');

/** Fields of a lattice, in a section, beside a tower's top, or in a load. */
export const latticeFields = {
  faces: optional(z.union([z.literal(3), z.literal(4)]).meta({ description: 'lattice: number of faces' })),
  width: optional(quantityPair('diameter', 'lattice: width of a face; pole: width across')),
  members: optional(choice(MEMBERS, 'lattice: round or flat members')),
  leg: optional(quantity('diameter', 'lattice: width of a leg; with brace and panel')),
  brace: optional(quantity('diameter', 'lattice: width of a brace')),
  panel: optional(quantity('diameter', 'lattice: height of one panel of the bracing')),
  pattern: optional(choice(PATTERNS, 'lattice: bracing; zigzag when not given')),
  solidity: optional(
    quantity('share', 'lattice: solid share of one face; dish: solid share of its face, less for mesh'),
  ),
  roundArea: optional(quantity('area', 'lattice: area of the round members of one face')),
  flatArea: optional(quantity('area', 'lattice: area of the flat members of one face')),
  dragArea: optional(quantity('area', "lattice: the maker's drag area")),
};

/** Fields of a pole. Its width is that of the lattice fields. */
export const poleFields = {
  sides: optional(
    z
      .union([z.literal(0), z.literal(8), z.literal(12), z.literal(16), z.literal(18)])
      .meta({ description: 'pole: number of sides, 0 is round' }),
  ),
};

const taperPiece = z.union([
  z.tuple([tubeSize('Diameter'), tubeSize('Visible length')]),
  z.tuple([tubeSize('Diameter'), tubeSize('Visible length'), tubeSize('Wall')]),
]);

const tubeRow = z.strictObject({
  along: choice(ALONG, 'Which way the tubes run'),
  count: optional(whole(1, 1000, 'How many alike')),
  diameter: optional(quantity('diameter', 'Diameter; with length, or taper')),
  length: optional(quantity('length', 'Whole length, tip to tip')),
  taper: optional(
    z.array(taperPiece).min(1).max(20).meta({
      description: '[[diameter, visible length, wall], …] all in the unit of diameters, boom outwards to one tip',
    }),
  ),
  material: optional(choice(MATERIAL_NAMES, 'aluminium when not given')),
  yield: optional(quantity('stress', 'Yield strength; never assumed')),
  ultimate: optional(quantity('stress', 'Strength at rupture; for aluminium')),
  ...remarks,
});

/** Fields of the other shapes a load can have. */
export const loadShapeFields = {
  area: optional(quantity('area', 'stated: area; or front and side')),
  front: optional(quantity('area', 'stated: area seen by a wind along the boom')),
  side: optional(quantity('area', 'stated: area seen by a wind across the boom')),
  force: optional(quantity('force', "stated: a maker's force at the speed wind")),
  wind: optional(quantity('speed', 'stated: the speed of force')),
  areaKind: optional(areaKind),
  slenderFlats: optional(yesOrNo('stated: angle or strip is among its members')),
  icedArea: optional(quantity('area', 'stated: area with ice, of the same kind; beside a force the effective one')),
  diameter: optional(quantityPair('diameter', 'tube, dish, wire: diameter')),
  along: optional(choice(ALONG, 'tube: which way it runs; upright when not given')),
  length: optional(quantity('length', 'tube: its length; the height span when not given')),
  tubes: optional(z.array(tubeRow).min(1).max(60).meta({ description: 'tubes: its rows of alike tubes' })),
  wide: optional(quantity('diameter', 'plate: width')),
  tall: optional(quantity('diameter', 'plate: height')),
  deep: optional(quantity('diameter', 'plate: depth; 0 when not given')),
  to: optional(
    z
      .strictObject({
        distance: quantity('length', 'Horizontal distance to the far end'),
        height: quantity('length', 'Height of the far end above ground'),
        heading: quantity('angle', 'Where it runs, clockwise from true north'),
        ...remarks,
      })
      .meta({ description: 'wire: its far end' }),
  ),
  tension: optional(quantity('force', 'wire: its pull; or sag')),
  sag: optional(quantity('length', 'wire: its sag half-way; or tension')),
};

function tubeSize(description: string) {
  return quantity('diameter', description);
}

const shapeFields = z.strictObject({ ...latticeFields, ...poleFields, ...loadShapeFields });
/** Every field that describes a shape. */
export type ShapeFields = z.output<typeof shapeFields>;
export type ShapeField = keyof ShapeFields;
export type TubeRowFields = z.output<typeof tubeRow>;

export const SHAPE_NAMES = ['stated', 'tube', 'tubes', 'plate', 'dish', 'wire', 'lattice', 'pole'] as const;
export type ShapeName = (typeof SHAPE_NAMES)[number];
export const SECTION_SHAPE_NAMES = ['lattice', 'pole'] as const;

/** Which fields belong to which shape. */
export const FIELDS_OF_SHAPE: Readonly<Record<ShapeName, readonly ShapeField[]>> = {
  stated: ['area', 'front', 'side', 'force', 'wind', 'areaKind', 'slenderFlats', 'icedArea'],
  tube: ['diameter', 'along', 'length'],
  tubes: ['tubes'],
  plate: ['wide', 'tall', 'deep'],
  dish: ['diameter', 'solidity'],
  wire: ['diameter', 'to', 'tension', 'sag'],
  lattice: [...(Object.keys(latticeFields) as (keyof typeof latticeFields)[])],
  pole: ['width', 'sides'],
};

export const name = (description: string) => text(description).min(1);
