import { z } from 'zod';
import { SITE_METHODS } from '../../methods/index.ts';
import { choice, optional, quantity, remarks, text, whole } from './field-schemas.ts';
import { cableSchema, loadSchema } from './load-schema.ts';
import { ratingSchema } from './rating-schema.ts';
import { siteSchema } from './site-schema.ts';
import { mastSchema, rotatorSchema, towerSchema } from './tower-schema.ts';

/** The newest form of the plan document; every earlier one stays readable. */
export const PLAN_FORMAT = 1;

const wantedSchema = z
  .strictObject({
    margin: optional(quantity('share', 'Share of the capacity to keep, 0.2 or "20 %"; 0.2 when not given')),
    forecast: optional(quantity('share', 'Allowance for the error of a forecast; 0.1 when not given')),
    years: optional(whole(1, 1000, 'Years the tower is to stand; 30 when not given')),
    ...remarks,
  })
  .meta({ description: 'What you want to keep' });

const sheetSchema = z
  .strictObject({
    applicant: optional(text('Applicant')),
    owner: optional(text('Owner')),
    address: optional(text('Address of the site')),
    parcel: optional(text('Parcel')),
    jurisdiction: optional(text('Building department')),
    permit: optional(text('Permit number')),
    code: optional(text('Adopted building code')),
    date: optional(text('Date')),
    drawings: optional(z.array(text('A drawing')).max(40).meta({ description: 'Drawings that belong to it' })),
    attachments: optional(
      z.array(text('An attachment')).max(40).meta({ description: 'Attachments that belong to it' }),
    ),
    ...remarks,
  })
  .meta({ description: 'For the title block of the worksheet' });

/** The whole state of a user. Numbers are in the plan's units, or text with a unit; what they mean together is read by `readPlan`. */
export const planDocumentSchema = z
  .strictObject({
    format: optional(z.literal(PLAN_FORMAT).meta({ description: 'Form of this document' })),
    title: optional(text('Title')),
    units: choice(['us', 'si'], 'Units of every plain number'),
    method: choice(SITE_METHODS, 'What the local code adopts for towers'),
    site: siteSchema,
    tower: towerSchema,
    mast: optional(mastSchema),
    rotator: optional(rotatorSchema),
    loads: optional(z.array(loadSchema).max(300).meta({ description: 'What hangs on the tower' })),
    cables: optional(z.array(cableSchema).max(60).meta({ description: 'Runs of lines' })),
    ratings: optional(z.array(ratingSchema).max(40).meta({ description: 'What the makers say' })),
    wanted: optional(wantedSchema),
    sheet: optional(sheetSchema),
    ...remarks,
  })
  .meta({ description: 'A plan: one tower, what hangs on it, where it stands, and what its makers say' });

/** A plan as its owner keeps it. */
export type PlanDocument = z.output<typeof planDocumentSchema>;
export type WantedFields = z.output<typeof wantedSchema>;
