import { z } from 'zod';
import { type DecimalSign, readFormText } from '../plan/index.ts';
import { FormBody } from './form-body.ts';
import { Problem, type ProblemFault } from './problems/problem.ts';

/** The field that holds a whole document, where the document has no such part. */
const WHOLE = 'plan';

/** What was posted, as JSON or as the fields of a form. */
export interface PostedDocument {
  readonly document: unknown;
  /** The same faults, with the name of the field where a form was posted. */
  readonly named: (faults: readonly ProblemFault[]) => readonly ProblemFault[];
}

/**
 * The document of a body: as it came where it was JSON, else made of the fields of a form by the schema of what they are
 * for. A form may hold the whole document as JSON in its field `plan`, and for additions each part in a field of its own.
 */
export function postedDocument(body: unknown, schema: z.ZodObject, decimal: DecimalSign = 'point'): PostedDocument {
  if (!(body instanceof FormBody)) return { document: body, named: (faults) => faults };
  const inParts = body.jsonFields.filter((field) => field in schema.shape);
  if (body.jsonFields.includes(WHOLE) && !inParts.includes(WHOLE)) {
    const others = body.filled.map(([name]) => name).filter((name) => name !== WHOLE);
    if (others.length > 0) throw besidesWhole(others);
    const document = body.documentIn(WHOLE, '');
    return { document, named: (faults) => faults.map((fault) => ({ ...fault, field: WHOLE })) };
  }
  const read = readFormText(body.nested, { schema, decimal });
  const documents = body.jsonFields.map((field) => [
    field,
    inParts.includes(field) ? body.documentIn(field, `/${field}`) : body.textOf(field),
  ]);
  const nameOf = (pointer: string | undefined) => {
    const [, first = ''] = (pointer ?? '').split('/');
    return inParts.includes(first) ? first : read.nameOf(pointer ?? '');
  };
  return {
    document: { ...partsNeeded(schema), ...(read.document as object), ...Object.fromEntries(documents) },
    named: (faults) => faults.map((fault) => ({ ...fault, field: nameOf(fault.pointer) })),
  };
}

/** Empty objects for what must be there, so that a form is told which of its entries is missing, and of no object. */
function partsNeeded({ shape }: z.ZodObject): object {
  const needed = Object.entries(shape).filter(([, part]) => part instanceof z.ZodObject);
  return Object.fromEntries(needed.map(([name]) => [name, {}]));
}

function besidesWhole(others: readonly string[]): Problem {
  const faults = others.slice(0, 100).map((field) => ({
    field,
    code: 'one-of',
    allowed: `${WHOLE} alone`,
    says: `${field}: the field ${WHOLE} holds the whole document. Write this into it, or leave one of the two out.`,
  }));
  return new Problem('plan-faults', `Beside the field ${WHOLE} there are others.`, { faults });
}
