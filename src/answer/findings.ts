import { z } from 'zod';
import { ASSUMED, CAUTION_CODES, QUESTIONS, SEVERITIES } from '../margins/index.ts';
import { pointer, words } from './quantities.ts';
import type { Described } from './settled.ts';

export const questionSchema = z
  .object({
    at: pointer('the field that would answer it.'),
    of: z.enum(QUESTIONS).meta({ description: 'The question, as a code.' }),
    ask: z.string(),
    assumed: words('The value assumed: lowest capacity or highest load.'),
    ratioIf: z
      .record(z.string(), z.number())
      .meta({ description: 'Ratio of the check it moves if only this were answered so.' }),
    says: z.string(),
  })
  .meta({ id: 'Question', description: 'Something to find out, ranked by what it would change.' });

export const assumedSchema = z
  .object({
    of: z.enum(ASSUMED).meta({ description: 'What is not given, as a code.' }),
    at: pointer('the field that would tell it.'),
    name: z.exactOptional(words('Of what it is about.')),
    says: z.string(),
    atWorst: z.exactOptional(words('What is taken where it asks most; absent where every level takes its own.')),
    atBest: z.exactOptional(words('What is taken where it asks least.')),
  })
  .meta({
    id: 'Assumed',
    description: 'Something not given, read at both ends of what is plausible: common practice.',
  });

export const cautionSchema = z
  .object({
    code: z.enum(CAUTION_CODES),
    severity: z.enum(SEVERITIES).meta({
      description:
        'verdict: it changes the answer or how far it may be relied on; line: it belongs to one item; standing: it is always there.',
    }),
    says: z.string(),
    action: words('What to do.'),
    at: z.exactOptional(pointer('what it is about.')),
  })
  .meta({ id: 'Caution', description: 'A hazard, an assumption or something not checked.' });
export type CautionAnswer = Described<typeof cautionSchema>;

export const entryWarningSchema = z
  .object({ pointer: pointer('the entry.'), code: z.exactOptional(z.string()), says: z.string() })
  .meta({ id: 'EntryWarning', description: 'An entry to check: readable, but unlikely to be meant.' });
export type EntryWarning = Described<typeof entryWarningSchema>;

export const noteSchema = z.object({ code: z.string(), says: z.string() }).meta({ id: 'Note' });
export type Note = Described<typeof noteSchema>;

export const inquiriesSchema = z
  .object({
    letter: z.exactOptional(
      words('To the manufacturer of the tower, as text to copy: the questions, at most three, that would decide most.'),
    ),
    measure: z.array(z.string()).meta({ description: 'What to measure or look at, what decides most first.' }),
  })
  .meta({ id: 'Inquiries', description: 'Whom to ask for what is open, and what to measure.' });
export type InquiriesAnswer = Described<typeof inquiriesSchema>;
