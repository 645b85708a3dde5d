import { validatorCompiler } from 'fastify-type-provider-zod';
import type { z } from 'zod';

const documentedOnlySchemas = new WeakSet<object>();

/**
 * A body schema that stands in the OpenAPI document while the body goes on as it came: the plan room reads it once,
 * with all faults and in better words.
 */
export function documentedOnly<S extends z.ZodType>(schema: S): S {
  documentedOnlySchemas.add(schema);
  return schema;
}

/** Validates by zod, save what the domain reads itself. */
export const validatorOrDomain: typeof validatorCompiler = (route) =>
  documentedOnlySchemas.has(route.schema) ? (data: unknown) => ({ value: data }) : validatorCompiler(route);
