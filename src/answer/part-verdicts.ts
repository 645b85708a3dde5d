import { z } from 'zod';
import { PART_KINDS } from '../margins/index.ts';
import { verdictSchema } from './checks.ts';
import { checkId, number, words } from './quantities.ts';
import type { Described } from './settled.ts';

export const partSchema = z
  .object({
    id: z.string(),
    kind: z.enum(PART_KINDS).meta({ id: 'PartKind', description: 'What the part is.' }),
    title: words('Name of the part.'),
    verdict: z.exactOptional(
      verdictSchema.meta({
        description: 'That of its worst check: over, open, low-margin, within. Absent where nothing is compared.',
      }),
    ),
    ratio: z.exactOptional(number('Demand/capacity of the check that governs, every open question at worst.')),
    couldBeOver: z.exactOptional(
      z.literal(true).meta({ description: 'Open, with a ratio above 1 at worst: the whole is then not within.' }),
    ),
    governs: checkId(' that its verdict comes from'),
    says: words('What governs, or what is not given.'),
    checks: z.array(words('Id of a check.')).meta({ description: 'Its checks, by their identifiers.' }),
  })
  .meta({ id: 'Part', description: 'A thing that checks are about, with the verdict of its worst check.' });
export type PartAnswer = Described<typeof partSchema>;

export const decidedSchema = z
  .object({
    parts: number('Parts with a verdict other than open.'),
    of: number('Parts that are checked.'),
    verdict: z.exactOptional(
      verdictSchema.meta({
        description:
          'The worst of the decided parts. Absent where none is over and the tower is open, or an open part could be over.',
      }),
    ),
  })
  .meta({ id: 'Decided', description: 'How many parts are decided, and what that says of the whole.' });
