import { z } from 'zod';
import { choice, optional, quantity, quantityPair, remarks, whole, yesOrNo } from './field-schemas.ts';
import { ratedWindSchema } from './rating-schema.ts';
import { LAYS, latticeFields, loadShapeFields, name, poleFields, SHAPE_NAMES } from './shape-schema.ts';

export const loadSchema = z
  .strictObject({
    name: name('What you call it; each name once'),
    height: optional(quantityPair('length', 'Height above ground; or above')),
    above: optional(quantityPair('length', "Height above the tower's top; it rides along when the top moves")),
    shape: optional(
      choice(SHAPE_NAMES, 'What it looks like; stated when not given: an area or a force from its sheet'),
    ),
    ...loadShapeFields,
    ...latticeFields,
    ...poleFields,
    count: optional(whole(1, 1000, 'How many alike')),
    weight: optional(quantity('weight', 'Weight of each')),
    turns: optional(yesOrNo('Turned by the rotator')),
    heading: optional(quantity('angle', 'Where it faces, clockwise from true north; with turns: at rotator zero')),
    on: optional(choice(['mast', 'tower'], 'What carries it')),
    offset: optional(quantity('length', "From the tower's axis to the middle of its area")),
    boom: optional(quantity('length', 'Length of its boom')),
    reach: optional(quantity('length', "Its tip's largest distance from the mast")),
    ratedWind: optional(ratedWindSchema),
    ...remarks,
  })
  .meta({ description: 'One thing that hangs on the tower' });

export const cableSchema = z
  .strictObject({
    count: whole(1, 200, 'How many lines alike'),
    diameter: quantity('diameter', 'Outside diameter of one'),
    name: optional(name('What you call it')),
    weight: optional(quantity('weight-per-length', 'Weight of one for each length')),
    from: optional(quantity('length', "Lower end above ground; the tower's foot when not given")),
    to: optional(quantity('length', "Upper end above ground; the tower's top when not given")),
    laid: optional(choice(LAYS, 'How they lie; single when not given')),
    ...remarks,
  })
  .meta({ description: 'A run of lines up the tower' });

export type LoadFields = z.output<typeof loadSchema>;
export type CableFields = z.output<typeof cableSchema>;
