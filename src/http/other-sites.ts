import cors from '@fastify/cors';
import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { PLAN_HEADER, VERSION_HEADER } from './version.ts';

/** As a browser writes it in the origin header: scheme, host, and a port where it is not the usual one. */
function isOrigin(text: string): boolean {
  return URL.canParse(text) && /^https?:$/.test(new URL(text).protocol) && new URL(text).origin === text;
}

/** The setting that names other sites whose scripts may read answers; none where it is blank, all by a star. */
export const corsOrigins = z
  .string()
  .default('')
  .transform((text) => text.split(',').flatMap((origin) => (origin.trim() === '' ? [] : [origin.trim()])))
  .refine((origins) => origins.every((origin) => origin === '*' || isOrigin(origin)), {
    error: 'give origins with commas between, such as https://club.example,http://localhost:3000, or * for all',
  })
  .meta({
    description:
      'Other sites whose scripts may read answers, with commas between: https://club.example; * for all, none when blank. Forms without script need none.',
  });

/** Lets the scripts of other sites read answers; never with credentials. */
export async function letOtherSitesRead(app: FastifyInstance, origins: readonly string[]): Promise<void> {
  if (origins.length === 0) return;
  const all = origins.includes('*');
  await app.register(cors, {
    origin: all ? '*' : [...origins],
    methods: ['GET', 'HEAD', 'POST'],
    allowedHeaders: ['accept', 'authorization', 'content-type'],
    exposedHeaders: ['etag', 'retry-after', VERSION_HEADER, PLAN_HEADER],
    credentials: false,
    maxAge: 3600,
    // A spreadsheet asks OPTIONS without the headers that a script's browser adds.
    strictPreflight: false,
  });
  if (all) return;
  // Routes write what their own answer varies by; a cache must not give one site the answer to another.
  app.addHook('onSend', async (_request, reply) => {
    const vary = String(reply.getHeader('vary') ?? '');
    if (!/\borigin\b/i.test(vary)) reply.header('vary', vary === '' ? 'Origin' : `${vary}, Origin`);
  });
}
