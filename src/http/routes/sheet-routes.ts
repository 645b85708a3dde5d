import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { requirementsSchema, stormCardSchema } from '../../answer/index.ts';
import { requirementsRequestSchema, stormRequestSchema } from '../../plan/index.ts';
import { component } from '../documents/component.ts';
import { chosenForm } from '../negotiation.ts';
import { problemResponses } from '../problems/problem-schema.ts';
import { documentedOnly } from '../schemas/documented-only.ts';
import type { Look } from '../work/finished.ts';
import type { Answered } from './answered.ts';
import { BODY_PROBLEMS, decimal, FORMS, paper, paperFor, pdf } from './posted-plans.ts';

const stormBody = documentedOnly(component('StormCardRequest', stormRequestSchema));
const requirementsBody = documentedOnly(component('RequirementsRequest', requirementsRequestSchema));

const SHEET_FORMS = { ...FORMS, pdf: 'application/pdf' } as const;

const sheetQuery = (onPaper: string) =>
  z.strictObject({
    as: z
      .enum(['json', 'text', 'html', 'pdf'])
      .optional()
      .meta({ description: `Format of the answer, instead of the accept header. html, pdf: ${onPaper}.` }),
    decimal,
    paper,
  });

const sheetResponses = <T extends z.ZodType>(description: string, schema: T) => ({
  200: {
    description,
    content: {
      'application/json': { schema },
      'text/plain': { schema: z.string() },
      'text/html': { schema: z.string() },
      'application/pdf': { schema: pdf },
    },
  },
  ...problemResponses(...BODY_PROBLEMS, 'not-acceptable', 'paper-failed', 'paper-busy', 'closing'),
});

interface SheetQuery {
  readonly as?: keyof typeof SHEET_FORMS | undefined;
  readonly paper?: z.output<typeof paper>;
}

/** Answers to a plan that are a sheet of their own: for the wall, and to send to manufacturers. */
export const sheetRoutes: FastifyPluginAsyncZod<{ answered: Answered; look: Look }> = async (
  app,
  { answered, look },
) => {
  /** In which form; a paper that goes with another form is refused before anything is worked out. */
  const askedIn = (query: SheetQuery, accept: string | undefined) => {
    const form = chosenForm(SHEET_FORMS, query.as, accept);
    return { form, paper: paperFor(form, query.paper), look };
  };

  app.post(
    '/v1/storm-cards',
    {
      schema: {
        operationId: 'stormCard',
        tags: ['plans'],
        summary: 'What to do with the tower by the gust that is forecast: a card for the wall',
        description:
          'Says up to which forecast the margin is kept at which height, part by part, and never that the tower will hold.',
        body: stormBody,
        querystring: sheetQuery('one page for the wall'),
        response: sheetResponses('The card', stormCardSchema),
      },
    },
    async (request, reply) => {
      return answered(reply, 'storm-card', stormRequestSchema, askedIn(request.query, request.headers.accept));
    },
  );

  app.post(
    '/v1/requirements',
    {
      schema: {
        operationId: 'requirements',
        tags: ['plans'],
        summary: 'What to ask the manufacturers of a tower for, and towers side by side',
        description:
          'For a plan whose tower is still to be chosen: the force, the moment at the base, and the area at a speed by each standard that keep the margin. Loads marked later have lines of their own, and so has a stronger wind. Up to ten towers are checked for the same site and loads.',
        body: requirementsBody,
        querystring: sheetQuery('a sheet for manufacturers'),
        response: sheetResponses('What to ask for', requirementsSchema),
      },
    },
    async (request, reply) => {
      return answered(reply, 'requirements', requirementsRequestSchema, askedIn(request.query, request.headers.accept));
    },
  );
};
