import { type Markup, markup } from '../pages/markup.ts';

/** What is read here of a schema of the OpenAPI document. */
export interface Schema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly items?: Schema | false;
  readonly prefixItems?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly additionalProperties?: Schema | boolean;
  readonly required?: readonly string[];
  readonly description?: string;
  readonly example?: unknown;
  readonly contentMediaType?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly maxLength?: number;
}

const REFERENCE = '#/components/schemas/';

/** The name of a schema that is referred to. */
export function referredName(schema: Schema): string | undefined {
  return schema.$ref?.startsWith(REFERENCE) ? schema.$ref.slice(REFERENCE.length) : undefined;
}

/** Where the fields of objects without a name are shown: the id of their heading. */
export type FieldsAt = ReadonlyMap<Schema, string>;

const PLAIN: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  integer: 'a whole number',
  boolean: 'true or false',
  null: 'null',
  object: 'an object',
};

/**
 * What may stand where a schema holds, in words; names of schemas lead to them, an object without a name leads to where
 * its fields are shown.
 */
export function schemaWords(schema: Schema, fieldsAt?: FieldsAt): Markup {
  const name = referredName(schema);
  if (name !== undefined) return markup`<a href="#schema-${name}">${name}</a>`;
  if (schema.const !== undefined) return choice([schema.const]);
  if (schema.enum !== undefined) return choice(schema.enum);
  const forms = schema.anyOf ?? schema.oneOf;
  if (forms !== undefined)
    return joined(
      forms.map((form) => schemaWords(form, fieldsAt)),
      ', or ',
    );
  if (schema.prefixItems !== undefined)
    return markup`[${joined(
      schema.prefixItems.map((item) => schemaWords(item)),
      ', ',
    )}]`;
  if (schema.type === 'array') {
    const size = between(schema.minItems, schema.maxItems);
    const of = schema.items ? listOf(schema.items, fieldsAt) : undefined;
    return markup`a list${of}${size === '' ? undefined : `, ${size}`}`;
  }
  const types = [schema.type ?? []].flat();
  if (types.length > 1)
    return joined(
      types.map((type) => schemaWords({ ...schema, type })),
      ' or ',
    );
  const fields = fieldsAt?.get(schema);
  if (fields !== undefined) return markup`<a href="#${fields}">an object</a>`;
  const word = PLAIN[types[0] ?? ''] ?? 'anything';
  if (schema.contentMediaType !== undefined) return markup`text that is ${schema.contentMediaType}`;
  if (types[0] === 'string' && schema.maxLength !== undefined) return markup`text, at most ${schema.maxLength} letters`;
  if (types[0] === 'number' || types[0] === 'integer') {
    const above = schema.exclusiveMinimum === undefined ? undefined : `more than ${schema.exclusiveMinimum}`;
    const size = [above, between(schema.minimum, schema.maximum)].filter((each) => each).join(', ');
    return markup`${word}${size === '' ? undefined : `, ${size}`}`;
  }
  return markup`${word}`;
}

function listOf(items: Schema, fieldsAt: FieldsAt | undefined): Markup {
  if (items.properties === undefined) return markup` of ${schemaWords(items, fieldsAt)}`;
  const fields = fieldsAt?.get(items);
  return fields === undefined ? markup` of objects` : markup` of <a href="#${fields}">objects</a>`;
}

function choice(values: readonly unknown[]): Markup {
  return joined(
    values.map((value) => markup`<code>${String(value)}</code>`),
    ', ',
  );
}

function joined(pieces: readonly Markup[], between: string): Markup {
  const unlike = pieces.filter(
    (piece, index) => pieces.findIndex(({ markup: each }) => each === piece.markup) === index,
  );
  return markup`${unlike.map((piece, index) => markup`${index === 0 ? '' : between}${piece}`)}`;
}

function between(low: number | undefined, high: number | undefined): string {
  if (low !== undefined && high !== undefined) return low === high ? `${low} exactly` : `${low} to ${high}`;
  if (high !== undefined) return `at most ${high}`;
  return low !== undefined && low > 0 ? `at least ${low}` : '';
}

/** An object at a place of a document: 'loads[].tubes[]', or '' for the document itself. */
export interface ObjectAt {
  readonly place: string;
  readonly schema: Schema;
}

/** A schema's objects, outermost first, without those that have a name of their own; no further in where told to stop. */
export function objectsIn(
  schema: Schema,
  stopAt: (object: Schema) => boolean = () => false,
  place = '',
): readonly ObjectAt[] {
  if (schema.$ref !== undefined) return [];
  const own = schema.properties === undefined ? [] : [{ place, schema }];
  if (own.length > 0 && stopAt(schema)) return own;
  const members = Object.entries(schema.properties ?? {}).flatMap(([field, member]) =>
    objectsIn(member, stopAt, place === '' ? field : `${place}.${field}`),
  );
  const rows = schema.items ? objectsIn(schema.items, stopAt, `${place}[]`) : [];
  const forms = (schema.anyOf ?? schema.oneOf ?? []).flatMap((form) => objectsIn(form, stopAt, place));
  return [...own, ...members, ...rows, ...forms];
}
