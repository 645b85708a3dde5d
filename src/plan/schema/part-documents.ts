import { z } from 'zod';
import { choice, optional, quantity } from './field-schemas.ts';
import { planDocumentSchema } from './plan-document.ts';
import { ratedWindSchema, ratingSchema } from './rating-schema.ts';
import { towerSchema } from './tower-schema.ts';

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
    structure: optional(
      choice(['lattice', 'pole'], 'What stands in the wind where no tower is given; direction and gust factors differ'),
    ),
    heights: z
      .array(quantity('length', 'A height above ground'))
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
    top: optional(quantity('length', 'Top of the tower above ground, where no tower is given')),
    structure: optional(choice(['lattice', 'pole'], 'What the tower is, where none is given')),
    ratings: z.array(ratingSchema).min(1).max(40).meta({ description: 'What the makers say' }),
    to: optional(
      z
        .strictObject({
          wind: ratedWindSchema,
          height: optional(quantity('length', 'Height above ground at which the area would be')),
          above: optional(quantity('length', 'Height above the top at which the area would be')),
        })
        .meta({ description: 'The wind in which effective areas of equal force are asked for' }),
    ),
  })
  .meta({ description: 'Ratings to be compared' });
