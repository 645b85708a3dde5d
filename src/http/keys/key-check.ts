import type { FastifyInstance, FastifyRequest } from 'fastify';
import { csv } from '../cells/csv.ts';
import type { EndpointGroup } from '../configuration.ts';
import { Problem } from '../problems/problem.ts';
import type { KeyRing } from './key-ring.ts';

declare module 'fastify' {
  interface FastifyRequest {
    /** Whose key opened it; undefined where none was needed. */
    keyName: string | undefined;
  }
  interface FastifyContextConfig {
    /** Open to everyone, keys or none. */
    readonly alwaysOpen?: boolean;
  }
}

const CHALLENGE = 'Basic realm="Gustworthy", charset="UTF-8", Bearer realm="Gustworthy"';
const GROUPS_BY_TAG: readonly EndpointGroup[] = ['plans', 'cells', 'stock', 'background', 'service', 'metrics'];

function groupOf(request: FastifyRequest): EndpointGroup {
  const tags = (request.routeOptions.schema as { readonly tags?: readonly string[] } | undefined)?.tags ?? [];
  const { url = '' } = request.routeOptions;
  if (url === '/metrics') return 'metrics';
  return GROUPS_BY_TAG.find((group) => tags.includes(group)) ?? (url.startsWith('/v1/cells/') ? 'cells' : 'page');
}

/** The key of an authorization header: as a bearer token, or as the password of any name (RFC 6750, RFC 7617). */
function keyInHeader(header: string | undefined): string | undefined {
  const [, scheme = '', value = ''] = /^(\S+) +(\S+) *$/.exec(header ?? '') ?? [];
  if (scheme.toLowerCase() === 'bearer') return value;
  if (scheme.toLowerCase() !== 'basic') return undefined;
  return /^[^:]*:(.*)$/s.exec(Buffer.from(value, 'base64').toString('utf8'))?.[1];
}

/** Takes the key out of the query, where sheets and links carry it, so that no route and no log meets it. */
function keyTakenFromQuery(request: FastifyRequest): string | undefined {
  const query = request.query as Record<string, unknown>;
  const given = query['key'];
  if (given === undefined || (request.method !== 'GET' && request.method !== 'HEAD')) return undefined;
  Reflect.deleteProperty(query, 'key');
  return typeof given === 'string' ? given : '';
}

const WORDS = {
  missing: 'This service requires a key. Ask its operator, and send it as the parameter key or in the header.',
  wrong: 'Unknown key. Check it for a missing letter, or ask the operator.',
} as const;

/**
 * Asks for a key where there are keys. In a cell of a spreadsheet, which hides the body of a failing status, the words
 * come as the answer.
 */
export function askForKeys(app: FastifyInstance, ring: KeyRing, open: readonly EndpointGroup[]): void {
  app.decorateRequest('keyName', undefined);

  // After the limit of requests has counted, before the body is read.
  app.addHook('preParsing', async (request, reply) => {
    const { url, config } = request.routeOptions;
    const inQuery = keyTakenFromQuery(request);
    if (url === undefined || config.alwaysOpen || request.method === 'OPTIONS') return;
    const group = groupOf(request);
    if (open.includes(group) || (group === 'cells' && request.method === 'HEAD')) return;

    const given = inQuery ?? keyInHeader(request.headers.authorization);
    request.keyName = given === undefined ? undefined : ring.nameOf(given);
    if (request.keyName !== undefined) return;
    const says = given === undefined || given === '' ? WORDS.missing : WORDS.wrong;
    const { strict, as } = request.query as Readonly<Record<string, unknown>>;
    if (group !== 'cells' || strict === '1') {
      throw new Problem('key-required', says, { headers: { 'www-authenticate': CHALLENGE } });
    }
    const words = `? ${says}`;
    const table = as === 'csv';
    await reply
      .header('cache-control', 'no-store')
      .type(`text/${table ? 'csv' : 'plain'}; charset=utf-8`)
      .send(table ? csv([['key'], [words]], 'point') : words);
  });

  // What a key opened is for its owner; a cache in between must not hand it to others.
  app.addHook('onSend', (request, reply, _payload, done) => {
    const control = reply.getHeader('cache-control');
    if (request.keyName !== undefined && typeof control === 'string') {
      reply.header('cache-control', control.replace(/\bpublic\b/, 'private'));
    }
    done();
  });
}
