import { z } from 'zod';
import { MATERIAL_NAMES } from '../../areas/index.ts';
import type { Support } from '../../structure/index.ts';
import { choice, optional, quantity, remarks, whole, yesOrNo } from './field-schemas.ts';
import { latticeFields, name, poleFields, SECTION_SHAPE_NAMES } from './shape-schema.ts';

export const SUPPORTS = ['free', 'guyed', 'bracketed', 'roof'] as const satisfies readonly Support[];
export const SECTIONS_AT_MOST = 60;

const sectionShape = {
  shape: optional(choice(SECTION_SHAPE_NAMES, 'lattice or pole, with its fields beside it')),
  ...latticeFields,
  ...poleFields,
  wall: optional(quantity('diameter', 'pole: wall, for its frequency; with material')),
  legWall: optional(
    quantity('diameter', 'lattice: wall of a leg, half the leg where it is solid, for its frequency; with material'),
  ),
  material: optional(choice(MATERIAL_NAMES, 'Of the pole or the legs; with wall or legWall')),
};

const section = z.strictObject({
  length: quantity('length', 'Length of one section'),
  count: optional(whole(1, SECTIONS_AT_MOST, 'How many alike, one on the other')),
  name: optional(name('What you call it')),
  make: optional(name('Sections of one make share what is proven')),
  weight: optional(quantity('weight', 'Weight of one such section; for the hoist of a tower that telescopes')),
  uniform: optional(yesOrNo('Constant width and members over its length; without taper when not given')),
  ...sectionShape,
  ...remarks,
});

const held = z.strictObject({
  height: quantity('length', 'Height above ground'),
  by: choice(['guys', 'bracket'], 'What holds it there'),
  count: optional(whole(1, 12, 'guys: how many')),
  diameter: optional(quantity('diameter', 'guys: diameter of one')),
  radius: optional(quantity('length', 'guys: foot of the tower to the anchor')),
  ...remarks,
});

const point = (description: string) =>
  z
    .tuple([z.union([z.number(), z.string()]), z.union([z.number(), z.string()])])
    .meta({ description: `${description}: [x, y] [us ft, si m]` });

const hinge = z.strictObject({
  height: quantity('length', 'Height of the hinge above ground'),
  raisedBy: optional(
    z.strictObject({
      kind: choice(['line', 'winch', 'screw', 'actuator'], 'What raises it'),
      anchor: point('Where it is anchored, from the hinge'),
      attach: quantity('length', 'Where it takes hold, along the tower'),
      over: optional(point('Tip of a raising pole that turns with the tower, from the hinge')),
      rating: optional(quantity('force', 'Its rated pull')),
      ...remarks,
    }),
  ),
  ...remarks,
});

const foundation = z.strictObject({
  kind: choice(['block', 'pier', 'maker'], 'block, pier, or built to the drawing of the maker'),
  length: optional(quantity('length', 'block: length')),
  width: optional(quantity('length', 'block: width')),
  depth: optional(quantity('length', 'block, pier: depth; of a pier below the ground')),
  bearing: optional(quantity('soil-pressure', 'block: allowable bearing pressure of the soil')),
  diameter: optional(quantity('length', 'pier: diameter')),
  lateral: optional(
    quantity('soil-pressure-per-depth', 'pier: allowable lateral bearing of the soil for each length of depth'),
  ),
  constrained: optional(yesOrNo('pier: held at the ground, by a slab')),
  ...remarks,
});

export const towerSchema = z
  .strictObject({
    support: choice(SUPPORTS, 'free stands by itself, guyed, bracketed to a house, roof stands on a roof'),
    top: quantity('length', 'Height of its top above ground'),
    foot: optional(quantity('length', 'Height of its foot above ground')),
    sections: optional(z.array(section).min(1).max(SECTIONS_AT_MOST).meta({ description: 'From the foot up' })),
    ...sectionShape,
    telescopes: optional(yesOrNo('Its sections slide into each other')),
    nested: optional(quantity('length', 'Height of its top when down')),
    held: optional(
      z
        .array(held)
        .min(1)
        .max(40)
        .meta({ description: 'Guys and brackets; where none are given, those its ratings name' }),
    ),
    hinge: optional(hinge),
    weight: optional(quantity('weight', 'Weight of the whole tower')),
    frequency: optional(quantity('frequency', 'Lowest natural frequency')),
    damping: optional(quantity('share', 'Share of critical damping, 0.02 or "2 %"')),
    foundation: optional(foundation),
    asDrawn: optional(yesOrNo("Guys, brackets and footing are the maker's own")),
    used: optional(yesOrNo('It has stood elsewhere or for years')),
    ...remarks,
  })
  .meta({ description: 'The tower' });

const mastPiece = z.strictObject({
  outside: quantity('diameter', 'Outside diameter'),
  wall: quantity('diameter', 'Wall'),
  from: quantity('length', "Lower end, from the mast's foot"),
  to: quantity('length', "Upper end, from the mast's foot"),
  yield: optional(quantity('stress', 'Yield strength')),
  ...remarks,
});

export const mastSchema = z
  .strictObject({
    outside: quantity('diameter', 'Outside diameter'),
    length: quantity('length', 'Whole length'),
    wall: optional(quantity('diameter', 'Wall')),
    yield: optional(quantity('stress', 'Yield strength of its steel; never assumed')),
    ultimate: optional(quantity('stress', 'Strength at rupture; for aluminium')),
    inside: optional(quantity('length', "The part below the tower's top; 0 is clamped on a rotator")),
    bearing: optional(
      z.union([z.number(), z.string(), z.literal(false)]).meta({
        description: "Height of its upper bearing above ground [us ft, si m], or false; the tower's top when not given",
      }),
    ),
    shelf: optional(yesOrNo("Bearing and foot stand on the maker's own plates")),
    material: optional(choice(MATERIAL_NAMES, 'steel when not given')),
    pieces: optional(z.array(mastPiece).min(1).max(20).meta({ description: 'Stepped or sleeved: its tubes' })),
    ...remarks,
  })
  .meta({ description: 'The mast above the tower' });

export const rotatorSchema = z
  .strictObject({
    height: optional(quantity('length', "Height of the mast's foot above ground")),
    weight: optional(quantity('weight', 'Weight')),
    ...remarks,
  })
  .meta({ description: 'The rotator' });

export type TowerFields = z.output<typeof towerSchema>;
export type SectionFields = z.output<typeof section>;
export type HeldFields = z.output<typeof held>;
export type HingeFields = z.output<typeof hinge>;
export type FoundationFields = z.output<typeof foundation>;
export type MastFields = z.output<typeof mastSchema>;
export type RotatorFields = z.output<typeof rotatorSchema>;
