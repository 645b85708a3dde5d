import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { problemResponsesWithout } from '../problems/problem-schema.ts';

/** Counts of the running service, for a program that collects them. */
export const metricsRoute: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/metrics',
    {
      config: { rateLimit: false, underPressureToo: true },
      schema: {
        operationId: 'metrics',
        tags: ['service'],
        summary: 'Counts and times of the running service, in the text form of Prometheus',
        response: {
          200: { description: 'The counts', content: { 'text/plain': { schema: z.string() } } },
          ...problemResponsesWithout(['too-many-requests', 'overloaded']),
        },
      },
    },
    async (request, reply) => {
      const { metrics } = request.server;
      return reply
        .header('cache-control', 'no-store')
        .type(metrics.contentType)
        .send(await metrics.text());
    },
  );
};
