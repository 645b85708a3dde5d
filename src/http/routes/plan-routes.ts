import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { additionsSchema, answerSchema, areasSchema, pressuresSchema, ratingsSchema } from '../../answer/index.ts';
import { DRAWING_NAMES, type DrawingName } from '../../drawing/index.ts';
import { compareRatings } from '../../margins/index.ts';
import {
  additionsFieldsSchema,
  additionsRequestSchema,
  areasRequestSchema,
  planDocumentSchema,
  pressuresRequestSchema,
  ratingsRequestSchema,
  readAreasRequest,
  readLoadTable,
  readPressuresRequest,
  readRatingsRequest,
} from '../../plan/index.ts';
import { areasDocument, pressuresDocument, ratingsDocument } from '../../worksheet/index.ts';
import { component } from '../documents/component.ts';
import { readFormBodies } from '../form-body.ts';
import { chosenForm, prefersPage } from '../negotiation.ts';
import { areasPage, pressuresPage, ratingsPage } from '../pages/part-pages.ts';
import { type Printing, PrintShop } from '../paper/print-shop.ts';
import { Problem } from '../problems/problem.ts';
import { problemResponses } from '../problems/problem-schema.ts';
import { documentedOnly } from '../schemas/documented-only.ts';
import { jsonOrPage } from '../schemas/json-response.ts';
import { writable } from '../schemas/writable.ts';
import type { Workshop } from '../work/workshop.ts';
import { worksheetLook } from '../worksheets/worksheet-page.ts';
import { answeredBy } from './answered.ts';
import {
  BODY_PROBLEMS,
  badQuery,
  bodyProblems,
  decimal,
  FORMS,
  JSON_TYPE,
  paper,
  paperFor,
  pdf,
  readOrRefuse,
  readPosted,
  sendPage,
} from './posted-plans.ts';
import { sheetRoutes } from './sheet-routes.ts';

const planBody = documentedOnly(component('Plan', planDocumentSchema));
const additionsBody = documentedOnly(component('AdditionsRequest', additionsRequestSchema));
const areasBody = documentedOnly(component('AreasRequest', areasRequestSchema));
const pressuresBody = documentedOnly(component('PressuresRequest', pressuresRequestSchema));
const ratingsBody = documentedOnly(component('RatingsRequest', ratingsRequestSchema));

/** What an answer to a plan can be had as. */
export const CHECK_FORMS = { ...FORMS, csv: 'text/csv', svg: 'image/svg+xml', pdf: 'application/pdf' } as const;

const whenFull = (says: string) =>
  z
    .enum(['none', 'full'])
    .optional()
    .meta({ description: `full: ${says}; none when not given.` });
const working = whenFull('every step behind the answer, in JSON and on the worksheet');
const spread = whenFull('the same plan by every other standard');
const crankHeights = whenFull('a telescoping tower cranked to several heights');
const sensitivity = whenFull('what changes the ratio most, one change at a time');
const remedies = whenFull('remedies for the weakest check, each checked anew');

const drawing = z.enum(DRAWING_NAMES).optional().meta({ description: 'Which drawing, with as=svg only.' });

const drawings = z
  .string()
  .max(80)
  .optional()
  .meta({
    description: `Drawings to come along with the JSON answer, with commas between: ${DRAWING_NAMES.join(', ')}.`,
  });
/** The document of a request for areas: the body, or the loads of its table with what the query says beside them. */
function areasDocumentOf(
  body: unknown,
  { units, method }: { units?: string | undefined; method?: string | undefined },
) {
  if (typeof body === 'string') {
    const table = readOrRefuse(readLoadTable(body));
    return { units: units ?? 'us', ...(method === undefined ? {} : { method }), loads: table.loads };
  }
  const misplaced = Object.entries({ units, method }).filter(([, value]) => value !== undefined);
  if (misplaced.length === 0) return body;
  const says = 'is for tables only; JSON and forms have their own field. Leave it out.';
  throw badQuery(...misplaced.map(([parameter, given]) => ({ parameter, given, says: `${parameter} ${says}` })));
}

/** Areas, the one answer whose request may also be a table. */
const areasRoute: FastifyPluginAsyncZod = async (app) => {
  app.addContentTypeParser('text/csv', { parseAs: 'string' }, (_request, text, done) => done(null, text));

  app.post(
    '/v1/areas',
    {
      schema: {
        operationId: 'areas',
        tags: ['plans'],
        summary: 'Effective projected areas of any part of a plan, and their worst heading',
        description:
          'Also reads a table, text/csv: one load a row, headed by the field names of a load, separated by commas, semicolons or tabs. The query then gives the method, and the units if not us.',
        body: areasBody,
        querystring: z.strictObject({
          units: z.enum(['us', 'si']).optional().meta({ description: 'Units of a table; us when not given.' }),
          method: z.string().max(40).optional().meta({ description: 'Method of a table.' }),
          decimal,
        }),
        response: { 200: jsonOrPage('The areas', areasSchema), ...bodyProblems },
      },
    },
    async (request, reply) => {
      const document = areasDocumentOf(request.body, request.query);
      const { part, entryWarnings } = readPosted(document, request.query, areasRequestSchema, readAreasRequest);
      const answer = areasDocument(part.input, part.siteGiven, part.towerGiven, entryWarnings);
      if (prefersPage(request.headers.accept)) return sendPage(reply, areasPage(answer));
      return reply.header('vary', 'accept').type(JSON_TYPE).send(writable(answer));
    },
  );
};

/** A drawing is named where, and only where, one is asked for. */
function drawingFor(form: keyof typeof CHECK_FORMS, named: DrawingName | undefined): DrawingName | undefined {
  if ((form === 'svg') === (named !== undefined)) return named;
  const allowed = DRAWING_NAMES.join(', ');
  const says = form === 'svg' ? `drawing: one of ${allowed} allowed. Name one.` : 'drawing needs as=svg. Add that.';
  throw badQuery({ parameter: 'drawing', allowed, says });
}

/** The drawings that are to come along with the answer. */
function drawingsBeside(form: keyof typeof CHECK_FORMS, list: string | undefined): readonly DrawingName[] {
  if (list === undefined) return [];
  const names = list.split(',').map((name) => name.trim());
  const known = names.filter((name): name is DrawingName => (DRAWING_NAMES as readonly string[]).includes(name));
  if (form === 'json' && known.length === names.length) return known;
  const allowed = DRAWING_NAMES.join(', ');
  const says =
    form === 'json'
      ? `drawings is a list of ${allowed}, with commas between.`
      : 'drawings needs as=json. For a single drawing use as=svg with drawing.';
  throw badQuery({ parameter: 'drawings', given: list, allowed, says });
}

/** What an answer to a plan holds only where it is asked for. */
const FULL = ['working', 'spread', 'crankHeights', 'sensitivity', 'remedies'] as const;

export interface PlanRoutesOptions {
  readonly printing?: Partial<Printing>;
  readonly workshop: Workshop;
}

/** Answers to a plan or to a part of one. */
export const planRoutes: FastifyPluginAsyncZod<PlanRoutesOptions> = async (app, { printing, workshop }) => {
  const shop = new PrintShop(app.log, printing);
  app.addHook('onClose', async () => shop.close());
  const answered = answeredBy(workshop, shop);
  const look = worksheetLook();

  readFormBodies(app);
  app.addHook('preValidation', async ({ body, headers }) => {
    if (body === undefined || (body === null && headers['content-type'] === undefined)) {
      throw new Problem('not-json', 'The body is empty; send a JSON object.');
    }
  });

  app.post(
    '/v1/checks',
    {
      schema: {
        operationId: 'check',
        tags: ['plans'],
        summary: 'Check of a whole station: every check with demand, capacity and ratio',
        body: planBody,
        querystring: z.strictObject({
          as: z.enum(['json', 'text', 'html', 'csv', 'svg', 'pdf']).optional().meta({
            description:
              'Format of the answer, instead of the accept header. html: the permit worksheet as a page; csv: the wind loads; svg: a drawing; pdf: the worksheet on paper, tagged, with plan.json attached.',
          }),
          decimal,
          drawing,
          drawings,
          paper,
          working,
          spread,
          crankHeights,
          sensitivity,
          remedies,
        }),
        response: {
          200: {
            description: 'The answer',
            content: {
              'application/json': { schema: answerSchema },
              'text/plain': { schema: z.string() },
              'text/html': { schema: z.string() },
              'text/csv': { schema: z.string() },
              'image/svg+xml': { schema: z.string() },
              'application/pdf': { schema: pdf },
            },
          },
          ...problemResponses(
            ...BODY_PROBLEMS,
            'not-acceptable',
            'recalculation-differs',
            'paper-failed',
            'paper-busy',
            'closing',
          ),
        },
      },
    },
    async (request, reply) => {
      const form = chosenForm(CHECK_FORMS, request.query.as, request.headers.accept);
      const drawn = drawingFor(form, request.query.drawing);
      const along = drawingsBeside(form, request.query.drawings);
      const named = paperFor(form, request.query.paper);
      const { query } = request;
      const full = FULL.filter((part) => query[part] === 'full');
      const asked = { form, drawn, along, full, paper: named, decimal: query.decimal ?? 'point', look } as const;
      return answered(reply, 'check', planDocumentSchema, asked);
    },
  );

  app.post(
    '/v1/additions',
    {
      schema: {
        operationId: 'additions',
        tags: ['plans'],
        summary: 'What a proposed antenna, mast or rating changes, check by check',
        body: additionsBody,
        querystring: z.strictObject({
          as: z
            .enum(['json', 'text', 'html'])
            .optional()
            .meta({ description: 'Format of the answer, instead of the accept header. html: proposals side by side.' }),
          decimal,
        }),
        response: {
          200: {
            description: 'Before and after',
            content: {
              'application/json': { schema: additionsSchema },
              'text/plain': { schema: z.string() },
              'text/html': { schema: z.string() },
            },
          },
          ...problemResponses(...BODY_PROBLEMS, 'not-acceptable'),
        },
      },
    },
    async (request, reply) => {
      const form = chosenForm(FORMS, request.query.as, request.headers.accept);
      return answered(reply, 'additions', additionsFieldsSchema, { form, look });
    },
  );

  await app.register(sheetRoutes, { answered, look });
  await app.register(areasRoute);

  app.post(
    '/v1/pressures',
    {
      schema: {
        operationId: 'pressures',
        tags: ['plans'],
        summary: 'The wind of a site at heights',
        body: pressuresBody,
        querystring: z.strictObject({ decimal }),
        response: { 200: jsonOrPage('The wind by height', pressuresSchema), ...bodyProblems },
      },
    },
    async (request, reply) => {
      const { body, query } = request;
      const { part, entryWarnings } = readPosted(body, query, pressuresRequestSchema, readPressuresRequest);
      const answer = pressuresDocument(part.input, part.heights, part.structureGiven, entryWarnings);
      if (prefersPage(request.headers.accept)) return sendPage(reply, pressuresPage(answer));
      return reply.header('vary', 'accept').type(JSON_TYPE).send(writable(answer));
    },
  );

  app.post(
    '/v1/ratings',
    {
      schema: {
        operationId: 'ratings',
        tags: ['plans'],
        summary: 'Ratings side by side as forces, and as areas in another wind',
        body: ratingsBody,
        querystring: z.strictObject({ working, decimal }),
        response: { 200: jsonOrPage('The ratings', ratingsSchema), ...bodyProblems },
      },
    },
    async (request, reply) => {
      const { body, query } = request;
      const { part, entryWarnings } = readPosted(body, query, ratingsRequestSchema, readRatingsRequest);
      const { station } = part.input;
      const comparison = compareRatings(station, part.ratings, part.target);
      const answer = ratingsDocument(comparison, station.units, query.working ?? 'none', entryWarnings);
      // Steps are for programs and for the worksheet; a page without them would drop what was asked for.
      const asPage = answer.working === undefined && prefersPage(request.headers.accept);
      if (asPage) return sendPage(reply, ratingsPage(answer));
      return reply.header('vary', 'accept').type(JSON_TYPE).send(writable(answer));
    },
  );
};
