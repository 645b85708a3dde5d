import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { JSON_TYPE, PAGE_TYPE, prefersPage } from '../negotiation.ts';
import { problemKindPage, problemKindsPage } from '../pages/background-pages.ts';
import { PROBLEM_CODES, PROBLEM_KINDS } from '../problems/catalogue.ts';
import { Problem } from '../problems/problem.ts';
import { problemResponses, problemResponsesWithout } from '../problems/problem-schema.ts';
import { jsonOrPage, jsonResponse } from '../schemas/json-response.ts';
import { VERSION } from '../version.ts';
import type { Workshop } from '../work/workshop.ts';

const healthSchema = z.object({
  status: z.literal('running'),
  version: z.string().meta({ description: 'Version of the service.' }),
});

const problemPageSchema = z.object({
  code: z.enum(PROBLEM_CODES),
  status: z.number().meta({ description: 'The HTTP status it comes with.' }),
  title: z.string(),
  cause: z.string().meta({ description: 'What brings it about.' }),
  remedy: z.string().meta({ description: 'What to do.' }),
});

/** Health, the contract, and the pages about problems. */
export const serviceRoutes: FastifyPluginAsyncZod<{ workshop: Workshop }> = async (app, { workshop }) => {
  app.get(
    '/healthz',
    {
      config: { rateLimit: false, alwaysOpen: true, underPressureToo: true },
      schema: {
        operationId: 'health',
        tags: ['service'],
        summary: 'Whether the service runs',
        response: { 200: jsonResponse('It runs', healthSchema) },
      },
    },
    async (_request, reply) =>
      reply.header('cache-control', 'no-store').send({ status: 'running' as const, version: VERSION }),
  );

  app.get(
    '/readyz',
    {
      config: { rateLimit: false, alwaysOpen: true, underPressureToo: true },
      schema: {
        operationId: 'readiness',
        tags: ['service'],
        summary: 'Whether to send requests here; 503 until every thread runs, and once the service is about to stop',
        response: {
          200: jsonResponse('Send them', z.object({ status: z.literal('ready') })),
          ...problemResponsesWithout(['key-required', 'too-many-requests'], 'starting', 'closing'),
        },
      },
    },
    async (request, reply) => {
      reply.header('cache-control', 'no-store');
      if (request.server.draining.begun) throw new Problem('closing', 'The service is stopping; ask another copy.');
      if (!workshop.ready) throw new Problem('starting', 'The threads that compute are being started.');
      return reply.send({ status: 'ready' as const });
    },
  );

  app.get(
    '/openapi.json',
    {
      schema: {
        operationId: 'contract',
        tags: ['service'],
        summary: 'This document',
        response: {
          200: jsonResponse('The OpenAPI document', z.looseObject({ openapi: z.string() })),
          ...problemResponses(),
        },
      },
    },
    async (_request, reply) =>
      reply
        .type('application/json; charset=utf-8')
        .serializer(JSON.stringify)
        .send(app.swagger() as { openapi: string }),
  );

  app.get(
    '/problems',
    {
      config: { alwaysOpen: true },
      schema: {
        operationId: 'problems',
        tags: ['service'],
        summary: 'Every kind of problem, its cause and remedy',
        response: {
          200: jsonOrPage('The kinds of problem', z.array(problemPageSchema)),
          ...problemResponsesWithout(['key-required']),
        },
      },
    },
    async (request, reply) => {
      const kinds = PROBLEM_CODES.map((code) => ({ code, ...PROBLEM_KINDS[code] }));
      reply.header('vary', 'accept');
      if (prefersPage(request.headers.accept)) return reply.type(PAGE_TYPE).send(problemKindsPage(kinds));
      return reply.type(JSON_TYPE).send(kinds);
    },
  );

  app.get(
    '/problems/:code',
    {
      config: { alwaysOpen: true },
      schema: {
        operationId: 'problem',
        tags: ['service'],
        summary: 'One kind of problem, its cause and remedy',
        params: z.object({
          code: z.string().meta({ description: 'The last part of the type of a problem.', example: 'plan-faults' }),
        }),
        response: {
          200: jsonOrPage('The kind of problem', problemPageSchema),
          ...problemResponsesWithout(['key-required'], 'not-found'),
        },
      },
    },
    async (request, reply) => {
      const code = PROBLEM_CODES.find((candidate) => candidate === request.params.code);
      if (code === undefined)
        throw new Problem('not-found', 'There is no such kind of problem; GET /problems lists them.');
      const kind = { code, ...PROBLEM_KINDS[code] };
      reply.header('vary', 'accept');
      if (prefersPage(request.headers.accept)) return reply.type(PAGE_TYPE).send(problemKindPage(kind));
      return reply.type(JSON_TYPE).send(kind);
    },
  );
};
