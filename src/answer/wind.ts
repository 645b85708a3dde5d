import { z } from 'zod';
import { WIND_DIRECTIONS } from '../areas/index.ts';
import { COMPARED_PLACES, SIDEWAYS } from '../margins/index.ts';
import { SITE_METHODS } from '../methods/index.ts';
import { WIND_ITEM_KINDS } from '../structure/index.ts';
import { EXPOSURES, HILL_EXCLUSIONS, RISK_CATEGORIES, TERRAINS } from '../wind/index.ts';
import {
  headingsSchema,
  number,
  pointer,
  quantityOf,
  quantitySchema,
  speedWithBasisSchema,
  unitSchema,
} from './quantities.ts';
import type { Described } from './settled.ts';

export const siteMethodSchema = z.enum(SITE_METHODS).meta({ id: 'SiteMethod', description: 'Standard of the site.' });
export const groundShape = {
  exposure: z.exactOptional(z.enum(EXPOSURES).meta({ description: 'Ground upwind; terrain by EN 1991-1-4.' })),
  terrain: z.exactOptional(z.enum(TERRAINS).meta({ description: 'Ground upwind by EN 1991-1-4.' })),
};
export const riskCategorySchema = z.enum(RISK_CATEGORIES);

const factors = {
  directionFactor: z.number(),
  importance: z.number(),
  elevationFactor: z.number(),
  gustEffect: z.number(),
  level: number('Brings every force to the allowable level.'),
};
export const factorsSchema = z.object(factors);

export const designSchema = z.object({
  method: siteMethodSchema,
  title: z.string(),
  speed: speedWithBasisSchema,
  ...groundShape,
  speedLevels: z.exactOptional(
    z.object({ strength: quantitySchema, nominal: quantitySchema }).meta({
      description: 'The same wind as a 3-second gust at both levels; none where the method takes a mean.',
    }),
  ),
  riskCategory: riskCategorySchema.meta({ description: 'As given, or II where the plan does not say.' }),
  ...factors,
  directionFactorInForce: number('The direction factor where it stands in the force, not in the pressure; else 1.'),
});

const windLoadRowSchema = z
  .object({
    name: z.string(),
    at: pointer('it in the plan.'),
    kind: z.enum(WIND_ITEM_KINDS),
    low: z.number(),
    high: z.number(),
    front: number('Effective projected area, wind along its heading.'),
    side: number('Effective projected area, wind across its heading.'),
    coefficient: number('Force coefficient: largest effective over largest plain area.'),
    facing: number('Effective area at the heading of the table.'),
    pressure: number('Velocity pressure, mean over its area.'),
    gustEffect: z.number(),
    force: number('level × pressure × gustEffect × facing (× direction factor where the method puts it there).'),
    momentAtBase: number('About the base of the tower.'),
    momentAtTop: number('About the top of the tower.'),
  })
  .meta({ id: 'WindLoadRow', description: 'One item the wind acts on, in the units of the table.' });

export const windLoadsSchema = z
  .object({
    units: z.object({
      height: unitSchema,
      area: unitSchema,
      pressure: unitSchema,
      force: unitSchema,
      moment: unitSchema,
    }),
    rows: z.array(windLoadRowSchema),
    total: z.object({ force: z.number(), momentAtBase: z.number(), momentAtTop: z.number() }),
    heading: headingsSchema,
    direction: z.exactOptional(
      z.enum(WIND_DIRECTIONS).meta({ description: 'How the wind meets the tower itself, where that matters.' }),
    ),
  })
  .meta({ id: 'WindLoads', description: 'Every item the wind acts on, allowable level.' });

const comparedShape = {
  demand: z.number(),
  capacity: z.exactOptional(number('Of the rating with the largest capacity there; absent where none covers it.')),
  ratio: z.exactOptional(number('Demand/capacity, every open question at worst.')),
  ratioAtBest: z.exactOptional(number('Demand/capacity, every open question at best.')),
};

const levelSchema = z
  .object({
    height: z.number(),
    section: z.string(),
    place: z.enum(COMPARED_PLACES),
    shear: number('Horizontal force of everything above; for the mast as a couple, that of its bearing.'),
    torsion: number('Torque of what is off the axis.'),
    sideways: z.object({ of: z.enum(SIDEWAYS), ...comparedShape }).meta({
      description: 'Shear; or the force in the braces: shear less what sloping legs take, with the torque.',
    }),
    bending: z.object(comparedShape),
    byWindRatio: z.boolean().meta({ description: 'The wind on the tower itself, whose drag is not known, governs.' }),
  })
  .meta({ id: 'Level', description: 'One level of the tower, in the units of the levels.' });
export type LevelAnswer = Described<typeof levelSchema>;

export const levelsSchema = z
  .object({
    units: z.object({ height: unitSchema, force: unitSchema, moment: unitSchema }),
    rows: z.array(levelSchema),
  })
  .meta({ id: 'Levels', description: 'Every level at which the tower is checked, from the top down.' });
export type LevelsAnswer = Described<typeof levelsSchema>;

const windAtHeight = {
  height: quantitySchema,
  exposureCoefficient: z.number(),
  topographicFactor: z.number(),
  pressure: quantitySchema,
  speed: quantitySchema,
};
export const windRowSchema = z.object(windAtHeight);
export const pressureRowSchema = z.object({
  ...windAtHeight,
  forcePerArea: quantityOf('Force on one unit of effective area, allowable level.'),
});

export const hillSchema = z
  .object({
    says: z.string(),
    counts: z.boolean(),
    factor: number('On the pressure at the top of the tower, as used.'),
    wouldBe: number('The same if the hill counted.'),
    height: quantitySchema,
    conditions: z.array(
      z.object({
        condition: z.enum(HILL_EXCLUSIONS).meta({ description: 'What it is called where it is not met.' }),
        holds: z.exactOptional(z.boolean().meta({ description: 'Absent: not stated, assumed to hold.' })),
        says: z.string(),
      }),
    ),
    profile: z
      .array(z.object({ distance: quantitySchema, factor: z.number(), here: z.boolean() }))
      .meta({ description: 'Along the slope, upwind of the crest negative.' }),
  })
  .meta({ id: 'Hill', description: 'What the method makes of the hill.' });
export type HillAnswer = Described<typeof hillSchema>;
