import { z } from 'zod';
import { FORECAST_BASES, PART_KINDS, STORM_ACTS, STORM_POSTURES, STORM_STATES } from '../margins/index.ts';
import { planHashSchema } from './answer.ts';
import { entryWarningSchema, noteSchema } from './findings.ts';
import { maybe, number, quantityOf, words } from './quantities.ts';
import type { Described } from './settled.ts';

const actSchema = z.enum(STORM_ACTS).meta({
  id: 'StormAct',
  description:
    'as-it-stands: the margin is kept there; crank-down, nest, lower-flat: what to do; not-known: nothing shown is enough. None of them promises that it holds.',
});

export const stormCardSchema = z
  .object({
    says: z.string(),
    margin: number('Share of every capacity that is kept.'),
    forecastError: number('Share taken off for the error of a forecast.'),
    forecast: z.exactOptional(
      z.object({
        speed: quantityOf('As it was given.'),
        basis: z.exactOptional(z.enum(FORECAST_BASES).meta({ description: 'Absent where it was not given.' })),
        gust: quantityOf('As an actual 3-second gust at 10 m in open country.'),
        act: actSchema,
      }),
    ),
    rows: z
      .array(
        z.object({
          above: maybe('Above this forecast gust.'),
          upTo: maybe('Up to this forecast gust.'),
          act: actSchema,
          top: maybe('Height of the top of the tower there.'),
          says: z.string(),
        }),
      )
      .meta({ description: 'What to do by the gust that is forecast, without gaps.' }),
    postures: z.array(
      z.object({
        posture: z.enum(STORM_POSTURES).meta({ description: 'How the tower is then.' }),
        top: maybe('Height of the top of the tower.'),
        keepsTo: maybe(
          'Forecast gust up to which all decided parts keep the margin, rounded down; absent where none can be given.',
        ),
        governs: z.exactOptional(words('Id of the part that keeps it the least far.')),
        says: z.string(),
        parts: z.array(
          z.object({
            id: z.string(),
            kind: z.enum(PART_KINDS),
            title: z.string(),
            state: z.enum(STORM_STATES).meta({ description: 'How far it keeps the margin.' }),
            ratio: z.exactOptional(number('In the wind of the site, of the check that governs.')),
            keepsTo: maybe('Forecast gust up to which it keeps the margin, by what is known of it.'),
            couldBeOver: z.exactOptional(
              z
                .literal(true)
                .meta({ description: 'Open and above 1 at worst: no margin is then kept in this posture.' }),
            ),
            says: z.string(),
          }),
        ),
        clashes: z.array(z.string()).meta({ description: 'Loads that keep the tower from going down there.' }),
      }),
    ),
    highestInSiteWind: maybe(
      'Of a telescoping tower: height of its top up to which its decided parts keep the margin in the wind of the site.',
    ),
    notIncluded: z.array(z.string()),
    entryWarnings: z.array(entryWarningSchema),
    cautions: z.array(noteSchema),
    planHash: z.exactOptional(planHashSchema),
    version: z.exactOptional(words('Of the service that gave the answer.')),
  })
  .meta({ id: 'StormCard', description: 'What to do with a tower by the gust that is forecast.' });
export type StormCardAnswer = Described<typeof stormCardSchema>;
