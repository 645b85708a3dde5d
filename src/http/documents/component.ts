import { z } from 'zod';

/** Gives a schema a name of its own in the OpenAPI document; a name can be given once only. */
export function component<S extends z.ZodType>(id: string, schema: S): S {
  if (z.globalRegistry._idmap.has(id)) throw new Error(`two schemas are called ${id}`);
  z.globalRegistry.add(schema, { ...z.globalRegistry.get(schema), id });
  return schema;
}
