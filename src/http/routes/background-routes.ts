import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { DISPLAY_UNITS, type Dimension, type Formula, formulas, WORDS_FOR_KNOWN } from '../../foundation/index.ts';
import { CODE_EDITIONS, type CodeEdition, METHOD_BY_ID } from '../../methods/index.ts';
import { SPEED_WORDS } from '../../words/index.ts';
import { component } from '../documents/component.ts';
import { type DemoPlan, sourceEntries } from '../documents/reference-files.ts';
import { JSON_TYPE, PAGE_TYPE, prefersPage } from '../negotiation.ts';
import { formulasPage, sourcesPage } from '../pages/background-pages.ts';
import { Problem } from '../problems/problem.ts';
import { problemResponses } from '../problems/problem-schema.ts';
import { formulaSchema, knownSchema, sourceSchema } from '../schemas/background-schemas.ts';
import { jsonOrPage, jsonResponse } from '../schemas/json-response.ts';

const KNOWN = Object.keys(WORDS_FOR_KNOWN) as readonly (keyof typeof WORDS_FOR_KNOWN)[];

const standardSchema = z.object({
  standard: z.string().meta({ description: 'Its printed name.' }),
  method: z
    .string()
    .optional()
    .meta({ description: 'The method of a plan that follows it; absent where there is none.' }),
});

const codeSchema = component(
  'CodeEdition',
  z
    .object({
      id: z.string(),
      title: z.string(),
      edition: z.number(),
      wind: standardSchema.meta({ description: 'The wind standard it refers to.' }),
      tower: standardSchema.meta({ description: 'The standard it allows for antenna towers.' }),
      mapSpeed: z.string().meta({ description: 'Type of the speeds on its maps: a basis of a plan.' }),
      suggests: z
        .object({ method: z.string(), basis: z.string() })
        .meta({ description: 'For a tower: the method of the plan, and the basis of a speed from its maps.' }),
      says: z.string(),
      source: z.string().meta({ description: 'An id of /v1/sources.' }),
      clause: z.string().meta({ description: 'Where in the source.' }),
      known: knownSchema,
    })
    .meta({
      description: 'An edition of a model building code. Ask the building department which is adopted.',
    }),
);

const demoPlanSchema = component(
  'DemoPlan',
  z.object({
    id: z.string(),
    title: z.string(),
    says: z.string().meta({ description: 'What it shows.' }),
    href: z.string().meta({ description: 'Where the plan is.' }),
  }),
);

const unitsOf = (dimension: Dimension) => ({
  us: DISPLAY_UNITS.us[dimension].label,
  si: DISPLAY_UNITS.si[dimension].label,
});

const described = (formula: Formula) => ({
  id: formula.id,
  title: formula.title,
  symbol: formula.symbol,
  units: unitsOf(formula.unit),
  expression: formula.expression,
  variables: formula.variables.map(({ symbol, meaning, unit, from, to }) => ({
    symbol,
    meaning,
    units: unitsOf(unit),
    from,
    to,
  })),
  source: formula.cite.source,
  clause: formula.cite.clause,
  known: WORDS_FOR_KNOWN[formula.cite.known],
});

/** An edition of a code with what goes with it, as `GET /v1/codes` and the form have it. */
export const adopted = ({ id, edition, wind, tower, mapSpeed, escarpmentReach, cite }: CodeEdition) => {
  const reach =
    escarpmentReach === undefined
      ? ''
      : ` By that exception, an escarpment counts up to ${escarpmentReach} times its height from its crest.`;
  const lowered =
    mapSpeed === METHOD_BY_ID[tower.method].basis
      ? ''
      : ` Give that basis in the plan; the standard itself uses another.`;
  return {
    id,
    title: 'International Building Code',
    edition,
    wind,
    tower,
    mapSpeed,
    suggests: { method: tower.method, basis: mapSpeed },
    says: `Where the code of ${edition} is adopted, antenna towers are designed to ${tower.standard}, with a ${SPEED_WORDS[mapSpeed]} from its maps.${lowered}${reach}`,
    source: cite.source,
    clause: cite.clause,
    known: WORDS_FOR_KNOWN[cite.known],
  };
};

interface Background {
  readonly plans: readonly DemoPlan[];
}

/** What is computed, from where, and plans to start from. */
export const backgroundRoutes: FastifyPluginAsyncZod<Background> = async (app, { plans }) => {
  const sources = [...sourceEntries()];
  let formulasAsPage: string | undefined;

  app.get(
    '/v1/demo-plans',
    {
      schema: {
        operationId: 'demoPlans',
        tags: ['background'],
        summary: 'Demo plans, with invented data',
        response: { 200: jsonResponse('The demo plans', z.array(demoPlanSchema)), ...problemResponses() },
      },
    },
    async () => plans.map(({ id, title, says }) => ({ id, title, says, href: `/v1/demo-plans/${id}` })),
  );

  app.get(
    '/v1/demo-plans/:id',
    {
      schema: {
        operationId: 'demoPlan',
        tags: ['background'],
        summary: 'One demo plan, ready to post',
        params: z.object({ id: z.string().meta({ description: 'An id of /v1/demo-plans.', example: 'river-bluff' }) }),
        response: {
          200: jsonResponse('The plan', z.looseObject({ units: z.enum(['us', 'si']) })),
          ...problemResponses('not-found'),
        },
      },
    },
    async (request) => {
      const found = plans.find(({ id }) => id === request.params.id);
      if (found === undefined)
        throw new Problem('not-found', 'There is no such demo plan; GET /v1/demo-plans lists them.');
      return found.plan;
    },
  );

  app.get(
    '/v1/formulas',
    {
      schema: {
        operationId: 'formulas',
        tags: ['background'],
        summary: 'Every formula, with its variables, range and source',
        response: { 200: jsonOrPage('The formulas', z.array(formulaSchema)), ...problemResponses() },
      },
    },
    async (request, reply) => {
      const answer = formulas().map(described);
      reply.header('vary', 'accept');
      if (!prefersPage(request.headers.accept)) return reply.type(JSON_TYPE).send(answer);
      // Typesetting them all takes a while, and they do not change.
      formulasAsPage ??= formulasPage(answer, sources);
      return reply.type(PAGE_TYPE).send(formulasAsPage);
    },
  );

  app.get(
    '/v1/codes',
    {
      schema: {
        operationId: 'codes',
        tags: ['background'],
        summary: 'The wind standards of each building code, and the method for antenna towers',
        response: { 200: jsonResponse('The codes', z.array(codeSchema)), ...problemResponses() },
      },
    },
    async () => CODE_EDITIONS.map(adopted),
  );

  app.get(
    '/v1/sources',
    {
      schema: {
        operationId: 'sources',
        tags: ['background'],
        summary: 'Every source document, and how it is known',
        querystring: z.strictObject({
          known: z.enum(KNOWN).optional().meta({ description: 'Only those known this way.' }),
        }),
        response: { 200: jsonOrPage('The sources', z.array(sourceSchema)), ...problemResponses() },
      },
    },
    async (request, reply) => {
      const { known } = request.query;
      const answer = known === undefined ? sources : sources.filter((source) => source.known === known);
      reply.header('vary', 'accept');
      if (prefersPage(request.headers.accept)) return reply.type(PAGE_TYPE).send(sourcesPage(answer));
      return reply.type(JSON_TYPE).send(answer);
    },
  );
};
