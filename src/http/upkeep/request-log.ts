import type { FastifyInstance } from 'fastify';

const QUIET: ReadonlySet<string> = new Set(['/healthz', '/readyz', '/metrics']);

/** One line for each answer: its number, route, status and time; whose key it was; no query and no body. */
export function logAnswers(app: FastifyInstance, addresses: boolean): void {
  app.addHook('onRequest', (request, reply, done) => {
    reply.header('x-request-id', request.id);
    done();
  });
  app.addHook('onResponse', (request, reply, done) => {
    const { url: route = 'none' } = request.routeOptions;
    const line = {
      method: request.method,
      route,
      status: reply.statusCode,
      ms: Math.round(reply.elapsedTime * 10) / 10,
      ...(request.keyName === undefined ? {} : { key: request.keyName }),
      ...(addresses ? { address: request.ip } : {}),
    };
    if (QUIET.has(route)) request.log.debug(line, 'answered');
    else request.log.info(line, 'answered');
    done();
  });
  app.addHook('onRequestAbort', (request, done) => {
    request.log.info({ method: request.method, route: request.routeOptions.url ?? 'none' }, 'the caller went away');
    done();
  });
}
