import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { DISPLAY_UNITS, type Dimension, type Formula, formulas, WORDS_FOR_KNOWN } from '../../foundation/index.ts';
import { CODE_EDITIONS, type CodeEdition, METHOD_BY_ID } from '../../methods/index.ts';
import { SPEED_WORDS } from '../../words/index.ts';
import { component } from '../documents/component.ts';
import { type DemoPlan, sourceEntries } from '../documents/reference-files.ts';
import { Problem } from '../problems/problem.ts';
import { problemResponses } from '../problems/problem-schema.ts';
import { jsonResponse } from '../schemas/json-response.ts';

const KNOWN = Object.keys(WORDS_FOR_KNOWN) as readonly (keyof typeof WORDS_FOR_KNOWN)[];

const unitsSchema = component(
  'Units',
  z.object({
    us: z.string().meta({ description: 'Its unit in us plans; empty for a plain number.' }),
    si: z.string().meta({ description: 'Its unit in si plans.' }),
  }),
);

const knownSchema = z
  .string()
  .meta({ description: 'How it is known: published, second hand, from memory, derived, common practice.' });

const formulaSchema = component(
  'Formula',
  z
    .object({
      id: z.string(),
      title: z.string(),
      symbol: z.string().meta({ description: 'Symbol of what it gives.' }),
      units: unitsSchema,
      expression: z.string().meta({ description: 'The right-hand side; it holds in any coherent set of units.' }),
      variables: z.array(
        z.object({
          symbol: z.string(),
          meaning: z.string(),
          units: unitsSchema,
          from: z.number().meta({ description: 'Lower end of the range it is tested over, SI base units.' }),
          to: z.number().meta({ description: 'Upper end of the range it is tested over, SI base units.' }),
        }),
      ),
      source: z.string().meta({ description: 'An id of /v1/sources.' }),
      clause: z.string().meta({ description: 'Where in the source.' }),
      known: knownSchema,
    })
    .meta({ description: 'One formula of the service.' }),
);

const sourceSchema = component(
  'Source',
  z
    .object({
      id: z.string(),
      title: z.string(),
      short: z.exactOptional(z.string().meta({ description: 'Its name in the working, where the title is long.' })),
      edition: z.string(),
      publisher: z.string(),
      kind: z.string(),
      known: knownSchema,
      seen: z.string().meta({ description: 'What of it was read and what not.' }),
      used: z.string().meta({ description: 'What is taken from it.' }),
    })
    .meta({ description: 'A source document.' }),
);

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
        response: { 200: jsonResponse('The formulas', z.array(formulaSchema)), ...problemResponses() },
      },
    },
    async () => formulas().map(described),
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
        response: { 200: jsonResponse('The sources', z.array(sourceSchema)), ...problemResponses() },
      },
    },
    async (request) => {
      const { known } = request.query;
      return known === undefined ? sources : sources.filter((source) => source.known === known);
    },
  );
};
