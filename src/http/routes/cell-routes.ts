import type { FastifyReply } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { CELL_IDS, CELLS, type CellDefinition, type CellId, FORM_PARAMETERS, readCell } from '../../plan/index.ts';
import { cellBody } from '../cells/answer-cell.ts';
import { entityTag, isKnown } from '../etag.ts';
import { chosenForm } from '../negotiation.ts';
import { problemResponses } from '../problems/problem-schema.ts';
import { documentedOnly } from '../schemas/documented-only.ts';

const MEDIA_TYPES = { text: 'text/plain', csv: 'text/csv' } as const;

/** The same address gives the same answer until the service is replaced by a newer one. */
const CACHE_CONTROL = 'public, max-age=3600';

/** The parameters as the contract shows them; what comes is read by the plan room, whose faults are words in a cell. */
function queryOf({ parameters }: CellDefinition) {
  const own = Object.entries(parameters).map(([name, { says, required, list }]) => {
    const text = z.string().meta({ description: `${says}${list ? '' : ' (no list)'}` });
    return [name, required ? text : text.optional()] as const;
  });
  const ofForm = Object.entries(FORM_PARAMETERS).map(
    ([name, { says, choices }]) => [name, z.enum(choices).optional().meta({ description: says })] as const,
  );
  return documentedOnly(z.strictObject(Object.fromEntries<z.ZodType>([...own, ...ofForm])));
}

function pascalCase(id: CellId): string {
  return id.replaceAll(/(?:^|-)([a-z])/g, (_, letter: string) => letter.toUpperCase());
}

function head(reply: FastifyReply, form: keyof typeof MEDIA_TYPES): FastifyReply {
  return reply
    .header('cache-control', CACHE_CONTROL)
    .header('vary', 'accept')
    .type(`${MEDIA_TYPES[form]}; charset=utf-8`);
}

export interface CellRoutesOptions {
  /** Cells a minute that one address may ask for. */
  readonly rateLimit: number;
}

/** One number for a cell of a spreadsheet. */
export const cellRoutes: FastifyPluginAsyncZod<CellRoutesOptions> = async (app, { rateLimit }) => {
  // A sheet sends all its cells at once: they have one budget of their own. A limit in the configuration of each route
  // would be counted route by route.
  const withinBudget = app.rateLimit({ max: rateLimit });

  for (const id of CELL_IDS) {
    const definition = CELLS[id];
    const url = `/v1/cells/${id}`;

    app.get(
      url,
      {
        exposeHeadRoute: false,
        onRequest: withinBudget,
        config: { rateLimit: false },
        schema: {
          operationId: `cell${pascalCase(id)}`,
          tags: ['cells'],
          summary: definition.title,
          description: `${definition.gives}. For example ${url}?${definition.example}`,
          querystring: queryOf(definition),
          response: {
            200: {
              description: 'One number, or words; after a question mark where there is an error',
              content: { 'text/plain': { schema: z.string() }, 'text/csv': { schema: z.string() } },
            },
            ...problemResponses('bad-query', 'not-acceptable'),
          },
        },
      },
      async (request, reply) => {
        const reading = readCell(id, request.query as Readonly<Record<string, unknown>>);
        const form = chosenForm(MEDIA_TYPES, reading.as, request.headers.accept);
        const body = cellBody(id, reading, form);
        const tag = entityTag(body);
        head(reply, form).header('etag', tag);
        if (isKnown(request, tag)) return (reply as FastifyReply).code(304).send();
        return reply.send(body);
      },
    );

    // A sheet may ask both before each GET: they compute nothing, so that they need not count against the limit.
    app.head(url, { config: { rateLimit: false } }, async (request, reply) => {
      const { as } = request.query as Readonly<Record<string, unknown>>;
      const form = chosenForm(MEDIA_TYPES, as === 'text' || as === 'csv' ? as : undefined, request.headers.accept);
      return head(reply, form).send();
    });
    app.options(url, { config: { rateLimit: false } }, async (_request, reply) =>
      reply.code(204).header('allow', 'GET, HEAD, OPTIONS').send(),
    );
  }
};
