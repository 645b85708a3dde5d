import { z } from 'zod';
import { KNOWN } from '../foundation/index.ts';
import { unitSchema, words } from './quantities.ts';
import type { Described } from './settled.ts';

export const knownSchema = z.enum(KNOWN).meta({ description: 'How it is known.' });

const stepSchema = z
  .object({
    about: z.array(z.string()),
    formula: words('Id in /v1/formulas.'),
    title: z.string(),
    symbol: z.string(),
    expression: z.string(),
    inputs: z.array(
      z.object({
        symbol: z.string(),
        meaning: z.string(),
        value: z.union([z.number(), z.array(z.number())]),
        unit: unitSchema,
      }),
    ),
    value: z.number(),
    unit: unitSchema,
    source: words('Id in /v1/sources.'),
    clause: z.string(),
    known: knownSchema,
    knownInWords: z.string(),
    note: z.exactOptional(z.string()),
  })
  .meta({ id: 'Step', description: 'One line of the working: it re-evaluates from its inputs.' });
export type WorkingStep = Described<typeof stepSchema>;
export type StepInput = WorkingStep['inputs'][number];

export const workingSchema = z.array(stepSchema).meta({ description: 'Every step behind the answer.' });
