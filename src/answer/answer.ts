import { z } from 'zod';
import {
  chanceSchema,
  heightsSchema,
  remediesSchema,
  sensitivitySchema,
  spreadSchema,
  standardTubesSchema,
} from './besides.ts';
import { checkSchema, headlineSchema, verdictSchema } from './checks.ts';
import { assumedSchema, cautionSchema, entryWarningSchema, inquiriesSchema, questionSchema } from './findings.ts';
import { decidedSchema, partSchema } from './part-verdicts.ts';
import { checkId, number, quantitySchema, words } from './quantities.ts';
import type { Described } from './settled.ts';
import {
  foundationSchema,
  iceSchema,
  lowerAtSchema,
  loweredSchema,
  mastSchema,
  raisingSchema,
  reactionsSchema,
  roomLeftSchema,
  swaySchema,
  turningCircleSchema,
} from './structure.ts';
import { designSchema, hillSchema, levelsSchema, windLoadsSchema, windRowSchema } from './wind.ts';
import { workingSchema } from './working.ts';

/** What the answer to a plan says first of it, and of a plan as it would be. */
export const stationShape = {
  verdict: verdictSchema,
  decided: decidedSchema,
  parts: z.array(partSchema),
  governs: checkId(' that the headline is about'),
  weakest: z.exactOptional(checkId(' that holds to the lowest gust')),
  says: z.string(),
};

export const planHashSchema = z
  .object({
    format2: words('Of the plan in format 2, as RFC 8785 writes JSON.'),
    format1: z.exactOptional(words('Of the plan as it came in format 1.')),
  })
  .meta({ description: 'What tells one plan from another: SHA-256, hexadecimal.' });

export const answerSchema = z
  .object({
    ...stationShape,
    headline: headlineSchema,
    target: number('1 less the margin set: a ratio up to it is within.'),
    checks: z.array(checkSchema),
    toFindOut: z.array(questionSchema),
    alsoOpen: number('Loads whose type of area is not stated and that are not asked about one by one.'),
    inquiries: z.exactOptional(inquiriesSchema),
    assumed: z.array(assumedSchema),
    cautions: z.array(cautionSchema),
    notCovered: z.array(z.string()),
    design: designSchema,
    windLoads: windLoadsSchema,
    levels: levelsSchema,
    wind: z.array(windRowSchema),
    hill: z.exactOptional(hillSchema),
    heights: z.object({ overall: quantitySchema, tower: quantitySchema, mast: z.exactOptional(quantitySchema) }),
    turningCircles: z.array(turningCircleSchema).meta({ description: 'Circles swept by what turns.' }),
    reactions: reactionsSchema,
    sway: z.exactOptional(swaySchema),
    ice: z.exactOptional(iceSchema),
    mast: z.exactOptional(mastSchema),
    foundation: z.exactOptional(foundationSchema),
    raising: z.exactOptional(raisingSchema),
    lowerAt: z.exactOptional(lowerAtSchema),
    lowered: z.exactOptional(loweredSchema),
    roomLeft: roomLeftSchema,
    chance: z.exactOptional(
      z.array(chanceSchema).meta({ description: 'Of every check that holds to a gust; where a climate is given.' }),
    ),
    entryWarnings: z.array(entryWarningSchema),
    plan: z.unknown().meta({ description: 'The plan as read, in format 2.' }),
    version: z.exactOptional(words('Of the service that gave the answer.')),
    planHash: z.exactOptional(planHashSchema),
    drawings: z.exactOptional(
      z.record(z.string(), z.string()).meta({ description: 'SVG by name; where `drawings` asks for them.' }),
    ),
    working: z.exactOptional(workingSchema),
    spread: z.exactOptional(spreadSchema),
    crankHeights: z.exactOptional(heightsSchema),
    sensitivity: z.exactOptional(sensitivitySchema),
    remedies: z.exactOptional(remediesSchema),
    standardTubes: z.exactOptional(standardTubesSchema),
  })
  .meta({ id: 'Answer', description: 'The whole answer to a plan.' });
export type Answer = Described<typeof answerSchema>;
