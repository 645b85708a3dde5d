import { z } from 'zod';
import { bareOrEnds, name, optional, text } from './field-schemas.ts';
import { loadSchema } from './load-schema.ts';
import { planDocumentSchema } from './plan-document.ts';

export const PROPOSALS_AT_MOST = 40;
/** Changes of one kind in one proposal. */
const ENTRIES_AT_MOST = 60;

const proposal = z
  .strictObject({
    name: name({ description: 'Name of the proposal' }),
    set: optional(
      z.record(z.string().max(60), z.unknown()).meta({
        description: 'Merge patch of the plan, RFC 7396: another tower, mast or rating; null takes a field away',
      }),
    ),
    remove: optional(
      z
        .array(text({ description: 'Name of a load' }))
        .min(1)
        .max(ENTRIES_AT_MOST)
        .meta({ description: 'Loads to remove' }),
    ),
    swap: optional(
      z
        .array(
          z.strictObject({
            load: text({ description: 'Name of the load to replace' }),
            with: z.record(z.string().max(60), z.unknown()).meta({
              description:
                'The load in its place; it keeps the name, height, heading, turning, mounting and offset of the old one unless given otherwise',
            }),
          }),
        )
        .min(1)
        .max(60),
    ),
    move: optional(
      z
        .array(
          z.strictObject({
            load: text({ description: 'Name of the load' }),
            height: optional(bareOrEnds.meta({ description: 'Height above ground [us ft, si m]; or above' })),
            above: optional(bareOrEnds.meta({ description: "Height above the tower's top [us ft, si m]; or height" })),
          }),
        )
        .min(1)
        .max(ENTRIES_AT_MOST)
        .meta({ description: 'Loads at another height' }),
    ),
    add: optional(z.array(loadSchema).min(1).max(ENTRIES_AT_MOST).meta({ description: 'Loads to add' })),
  })
  .meta({ description: 'One way to change the plan' });

/** A plan, and ways to change it. */
export const additionsRequestSchema = z
  .strictObject({
    plan: planDocumentSchema,
    proposals: z.array(proposal).min(1).max(PROPOSALS_AT_MOST).meta({ description: 'Ways to change it' }),
  })
  .meta({ description: 'A plan, and ways to change it: add, remove, swap, move, set' });

/** What the fields of a form stand for: in it a patch has the fields of a plan, and a load that comes those of a load. */
export const additionsFieldsSchema = z.strictObject({
  plan: planDocumentSchema,
  proposals: z.array(
    z.strictObject({
      ...proposal.shape,
      set: optional(planDocumentSchema),
      swap: optional(
        z.array(z.strictObject({ load: text({ description: 'Name of the load to replace' }), with: loadSchema })),
      ),
    }),
  ),
});

const entry = z.record(z.string(), z.unknown());

/** The form alone: the plan, and what loads and patches hold, are read with the plan. */
export const additionsFormSchema = z.strictObject({
  plan: z.unknown(),
  proposals: z
    .array(
      z.strictObject({
        ...proposal.shape,
        set: optional(entry),
        swap: optional(
          z
            .array(z.strictObject({ load: text({ description: 'Name of the load to replace' }), with: entry }))
            .min(1)
            .max(ENTRIES_AT_MOST),
        ),
        add: optional(z.array(z.unknown()).min(1).max(ENTRIES_AT_MOST)),
      }),
    )
    .min(1)
    .max(PROPOSALS_AT_MOST),
});
