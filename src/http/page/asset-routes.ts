import type { FastifyPluginAsync } from 'fastify';
import { ASSETS, ASSETS_VERSION } from '../../page/index.ts';
import { Problem } from '../problems/problem.ts';

/** Style sheets, fonts and modules of the pages, under an address that changes whenever one of them does. */
export const assetRoutes: FastifyPluginAsync = async (app) => {
  app.get<{ Params: { version: string; '*': string } }>(
    '/assets/:version/*',
    { config: { rateLimit: false }, schema: { hide: true } },
    async (request, reply) => {
      const { version, '*': name } = request.params;
      const asset = version === ASSETS_VERSION ? ASSETS.get(name) : undefined;
      if (asset === undefined) throw new Problem('not-found', 'There is no such file; load the page anew.');
      return reply.header('cache-control', 'public, max-age=31536000, immutable').type(asset.type).send(asset.content);
    },
  );
};
