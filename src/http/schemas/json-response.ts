import { z } from 'zod';

/** A response of one JSON schema, with its description. */
export function jsonResponse<S extends z.ZodType>(description: string, schema: S) {
  return { description, content: { 'application/json': { schema } } };
}

/** A response of one JSON schema, or the same as a page. */
export function jsonOrPage<S extends z.ZodType>(description: string, schema: S) {
  return { description, content: { 'application/json': { schema }, 'text/html': { schema: z.string() } } };
}
