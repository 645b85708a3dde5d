import { z } from 'zod';
import { component } from '../documents/component.ts';
import { answerSchema, cautionSchema, quantitySchema, querySchema, verdictSchema } from './answer-schemas.ts';

const checkState = {
  verdict: verdictSchema,
  ratio: z.exactOptional(z.number()),
  holdsTo: z.exactOptional(quantitySchema.meta({ description: 'Actual 3-second gust at 10 m in the open, at use 1.' })),
};

const station = {
  verdict: verdictSchema,
  soFar: z.exactOptional(verdictSchema),
  weakest: z.exactOptional(z.string()),
  says: z.string(),
  roomLeft: answerSchema.shape.roomLeft.meta({
    description: 'The biggest thing that still fits, effective, by height.',
  }),
};

const comings = z.object({ loads: z.array(z.string()), cautions: z.array(cautionSchema) });

export const additionsSchema = component(
  'Additions',
  z
    .object({
      says: z.string(),
      before: z.object({
        ...station,
        checks: z.array(z.object({ id: z.string(), title: z.string(), ...checkState })),
        entryWarnings: z.array(querySchema),
      }),
      after: z.array(
        z.object({
          name: z.string(),
          rank: z.number().meta({ description: '1 leaves the weakest link the most.' }),
          ...station,
          checks: z.array(
            z.object({
              id: z.string(),
              title: z.string(),
              before: z.exactOptional(z.object(checkState)),
              after: z.exactOptional(z.object(checkState)),
              change: z.exactOptional(z.number().meta({ description: 'Use after less use before.' })),
              holdsToChange: z.exactOptional(
                quantitySchema.meta({ description: 'Actual gust held to after less that before.' }),
              ),
            }),
          ),
          entryWarnings: z
            .array(querySchema)
            .meta({ description: 'Only those the plan as it is does not have; pointers into the request.' }),
          added: comings.meta({ description: 'Loads and cautions that come with it.' }),
          removed: comings.meta({ description: 'Loads and cautions that go with it.' }),
          plan: z.unknown().meta({ description: 'The plan as it would be.' }),
        }),
      ),
      cautions: z.array(z.object({ code: z.string(), says: z.string() })),
      notCovered: z.array(z.string()),
    })
    .meta({ description: 'A plan and ways to change it, before and after for every link.' }),
);
