import { z } from 'zod';
import { component } from '../documents/component.ts';
import { quantitySchema, verdictSchema } from './check-schemas.ts';

const linkState = {
  verdict: verdictSchema,
  use: z.exactOptional(z.number()),
  holdsTo: z.exactOptional(quantitySchema),
};

const station = {
  verdict: verdictSchema,
  soFar: z.exactOptional(verdictSchema),
  weakest: z.exactOptional(z.string()),
  roomLeft: z
    .array(z.object({ height: quantitySchema, area: quantitySchema, on: z.string() }))
    .meta({ description: 'The biggest thing that still fits, effective, by height.' }),
};

export const additionsSchema = component(
  'Additions',
  z
    .object({
      says: z.string(),
      before: z.object({
        ...station,
        links: z.array(z.object({ id: z.string(), title: z.string(), ...linkState })),
      }),
      after: z.array(
        z.object({
          name: z.string(),
          rank: z.number().meta({ description: '1 leaves the weakest link the most.' }),
          says: z.string(),
          ...station,
          links: z.array(
            z.object({
              id: z.string(),
              title: z.string(),
              before: z.exactOptional(z.object(linkState)),
              after: z.exactOptional(z.object(linkState)),
              change: z.exactOptional(z.number().meta({ description: 'Use after less use before.' })),
            }),
          ),
          plan: z.unknown().meta({ description: 'The plan as it would be.' }),
        }),
      ),
      cautions: z.array(z.object({ code: z.string(), says: z.string() })),
    })
    .meta({ description: 'A plan and ways to change it, before and after for every link.' }),
);
