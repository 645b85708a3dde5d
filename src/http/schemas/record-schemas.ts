import { z } from 'zod';
import { WORDS_FOR_KNOWN } from '../../foundation/index.ts';
import { CHECK_KINDS } from '../../margins/index.ts';
import { component } from '../documents/component.ts';

const version = z.string().regex(/^\d+\.\d+\.\d+$/);

/** Which way a result moved. */
const SIDES = ['stricter', 'milder', 'either', 'wording'] as const;

/** Checks and other parts of an answer that a change touches. */
const TOUCHED = [
  ...CHECK_KINDS,
  'base',
  'bracket',
  'lowered',
  'lower-at',
  'chance',
  'room-left',
  'ratings',
  'site',
  'wind-by-height',
  'additions',
  'remedies',
  'headline',
  'cautions',
  'texts',
  'answer',
  'cells',
  'plan',
  'demo-plans',
] as const;

const changeSchema = component(
  'Change',
  z
    .strictObject({
      version,
      date: z.iso.date(),
      side: z.enum(SIDES).meta({
        description:
          'stricter: ratios rise, or less is within. milder: ratios fall, or a refused plan is answered. either: it depends on the plan. wording: no number moves.',
      }),
      where: z.array(z.enum(TOUCHED)).min(1).meta({ description: 'Checks and parts of an answer that it touches.' }),
      what: z.string().min(1),
      from: z.string().min(1).meta({ description: 'How it was.' }),
      to: z.string().min(1).meta({ description: 'How it is.' }),
    })
    .meta({ description: 'One change of results or words.' }),
);

const renameSchema = component(
  'Rename',
  z
    .strictObject({
      version,
      document: z.enum(['plan', 'answer', 'table', 'problem', 'address']),
      kind: z.enum(['field', 'value']).meta({ description: 'Whether the name of a field changes, or a value in it.' }),
      at: z.string().meta({
        description:
          'JSON pointer to the object that has the field, or to the value; of an address, the parameter, or the cell that has it. * is any place of a list, /** any place at all.',
      }),
      from: z.string().min(1),
      to: z.string().min(1),
    })
    .meta({ description: 'One name that changed.' }),
);

export const changesSchema = component(
  'Changes',
  z
    .strictObject({
      versions: z.array(z.strictObject({ version, says: z.string() })).meta({ description: 'The newest first.' }),
      changes: z.array(changeSchema),
      renames: z.array(renameSchema),
    })
    .meta({ description: 'What changed for users, by version.' }),
);

const known = z
  .enum(Object.keys(WORDS_FOR_KNOWN) as [keyof typeof WORDS_FOR_KNOWN])
  .meta({ description: 'How it is known; of several statements, the weakest.' });
const tests = z.array(z.string()).meta({ description: 'Test files that name what cites it.' });

const clauseSchema = component(
  'Clause',
  z
    .strictObject({
      clause: z.string(),
      known,
      readIn: z.exactOptional(z.array(z.string())).meta({
        description: 'Documents that print the figures, where the standard itself was not read: ids of /v1/sources.',
      }),
      formulas: z.array(z.string()).meta({ description: 'Ids of /v1/formulas.' }),
      tables: z.array(z.string()).meta({ description: 'Tables of reference/tables.' }),
      constants: z.array(z.string()).meta({ description: 'Constants of the code.' }),
      examples: z
        .array(z.strictObject({ id: z.string(), known }))
        .meta({ description: 'Published examples of reference/examples that come from it or compute its formulas.' }),
      tests,
    })
    .meta({ description: 'One clause with what cites it and what holds it.' }),
);

export const clausesSchema = component(
  'Clauses',
  z
    .strictObject({
      standards: z.array(
        z.strictObject({
          standard: z.string().meta({ description: 'An id of /v1/sources.' }),
          title: z.string(),
          kind: z.string(),
          clauses: z.array(clauseSchema),
          constants: z
            .array(z.strictObject({ name: z.string(), says: z.string(), tests }))
            .meta({ description: 'Constants from it whose clause is not given.' }),
        }),
      ),
      withoutTest: z.array(z.strictObject({ standard: z.string(), clause: z.string() })).meta({
        description: 'Clauses that no test of their own holds; sweeps over all formulas and methods reach them only.',
      }),
    })
    .meta({ description: 'Clause by clause: formulas, tables and constants, their tests, and how they are known.' }),
);

export type Changes = z.output<typeof changesSchema>;
export type Clauses = z.output<typeof clausesSchema>;
