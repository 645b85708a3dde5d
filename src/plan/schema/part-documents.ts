import { z } from 'zod';
import { FIELDS } from '../../words/index.ts';
import { optional, quantity } from './field-schemas.ts';
import { planDocumentSchema } from './plan-document.ts';
import { ratedWindSchema, ratingSchema } from './rating-schema.ts';
import { towerSchema } from './tower-schema.ts';

const structure = z
  .enum(['lattice', 'pole'])
  .meta({ description: 'Lattice or pole, where no tower is given; direction and gust factors differ' });

/** Any part of a plan whose areas are asked for. */
export const areasRequestSchema = z
  .strictObject({
    ...planDocumentSchema.shape,
    site: optional(planDocumentSchema.shape.site),
    tower: optional(towerSchema),
  })
  .meta({ description: 'Any part of a plan; without a site the coefficients are those of slow wind' });

/** A site, and the heights at which its wind is asked for. */
export const pressuresRequestSchema = z
  .strictObject({
    ...planDocumentSchema.shape,
    tower: optional(towerSchema),
    structure: optional(structure),
    heights: z
      .array(quantity({ of: 'length', description: 'A height above ground' }))
      .min(1)
      .max(200)
      .meta({ description: 'Heights at which the wind is asked for' }),
  })
  .meta({ description: 'A site, and the heights at which its wind is asked for' });

/** Ratings that are to be set side by side, and the wind they are to be turned into. */
export const ratingsRequestSchema = z
  .strictObject({
    units: planDocumentSchema.shape.units,
    title: planDocumentSchema.shape.title,
    tower: optional(towerSchema),
    top: optional(quantity({ of: 'length', description: 'Top of the tower above ground, where no tower is given' })),
    structure: optional(structure),
    ratings: z.array(ratingSchema).min(1).max(40).meta({ description: FIELDS.plan.ratings.description }),
    to: optional(
      z
        .strictObject({
          wind: ratedWindSchema(FIELDS.rating.wind, FIELDS.ratedWind),
          height: optional(quantity({ of: 'length', description: 'Height above ground at which the area would be' })),
          above: optional(quantity({ of: 'length', description: 'Height above the top at which the area would be' })),
        })
        .meta({ description: 'The wind in which effective areas of equal force are asked for' }),
    ),
  })
  .meta({ description: 'Ratings to be compared' });
