import { z } from 'zod';
import { planHashSchema, stationShape } from './answer.ts';
import { checkChangeSchema, namedCheckStateSchema } from './checks.ts';
import { cautionSchema, entryWarningSchema, noteSchema } from './findings.ts';
import { words } from './quantities.ts';
import type { Described } from './settled.ts';
import { roomLeftSchema } from './structure.ts';

const station = { ...stationShape, roomLeft: roomLeftSchema, planHash: z.exactOptional(planHashSchema) };

const cameOrWentSchema = z.object({ loads: z.array(z.string()), cautions: z.array(cautionSchema) });

export const additionsSchema = z
  .object({
    says: z.string(),
    before: z.object({
      ...station,
      checks: z.array(namedCheckStateSchema),
      entryWarnings: z.array(entryWarningSchema),
    }),
    after: z.array(
      z.object({
        name: z.string(),
        rank: z.number().meta({
          description:
            '1 is the best: fewest parts over or open, then least not given, then the smallest of the largest ratios.',
        }),
        ...station,
        checks: z.array(checkChangeSchema),
        entryWarnings: z
          .array(entryWarningSchema)
          .meta({ description: 'Only those the plan as it is does not have; pointers into the request.' }),
        added: cameOrWentSchema.meta({ description: 'Loads and cautions that come with it.' }),
        removed: cameOrWentSchema.meta({ description: 'Loads and cautions that go with it.' }),
        plan: z.unknown().meta({ description: 'The plan as it would be.' }),
      }),
    ),
    cautions: z.array(noteSchema),
    notCovered: z.array(z.string()),
    version: z.exactOptional(words('Of the service that gave the answer.')),
  })
  .meta({ id: 'Additions', description: 'A plan and ways to change it, before and after, check by check.' });
export type AdditionsAnswer = Described<typeof additionsSchema>;
