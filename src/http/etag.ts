import { createHash } from 'node:crypto';
import type { FastifyInstance, FastifyRequest } from 'fastify';

/** A short name for these very bytes, as an entity tag (RFC 9110 §8.8.3). */
export function entityTag(body: string | Buffer): string {
  return `"${createHash('sha256').update(body).digest('base64url').slice(0, 27)}"`;
}

/** Whether the caller has it already: compared as if every tag were weak (RFC 9110 §13.1.2). */
export function isKnown({ headers }: FastifyRequest, tag: string): boolean {
  const bare = (text: string) => text.trim().replace(/^W\//, '');
  return headers['if-none-match']?.split(',').some((each) => [bare(tag), '*'].includes(bare(each))) ?? false;
}

/** Names what is asked for without a body, and sends none of it again to who has it. Weak, since it names every coding. */
export function tagAnswers(app: FastifyInstance): void {
  app.addHook('onSend', async (request, reply, payload) => {
    const asks = request.method === 'GET' || request.method === 'HEAD';
    if (!asks || reply.statusCode !== 200 || reply.hasHeader('etag')) return payload;
    if (reply.getHeader('cache-control') === 'no-store') return payload;
    if (typeof payload !== 'string' && !Buffer.isBuffer(payload)) return payload;
    const tag = `W/${entityTag(payload)}`;
    reply.header('etag', tag);
    if (!isKnown(request, tag)) return payload;
    reply.code(304);
    return null;
  });
}
