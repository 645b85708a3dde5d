type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type JsonObject = { [key: string]: Json };

const REFERENCE = '#/components/schemas/';

function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function mapped(value: Json, change: (node: JsonObject) => JsonObject): Json {
  if (Array.isArray(value)) return value.map((item) => mapped(item, change));
  if (!isObject(value)) return value;
  const node = change(value);
  return Object.fromEntries(Object.entries(node).map(([key, child]) => [key, mapped(child, change)]));
}

function referencesIn(value: Json, found: Set<string> = new Set()): Set<string> {
  if (Array.isArray(value)) for (const item of value) referencesIn(item, found);
  else if (isObject(value)) {
    const reference = value['$ref'];
    if (typeof reference === 'string' && reference.startsWith(REFERENCE)) found.add(reference.slice(REFERENCE.length));
    for (const child of Object.values(value)) referencesIn(child, found);
  }
  return found;
}

function reachable(paths: Json, schemas: JsonObject): Set<string> {
  const found = new Set<string>();
  const waiting = [...referencesIn(paths)];
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    const schema = schemas[name];
    if (found.has(name) || schema === undefined) continue;
    found.add(name);
    waiting.push(...referencesIn(schema));
  }
  return found;
}

/** Limits and keywords that the generator adds by itself and that say nothing to a reader. */
function withoutNoise(node: JsonObject): JsonObject {
  const entries = Object.entries(node).filter(
    ([key, value]) =>
      !(key === 'maximum' && value === Number.MAX_SAFE_INTEGER) &&
      !(key === 'minimum' && value === Number.MIN_SAFE_INTEGER) &&
      !(key === 'propertyNames' && isObject(value) && value['type'] === 'string' && Object.keys(value).length === 1),
  );
  return Object.fromEntries(entries);
}

/**
 * Keeps the schemas that a path reaches, and takes the ending "Input" from a name wherever the plain name is free or
 * means the same: the generator writes each schema twice, as it is read and as it is written.
 */
export function tidyDocument<T extends object>(document: T): T {
  const clean = mapped(JSON.parse(JSON.stringify(document)) as Json, withoutNoise) as JsonObject;
  const components = isObject(clean['components']) ? clean['components'] : {};
  const schemas = isObject(components['schemas']) ? components['schemas'] : {};
  const kept = reachable(clean['paths'] ?? {}, schemas);

  const plainOf = (name: string) => name.replace(/Input$/, '');
  const withPlainNames = (value: Json) =>
    mapped(value, (node) => {
      const reference = node['$ref'];
      return typeof reference === 'string' ? { ...node, $ref: plainOf(reference) } : node;
    });
  const same = (a: Json | undefined, b: Json | undefined) =>
    a !== undefined && b !== undefined && JSON.stringify(withPlainNames(a)) === JSON.stringify(withPlainNames(b));

  const nameFor = new Map<string, string>();
  for (const name of kept) {
    const plain = plainOf(name);
    const free = plain !== name && (!kept.has(plain) || same(schemas[name], schemas[plain]));
    nameFor.set(name, free ? plain : name);
  }
  const renamed = mapped(clean, (node) => {
    const reference = node['$ref'];
    if (typeof reference !== 'string' || !reference.startsWith(REFERENCE)) return node;
    const name = reference.slice(REFERENCE.length);
    return { ...node, $ref: REFERENCE + (nameFor.get(name) ?? name) };
  }) as JsonObject;

  const renamedSchemas = (isObject(renamed['components']) ? renamed['components']['schemas'] : {}) as JsonObject;
  const tidySchemas: JsonObject = {};
  for (const [name, plain] of [...nameFor].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const schema = renamedSchemas[name];
    if (schema !== undefined) tidySchemas[plain] = schema;
  }
  const order = Object.keys(tidySchemas).sort();
  renamed['components'] = {
    ...components,
    schemas: Object.fromEntries(order.map((name) => [name, tidySchemas[name] as Json])),
  };
  return renamed as T;
}
