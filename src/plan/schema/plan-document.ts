import { z } from 'zod';
import { SITE_METHODS } from '../../methods/index.ts';
import { FIELDS, PLAN_FORMAT } from '../../words/index.ts';
import { choice, listOf, optional, quantities, remarks, standard, text, texts, whole } from './field-schemas.ts';
import { cableSchema, loadSchema } from './load-schema.ts';
import { ratingSchema } from './rating-schema.ts';
import { siteSchema } from './site-schema.ts';
import { mastSchema, rotatorSchema, towerSchema } from './tower-schema.ts';

const { plan, wanted, titleBlock, drawing, attachment } = FIELDS;

const wantedSchema = z
  .strictObject({
    ...quantities(wanted, 'margin', 'forecastError'),
    years: optional(whole(1, 1000, wanted.years)),
    ...remarks(wanted),
  })
  .meta({ description: plan.wanted.description });

const titleBlockSchema = z
  .strictObject({
    ...texts(titleBlock, 'applicant', 'owner', 'address', 'parcel', 'jurisdiction', 'permit', 'code', 'date'),
    drawings: optional(listOf(text(drawing['*']), 40, titleBlock.drawings, 0)),
    attachments: optional(listOf(text(attachment['*']), 40, titleBlock.attachments, 0)),
    ...remarks(titleBlock),
  })
  .meta({ description: plan.titleBlock.description });

/** The whole state of a user. Numbers are in the plan's units, or text with a unit; what they mean together is read by `readPlan`. */
export const planDocumentSchema = z
  .strictObject({
    format: optional(z.literal(PLAN_FORMAT).meta({ description: plan.format.description })),
    title: optional(text(plan.title)),
    units: choice(plan.units),
    method: standard(SITE_METHODS, plan.method),
    site: siteSchema,
    tower: towerSchema,
    mast: optional(mastSchema),
    rotator: optional(rotatorSchema),
    loads: optional(listOf(loadSchema, 300, plan.loads, 0)),
    cables: optional(listOf(cableSchema, 60, plan.cables, 0)),
    ratings: optional(listOf(ratingSchema, 40, plan.ratings, 0)),
    wanted: optional(wantedSchema),
    titleBlock: optional(titleBlockSchema),
    ...remarks(plan),
  })
  .meta({ description: 'A plan: one tower, its loads, its site, and its ratings' });

/** A plan as its owner keeps it. */
export type PlanDocument = z.output<typeof planDocumentSchema>;
