import type { FastifyPluginAsync } from 'fastify';
import { DRAWING_STYLE, DRAWINGS } from '../../drawing/index.ts';
import { assess } from '../../margins/index.ts';
import { CODE_EDITIONS } from '../../methods/index.ts';
import { firstPaint, IMPORT_MAP, policyHash } from '../../page/index.ts';
import { readPlan } from '../../plan/index.ts';
import { checkDocument } from '../../worksheet/index.ts';
import type { DemoPlan } from '../documents/reference-files.ts';
import { Problem } from '../problems/problem.ts';
import { adopted } from '../routes/background-routes.ts';
import { CHECK_FORMS } from '../routes/plan-routes.ts';
import { VERSION } from '../version.ts';

interface Background {
  readonly plans: readonly DemoPlan[];
}

/** The form's own policy: its modules, its import map by hash, answers from this service, drawings as the one markup. */
const POLICY = [
  "default-src 'none'",
  `script-src 'self' ${policyHash(IMPORT_MAP)}`,
  `style-src 'self' ${policyHash(DRAWING_STYLE)}`,
  "font-src 'self'",
  "img-src 'self'",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types drawing',
].join(';');

/** The answer to a plan as the form asks for it. */
function answerTo(plan: unknown): unknown {
  const reading = readPlan(plan);
  if (!reading.ok) return undefined;
  const assessment = assess(reading.inquiry);
  const drawings = { ladder: DRAWINGS.ladder(assessment), elevation: DRAWINGS.elevation(assessment) };
  return { ...checkDocument(assessment, reading.document, reading.queries, 'none'), drawings };
}

/** The form: empty, or started from a demo plan; it works without script, and comes to life with it. */
export const formRoutes: FastifyPluginAsync<Background> = async (app, { plans }) => {
  const background = {
    codes: CODE_EDITIONS.map(adopted),
    plans: plans.map(({ id, title, says }) => ({ id, title, says })),
    worksheets: Object.keys(CHECK_FORMS),
    version: VERSION,
  };
  /** Pages by what was asked for: a handful, all known beforehand. */
  const painted = new Map<string, string>();

  app.get<{ Querystring: { plan?: unknown; units?: unknown } }>(
    '/',
    { schema: { hide: true } },
    async (request, reply) => {
      const demo = plans.find(({ id }) => id === request.query.plan);
      if (demo === undefined && request.query.plan !== undefined) {
        throw new Problem('not-found', 'There is no such demo plan; GET /v1/demo-plans lists them.');
      }
      const units = request.query.units === 'si' ? 'si' : undefined;
      const key = `${demo?.id ?? ''} ${units ?? ''}`;
      let page = painted.get(key);
      if (page === undefined) {
        page = firstPaint({
          ...background,
          units,
          ...(demo === undefined ? {} : { plan: demo.plan, answer: answerTo(demo.plan) }),
        });
        painted.set(key, page);
      }
      return reply.header('content-security-policy', POLICY).type('text/html; charset=utf-8').send(page);
    },
  );
};
