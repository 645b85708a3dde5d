import type { FastifyPluginAsync } from 'fastify';
import { type Contract, docsPage } from './docs-page.ts';

/** Stands for the service's own address until it is known by which name somebody came. */
const ORIGIN = 'http://origin.invalid';
const HOST = /^(?:[\w.-]{1,253}|\[[\da-f:.]{2,45}\])(?::\d{1,5})?$/i;

/** The contract as a page. */
export const docsRoutes: FastifyPluginAsync<{ readonly basePath: string }> = async (app, { basePath }) => {
  let page: string | undefined;
  app.get('/docs', { schema: { hide: true } }, async (request, reply) => {
    page ??= docsPage(app.swagger() as unknown as Contract, ORIGIN);
    const origin = HOST.test(request.host) ? `${request.protocol}://${request.host}` : 'http://localhost:8080';
    return reply
      .header('cache-control', 'no-cache')
      .type('text/html; charset=utf-8')
      .send(page.replaceAll(ORIGIN, `${origin}${basePath}`));
  });
};
