import { z } from 'zod';
import { component } from '../documents/component.ts';
import { PROBLEM_CODES, PROBLEM_KINDS, type ProblemCode } from './catalogue.ts';

const faultSchema = component(
  'Fault',
  z.object({
    pointer: z
      .string()
      .optional()
      .meta({ description: 'Where in the body: a JSON pointer in a fragment, such as #/loads/0/area.' }),
    field: z
      .string()
      .optional()
      .meta({ description: 'Which field of a form that was posted, by its name, such as loads[0][area].' }),
    parameter: z.string().optional().meta({ description: 'Which parameter of the query.' }),
    code: z.string().optional().meta({ description: 'The kind of fault, for programs.' }),
    given: z.unknown().optional().meta({ description: 'What was given.' }),
    allowed: z.string().optional().meta({ description: 'What is allowed.' }),
    says: z.string().meta({ description: 'What is wrong and what to do.' }),
    readings: z
      .array(z.string())
      .optional()
      .meta({ description: 'What a text may mean that can be read in two ways, each as it can be written instead.' }),
  }),
);

export const problemSchema = component(
  'Problem',
  z
    .object({
      type: z
        .string()
        .meta({ description: 'Address of the page about this kind of problem; its last part is the code.' }),
      title: z.string().meta({ description: 'The kind of problem in words.' }),
      status: z.number().min(400).max(599).meta({ description: 'The HTTP status.' }),
      detail: z.string().meta({ description: 'This occurrence in a sentence.' }),
      faults: z.array(faultSchema).optional().meta({ description: 'Every error, all at once.' }),
    })
    .meta({ description: 'A failure, by RFC 9457.' }),
);

/** The problem responses of a route, for its response schema. */
export function problemResponses(...codes: readonly ProblemCode[]) {
  const always: readonly ProblemCode[] = ['key-required', 'too-many-requests', 'internal', 'overloaded'];
  const responses: Record<number, { description: string; content: Record<string, { schema: typeof problemSchema }> }> =
    {};
  for (const code of PROBLEM_CODES.filter((candidate) => codes.includes(candidate) || always.includes(candidate))) {
    const { status, title } = PROBLEM_KINDS[code];
    const before = responses[status]?.description;
    responses[status] = {
      description: before === undefined ? title : `${before}; or: ${title}`,
      content: { 'application/problem+json': { schema: problemSchema } },
    };
  }
  return responses;
}

/** The same for a route that some of what can befall every route cannot befall: one open to all, or without a limit. */
export function problemResponsesWithout(
  never: readonly ProblemCode[],
  ...codes: readonly ProblemCode[]
): ReturnType<typeof problemResponses> {
  const statuses: readonly number[] = never.map((code) => PROBLEM_KINDS[code].status);
  return Object.fromEntries(
    Object.entries(problemResponses(...codes)).filter(([status]) => !statuses.includes(Number(status))),
  );
}
