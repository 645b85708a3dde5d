import { z } from 'zod';
import type { Rating } from '../../margins/index.ts';
import { METHODS } from '../../methods/index.ts';
import { choice, optional, quantity, remarks, whole } from './field-schemas.ts';
import { areaKind, LAYS } from './shape-schema.ts';
import { exposure, riskCategory, speedBasis, terrain } from './site-schema.ts';

export const RATED_PARTS = [
  'tower',
  'mast',
  'bearing',
  'rotator',
  'foundation',
  'gear',
] as const satisfies readonly Rating['of'][];
export const RATING_KINDS = ['area', 'force', 'moment', 'wind', 'weight', 'torque'] as const;
export type RatingKind = (typeof RATING_KINDS)[number];

export const ratedWindSchema = z
  .union([
    z.number(),
    z.string(),
    z.strictObject({
      speed: optional(quantity('speed', 'Speed it is stated for')),
      basis: optional(speedBasis),
      method: optional(choice(METHODS, 'Standard it is stated by')),
      exposure: optional(exposure),
      terrain: optional(terrain),
      riskCategory: optional(riskCategory),
      year: optional(whole(1900, 2200, 'Year of the sheet')),
      ...remarks,
    }),
  ])
  .meta({ description: 'Speed it is stated for [us mph, si m/s], or with all the sheet says about it' });

export const ratingSchema = z
  .strictObject({
    of: choice(RATED_PARTS, 'What it is a rating of'),
    kind: optional(choice(RATING_KINDS, 'What is stated; area when not given')),
    area: optional(quantity('area', 'area: the area it takes; or rows')),
    rows: optional(
      z
        .array(z.tuple([quantity('speed', 'Speed'), quantity('area', 'Area')]))
        .min(1)
        .max(40)
        .meta({ description: 'area: [[speed, area], …], each a case' }),
    ),
    areaKind: optional(areaKind),
    coefficient: optional(quantity('share', 'area: the coefficient the maker names for a projected area')),
    also: optional(
      z
        .array(
          z.strictObject({
            area: quantity('area', 'A further area of the same case'),
            height: quantity('length', 'Its height above ground'),
            ...remarks,
          }),
        )
        .min(1)
        .max(20)
        .meta({ description: 'area: further areas of the same case' }),
    ),
    force: optional(quantity('force', 'force: the force it takes')),
    moment: optional(quantity('moment', 'moment: the moment it takes at height, the foot when not given')),
    weight: optional(quantity('weight', 'weight: the weight it takes')),
    torque: optional(quantity('moment', 'torque: its turning torque')),
    brake: optional(quantity('moment', 'torque: its braking torque')),
    breaking: optional(quantity('force', 'gear: breaking strength')),
    working: optional(quantity('force', 'gear: working load')),
    level: optional(choice(['allowable', 'strength'], 'force, moment, torque: which level; strength when not given')),
    height: optional(quantity('length', 'Height above ground where it acts; or above')),
    above: optional(quantity('length', "Where it acts, above the tower's top")),
    wind: optional(ratedWindSchema),
    top: optional(quantity('length', "Height of the tower's top it was stated for")),
    held: optional(
      z
        .array(quantity('length', 'Height of a support'))
        .min(1)
        .max(40)
        .meta({ description: 'Supports it was stated for' }),
    ),
    withCables: optional(
      z
        .strictObject({
          count: whole(1, 200, 'How many lines'),
          diameter: quantity('diameter', 'Diameter of one'),
          laid: optional(choice(LAYS, 'How they lay; a bundle, which credits least, when not given')),
          ...remarks,
        })
        .meta({ description: 'Lines the maker already allowed for' }),
    ),
    ...remarks,
  })
  .meta({ description: 'What a maker says a part is good for' });

/** Which fields belong to which kind of rating; lifting gear has no kind but these fields of its own. */
export const FIELDS_OF_KIND = {
  area: ['area', 'rows', 'areaKind', 'coefficient', 'also'],
  force: ['force', 'level'],
  moment: ['moment', 'level'],
  wind: [],
  weight: ['weight'],
  torque: ['torque', 'brake', 'level'],
  gear: ['breaking', 'working'],
} as const satisfies Record<RatingKind | 'gear', readonly (keyof RatingFields)[]>;

export type RatingFields = z.output<typeof ratingSchema>;
export type RatedWindFields = z.output<typeof ratedWindSchema>;
