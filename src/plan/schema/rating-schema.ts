import { z } from 'zod';
import { METHODS } from '../../methods/index.ts';
import { EXPOSURES, RISK_CATEGORIES, SPEED_BASES, TERRAINS } from '../../wind/index.ts';
import { FIELDS, FIELDS_OF_KIND as FIELDS_OF_EACH } from '../../words/index.ts';
import {
  choice,
  choiceOf,
  inUnits,
  listOf,
  optional,
  type QuantityWords,
  quantities,
  quantity,
  remarks,
  standard,
  whole,
} from './field-schemas.ts';

export type RatingKind = keyof typeof FIELDS.rating.kind.choices;

/** The wind that something is rated for. */
export function ratedWindSchema(field: QuantityWords, words: typeof FIELDS.ratedWind) {
  return z
    .union([
      z.number(),
      z.string(),
      z.strictObject({
        speed: optional(quantity(words.speed)),
        basis: optional(choiceOf(SPEED_BASES, words.basis)),
        method: optional(standard(METHODS, words.method)),
        exposure: optional(choiceOf(EXPOSURES, words.exposure)),
        terrain: optional(choiceOf(TERRAINS, words.terrain)),
        riskCategory: optional(choiceOf(RISK_CATEGORIES, words.riskCategory)),
        year: optional(whole(1900, 2200, words.year)),
        ...remarks(words),
      }),
    ])
    .meta({ description: `${field.description}${inUnits(field.of)}` });
}

const { rating, areaBySpeed, furtherArea, ratedSupport, withCables } = FIELDS;

export const ratingSchema = z
  .strictObject({
    of: choice(rating.of),
    kind: optional(choice(rating.kind)),
    area: optional(quantity(rating.area)),
    areasBySpeed: optional(
      listOf(z.tuple([quantity(areaBySpeed[0]), quantity(areaBySpeed[1])]), 40, rating.areasBySpeed),
    ),
    areaKind: optional(choice(rating.areaKind)),
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
    ...quantities(rating, 'force', 'moment', 'weight', 'torque', 'brake', 'breakingStrength', 'workingLoad'),
    level: optional(choice(rating.level)),
    ...quantities(rating, 'height', 'above'),
    wind: optional(ratedWindSchema(rating.wind, FIELDS.ratedWind)),
    top: optional(quantity(rating.top)),
    supportedAt: optional(listOf(quantity(ratedSupport['*']), 40, rating.supportedAt)),
    withCables: optional(
      z
        .strictObject({
          count: whole(1, 200, withCables.count),
          diameter: quantity(withCables.diameter),
          arrangement: optional(choice(withCables.arrangement)),
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
