import { z } from 'zod';
import { MATERIAL_NAMES } from '../../areas/index.ts';
import type { Support } from '../../structure/index.ts';
import { FIELDS as words } from '../../words/index.ts';
import {
  choice,
  type FieldWords,
  inUnits,
  listOf,
  name,
  optional,
  quantity,
  remarks,
  whole,
  yesOrNo,
} from './field-schemas.ts';
import { latticeFields, poleFields, SECTION_SHAPE_NAMES } from './shape-schema.ts';

export const SUPPORTS = ['free', 'guyed', 'bracketed', 'roof'] as const satisfies readonly Support[];
export const SECTIONS_AT_MOST = 60;

const sectionShape = {
  shape: optional(choice(SECTION_SHAPE_NAMES, words.section.shape)),
  ...latticeFields,
  ...poleFields,
  wall: optional(quantity(words.section.wall)),
  legWall: optional(quantity(words.section.legWall)),
  material: optional(choice(MATERIAL_NAMES, words.section.material)),
};

const section = z.strictObject({
  length: quantity(words.section.length),
  count: optional(whole(1, SECTIONS_AT_MOST, words.section.count)),
  name: optional(name(words.section.name)),
  make: optional(name(words.section.make)),
  weight: optional(quantity(words.section.weight)),
  uniform: optional(yesOrNo(words.section.uniform)),
  ...sectionShape,
  ...remarks(words.section),
});

const support = z.strictObject({
  height: quantity(words.support.height),
  by: choice(['guys', 'bracket'], words.support.by),
  count: optional(whole(1, 12, words.support.count)),
  diameter: optional(quantity(words.support.diameter)),
  radius: optional(quantity(words.support.radius)),
  ...remarks(words.support),
});

const point = ({ description }: FieldWords) =>
  z
    .tuple([z.union([z.number(), z.string()]), z.union([z.number(), z.string()])])
    .meta({ description: `${description}: [x, y]${inUnits('length')}` });

const hinge = z
  .strictObject({
    height: quantity(words.hinge.height),
    raisedBy: optional(
      z
        .strictObject({
          kind: choice(['line', 'winch', 'screw', 'actuator'], words.raisingGear.kind),
          anchor: point(words.raisingGear.anchor),
          attach: quantity(words.raisingGear.attach),
          raisingPoleTip: optional(point(words.raisingGear.raisingPoleTip)),
          workingLoad: optional(quantity(words.raisingGear.workingLoad)),
          ...remarks(words.raisingGear),
        })
        .meta({ description: words.hinge.raisedBy.description }),
    ),
    ...remarks(words.hinge),
  })
  .meta({ description: words.tower.hinge.description });

const foundation = z
  .strictObject({
    kind: choice(['block', 'pier', 'manufacturer'], words.foundation.kind),
    length: optional(quantity(words.foundation.length)),
    width: optional(quantity(words.foundation.width)),
    depth: optional(quantity(words.foundation.depth)),
    soilBearing: optional(quantity(words.foundation.soilBearing)),
    diameter: optional(quantity(words.foundation.diameter)),
    soilLateral: optional(quantity(words.foundation.soilLateral)),
    constrained: optional(yesOrNo(words.foundation.constrained)),
    ...remarks(words.foundation),
  })
  .meta({ description: words.tower.foundation.description });

export const towerSchema = z
  .strictObject({
    support: choice(SUPPORTS, words.tower.support),
    top: quantity(words.tower.top),
    base: optional(quantity(words.tower.base)),
    sections: optional(listOf(section, SECTIONS_AT_MOST, words.tower.sections)),
    ...sectionShape,
    telescopes: optional(yesOrNo(words.tower.telescopes)),
    nested: optional(quantity(words.tower.nested)),
    supportedAt: optional(listOf(support, 40, words.tower.supportedAt)),
    hinge: optional(hinge),
    weight: optional(quantity(words.tower.weight)),
    frequency: optional(quantity(words.tower.frequency)),
    damping: optional(quantity(words.tower.damping)),
    foundation: optional(foundation),
    asDrawn: optional(yesOrNo(words.tower.asDrawn)),
    used: optional(yesOrNo(words.tower.used)),
    ...remarks(words.tower),
  })
  .meta({ description: words.plan.tower.description });

const mastPiece = z.strictObject({
  outside: quantity(words.mastPiece.outside),
  wall: quantity(words.mastPiece.wall),
  from: quantity(words.mastPiece.from),
  to: quantity(words.mastPiece.to),
  yield: optional(quantity(words.mastPiece.yield)),
  ...remarks(words.mastPiece),
});

export const mastSchema = z
  .strictObject({
    outside: quantity(words.mast.outside),
    length: quantity(words.mast.length),
    wall: optional(quantity(words.mast.wall)),
    yield: optional(quantity(words.mast.yield)),
    ultimate: optional(quantity(words.mast.ultimate)),
    inside: optional(quantity(words.mast.inside)),
    bearing: optional(
      z
        .union([z.number(), z.string(), z.literal(false)])
        .meta({ description: `${words.mast.bearing.description}${inUnits('length')}` }),
    ),
    manufacturerPlates: optional(yesOrNo(words.mast.manufacturerPlates)),
    material: optional(choice(MATERIAL_NAMES, words.mast.material)),
    pieces: optional(listOf(mastPiece, 20, words.mast.pieces)),
    ...remarks(words.mast),
  })
  .meta({ description: words.plan.mast.description });

export const rotatorSchema = z
  .strictObject({
    height: optional(quantity(words.rotator.height)),
    weight: optional(quantity(words.rotator.weight)),
    ...remarks(words.rotator),
  })
  .meta({ description: words.plan.rotator.description });

export type TowerFields = z.output<typeof towerSchema>;
export type SectionFields = z.output<typeof section>;
export type HeldFields = z.output<typeof support>;
export type HingeFields = z.output<typeof hinge>;
export type FoundationFields = z.output<typeof foundation>;
export type MastFields = z.output<typeof mastSchema>;
export type RotatorFields = z.output<typeof rotatorSchema>;
