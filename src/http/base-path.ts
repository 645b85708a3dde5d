import type { FastifyInstance } from 'fastify';

/** The address of a request as the routes have it: without the base path, where a proxy has left it on. */
export function withoutBasePath(url: string, basePath: string): string {
  if (basePath === '' || !url.startsWith(`${basePath}/`)) return url;
  return url.slice(basePath.length);
}

/** Leads from the base path to the same with its slash: what a page names stands beneath it. */
export function leadToBasePath(app: FastifyInstance, basePath: string): void {
  if (basePath === '') return;
  app.get(basePath, { schema: { hide: true }, config: { alwaysOpen: true } }, async (_request, reply) =>
    reply.redirect(`${basePath}/`, 308),
  );
}
