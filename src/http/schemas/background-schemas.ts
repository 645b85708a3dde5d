import { z } from 'zod';
import { component } from '../documents/component.ts';

const unitsSchema = component(
  'Units',
  z.object({
    us: z.string().meta({ description: 'Its unit in us plans; empty for a plain number.' }),
    si: z.string().meta({ description: 'Its unit in si plans.' }),
  }),
);

export const knownSchema = z
  .string()
  .meta({ description: 'How it is known: published, second hand, from memory, derived, common practice.' });

export const formulaSchema = component(
  'Formula',
  z
    .object({
      id: z.string(),
      title: z.string(),
      symbol: z.string().meta({ description: 'Symbol of what it gives.' }),
      units: unitsSchema,
      expression: z.string().meta({ description: 'The right-hand side; it holds in any coherent set of units.' }),
      variables: z.array(
        z.object({
          symbol: z.string(),
          meaning: z.string(),
          units: unitsSchema,
          from: z.number().meta({ description: 'Lower end of the range it is tested over, SI base units.' }),
          to: z.number().meta({ description: 'Upper end of the range it is tested over, SI base units.' }),
        }),
      ),
      source: z.string().meta({ description: 'An id of /v1/sources.' }),
      clause: z.string().meta({ description: 'Where in the source.' }),
      known: knownSchema,
    })
    .meta({ description: 'One formula of the service.' }),
);

export const sourceSchema = component(
  'Source',
  z
    .object({
      id: z.string(),
      title: z.string(),
      short: z.exactOptional(z.string().meta({ description: 'Its name in the working, where the title is long.' })),
      edition: z.string(),
      publisher: z.string(),
      kind: z.string(),
      known: knownSchema,
      seen: z.string().meta({ description: 'What of it was read and what not.' }),
      used: z.string().meta({ description: 'What is taken from it.' }),
    })
    .meta({ description: 'A source document.' }),
);

export type DescribedFormula = z.output<typeof formulaSchema>;
export type DescribedSource = z.output<typeof sourceSchema>;
