import { z } from 'zod';
import { EXPOSURES, type Hill, RISK_CATEGORIES, SPEED_BASES, TERRAINS } from '../../wind/index.ts';
import { FIELDS } from '../../words/index.ts';
import {
  choice,
  choiceOf,
  type FieldWords,
  inUnits,
  listOf,
  optional,
  quantities,
  quantity,
  remarks,
  yesOrNo,
} from './field-schemas.ts';

const HILL_SHAPES = ['ridge', 'escarpment', 'round-hill'] as const satisfies readonly Hill['shape'][];

const { site, wind, hill, ice, climate, returnPeriod, yearlyMax, distances } = FIELDS;

export const siteSchema = z
  .strictObject({
    wind: z
      .union([
        z.number(),
        z.string(),
        z.strictObject({
          speed: quantity(wind.speed),
          basis: optional(choiceOf(SPEED_BASES, wind.basis)),
          years: optional(years(wind.years)),
          ...remarks(wind),
        }),
      ])
      .meta({ description: `${site.wind.description}${inUnits('speed')}` }),
    exposure: optional(choiceOf(EXPOSURES, site.exposure)),
    terrain: optional(choiceOf(TERRAINS, site.terrain)),
    riskCategory: optional(choiceOf(RISK_CATEGORIES, site.riskCategory)),
    groundElevation: optional(quantity(site.groundElevation)),
    hill: optional(
      z
        .strictObject({
          shape: choiceOf(HILL_SHAPES, hill.shape),
          height: quantity(hill.height),
          ...quantities(hill, 'run', 'halfLength'),
          distance: quantity(hill.distance),
          side: choice(hill.side),
          isolated: optional(yesOrNo(hill.isolated)),
          ...remarks(hill),
        })
        .meta({ description: site.hill.description }),
    ),
    topographicFactor: optional(quantity(site.topographicFactor)),
    ice: optional(
      z
        .strictObject({ thickness: quantity(ice.thickness), gust: quantity(ice.gust), ...remarks(ice) })
        .meta({ description: site.ice.description }),
    ),
    climate: optional(
      z
        .strictObject({
          returnPeriods: optional(
            listOf(z.tuple([years(returnPeriod[0]), quantity(returnPeriod[1])]), 20, climate.returnPeriods, 2),
          ),
          yearlyMax: optional(listOf(quantity(yearlyMax['*']), 200, climate.yearlyMax, 5)),
          basis: choiceOf(SPEED_BASES, climate.basis),
          ...remarks(climate),
        })
        .meta({ description: site.climate.description }),
    ),
    distances: optional(
      z
        .strictObject({
          ...quantities(distances, 'powerLine', 'propertyLine', 'building'),
          ...remarks(distances),
        })
        .meta({ description: site.distances.description }),
    ),
    ...remarks(site),
  })
  .meta({ description: FIELDS.plan.site.description });

function years({ description }: FieldWords) {
  return z.number().gt(1).max(10_000).meta({ description });
}

export type SiteFields = z.output<typeof siteSchema>;
