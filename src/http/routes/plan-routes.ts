import { setImmediate } from 'node:timers/promises';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { DRAWING_NAMES, DRAWINGS, type DrawingName } from '../../drawing/index.ts';
import {
  additionsOf,
  assess,
  assessAsked,
  compareRatings,
  remediesOf,
  sensitivityOf,
  spreadOf,
  standardTubesFor,
} from '../../margins/index.ts';
import {
  additionsRequestSchema,
  areasRequestSchema,
  type Fault,
  planDocumentSchema,
  pressuresRequestSchema,
  ratingsRequestSchema,
  readAdditionsRequest,
  readAreasRequest,
  readLoadTable,
  readPlan,
  readPressuresRequest,
  readRatingsRequest,
} from '../../plan/index.ts';
import {
  additionsDocument,
  additionsText,
  areasDocument,
  checkDocument,
  checkText,
  ledgerTable,
  PAPERS,
  type Paper,
  paperOrder,
  pressuresDocument,
  ratingsDocument,
} from '../../worksheet/index.ts';
import { csv } from '../cells/csv.ts';
import { component } from '../documents/component.ts';
import { chosenForm } from '../negotiation.ts';
import { checkWorksheet, paperOf } from '../paper/check-worksheet.ts';
import { pdfDisposition } from '../paper/file-name.ts';
import { type Printing, PrintShop } from '../paper/print-shop.ts';
import { Problem } from '../problems/problem.ts';
import { problemResponses } from '../problems/problem-schema.ts';
import { additionsSchema } from '../schemas/additions-schemas.ts';
import { checkSchema } from '../schemas/check-schemas.ts';
import { documentedOnly } from '../schemas/documented-only.ts';
import { jsonResponse } from '../schemas/json-response.ts';
import { areasSchema, pressuresSchema, ratingsSchema } from '../schemas/part-schemas.ts';
import { writable } from '../schemas/writable.ts';

const planBody = documentedOnly(component('Plan', planDocumentSchema));
const additionsBody = documentedOnly(component('AdditionsRequest', additionsRequestSchema));
const areasBody = documentedOnly(component('AreasRequest', areasRequestSchema));
const pressuresBody = documentedOnly(component('PressuresRequest', pressuresRequestSchema));
const ratingsBody = documentedOnly(component('RatingsRequest', ratingsRequestSchema));

const FORMS = { json: 'application/json', text: 'text/plain' } as const;
const CHECK_FORMS = { ...FORMS, csv: 'text/csv', svg: 'image/svg+xml', pdf: 'application/pdf' } as const;

const decimal = z
  .enum(['point', 'comma'])
  .optional()
  .meta({ description: 'How a comma in a number is read, and what a table is written with; point when not given.' });

const working = z
  .enum(['none', 'full'])
  .optional()
  .meta({ description: 'full: every step behind the answer; none when not given.' });

const spread = z
  .enum(['none', 'full'])
  .optional()
  .meta({ description: 'full: the same plan by every other method beside it; none when not given.' });

const sensitivity = z
  .enum(['none', 'full'])
  .optional()
  .meta({ description: 'full: what the use hangs on, one change at a time; none when not given.' });

const remedies = z
  .enum(['none', 'full'])
  .optional()
  .meta({ description: 'full: what would help the weakest link, each checked anew; none when not given.' });

/** Bytes, which the contract shows as OpenAPI 3.1 does: a string of a media type. */
const pdf = z
  .string()
  .meta({ description: 'PDF/UA-1', contentMediaType: 'application/pdf' }) as unknown as z.ZodType<Buffer>;

const drawing = z
  .enum(DRAWING_NAMES)
  .optional()
  .meta({ description: 'Which drawing, with as=svg: it goes with no other form.' });

const paper = z.enum(PAPERS).optional().meta({
  description:
    'Paper of the worksheet, with as=pdf; when not given, letter where units are us and a4 where they are si.',
});

const bodyProblems = problemResponses(
  'not-json',
  'bad-query',
  'plan-faults',
  'refused',
  'too-large',
  'unsupported-media-type',
);

/** A reading of a body, or the problem that lists everything wrong with it. */
function readOrRefuse<T extends { readonly ok: true }>(
  reading: T | { readonly ok: false; readonly faults: readonly Fault[] },
): T {
  if (reading.ok) return reading;
  const count = reading.faults.length;
  const detail = count === 1 ? 'One entry does not fit.' : `${count} entries do not fit; each is listed.`;
  throw new Problem('plan-faults', detail, { faults: reading.faults });
}

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
  if (misplaced.length > 0) {
    const faults = misplaced.map(([parameter, given]) => ({
      parameter,
      given,
      says: `${parameter} belongs to a table; a JSON body has its own: leave it out.`,
    }));
    throw new Problem('bad-query', 'The query has entries that do not fit; each is listed.', { faults });
  }
  return body;
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
          'Also of a table, text/csv: a load a row, headed by the field names of a load, with commas, semicolons or tabs between; then the method, and units if not us, stand in the query.',
        body: areasBody,
        querystring: z.strictObject({
          units: z.enum(['us', 'si']).optional().meta({ description: 'Units of a table; us when not given.' }),
          method: z.string().max(40).optional().meta({ description: 'Method of a table.' }),
          decimal,
        }),
        response: { 200: jsonResponse('The areas', areasSchema), ...bodyProblems },
      },
    },
    async (request) => {
      const document = areasDocumentOf(request.body, request.query);
      const reading = readAreasRequest(document, { decimal: request.query.decimal ?? 'point' });
      const { part, queries } = readOrRefuse(reading);
      return writable({ ...areasDocument(part.inquiry, part.siteGiven, part.towerGiven), queries });
    },
  );
};

/** A drawing is named where, and only where, one is asked for. */
function drawingFor(form: keyof typeof CHECK_FORMS, named: DrawingName | undefined): DrawingName | undefined {
  if ((form === 'svg') === (named !== undefined)) return named;
  const allowed = DRAWING_NAMES.join(', ');
  const says =
    form === 'svg' ? `drawing is one of ${allowed}: say which.` : 'drawing goes with as=svg: ask for that too.';
  throw new Problem('bad-query', 'The query has entries that do not fit; each is listed.', {
    faults: [{ parameter: 'drawing', allowed, says }],
  });
}

/** A paper goes with the form that is printed. */
function paperFor(form: keyof typeof CHECK_FORMS, named: Paper | undefined): Paper | undefined {
  if (form === 'pdf' || named === undefined) return named;
  throw new Problem('bad-query', 'The query has entries that do not fit; each is listed.', {
    faults: [{ parameter: 'paper', given: named, says: 'paper goes with as=pdf: ask for that too, or leave it out.' }],
  });
}

/** Answers to a plan or to a part of one. */
export const planRoutes: FastifyPluginAsyncZod<{ printing?: Partial<Printing> }> = async (app, { printing }) => {
  const shop = new PrintShop(app.log, printing);
  app.addHook('onClose', async () => shop.close());

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
        summary: 'Whether a tower takes what hangs on it, by how much, and what gives first',
        body: planBody,
        querystring: z.strictObject({
          as: z.enum(['json', 'text', 'csv', 'svg', 'pdf']).optional().meta({
            description:
              'Form of the answer, before the accept header; csv: its ledger; svg: a drawing; pdf: the permit worksheet, tagged, with the plan attached as plan.json.',
          }),
          decimal,
          drawing,
          paper,
          working,
          spread,
          sensitivity,
          remedies,
        }),
        response: {
          200: {
            description: 'The answer',
            content: {
              'application/json': { schema: checkSchema },
              'text/plain': { schema: z.string() },
              'text/csv': { schema: z.string() },
              'image/svg+xml': { schema: z.string() },
              'application/pdf': { schema: pdf },
            },
          },
          ...problemResponses(
            'not-json',
            'bad-query',
            'plan-faults',
            'refused',
            'not-acceptable',
            'too-large',
            'unsupported-media-type',
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
      const named = paperFor(form, request.query.paper);
      const sign = request.query.decimal ?? 'point';
      const { inquiry, document, queries } = readOrRefuse(readPlan(request.body, { decimal: sign }));
      const assessment = assess(inquiry);
      if (drawn !== undefined) {
        return reply.header('vary', 'accept').type('image/svg+xml; charset=utf-8').send(DRAWINGS[drawn](assessment));
      }
      const besides = {
        spread: request.query.spread === 'full' ? spreadOf(assessment) : undefined,
        sensitivity: request.query.sensitivity === 'full' ? sensitivityOf(assessment) : undefined,
        remedies: request.query.remedies === 'full' ? remediesOf(assessment) : undefined,
        tubes: request.query.remedies === 'full' ? standardTubesFor(assessment) : undefined,
      };
      reply.header('vary', 'accept');
      if (form === 'text') return reply.type('text/plain; charset=utf-8').send(checkText(assessment, queries, besides));
      const depth = request.query.working ?? 'none';
      if (form === 'pdf') {
        // A sheet says how many steps agree, so all are looked at, shown or not.
        const whole = checkDocument(assessment, document, queries, 'full', besides);
        const sheet = checkWorksheet(assessment, whole, depth);
        const printed = await shop.print(paperOrder(sheet, paperOf(sheet, named)), request.signal);
        if (printed === undefined) return reply.hijack();
        return reply
          .type('application/pdf')
          .header('content-disposition', pdfDisposition(assessment.inquiry.title))
          .send(printed);
      }
      const answer = checkDocument(assessment, document, queries, depth, besides);
      if (form === 'csv') {
        const { heads, rows } = ledgerTable(answer);
        return reply.type('text/csv; charset=utf-8').send(csv([heads, ...rows], sign));
      }
      return reply.type('application/json; charset=utf-8').send(writable(answer));
    },
  );

  app.post(
    '/v1/additions',
    {
      schema: {
        operationId: 'additions',
        tags: ['plans'],
        summary: 'What a proposed antenna, mast or rating changes, link by link',
        body: additionsBody,
        querystring: z.strictObject({
          as: z
            .enum(['json', 'text'])
            .optional()
            .meta({ description: 'Form of the answer, before the accept header.' }),
        }),
        response: {
          200: {
            description: 'Before and after',
            content: { 'application/json': { schema: additionsSchema }, 'text/plain': { schema: z.string() } },
          },
          ...problemResponses(
            'not-json',
            'bad-query',
            'plan-faults',
            'refused',
            'not-acceptable',
            'too-large',
            'unsupported-media-type',
          ),
        },
      },
    },
    async (request, reply) => {
      const form = chosenForm(FORMS, request.query.as, request.headers.accept);
      const { before, after, queries } = readOrRefuse(readAdditionsRequest(request.body));
      const now = assessAsked({ inquiry: before, placed: (pointer) => ({ pointer: `/plan${pointer}` }) });
      const then = [];
      for (const asked of after) {
        // Forty answers take a while; others are served in between.
        await setImmediate();
        then.push({ name: asked.name, assessment: assessAsked(asked) });
      }
      const additions = additionsOf(now, then);
      const { units } = before.station;
      reply.header('vary', 'accept');
      if (form === 'text') {
        return reply.type('text/plain; charset=utf-8').send(additionsText(additions, queries, after, units));
      }
      return reply
        .type('application/json; charset=utf-8')
        .send(writable(additionsDocument(additions, queries, after, units)));
    },
  );

  await app.register(areasRoute);

  app.post(
    '/v1/pressures',
    {
      schema: {
        operationId: 'pressures',
        tags: ['plans'],
        summary: 'The wind of a site at heights',
        body: pressuresBody,
        response: { 200: jsonResponse('The wind by height', pressuresSchema), ...bodyProblems },
      },
    },
    async (request) => {
      const { part, queries } = readOrRefuse(readPressuresRequest(request.body));
      return writable({ ...pressuresDocument(part.inquiry, part.heights, part.structureGiven), queries });
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
        querystring: z.strictObject({ working }),
        response: { 200: jsonResponse('The ratings', ratingsSchema), ...bodyProblems },
      },
    },
    async (request) => {
      const { part, queries } = readOrRefuse(readRatingsRequest(request.body));
      const { station } = part.inquiry;
      const comparison = compareRatings(station, part.ratings, part.target);
      return writable({ ...ratingsDocument(comparison, station.units, request.query.working ?? 'none'), queries });
    },
  );
};
