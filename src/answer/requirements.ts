import { z } from 'zod';
import { REQUIRED_LOADS, REQUIRED_WINDS } from '../margins/index.ts';
import { METHODS } from '../methods/index.ts';
import { planHashSchema, stationShape } from './answer.ts';
import { entryWarningSchema, noteSchema } from './findings.ts';
import { maybe, number, quantityOf, quantitySchema, speedWithBasisSchema, words } from './quantities.ts';
import type { Described } from './settled.ts';
import { roomLeftSchema } from './structure.ts';
import { groundShape, riskCategorySchema } from './wind.ts';

const bracketSchema = z
  .object({ least: quantitySchema, most: quantitySchema })
  .meta({ description: 'By the least and the most wind on the tower itself that is plausible.' });

const neededSchema = z
  .object({
    value: maybe('The least that keeps the margin; absent where no value does.'),
    byKind: z.exactOptional(
      z
        .object({
          lattice: z.exactOptional(bracketSchema),
          tapered: z.exactOptional(bracketSchema),
          pole: z.exactOptional(bracketSchema),
        })
        .meta({ description: 'Where the shape of the tower is not given: by kind. The value is the most of all.' }),
    ),
    governs: z.exactOptional(words('Where it comes from.')),
    steps: z.exactOptional(
      z
        .object({
          demand: quantityOf('Demand there, allowable level.'),
          own: quantityOf('Capacity there by the wind on tower and lines alone.'),
          perArea: quantityOf('Force on a unit of effective area, allowable level.'),
          arm: number('Arm in the unit of height, or share handed on.'),
        })
        .meta({ description: 'To redo it by hand: area = (demand / (1 − margin) − own) / (perArea · arm).' }),
    ),
  })
  .meta({ id: 'Needed' });

const caseSchema = {
  wind: z.enum(REQUIRED_WINDS).meta({ description: 'The wind of the site, or the one wished for beside it.' }),
  loads: z.enum(REQUIRED_LOADS).meta({ description: 'Loads of now, or with those marked later as well.' }),
};

const quoteSchema = z.object({
  method: z.enum(METHODS),
  title: z.string(),
  speed: speedWithBasisSchema,
  ...groundShape,
  riskCategory: z.exactOptional(riskCategorySchema),
  area: z.exactOptional(neededSchema.meta({ description: 'Effective area. Absent where the tower is not compared.' })),
  force: maybe('The same as a force beside that wind, allowable level.'),
  top: z.exactOptional(words('What the couple of the mast needs besides at the top of the tower.')),
  says: words('What to ask for, in a sentence.'),
});

export const requirementsSchema = z
  .object({
    says: z.string(),
    margin: number('Share of every capacity that is kept.'),
    height: quantityOf('Height of the rated area above ground.'),
    above: quantityOf('The same above the top of the tower.'),
    withCables: z.exactOptional(words('Lines that the rating is to include.')),
    assumed: z.array(z.string()).meta({ description: 'What the plan leaves out, and what is assumed at worst.' }),
    loads: z.array(
      z.object({
        name: z.string(),
        later: z.exactOptional(z.literal(true)),
        low: quantitySchema,
        high: quantitySchema,
        area: quantityOf('Effective area in the wind of the site, largest over headings.'),
        weight: maybe('Of all alike; absent where not given.'),
      }),
    ),
    cases: z.array(
      z.object({
        ...caseSchema,
        speed: speedWithBasisSchema,
        says: z.string(),
        force: z.exactOptional(
          neededSchema.meta({ description: 'At that height, wind on the tower included, allowable level.' }),
        ),
        moment: z.exactOptional(neededSchema.meta({ description: 'At the base, allowable level.' })),
        mast: z.exactOptional(words('What the mast asks of the top of the tower.')),
        weight: quantityOf('Weight aloft, as far as given.'),
        weightNotGiven: z.array(z.string()),
        quotes: z.array(quoteSchema),
      }),
    ),
    candidates: z.exactOptional(
      z
        .array(
          z.object({
            name: z.string(),
            rank: number('1 the best, by the wind of the site and all loads. What is not known wins nothing.'),
            planHash: z.exactOptional(planHashSchema),
            cases: z.array(
              z.object({
                ...caseSchema,
                ...stationShape,
                holdsTo: maybe('Actual gust that its weakest check holds to.'),
                roomLeft: roomLeftSchema,
                toFindOut: z.array(z.string()),
              }),
            ),
            entryWarnings: z.array(entryWarningSchema),
          }),
        )
        .meta({ description: 'Towers side by side, for the same site and loads.' }),
    ),
    notIncluded: z.array(z.string()),
    entryWarnings: z.array(entryWarningSchema),
    cautions: z.array(noteSchema),
    planHash: z.exactOptional(planHashSchema),
    version: z.exactOptional(words('Of the service that gave the answer.')),
  })
  .meta({ id: 'Requirements', description: 'What to ask the manufacturers of a tower for.' });
export type RequirementsAnswer = Described<typeof requirementsSchema>;
