import { z } from 'zod';
import { LAYS } from '../areas/index.ts';
import {
  type Change,
  PART_KINDS,
  QUESTIONS,
  type RemedyChange,
  SPREAD_CAUSES,
  SPREAD_FACTORS,
} from '../margins/index.ts';
import { EXTREMES_METHODS } from '../wind/index.ts';
import { verdictSchema } from './checks.ts';
import {
  checkId,
  maybe,
  number,
  pointer,
  quantityOf,
  quantitySchema,
  speedWithBasisSchema,
  words,
} from './quantities.ts';
import type { Described } from './settled.ts';
import { siteMethodSchema } from './wind.ts';

export const spreadSchema = z
  .object({
    says: z.string(),
    rows: z.array(
      z.object({
        method: siteMethodSchema,
        title: z.string(),
        speed: speedWithBasisSchema,
        verdict: verdictSchema.meta({ description: 'Of the tower.' }),
        ratio: z.exactOptional(number('Ratio of the tower.')),
        ratioRange: z.exactOptional(z.array(z.number()).meta({ description: 'Ratio at best and at worst.' })),
        holdsToGust: maybe('Actual gust that the tower holds to.'),
        largest: z.exactOptional(
          z
            .object({ check: checkId(''), ratio: z.number() })
            .meta({ description: 'The check with the largest ratio.' }),
        ),
        moment: quantityOf('Moment of the wind at the base, allowable level.'),
        factors: z.record(z.enum(SPREAD_FACTORS), z.number()).meta({
          description:
            'Moment at the base over that by the plan’s own method, as a product of factors at the tower’s top; shapes is what remains.',
        }),
      }),
    ),
    refused: z.array(z.object({ method: siteMethodSchema, why: z.string() })),
    cause: z.exactOptional(
      z
        .object({ method: siteMethodSchema, factor: z.enum(SPREAD_CAUSES), ratio: z.number() })
        .meta({ description: 'For the method farthest from the plan’s own: the factor that differs most.' }),
    ),
  })
  .meta({
    id: 'Spread',
    description: 'What differs by choice of standard alone; what differs by open questions is in ratioRange.',
  });
export type SpreadAnswer = Described<typeof spreadSchema>;

export const heightsSchema = z
  .object({
    says: z.string(),
    highest: maybe(
      'Highest top with which every decided part keeps the margin in the wind of the site, as with all lower ones.',
    ),
    rows: z.array(
      z.object({
        height: quantityOf('Of its top.'),
        share: number('Of its travel: 0 nested, 1 drawn out.'),
        keepsMargin: z.boolean().meta({ description: 'Every decided part keeps the margin in the wind of the site.' }),
        inTheWay: z.exactOptional(
          z
            .array(z.string())
            .meta({ description: 'What is in the way of its sections, so that it cannot stand there.' }),
        ),
        parts: z.array(
          z.object({
            kind: z.enum(PART_KINDS),
            name: z.exactOptional(z.string()),
            verdict: verdictSchema,
            ratio: z.exactOptional(z.number()),
            holdsToGust: maybe('Actual gust that it holds to.'),
            keepsMarginTo: maybe('Actual gust up to which it keeps the margin.'),
          }),
        ),
        holdsToGust: maybe('Lowest actual gust among the parts.'),
        keepsMarginTo: maybe('Lowest actual gust among the parts, the margin kept.'),
      }),
    ),
  })
  .meta({ id: 'CrankHeights', description: 'A telescoping tower at several heights, from drawn out down.' });
export type HeightsAnswer = Described<typeof heightsSchema>;

/** What is changed to see what moves the ratio. */
const CHANGES = [
  'speed',
  'gust-effect',
  'ground',
  'hill',
  'load-height',
  'load-offset',
  'frequency',
  'lines',
] as const satisfies readonly Change['of'][];

export const sensitivitySchema = z
  .object({
    says: z.string(),
    ofCheck: checkId(''),
    ratio: number('Its ratio with nothing changed.'),
    rows: z
      .array(
        z.object({
          of: z.enum([...CHANGES, ...QUESTIONS]).meta({ description: 'What is changed, or the question answered.' }),
          at: pointer('what is changed.'),
          says: z.string(),
          times: z.exactOptional(number('speed, gust-effect, frequency: times what it is.')),
          to: z.exactOptional(words('ground, hill, open questions: what it is changed to.')),
          by: maybe('load-height: how far it is moved, upwards; load-offset: out from the axis.'),
          ratio: number('Ratio with this change alone.'),
          difference: number('Ratio with this change less ratio without.'),
          elasticity: z.exactOptional(number('Per cent of ratio for each per cent of change, for small changes.')),
        }),
      )
      .meta({ description: 'Those that move the ratio most first.' }),
  })
  .meta({
    id: 'Sensitivity',
    description: 'What changes the ratio of the weakest check most; absent where it has no ratio.',
  });
export type SensitivityAnswer = Described<typeof sensitivitySchema>;

const [outside, wall] = [quantitySchema, quantitySchema];
const tubeShape = { nominal: words('Trade name of the size, in inches.'), schedule: z.number(), outside, wall };

const remedyOutcomeSchema = z.object({
  says: z.string(),
  by: maybe('load-lower, mast-shorter, mast-inside, footing-larger: how far.'),
  times: z.exactOptional(number('load-smaller: share of its area or force.')),
  weight: maybe('counterpoise: how much to add.'),
  arrangement: z.exactOptional(z.enum(LAYS).meta({ description: 'lines-arranged: the arrangement of the lines.' })),
  tube: z.exactOptional(
    z
      .object({
        nominal: z.exactOptional(tubeShape.nominal),
        schedule: z.exactOptional(tubeShape.schedule),
        outside,
        wall,
      })
      .meta({ description: 'mast-larger: the lightest tube that does; without a trade name it is no standard pipe.' }),
  ),
  ratio: z.exactOptional(number('Ratio of the check with this change; absent where the check is gone.')),
  verdict: z.exactOptional(verdictSchema.meta({ description: 'Of the check with this change.' })),
  holdsToGust: maybe('Actual gust to which the check then holds.'),
  next: z.exactOptional(
    z
      .object({ check: checkId(''), gust: quantitySchema })
      .meta({ description: 'The check that then holds to the lowest gust.' }),
  ),
  planVerdict: verdictSchema.meta({ description: 'Of the whole changed plan.' }),
  onlyMoves: z.boolean().meta({ description: 'Another check then holds to hardly more than the weakest did before.' }),
  moves: z
    .array(z.object({ check: checkId(''), from: z.number(), to: z.number() }))
    .meta({ description: 'Every other check whose ratio it moves, those that rise most first.' }),
});
export type RemedyOutcomeAnswer = Described<typeof remedyOutcomeSchema>;

/** What a remedy may change. */
const REMEDIES = [
  'lines-arranged',
  'line-off',
  'load-to-axis',
  'load-lower',
  'mast-shorter',
  'mast-inside',
  'mast-larger',
  'footing-larger',
  'counterpoise',
  'load-smaller',
  'load-off',
] as const satisfies readonly RemedyChange['of'][];

const remedySchema = z.object({
  of: z.enum(REMEDIES).meta({ description: 'What is changed.' }),
  at: z.array(z.string()).meta({ description: 'JSON pointers to what is changed.' }),
  ...remedyOutcomeSchema.shape,
  also: z.array(remedyOutcomeSchema).meta({ description: 'load-lower: less far or farther.' }),
});

export const remediesSchema = z
  .object({
    says: z.string(),
    ofCheck: checkId(''),
    ratio: number('Its ratio as it is.'),
    verdict: verdictSchema.meta({ description: 'Of the check as it is.' }),
    holdsToGust: maybe('Actual gust to which it holds as it is.'),
    canBeLowered: z.boolean().meta({ description: 'It has a hinge or telescopes.' }),
    rows: z.array(remedySchema).meta({
      description:
        'At most five, each of another kind and the answer to the changed plan: what turns the verdict, the cheapest first; then what raises the gust by 2 mph or more.',
    }),
  })
  .meta({ id: 'Remedies', description: 'What would help the weakest check; absent where no check has a ratio.' });
export type RemediesAnswer = Described<typeof remediesSchema>;

export const standardTubesSchema = z
  .array(z.object({ ...tubeShape, weight: quantitySchema, ratio: z.number() }))
  .meta({ description: 'With remedies: standard tubes that would do for the mast, the lightest first.' });
export type StandardTubes = Described<typeof standardTubesSchema>;

const range = (description: string) => z.array(z.number()).meta({ description });

export const chanceSchema = z
  .object({
    ofCheck: checkId(''),
    gust: quantitySchema,
    years: number('For how many years.'),
    perYear: range('Lowest and highest chance in a year.'),
    overYears: range('Lowest and highest chance in all the years.'),
    counted: z.exactOptional(
      z
        .object({ reached: z.number(), years: z.number() })
        .meta({ description: 'In how many years of the record the gust was reached.' }),
    ),
    byMethod: z.array(
      z.object({
        method: z.enum(EXTREMES_METHODS),
        through: z.exactOptional(range('Of a line through two values of the chart: their years.')),
        location: z.exactOptional(quantitySchema),
        scale: z.exactOptional(quantitySchema),
        shape: z.exactOptional(number('Above 0 the tail is heavier than Gumbel’s.')),
        fiftyYears: maybe('Gust reached once in 50 years on average.'),
        fiftyYearsError: maybe('Its standard error.'),
        perYear: range('Lowest and highest chance in a year by this method.'),
        inBand: z.boolean().meta({ description: 'The band counts it; else it is for comparison.' }),
      }),
    ),
    says: z.string(),
  })
  .meta({
    id: 'Chance',
    description:
      'Chance of the actual gust a check holds to, from whatever direction: of yearly maxima a 90 % band, of a chart how far its values disagree.',
  });
export type ChanceAnswer = Described<typeof chanceSchema>;
