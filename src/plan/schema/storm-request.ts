import { z } from 'zod';
import { FORECAST_BASES } from '../../margins/index.ts';
import { bare, optional } from './field-schemas.ts';
import { planDocumentSchema } from './plan-document.ts';

const forecast = z
  .strictObject({
    speed: bare.meta({ description: 'Wind speed that is forecast, at 10 m in open country [us mph, si m/s]' }),
    basis: optional(
      z.enum(FORECAST_BASES).meta({
        description:
          'Type of speed that is forecast: a 3-second gust, or a mean over a time. Taken as an hourly mean when not given, which has the largest gusts',
      }),
    ),
  })
  .meta({ description: 'Wind that is forecast' });

/** A plan, and the wind that is forecast. */
export const stormRequestSchema = z
  .strictObject({ plan: planDocumentSchema, forecast: optional(forecast) })
  .meta({ description: 'A plan, and the wind that is forecast' });

/** The form alone: the plan is read by itself. */
export const stormFormSchema = z.strictObject({ plan: z.unknown(), forecast: optional(forecast) });
