import { z } from 'zod';
import { METHODS } from '../../methods/index.ts';
import { EXPOSURES, RISK_CATEGORIES, SPEED_BASES, TERRAINS } from '../../wind/index.ts';
import { FIELDS } from '../../words/index.ts';
import { bare, choiceOf, listOf, name, optional, quantity, standard } from './field-schemas.ts';
import { planDocumentSchema } from './plan-document.ts';
import { ratingSchema } from './rating-schema.ts';
import { towerSchema } from './tower-schema.ts';

const { ratedWind: words, plan } = FIELDS;
const QUOTES_AT_MOST = 12;
const CANDIDATES_AT_MOST = 10;

const asked = {
  above: optional(bare.meta({ description: "Height above the tower's top that the rating is for [us ft, si m]" })),
  wished: optional(
    z
      .strictObject({
        speed: quantity(words.speed),
        basis: optional(
          choiceOf(SPEED_BASES, { ...words.basis, description: 'Type of speed; a nominal gust when not given' }),
        ),
      })
      .meta({ description: 'A stronger wind that is said to come, beside that of the site' }),
  ),
  quotes: optional(
    listOf(
      z.strictObject({
        method: standard(METHODS, words.method),
        speed: quantity(words.speed),
        basis: optional(choiceOf(SPEED_BASES, words.basis)),
        exposure: optional(choiceOf(EXPOSURES, words.exposure)),
        terrain: optional(choiceOf(TERRAINS, words.terrain)),
        riskCategory: optional(choiceOf(RISK_CATEGORIES, words.riskCategory)),
      }),
      QUOTES_AT_MOST,
      { description: 'Winds a manufacturer may state an area for; the usual ones when not given' },
    ),
  ),
};

const candidateName = name({ description: 'Name of the tower' });
const candidates = { description: 'Towers to compare for the same site and loads, each with its own ratings' };

/** A plan whose tower is still to be chosen, and what is to be asked of its manufacturers. */
export const requirementsRequestSchema = z
  .strictObject({
    plan: planDocumentSchema,
    ...asked,
    candidates: optional(
      listOf(
        z.strictObject({
          name: candidateName,
          tower: towerSchema,
          ratings: optional(listOf(ratingSchema, 20, plan.ratings, 0)),
        }),
        CANDIDATES_AT_MOST,
        candidates,
      ),
    ),
  })
  .meta({ description: 'A plan whose tower is still to be chosen, and what to ask its manufacturers for' });

/** The form alone: plan, towers and their ratings are read as plans. */
export const requirementsFormSchema = z.strictObject({
  plan: z.unknown(),
  ...asked,
  candidates: optional(
    listOf(
      z.strictObject({
        name: candidateName,
        tower: z.record(z.string(), z.unknown()),
        ratings: optional(z.array(z.unknown()).max(20)),
      }),
      CANDIDATES_AT_MOST,
      candidates,
    ),
  ),
});
