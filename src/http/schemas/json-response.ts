import type { z } from 'zod';

/** A response of one JSON schema, with its description. */
export function jsonResponse<S extends z.ZodType>(description: string, schema: S) {
  return { description, content: { 'application/json': { schema } } };
}
