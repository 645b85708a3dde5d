import { z } from 'zod';
import { component } from '../documents/component.ts';
import { quantitySchema, querySchema, workingSchema } from './answer-schemas.ts';

const noteSchema = component('Note', z.object({ code: z.string(), says: z.string() }));
const headings = z.object({ fixed: z.exactOptional(quantitySchema), turning: z.exactOptional(quantitySchema) });

export const areasSchema = component(
  'Areas',
  z
    .object({
      method: z.string(),
      units: z.object({ height: z.string(), area: z.string() }),
      items: z.array(
        z.object({
          name: z.string(),
          at: z.string(),
          kind: z.string(),
          low: z.number(),
          high: z.number(),
          front: z
            .number()
            .meta({ description: 'Effective area, wind along its heading; open readings at the bad end.' }),
          side: z.number().meta({ description: 'Effective area, wind across its heading.' }),
          least: z.array(z.number()).meta({ description: 'Front and side at the good end.' }),
          worst: z.number(),
          middle: z.number().meta({ description: 'Height of the middle of its area.' }),
        }),
      ),
      worst: quantitySchema,
      heading: headings,
      middle: z.exactOptional(quantitySchema),
      notes: z.array(noteSchema),
      known: z.string(),
      entryWarnings: z.array(querySchema),
    })
    .meta({ description: 'Effective projected areas.' }),
);

export const pressuresSchema = component(
  'Pressures',
  z
    .object({
      method: z.string(),
      speed: z.object({ value: z.number(), unit: z.string(), basis: z.string() }),
      factors: z.object({
        directionFactor: z.number(),
        importance: z.number(),
        elevationFactor: z.number(),
        gustEffect: z.number(),
        level: z.number(),
      }),
      heights: z.array(
        z.object({
          height: quantitySchema,
          exposureCoefficient: z.number(),
          topographicFactor: z.number(),
          pressure: quantitySchema,
          speed: quantitySchema,
          forcePerArea: quantitySchema,
        }),
      ),
      notes: z.array(noteSchema),
      entryWarnings: z.array(querySchema),
    })
    .meta({ description: 'The wind of a site at heights.' }),
);

export const ratingsSchema = component(
  'Ratings',
  z
    .object({
      says: z.string(),
      ratings: z.array(
        z.object({
          at: z.string(),
          row: z.number(),
          force: z.array(quantitySchema).meta({ description: 'Least and most, allowable level.' }),
          equal: z.exactOptional(z.array(quantitySchema)),
          readings: z.array(
            z.object({
              method: z.string(),
              exposure: z.exactOptional(z.string().meta({ description: 'Ground upwind; terrain by EN 1991-1-4.' })),
              terrain: z.exactOptional(z.string().meta({ description: 'Ground upwind by EN 1991-1-4.' })),
              riskCategory: z.string(),
              low: quantitySchema,
              high: quantitySchema,
            }),
          ),
        }),
      ),
      more: z.exactOptional(z.object({ at: z.string(), by: z.array(z.number()) })),
      notes: z.array(noteSchema),
      entryWarnings: z.array(querySchema),
      working: z.exactOptional(workingSchema),
    })
    .meta({ description: 'Ratings set side by side.' }),
);
