import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { changesFile, clausesFile } from '../documents/reference-files.ts';
import { JSON_TYPE, PAGE_TYPE, prefersPage } from '../negotiation.ts';
import { changesPage, clausesPage } from '../pages/record-pages.ts';
import { problemResponses } from '../problems/problem-schema.ts';
import { jsonOrPage } from '../schemas/json-response.ts';
import { changesSchema, clausesSchema } from '../schemas/record-schemas.ts';

/** What changed from version to version, and which clause is held by what. */
export const recordRoutes: FastifyPluginAsyncZod = async (app) => {
  const recorded = changesFile();
  const versions = recorded.versions.map(({ version }) => version);
  const index = clausesFile();

  app.get(
    '/v1/changes',
    {
      schema: {
        operationId: 'changes',
        tags: ['background'],
        summary: 'What changed for users, by version, with every name that changed',
        querystring: z.strictObject({
          since: z
            .enum(versions)
            .optional()
            .meta({ description: 'Only what came after this version; all when not given.' }),
        }),
        response: { 200: jsonOrPage('The changes', changesSchema), ...problemResponses('bad-query') },
      },
    },
    async (request, reply) => {
      const { since } = request.query;
      // The newest stand first.
      const newer = new Set(since === undefined ? versions : versions.slice(0, versions.indexOf(since)));
      const isNewer = ({ version }: { readonly version: string }) => newer.has(version);
      const answer = {
        versions: recorded.versions.filter(isNewer),
        changes: recorded.changes.filter(isNewer),
        renames: recorded.renames.filter(isNewer),
      };
      reply.header('vary', 'accept');
      if (prefersPage(request.headers.accept)) return reply.type(PAGE_TYPE).send(changesPage(answer));
      return reply.type(JSON_TYPE).send(answer);
    },
  );

  app.get(
    '/v1/clauses',
    {
      schema: {
        operationId: 'clauses',
        tags: ['background'],
        summary: 'Clauses of every standard: the formulas, tables and constants that cite them, and their tests',
        querystring: z.strictObject({
          standard: z
            .enum(index.standards.map(({ standard }) => standard))
            .optional()
            .meta({ description: 'Only this one: an id of /v1/sources; all when not given.' }),
        }),
        response: { 200: jsonOrPage('The clauses', clausesSchema), ...problemResponses('bad-query') },
      },
    },
    async (request, reply) => {
      const { standard } = request.query;
      const isWanted = (each: { readonly standard: string }) => standard === undefined || each.standard === standard;
      const answer = {
        standards: index.standards.filter(isWanted),
        withoutTest: index.withoutTest.filter(isWanted),
      };
      reply.header('vary', 'accept');
      if (prefersPage(request.headers.accept)) return reply.type(PAGE_TYPE).send(clausesPage(answer));
      return reply.type(JSON_TYPE).send(answer);
    },
  );
};
