import { STATUS_CODES } from 'node:http';
import type { Socket } from 'node:net';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { FormBody } from '../form-body.ts';
import { prefersPage } from '../negotiation.ts';
import { PROBLEM_KINDS } from './catalogue.ts';
import { Problem, problemBody } from './problem.ts';
import { problemOfError } from './problem-of-error.ts';
import { problemPage } from './problem-page.ts';

declare module 'fastify' {
  interface FastifyInstance {
    /** At which path callers find the service. */
    readonly basePath: string;
  }
}

export const PROBLEM_MEDIA_TYPE = 'application/problem+json';

function sendProblem(request: FastifyRequest, reply: FastifyReply, problem: Problem, cause: unknown): FastifyReply {
  if (problem.code === 'internal') request.log.error({ err: cause }, problem.message);
  // The kind alone: the words of a refusal may name what stands in a plan.
  else request.log.info({ problem: problem.code }, PROBLEM_KINDS[problem.code].title);
  reply.headers(problem.headers);
  reply.header('vary', 'accept');
  if (prefersPage(request.headers.accept)) {
    const sent = request.body instanceof FormBody ? request.body : undefined;
    const page = problemPage(problem, request.url, sent);
    return reply.code(problem.statusCode).type('text/html; charset=utf-8').serializer(String).send(page);
  }
  // Not the serializer of the route: a failure must never fail to be written.
  return reply
    .code(problem.statusCode)
    .type(PROBLEM_MEDIA_TYPE)
    .serializer(JSON.stringify)
    .send(problemBody(problem, request.server.basePath));
}

const aboutOf = ({ id, server, routeOptions }: FastifyRequest) => ({
  id,
  bodyLimit: routeOptions.bodyLimit ?? server.initialConfig.bodyLimit ?? 0,
});

/** Errors before a route is found, such as an address that cannot be decoded. */
export function sendFrameworkError(error: Error, request: FastifyRequest, reply: FastifyReply): void {
  sendProblem(request, reply, problemOfError(error, aboutOf(request)), error);
}

/** Bytes that are not HTTP at all: no request exists yet, the answer is written by hand. */
export const answerBrokenHttp = (basePath: string) => (error: Error & { code?: string }, socket: Socket) => {
  if (error.code === 'ECONNRESET' || !socket.writable) {
    socket.destroy();
    return;
  }
  const problem =
    error.code === 'HPE_HEADER_OVERFLOW'
      ? new Problem('header-too-large', 'The headers are too large.')
      : error.code === 'ERR_HTTP_REQUEST_TIMEOUT'
        ? new Problem('timeout', 'The request was not complete in time.')
        : new Problem('bad-request', 'What arrived is not an HTTP request.');
  const body = JSON.stringify(problemBody(problem, basePath));
  socket.end(
    [
      `HTTP/1.1 ${problem.statusCode} ${STATUS_CODES[problem.statusCode]}`,
      `content-type: ${PROBLEM_MEDIA_TYPE}`,
      `content-length: ${Buffer.byteLength(body)}`,
      'connection: close',
      '',
      body,
    ].join('\r\n'),
  );
};

/** The methods that routes have, to tell "not here" from "not that way". */
class KnownRoutes {
  readonly #routes: { readonly pattern: RegExp; readonly method: string }[] = [];

  add(url: string, methods: readonly string[]): void {
    const escaped = url
      .split('/')
      .map((part) => (part.startsWith(':') ? '[^/]+' : part.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')))
      .join('/');
    for (const method of methods) this.#routes.push({ pattern: new RegExp(`^${escaped}$`), method });
  }

  methodsAt(path: string): string[] {
    return [...new Set(this.#routes.filter((route) => route.pattern.test(path)).map((route) => route.method))].sort();
  }
}

/** Every failure of a route, an unknown address and a wrong method ends as a problem (RFC 9457). */
export function handleProblems(app: FastifyInstance): void {
  const known = new KnownRoutes();
  app.addHook('onRoute', (route) => known.add(route.url, [route.method].flat()));

  app.setErrorHandler((error, request, reply) =>
    sendProblem(request, reply, problemOfError(error, aboutOf(request)), error),
  );

  // Unknown addresses count against the limit too, or they could be guessed for free.
  app.setNotFoundHandler({ preHandler: app.rateLimit() }, (request, reply) => {
    const path = request.url.split('?')[0] as string;
    const allowed = known.methodsAt(path);
    const problem =
      allowed.length > 0
        ? new Problem('method-not-allowed', `Use ${allowed.join(' or ')} here.`, {
            headers: { allow: allowed.join(', ') },
          })
        : new Problem('not-found', 'No such address.');
    return sendProblem(request, reply, problem, undefined);
  });
}
