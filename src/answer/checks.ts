import { z } from 'zod';
import { CHECK_KINDS, COMPARED, HOLDING_TORQUES, OPEN_REASONS, VERDICTS } from '../margins/index.ts';
import { METHODS } from '../methods/index.ts';
import {
  headingsSchema,
  maybe,
  number,
  quantityOf,
  quantitySchema,
  speedWithBasisSchema,
  unitSchema,
  words,
} from './quantities.ts';
import type { Described } from './settled.ts';

export const verdictSchema = z.enum(VERDICTS).meta({
  id: 'Verdict',
  description:
    'within: ratio at worst no more than the target, 1 less the margin set; low-margin: no more than 1; over: more than 1 even at best; open: data missing, or the readings disagree.',
});

/** A piece of a sentence; a reader may mark a verdict or a wind in it. */
const pieceSchema = z
  .object({
    text: z.string(),
    as: z.exactOptional(
      z
        .enum(['verdict', 'wind', 'scope'])
        .meta({ description: 'What the piece names; scope: how much of the plan is decided. Plain text without.' }),
    ),
    verdict: z.exactOptional(verdictSchema.meta({ description: 'The verdict that the piece names.' })),
  })
  .meta({ id: 'Piece', description: 'A piece of the headline.' });
export type Piece = Described<typeof pieceSchema>;
export const headlineSchema = z
  .array(pieceSchema)
  .meta({ description: 'says, in pieces: their texts joined are says.' });

const demandSchema = z.object({
  of: z.enum(COMPARED).meta({ id: 'Compared', description: 'What is compared.' }),
  value: z.number(),
  unit: unitSchema,
});

const title = words('Name of the check.');

export const checkSchema = z
  .object({
    id: z.string(),
    kind: z.enum(CHECK_KINDS).meta({ description: 'What is checked.' }),
    title,
    verdict: verdictSchema,
    says: z.string(),
    why: words('says, without name and verdict.'),
    because: z.exactOptional(z.enum(OPEN_REASONS).meta({ description: 'Of an open check: why, as a code.' })),
    needs: z.array(z.string()).meta({ description: 'JSON pointers to what is not given.' }),
    ratio: z.exactOptional(number('Demand/capacity, every open question at worst.')),
    ratioRange: z.exactOptional(z.array(z.number()).meta({ description: 'Ratio at best and at worst.' })),
    margin: z.exactOptional(number('1 − ratio.')),
    demand: z.exactOptional(demandSchema),
    capacity: z.exactOptional(quantitySchema),
    where: maybe('Height above ground of what governs.'),
    along: maybe('Distance outwards from the support, on an element or a boom.'),
    heading: z.exactOptional(headingsSchema),
    bySecondMethod: z.exactOptional(
      z.enum(METHODS).meta({
        description:
          'Standard whose wind counts, where it is not the plan’s own but the one that speaks beside it for what stands on a tower.',
      }),
    ),
    ratioWithoutWind: z.exactOptional(number('Ratio without wind, where it is above the target.')),
    over: z.exactOptional(
      z
        .object({
          ratio: z.number(),
          demand: demandSchema,
          capacity: quantitySchema,
          where: maybe('Height above ground.'),
        })
        .meta({ description: 'The comparison behind the verdict over, where a larger ratio elsewhere means less.' }),
    ),
    torque: z.exactOptional(
      z
        .object({
          heldBy: z.enum(HOLDING_TORQUES),
          turnsWith: maybe('Turning torque.'),
          turnsUpTo: maybe('Actual gust up to which it can turn.'),
        })
        .meta({ description: 'Of a rotator: what holds it, and up to which actual gust it can turn.' }),
    ),
    holdsTo: z.exactOptional(
      z
        .object({
          gust: quantityOf('Actual gust: 3 seconds, at 33 ft (10 m) in open country.'),
          design: speedWithBasisSchema,
          atBest: maybe('Actual gust with every open question at best, where that turns the verdict; about.'),
        })
        .meta({ description: 'Wind at which the ratio reaches 1.' }),
    ),
    areaUsed: z.exactOptional(
      z
        .object({
          area: quantityOf('Effective area at the rated height that makes there the demand of loads, mast and lines.'),
          rated: quantityOf('The rated area as effective area.'),
          height: quantityOf('Of the rated area, above ground.'),
          ofTower: quantityOf('What the wind on the tower itself makes of the demand.'),
        })
        .meta({ description: 'Of a tower rated by area: how much of that area is used, its own drag apart.' }),
    ),
  })
  .meta({ id: 'Check', description: 'One comparison of demand with capacity.' });
export type CheckAnswer = Described<typeof checkSchema>;

const state = {
  verdict: verdictSchema,
  ratio: z.exactOptional(number('Demand/capacity, every open question at worst.')),
  holdsTo: maybe('Actual gust at which the ratio reaches 1.'),
};
export const checkStateSchema = z.object(state);
export type CheckState = Described<typeof checkStateSchema>;
export const namedCheckStateSchema = z.object({ id: z.string(), title, ...state });

export const checkChangeSchema = z.object({
  id: z.string(),
  title,
  before: z.exactOptional(checkStateSchema),
  after: z.exactOptional(checkStateSchema),
  change: z.exactOptional(number('Ratio after less ratio before.')),
  holdsToChange: maybe('Actual gust held to after less that before.'),
});
export type CheckChangeAnswer = Described<typeof checkChangeSchema>;
