import { z } from 'zod';
import { choice, optional, quantity } from './field-schemas.ts';
import { planDocumentSchema } from './plan-document.ts';
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
