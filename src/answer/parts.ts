import { z } from 'zod';
import { METHODS } from '../methods/index.ts';
import { WIND_ITEM_KINDS } from '../structure/index.ts';
import { entryWarningSchema, noteSchema } from './findings.ts';
import { headingsSchema, number, pointer, quantitySchema, speedWithBasisSchema, unitSchema } from './quantities.ts';
import type { Described } from './settled.ts';
import { factorsSchema, groundShape, pressureRowSchema, riskCategorySchema, siteMethodSchema } from './wind.ts';
import { knownSchema, workingSchema } from './working.ts';

/** What every answer to a part of a plan says besides. */
const remarks = { notes: z.array(noteSchema), entryWarnings: z.array(entryWarningSchema) };

export const areasSchema = z
  .object({
    method: siteMethodSchema,
    units: z.object({ height: unitSchema, area: unitSchema }),
    items: z.array(
      z.object({
        name: z.string(),
        at: pointer('it in the request.'),
        kind: z.enum(WIND_ITEM_KINDS),
        low: z.number(),
        high: z.number(),
        front: number('Effective area, wind along its heading; open readings at worst.'),
        side: number('Effective area, wind across its heading.'),
        least: z.array(z.number()).meta({ description: 'Front and side at best.' }),
        worst: number('Largest over all wind directions.'),
        byDirection: z.exactOptional(
          z
            .object({ face: z.number(), corner: z.number() })
            .meta({ description: 'Of a lattice: wind on a face, and on a corner. The larger counts.' }),
        ),
        middle: number('Height of the middle of its area.'),
      }),
    ),
    worst: quantitySchema,
    heading: headingsSchema,
    middle: z.exactOptional(quantitySchema),
    known: knownSchema,
    ...remarks,
  })
  .meta({ id: 'Areas', description: 'Effective projected areas.' });
export type AreasAnswer = Described<typeof areasSchema>;

export const pressuresSchema = z
  .object({
    method: siteMethodSchema,
    speed: speedWithBasisSchema,
    factors: factorsSchema,
    heights: z.array(pressureRowSchema),
    ...remarks,
  })
  .meta({ id: 'Pressures', description: 'The wind of a site at heights.' });
export type PressuresAnswer = Described<typeof pressuresSchema>;

export const ratingsSchema = z
  .object({
    says: z.string(),
    ratings: z.array(
      z.object({
        at: pointer('it in the request.'),
        row: z.number(),
        force: z.array(quantitySchema).meta({ description: 'Least and most over all readings, allowable level.' }),
        equal: z.exactOptional(
          z.array(quantitySchema).meta({ description: 'Effective area of equal force in the other wind.' }),
        ),
        readings: z.array(
          z.object({
            method: z.enum(METHODS),
            ...groundShape,
            riskCategory: riskCategorySchema,
            low: quantitySchema,
            high: quantitySchema,
          }),
        ),
      }),
    ),
    more: z.exactOptional(z.object({ at: pointer('the larger rating.'), by: z.array(z.number()) })),
    working: z.exactOptional(workingSchema),
    ...remarks,
  })
  .meta({ id: 'Ratings', description: 'Ratings set side by side.' });
export type RatingsAnswer = Described<typeof ratingsSchema>;
