import { promisify } from 'node:util';
import { type BrotliOptions, brotliCompress, constants, gzip, type ZlibOptions } from 'node:zlib';
import negotiate from '@fastify/accept-negotiator';
import compress from '@fastify/compress';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { entityTag, isKnown } from './etag.ts';

/** The smaller first; older browsers know the second alone. */
const CODINGS = ['br', 'gzip'] as const;
type Coding = (typeof CODINGS)[number];

/** Text of every sort; fonts and paper are packed in themselves. */
const PACKABLE = /^text\/|[+/](?:json|xml)\b/;

/** From this many bytes on an answer is packed: below, it travels in one packet either way [byte]. */
const WORTH_PACKING = 1024;

/** Up to this many bytes an answer is packed at once, within a millisecond; above, piece by piece beside other work [byte]. */
const AT_ONCE = 65_536;

/** How hard what is packed anew for every answer is packed, and how far back it looks, which is what it takes of memory. */
const QUICK = {
  params: { [constants.BROTLI_PARAM_QUALITY]: 4, [constants.BROTLI_PARAM_LGWIN]: 18 },
};

/** Packs answers of text for who takes them so. What callers send is not unpacked. */
export async function compressAnswers(app: FastifyInstance): Promise<void> {
  // What would be packed for another caller varies by it, also where it goes out as it is: a cache must not mix them up.
  app.addHook('onSend', async (_request, reply, payload) => {
    const length = typeof payload === 'string' || Buffer.isBuffer(payload) ? Buffer.byteLength(payload) : 0;
    if (isWorthPacking(String(reply.getHeader('content-type')), length)) varyByCoding(reply);
  });
  await app.register(compress, {
    globalDecompression: false,
    encodings: [...CODINGS],
    customTypes: PACKABLE,
    threshold: WORTH_PACKING,
    syncThreshold: AT_ONCE,
    brotliOptions: QUICK,
  });
  app.addHook('onRoute', (route) => {
    if (route.method === 'HEAD') route.onSend = [route.onSend ?? [], leaveLengthOpen].flat();
  });
}

/** After Fastify has counted what a GET would send unpacked: packed it has another length (RFC 9110 §8.6). */
async function leaveLengthOpen(request: FastifyRequest, reply: FastifyReply, payload: unknown): Promise<unknown> {
  const packs = request.headers['accept-encoding'] !== undefined && !reply.hasHeader('content-encoding');
  if (packs && /\baccept-encoding\b/.test(String(reply.getHeader('vary')))) reply.removeHeader('content-length');
  return payload;
}

function isWorthPacking(type: string, length: number): boolean {
  return PACKABLE.test(type) && length >= WORTH_PACKING;
}

function varyByCoding(reply: FastifyReply): void {
  const vary = String(reply.getHeader('vary') ?? '');
  if (/\baccept-encoding\b/i.test(vary)) return;
  reply.header('vary', vary === '' ? 'accept-encoding' : `${vary}, accept-encoding`);
}

/** A step below the best, which takes three times as long for a fiftieth less. */
const THOROUGH = { params: { [constants.BROTLI_PARAM_QUALITY]: 10 } };

const PACKERS: Readonly<Record<Coding, (content: Buffer) => Promise<Buffer>>> = {
  br: (content) => promisify<Buffer, BrotliOptions, Buffer>(brotliCompress)(content, THOROUGH),
  gzip: (content) => promisify<Buffer, ZlibOptions, Buffer>(gzip)(content, { level: 9 }),
};

/** A body that is always the same: packed thoroughly, once for each coding, when first asked for. */
export class ConstantBody {
  readonly #packed = new Map<Coding, Promise<Buffer>>();
  readonly #type: string;
  readonly #content: Buffer;
  readonly #tag: string;

  constructor(type: string, content: Buffer) {
    this.#type = type;
    this.#content = content;
    // Weak, since it names every coding of the content.
    this.#tag = `W/${entityTag(content)}`;
  }

  async send(request: FastifyRequest, reply: FastifyReply): Promise<FastifyReply> {
    const worth = isWorthPacking(this.#type, this.#content.length);
    if (worth) varyByCoding(reply);
    reply.header('etag', this.#tag).type(this.#type);
    if (isKnown(request, this.#tag)) return reply.code(304).send();
    const coding = worth ? negotiate(request.headers['accept-encoding'] ?? '', [...CODINGS, 'identity']) : null;
    if (coding !== 'br' && coding !== 'gzip') return reply.send(this.#content);
    let packed = this.#packed.get(coding);
    if (packed === undefined) {
      packed = PACKERS[coding](this.#content);
      this.#packed.set(coding, packed);
    }
    return reply.header('content-encoding', coding).send(await packed);
  }
}
