import { z } from 'zod';
import { FIELDS } from '../../words/index.ts';
import {
  choice,
  choiceOf,
  name,
  optional,
  quantities,
  quantity,
  quantityPair,
  remarks,
  whole,
  yesOrNo,
} from './field-schemas.ts';
import { ratedWindSchema } from './rating-schema.ts';
import { latticeFields, loadShapeFields, poleFields, SHAPE_NAMES } from './shape-schema.ts';

const { load, cable } = FIELDS;

export const loadSchema = z
  .strictObject({
    name: optional(name(load.name)),
    height: optional(quantityPair(load.height)),
    above: optional(quantityPair(load.above)),
    shape: optional(choiceOf(SHAPE_NAMES, load.shape)),
    ...loadShapeFields,
    ...latticeFields,
    ...poleFields,
    count: optional(whole(1, 1000, load.count)),
    weight: optional(quantity(load.weight)),
    icedWeight: optional(quantity(load.icedWeight)),
    turns: optional(yesOrNo(load.turns)),
    later: optional(yesOrNo(load.later)),
    heading: optional(quantity(load.heading)),
    on: optional(choice(load.on)),
    ...quantities(load, 'offset', 'boom', 'reach'),
    ratedWind: optional(ratedWindSchema(load.ratedWind, FIELDS.loadRatedWind)),
    ...remarks(load),
  })
  .meta({ description: 'One load on the tower or its mast' });

export const cableSchema = z
  .strictObject({
    count: whole(1, 200, cable.count),
    diameter: quantity(cable.diameter),
    name: optional(name(cable.name)),
    ...quantities(cable, 'weight', 'from', 'to'),
    arrangement: optional(choice(cable.arrangement)),
    rows: optional(whole(1, 200, cable.rows)),
    spacing: optional(quantity(cable.spacing)),
    ...remarks(cable),
  })
  .meta({ description: 'A run of cables up the tower' });

export type LoadFields = z.output<typeof loadSchema>;
export type CableFields = z.output<typeof cableSchema>;
