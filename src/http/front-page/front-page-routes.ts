import { readFileSync } from 'node:fs';
import type { FastifyPluginAsync } from 'fastify';
import type { Club } from '../club.ts';
import type { DemoPlan } from '../documents/reference-files.ts';
import { frontPage } from './front-page.ts';

interface Background {
  readonly plans: readonly DemoPlan[];
  readonly club: Club;
}

/** The plan the front page shows. */
const SHOWN = 'river-bluff';

/** A page without script that shows the main job on a demo plan, and how to ask for one's own. */
export const frontPageRoutes: FastifyPluginAsync<Background> = async (app, { plans, club }) => {
  const shown = plans.find(({ id }) => id === SHOWN);
  if (!shown) throw new Error(`the front page shows the demo plan ${SHOWN}, which is missing`);
  const page = frontPage(shown, plans, club);
  const style = readFileSync(new URL('front-page.css', import.meta.url), 'utf8');

  app.get('/', { schema: { hide: true } }, async (_request, reply) =>
    reply.type('text/html; charset=utf-8').send(page),
  );

  app.get('/front-page.css', { schema: { hide: true } }, async (_request, reply) =>
    reply.header('cache-control', 'max-age=3600').type('text/css; charset=utf-8').send(style),
  );
};
