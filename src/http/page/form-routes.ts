import type { FastifyPluginAsync } from 'fastify';
import type { Answer } from '../../answer/index.ts';
import { DRAWING_STYLE, DRAWINGS } from '../../drawing/index.ts';
import { assess } from '../../margins/index.ts';
import { CODE_EDITIONS, listedMethods } from '../../methods/index.ts';
import { firstPaint, policyHash } from '../../page/index.ts';
import { planHash, readPlan } from '../../plan/index.ts';
import { answerDocument } from '../../worksheet/index.ts';
import { addressOfContact, type Club } from '../club.ts';
import { ConstantBody } from '../compression.ts';
import type { DemoPlan } from '../documents/reference-files.ts';
import { Problem } from '../problems/problem.ts';
import { adopted } from '../routes/background-routes.ts';
import { CHECK_FORMS } from '../routes/plan-routes.ts';
import { VERSION } from '../version.ts';

interface Background {
  readonly plans: readonly DemoPlan[];
  readonly club: Club;
}

/** The form's own policy: its script, answers from this service, drawings as the one markup. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
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

function runBy({ name, contact }: Club) {
  if (name === '' && contact === '') return undefined;
  const words = [name, contact].filter((part) => part !== '').join(', ');
  return { words, href: addressOfContact(contact) };
}

/** The answer to a plan as the form asks for it. */
function answerTo(plan: unknown): Answer | undefined {
  const reading = readPlan(plan);
  if (!reading.ok) return undefined;
  const assessment = assess(reading.input);
  const drawings = { ladder: DRAWINGS.ladder(assessment), elevation: DRAWINGS.elevation(assessment) };
  return answerDocument(assessment, reading.document, reading.entryWarnings, 'none', {
    drawings,
    version: VERSION,
    planHash: planHash(reading),
  });
}

/** The form: empty, or started from a demo plan; it works without script, and comes to life with it. */
export const formRoutes: FastifyPluginAsync<Background> = async (app, { plans, club }) => {
  const background = {
    codes: CODE_EDITIONS.map(adopted),
    methods: listedMethods(),
    plans: plans.map(({ id, title, says }) => ({ id, title, says })),
    worksheets: Object.keys(CHECK_FORMS),
    version: VERSION,
    runBy: runBy(club),
  };
  /** Pages by what was asked for: a handful, all known beforehand. */
  const painted = new Map<string, ConstantBody>();

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
        const text = firstPaint({
          ...background,
          units,
          ...(demo === undefined ? {} : { plan: demo.plan, answer: answerTo(demo.plan) }),
        });
        page = new ConstantBody('text/html; charset=utf-8', Buffer.from(text));
        painted.set(key, page);
      }
      return page.send(request, reply.header('content-security-policy', POLICY).header('cache-control', 'no-cache'));
    },
  );
};
