import { z } from 'zod';
import { FIELDS as words } from '../../words/index.ts';
import {
  bare,
  choice,
  choiceOf,
  type FieldWords,
  inUnits,
  listOf,
  name,
  optional,
  quantities,
  quantity,
  remarks,
  whole,
  yesOrNo,
} from './field-schemas.ts';
import { latticeFields, poleFields } from './shape-schema.ts';

export const SECTIONS_AT_MOST = 60;

const sectionShape = {
  shape: optional(choice(words.section.shape)),
  ...latticeFields,
  ...poleFields,
  ...quantities(words.section, 'wall', 'legWall', 'braceWall', 'legFree', 'yield', 'ultimate'),
  material: optional(choice(words.section.material)),
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
  by: choice(words.support.by),
  count: optional(whole(1, 12, words.support.count)),
  ...quantities(words.support, 'diameter', 'radius', 'tension', 'breakingStrength'),
  grade: optional(choice(words.support.grade)),
  ends: optional(choice(words.support.ends)),
  ...remarks(words.support),
});

const point = ({ description }: FieldWords) =>
  z.tuple([bare, bare]).meta({ description: `${description}: [x, y]${inUnits('length')}` });

const hinge = z
  .strictObject({
    height: quantity(words.hinge.height),
    raisedBy: optional(
      z
        .strictObject({
          kind: choice(words.raisingGear.kind),
          anchor: point(words.raisingGear.anchor),
          attach: quantity(words.raisingGear.attach),
          raisingPoleTip: optional(point(words.raisingGear.raisingPoleTip)),
          workingLoad: optional(quantity(words.raisingGear.workingLoad)),
          ...remarks(words.raisingGear),
        })
        .meta({ description: words.hinge.raisedBy.description }),
    ),
    counterpoise: optional(
      z
        .strictObject({
          weight: quantity(words.counterpoise.weight),
          below: quantity(words.counterpoise.below),
          ...remarks(words.counterpoise),
        })
        .meta({ description: words.hinge.counterpoise.description }),
    ),
    ...remarks(words.hinge),
  })
  .meta({ description: words.tower.hinge.description });

const foundation = z
  .strictObject({
    kind: choiceOf(['block', 'pier', 'manufacturer'], words.foundation.kind),
    ...quantities(words.foundation, 'length', 'width', 'depth', 'soilBearing', 'concrete', 'diameter', 'soilLateral'),
    constrained: optional(yesOrNo(words.foundation.constrained)),
    isolatedPole: optional(yesOrNo(words.foundation.isolatedPole)),
    bearingNet: optional(yesOrNo(words.foundation.bearingNet)),
    bothAccepted: optional(yesOrNo(words.foundation.bothAccepted)),
    ...remarks(words.foundation),
  })
  .meta({ description: words.tower.foundation.description });

export const towerSchema = z
  .strictObject({
    support: choice(words.tower.support),
    top: quantity(words.tower.top),
    base: optional(quantity(words.tower.base)),
    sections: optional(listOf(section, SECTIONS_AT_MOST, words.tower.sections)),
    ...sectionShape,
    telescopes: optional(yesOrNo(words.tower.telescopes)),
    nested: optional(quantity(words.tower.nested)),
    standsAt: optional(quantity(words.tower.standsAt)),
    supportedAt: optional(listOf(support, 40, words.tower.supportedAt)),
    hinge: optional(hinge),
    ...quantities(words.tower, 'weight', 'frequency', 'damping'),
    foundation: optional(foundation),
    asDrawn: optional(yesOrNo(words.tower.asDrawn)),
    baseHeld: optional(yesOrNo(words.tower.baseHeld)),
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
    ...quantities(words.mast, 'wall', 'yield', 'ultimate', 'inside'),
    bearing: optional(
      z
        .union([z.number(), z.string(), z.literal(false)])
        .meta({ description: `${words.mast.bearing.description}${inUnits('length')}` }),
    ),
    manufacturerPlates: optional(yesOrNo(words.mast.manufacturerPlates)),
    material: optional(choice(words.mast.material)),
    pieces: optional(listOf(mastPiece, 20, words.mast.pieces)),
    ...remarks(words.mast),
  })
  .meta({ description: words.plan.mast.description });

export const rotatorSchema = z
  .strictObject({
    ...quantities(words.rotator, 'height', 'weight'),
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
