import { z } from 'zod';
import { LAYS } from '../../areas/index.ts';
import type { Rating } from '../../margins/index.ts';
import { METHODS } from '../../methods/index.ts';
import { EXPOSURES, TERRAINS } from '../../wind/index.ts';
import { FIELDS, FIELDS_OF_KIND as FIELDS_OF_EACH } from '../../words/index.ts';
import {
  choice,
  inUnits,
  listOf,
  optional,
  type QuantityWords,
  quantity,
  remarks,
  standard,
  whole,
} from './field-schemas.ts';
import { AREA_KINDS } from './shape-schema.ts';
import { RISK_CATEGORIES, SPEED_BASES } from './site-schema.ts';

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

/** The wind that something is rated for. */
export function ratedWindSchema(field: QuantityWords, words: typeof FIELDS.ratedWind) {
  return z
    .union([
      z.number(),
      z.string(),
      z.strictObject({
        speed: optional(quantity(words.speed)),
        basis: optional(choice(SPEED_BASES, words.basis)),
        method: optional(standard(METHODS, words.method)),
        exposure: optional(choice(EXPOSURES, words.exposure)),
        terrain: optional(choice(TERRAINS, words.terrain)),
        riskCategory: optional(choice(RISK_CATEGORIES, words.riskCategory)),
        year: optional(whole(1900, 2200, words.year)),
        ...remarks(words),
      }),
    ])
    .meta({ description: `${field.description}${inUnits(field.of)}` });
}

const { rating, areaBySpeed, furtherArea, ratedSupport, withCables } = FIELDS;

export const ratingSchema = z
  .strictObject({
    of: choice(RATED_PARTS, rating.of),
    kind: optional(choice(RATING_KINDS, rating.kind)),
    area: optional(quantity(rating.area)),
    areasBySpeed: optional(
      listOf(z.tuple([quantity(areaBySpeed[0]), quantity(areaBySpeed[1])]), 40, rating.areasBySpeed),
    ),
    areaKind: optional(choice(AREA_KINDS, rating.areaKind)),
    coefficient: optional(quantity(rating.coefficient)),
    furtherAreas: optional(
      listOf(
        z.strictObject({
          area: quantity(furtherArea.area),
          height: quantity(furtherArea.height),
          ...remarks(furtherArea),
        }),
        20,
        rating.furtherAreas,
      ),
    ),
    force: optional(quantity(rating.force)),
    moment: optional(quantity(rating.moment)),
    weight: optional(quantity(rating.weight)),
    torque: optional(quantity(rating.torque)),
    brake: optional(quantity(rating.brake)),
    breakingStrength: optional(quantity(rating.breakingStrength)),
    workingLoad: optional(quantity(rating.workingLoad)),
    level: optional(choice(['allowable', 'strength'], rating.level)),
    height: optional(quantity(rating.height)),
    above: optional(quantity(rating.above)),
    wind: optional(ratedWindSchema(rating.wind, FIELDS.ratedWind)),
    top: optional(quantity(rating.top)),
    supportedAt: optional(listOf(quantity(ratedSupport['*']), 40, rating.supportedAt)),
    withCables: optional(
      z
        .strictObject({
          count: whole(1, 200, withCables.count),
          diameter: quantity(withCables.diameter),
          arrangement: optional(choice(LAYS, withCables.arrangement)),
          ...remarks(withCables),
        })
        .meta({ description: rating.withCables.description }),
    ),
    ...remarks(rating),
  })
  .meta({ description: "A manufacturer's rating of a part" });

/** Which fields belong to which kind of rating. */
export const FIELDS_OF_KIND: Readonly<Record<RatingKind | 'gear', readonly (keyof RatingFields)[]>> = FIELDS_OF_EACH;

export type RatingFields = z.output<typeof ratingSchema>;
export type RatedWindFields = z.output<ReturnType<typeof ratedWindSchema>>;
