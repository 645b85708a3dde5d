import type { FastifyPluginAsync } from 'fastify';
import { ASSETS, ASSETS_VERSION } from '../../page/index.ts';
import { ConstantBody } from '../compression.ts';
import { Problem } from '../problems/problem.ts';

const BODIES = new Map([...ASSETS].map(([name, { type, content }]) => [name, new ConstantBody(type, content)]));

/** Style sheets, fonts and the script of the pages, under an address that changes whenever one of them does. */
export const assetRoutes: FastifyPluginAsync = async (app) => {
  app.get<{ Params: { version: string; '*': string } }>(
    '/assets/:version/*',
    { config: { rateLimit: false }, schema: { hide: true } },
    async (request, reply) => {
      const { version, '*': name } = request.params;
      const body = version === ASSETS_VERSION ? BODIES.get(name) : undefined;
      if (body === undefined) throw new Problem('not-found', 'There is no such file; load the page anew.');
      return body.send(request, reply.header('cache-control', 'public, max-age=31536000, immutable'));
    },
  );
};
