import { createHash } from 'node:crypto';
import type { FastifyRequest } from 'fastify';

/** A short name for these very bytes, as an entity tag (RFC 9110 §8.8.3). */
export function entityTag(body: string | Buffer): string {
  return `"${createHash('sha256').update(body).digest('base64url').slice(0, 27)}"`;
}

/** Whether the caller has it already: compared as if every tag were weak (RFC 9110 §13.1.2). */
export function isKnown({ headers }: FastifyRequest, tag: string): boolean {
  const bare = (text: string) => text.trim().replace(/^W\//, '');
  return headers['if-none-match']?.split(',').some((each) => [bare(tag), '*'].includes(bare(each))) ?? false;
}
