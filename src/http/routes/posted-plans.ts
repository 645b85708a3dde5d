import type { FastifyReply } from 'fastify';
import { z } from 'zod';
import type { DecimalSign, Fault } from '../../plan/index.ts';
import { PAPERS, type Paper } from '../../worksheet/index.ts';
import { type PostedDocument, postedDocument } from '../posted-document.ts';
import { Problem, type ProblemFault } from '../problems/problem.ts';
import { problemResponses } from '../problems/problem-schema.ts';

export const JSON_TYPE = 'application/json; charset=utf-8';
export const FORMS = { json: 'application/json', text: 'text/plain', html: 'text/html' } as const;

export const decimal = z
  .enum(['point', 'comma'])
  .optional()
  .meta({ description: 'How a comma in a number is read, and how a table is written; point when not given.' });

/** Bytes, which the contract shows as OpenAPI 3.1 does: a string of a media type. */
export const pdf = z
  .string()
  .meta({ description: 'PDF/UA-1', contentMediaType: 'application/pdf' }) as unknown as z.ZodType<Buffer>;

export const paper = z.enum(PAPERS).optional().meta({
  description:
    'Paper of the worksheet, with as=pdf; when not given, letter where units are us and a4 where they are si.',
});

export const BODY_PROBLEMS = [
  'not-json',
  'not-a-form',
  'bad-query',
  'plan-faults',
  'refused',
  'too-much-work',
  'too-large',
  'unsupported-media-type',
] as const;
export const bodyProblems = problemResponses(...BODY_PROBLEMS);

type Reading<T> = T | { readonly ok: false; readonly faults: readonly Fault[] };

/** A reading of a body, or the problem that lists everything wrong with it. */
export function readOrRefuse<T extends { readonly ok: true }>(reading: Reading<T>, posted?: PostedDocument): T {
  if (reading.ok) return reading;
  const count = reading.faults.length;
  const detail = count === 1 ? 'The plan has one error.' : `The plan has ${count} errors; each is listed.`;
  throw new Problem('plan-faults', detail, { faults: posted?.named(reading.faults) ?? reading.faults });
}

/** What was posted as a document of that schema, read with the decimal sign of the query. */
export function readPosted<T extends { readonly ok: true }>(
  body: unknown,
  { decimal = 'point' }: { readonly decimal?: DecimalSign | undefined },
  schema: z.ZodObject,
  read: (document: unknown, options: { readonly decimal: DecimalSign }) => Reading<T>,
): T {
  const posted = postedDocument(body, schema, decimal);
  return readOrRefuse(read(posted.document, { decimal }), posted);
}

export function badQuery(...faults: readonly ProblemFault[]): Problem {
  return new Problem('bad-query', 'The query has errors; each is listed.', { faults });
}

/** Answers that have no form but JSON and a page go by the accept header alone. */
export function sendPage(reply: FastifyReply, page: string) {
  return reply.header('vary', 'accept').type('text/html; charset=utf-8').send(page);
}

/** A paper goes with the form that is printed. */
export function paperFor(form: string, named: Paper | undefined): Paper | undefined {
  if (form === 'pdf' || named === undefined) return named;
  const says = 'paper needs as=pdf. Add that, or leave it out.';
  throw badQuery({ parameter: 'paper', given: named, says });
}
