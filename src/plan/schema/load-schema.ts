import { z } from 'zod';
import { LAYS } from '../../areas/index.ts';
import { FIELDS } from '../../words/index.ts';
import { choice, name, optional, quantity, quantityPair, remarks, whole, yesOrNo } from './field-schemas.ts';
import { ratedWindSchema } from './rating-schema.ts';
import { latticeFields, loadShapeFields, poleFields, SHAPE_NAMES } from './shape-schema.ts';

const { load, cable } = FIELDS;

export const loadSchema = z
  .strictObject({
    name: name(load.name),
    height: optional(quantityPair(load.height)),
    above: optional(quantityPair(load.above)),
    shape: optional(choice(SHAPE_NAMES, load.shape)),
    ...loadShapeFields,
    ...latticeFields,
    ...poleFields,
    count: optional(whole(1, 1000, load.count)),
    weight: optional(quantity(load.weight)),
    turns: optional(yesOrNo(load.turns)),
    heading: optional(quantity(load.heading)),
    on: optional(choice(['mast', 'tower'], load.on)),
    offset: optional(quantity(load.offset)),
    boom: optional(quantity(load.boom)),
    reach: optional(quantity(load.reach)),
    ratedWind: optional(ratedWindSchema(load.ratedWind, FIELDS.loadRatedWind)),
    ...remarks(load),
  })
  .meta({ description: 'One load on the tower or its mast' });

export const cableSchema = z
  .strictObject({
    count: whole(1, 200, cable.count),
    diameter: quantity(cable.diameter),
    name: optional(name(cable.name)),
    weight: optional(quantity(cable.weight)),
    from: optional(quantity(cable.from)),
    to: optional(quantity(cable.to)),
    arrangement: optional(choice(LAYS, cable.arrangement)),
    ...remarks(cable),
  })
  .meta({ description: 'A run of cables up the tower' });

export type LoadFields = z.output<typeof loadSchema>;
export type CableFields = z.output<typeof cableSchema>;
