import { setImmediate } from 'node:timers/promises';
import type { FastifyReply } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { requirementsSchema, stormCardSchema } from '../../answer/index.ts';
import { assess, assessAsked, ranksOf, requirementPlans, requirementSteps, stormCardOf } from '../../margins/index.ts';
import {
  readRequirementsRequest,
  readStormRequest,
  requirementsRequestSchema,
  stormRequestSchema,
} from '../../plan/index.ts';
import {
  type ComparedCandidate,
  paperOrder,
  requirementsDocument,
  requirementsSheet,
  requirementsText,
  type Sheet,
  stormDocument,
  stormSheet,
  stormText,
} from '../../worksheet/index.ts';
import { component } from '../documents/component.ts';
import { chosenForm } from '../negotiation.ts';
import { pdfDisposition } from '../paper/file-name.ts';
import type { PrintShop } from '../paper/print-shop.ts';
import { problemResponses } from '../problems/problem-schema.ts';
import { documentedOnly } from '../schemas/documented-only.ts';
import { writable } from '../schemas/writable.ts';
import { PLAN_HEADER, VERSION } from '../version.ts';
import { worksheetPage } from '../worksheets/worksheet-page.ts';
import {
  BODY_PROBLEMS,
  decimal,
  FORMS,
  JSON_TYPE,
  paper,
  paperFor,
  pdf,
  readPosted,
  sendPage,
} from './posted-plans.ts';

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

type ReadRequirements = Extract<ReturnType<typeof readRequirementsRequest>, { readonly ok: true }>;

/** Towers to choose from, each in every wind and with every set of loads. */
async function compareCandidates({ asked, candidates }: ReadRequirements): Promise<readonly ComparedCandidate[]> {
  const compared = [];
  for (const { name, input, placed, planHash, entryWarnings } of candidates) {
    const cases = [];
    for (const { wind, loads, plan } of requirementPlans(input, asked.wished)) {
      // Ten towers take a while; others are served in between.
      await setImmediate();
      cases.push({ wind, loads, assessment: assessAsked({ name, input: plan, placed }) });
    }
    const placedWarnings = entryWarnings.map((each) => ({ ...each, ...placed(each.pointer) }));
    const ofTower = placedWarnings.filter(({ pointer }) => pointer.startsWith('#/candidates'));
    compared.push({ name, planHash, entryWarnings: ofTower, cases });
  }
  // The wind of the site decides, with all loads.
  const deciding = compared.map(({ cases }) => cases.findLast(({ wind }) => wind === 'site')?.assessment);
  const ranks = ranksOf(deciding.flatMap((assessment) => assessment ?? []));
  return compared.map((each, index) => ({ ...each, rank: ranks[index] ?? 0 }));
}

/** Answers to a plan that are a sheet of their own: for the wall, and to send to manufacturers. */
export const sheetRoutes: FastifyPluginAsyncZod<{ shop: PrintShop }> = async (app, { shop }) => {
  /** Sends an answer in the form that was asked for; a paper that goes with another form is refused before anything is worked out. */
  const wayOf = (query: SheetQuery, accept: string | undefined) => {
    const form = chosenForm(SHEET_FORMS, query.as, accept);
    const named = paperFor(form, query.paper);
    return async <A>(
      reply: FastifyReply,
      signal: AbortSignal,
      planHash: { readonly format2: string },
      answer: { readonly text: () => string; readonly json: () => A; readonly sheet: (json: A) => Sheet },
      file: { readonly title: string; readonly name: Parameters<typeof pdfDisposition>[1] },
    ) => {
      reply.header('vary', 'accept').header(PLAN_HEADER, planHash.format2);
      if (form === 'text') return reply.type('text/plain; charset=utf-8').send(answer.text());
      const json = answer.json();
      if (form === 'json') return reply.type(JSON_TYPE).send(writable(json));
      const sheet = answer.sheet(json);
      if (form === 'html') return sendPage(reply, worksheetPage(sheet));
      const printed = await shop.print(paperOrder(sheet, named ?? (sheet.units === 'us' ? 'letter' : 'a4')), signal);
      if (printed === undefined) return reply.hijack();
      return reply
        .type('application/pdf')
        .header('content-disposition', pdfDisposition(file.title, file.name))
        .send(printed);
    };
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
      const send = wayOf(request.query, request.headers.accept);
      const { body, query } = request;
      const reading = readPosted(body, query, stormRequestSchema, readStormRequest);
      const { input, forecast, entryWarnings, planHash } = reading;
      const card = stormCardOf(assess(input), forecast);
      const traced = { version: VERSION, planHash };
      const answer = {
        text: () => stormText(card, entryWarnings, traced),
        json: () => stormDocument(card, entryWarnings, traced),
        sheet: (json: ReturnType<typeof stormDocument>) => stormSheet(card, json, VERSION),
      };
      return send(reply, request.signal, planHash, answer, { title: input.title, name: 'storm-card' });
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
      const send = wayOf(request.query, request.headers.accept);
      const { body, query } = request;
      const reading = readPosted(body, query, requirementsRequestSchema, readRequirementsRequest);
      const { input, asked, entryWarnings, planHash } = reading;
      const steps = requirementSteps(input, asked);
      let step = steps.next();
      while (!step.done) {
        // Many winds and loads take a while; others are served in between.
        await setImmediate();
        step = steps.next();
      }
      const requirements = step.value;
      const candidates = await compareCandidates(reading);
      const traced = { version: VERSION, planHash };
      const answer = {
        text: () => requirementsText(requirements, candidates, entryWarnings, traced),
        json: () => requirementsDocument(requirements, candidates, entryWarnings, traced),
        sheet: (json: ReturnType<typeof requirementsDocument>) => requirementsSheet(requirements, json, VERSION),
      };
      return send(reply, request.signal, planHash, answer, { title: input.title, name: 'tower-inquiry' });
    },
  );
};
