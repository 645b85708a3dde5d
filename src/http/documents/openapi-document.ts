import swagger from '@fastify/swagger';
import type { FastifyInstance } from 'fastify';
import { jsonSchemaTransform, jsonSchemaTransformObject } from 'fastify-type-provider-zod';
import { contactOfClub } from '../club.ts';
import type { Configuration } from '../configuration.ts';
import { FORM_MEDIA_TYPE } from '../form-body.ts';
import { VERSION } from '../version.ts';
import { requestExamples } from './request-examples.ts';
import { tidyDocument } from './tidy-document.ts';

interface MediaType {
  schema?: unknown;
  examples?: Record<string, { value: unknown }>;
}

interface Operation {
  operationId?: string;
  requestBody?: { content?: Record<string, MediaType> };
}

function operationsOf(document: { paths?: unknown }): Operation[] {
  return Object.values((document.paths ?? {}) as Record<string, Record<string, Operation>>).flatMap((path) =>
    Object.values(path),
  );
}

/** Puts the examples of openapi/examples beside the bodies they are for; one that fits no operation is an error. */
function withExamples<T extends { paths?: unknown }>(document: T): T {
  const operations = operationsOf(document);
  for (const { operationId, name, body } of requestExamples()) {
    const content = operations.find((operation) => operation.operationId === operationId)?.requestBody?.content?.[
      'application/json'
    ];
    if (content === undefined) throw new Error(`openapi/examples/${operationId}.${name}.json belongs to no operation`);
    content.examples = { ...content.examples, [name]: { value: body } };
  }
  return document;
}

const inJson = (what: string) => ({ type: 'string', contentMediaType: 'application/json', description: what });

/** Parts of a document that a form may hold as JSON, by operation; of any other, the whole. */
const FORM_PARTS: Readonly<Record<string, Readonly<Record<string, ReturnType<typeof inJson>>>>> = {
  additions: { plan: inJson('The plan in one field.'), proposals: inJson('The proposals in one field.') },
  requirements: {
    plan: inJson('The plan in one field.'),
    wished: inJson('The wished wind in one field.'),
    quotes: inJson('The winds in one field.'),
    candidates: inJson('The towers in one field.'),
  },
};

/** Puts the form beside each JSON body: the same document, in fields whose names have brackets for its parts. */
function withForms<T extends { paths?: unknown }>(document: T): T {
  for (const { operationId, requestBody } of operationsOf(document)) {
    if (requestBody?.content?.['application/json'] === undefined) continue;
    requestBody.content[FORM_MEDIA_TYPE] = {
      schema: {
        type: 'object',
        description:
          'The same document in fields, each named by its path: tower[top], loads[0][above]. All values are text. Blank means not given, and blank rows are dropped. A list of single values may also be in one field, separated by semicolons or line ends.',
        properties: FORM_PARTS[operationId ?? ''] ?? {
          plan: inJson('The whole document in one field, then without others beside it.'),
        },
        additionalProperties: { type: 'string' },
      },
    };
  }
  return document;
}

/** Collects the OpenAPI document from the routes registered after it. */
export async function describeRoutes(
  app: FastifyInstance,
  { club, basePath }: Pick<Configuration, 'club' | 'basePath'>,
): Promise<void> {
  const contact = contactOfClub(club);
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Gustworthy',
        version: VERSION,
        summary: 'Checks a small antenna tower against its manufacturer’s rating, with the antennas its owner plans.',
        description:
          'Post a plan, the JSON document of a station, and read its areas, forces, and every check with its ratio. ' +
          'The service keeps nothing. It compares the numbers entered with the ratings entered. The local building code and a licensed engineer decide.',
        ...(contact === undefined ? {} : { contact }),
        license: { name: 'MIT', identifier: 'MIT' },
      },
      ...(basePath === '' ? {} : { servers: [{ url: basePath }] }),
      // Where whoever runs the service has given out keys; without them every call is open.
      security: [{}, { bearer: [] }, { basic: [] }, { inQuery: [] }],
      components: {
        securitySchemes: {
          bearer: { type: 'http', scheme: 'bearer', description: 'The key.' },
          basic: { type: 'http', scheme: 'basic', description: 'Any name, and the key as its password.' },
          inQuery: {
            type: 'apiKey',
            in: 'query',
            name: 'key',
            description: 'The key, in GET only: for sheets and links.',
          },
        },
      },
      tags: [
        { name: 'plans', description: 'Answers to a plan' },
        { name: 'cells', description: 'One number for a cell of a spreadsheet' },
        { name: 'stock', description: "The club's own towers and antennas" },
        { name: 'background', description: 'Formulas and their sources; demo plans' },
        { name: 'service', description: 'The service itself' },
      ],
    },
    hideUntagged: true,
    transform: jsonSchemaTransform,
    transformObject: (parts) => withForms(withExamples(tidyDocument(jsonSchemaTransformObject(parts)))),
  });
}
