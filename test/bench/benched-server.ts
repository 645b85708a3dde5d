import { z } from 'zod';
import { answerSchema } from '../../src/answer/index.ts';
import { buildApp, readConfiguration } from '../../src/http/index.ts';
import { jsonResponse } from '../../src/http/schemas/json-response.ts';
import { planDocumentSchema } from '../../src/plan/index.ts';

/**
 * The service in a process of its own, with one route more: it validates the same body and sends a canned answer of the
 * same size through the same serializer. The parent asks for the processor time used.
 */
const compiled = z.compile(planDocumentSchema);
let canned: unknown;

const app = await buildApp({
  configuration: readConfiguration({ LOG_LEVEL: 'silent', RATE_LIMIT: '1000000', PRESSURE_LIMIT: '10000' }),
});
app.post(
  '/canned',
  { schema: { hide: true, response: { 200: jsonResponse('canned', answerSchema) } } },
  (request, reply) => {
    if (!compiled.safeParse(request.body).success) throw new Error('the body does not fit');
    return reply.type('application/json; charset=utf-8').send(canned);
  },
);

process.on('message', (message: { readonly ask: 'cpu' } | { readonly canned: unknown }) => {
  if ('canned' in message) {
    canned = message.canned;
    process.send?.({ ready: true });
  } else process.send?.({ cpu: process.cpuUsage() });
});
process.on('disconnect', () => process.exit(0));

await app.listen({ host: '127.0.0.1', port: 0 });
const address = app.server.address();
process.send?.({ port: typeof address === 'object' ? address?.port : undefined });
