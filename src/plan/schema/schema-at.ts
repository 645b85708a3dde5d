import { z } from 'zod';

/**
 * The schemas a plan allows at a place, without their wrappers: several where a field has several forms, none where the
 * path leads nowhere.
 */
export function schemasAt(schema: z.core.$ZodType, path: readonly PropertyKey[]): readonly z.core.$ZodType[] {
  let places = forms(schema);
  for (const key of path) {
    places = places.flatMap((place) => {
      if (place instanceof z.ZodObject) {
        const member = Object.hasOwn(place.shape, key) ? place.shape[key as string] : undefined;
        return member === undefined ? [] : forms(member);
      }
      if (place instanceof z.ZodArray) return forms(place.element);
      if (place instanceof z.ZodTuple) {
        const item = place.def.items[Number(key)];
        return item === undefined ? [] : forms(item);
      }
      return [];
    });
  }
  return places;
}

/** The fields an object may have at a place. */
export function fieldsAt(schema: z.core.$ZodType, path: readonly PropertyKey[]): readonly string[] {
  return schemasAt(schema, path).flatMap((place) => (place instanceof z.ZodObject ? Object.keys(place.shape) : []));
}

/** What may stand at a place, in words: "a number or text, or [low, high]". */
export function formsAllowed(schema: z.core.$ZodType, path: readonly PropertyKey[]): string {
  const words = schemasAt(schema, path).map((place) => {
    if (place instanceof z.ZodNumber) return place.format === null ? 'a number' : 'a whole number';
    if (place instanceof z.ZodString) return 'text';
    if (place instanceof z.ZodBoolean) return 'true or false';
    if (place instanceof z.ZodEnum) return place.options.join(', ');
    if (place instanceof z.ZodLiteral) return [...place.values].map(String).join(', ');
    if (place instanceof z.ZodTuple) return `a list of ${place.def.items.length}`;
    if (place instanceof z.ZodArray) return 'a list';
    return `an object with ${fieldsShown(place)}`;
  });
  return [...new Set(words)].join(', or ').replace('a number, or text', 'a number, or text with its unit');
}

function fieldsShown(place: z.core.$ZodType): string {
  if (!(place instanceof z.ZodObject)) return 'its fields';
  const fields = Object.keys(place.shape).filter((field) => field !== 'source' && field !== 'note');
  return fields.length > 6 ? `${fields.slice(0, 5).join(', ')}, …` : fields.join(', ');
}

function forms(schema: z.core.$ZodType): z.core.$ZodType[] {
  if (schema instanceof z.ZodExactOptional || schema instanceof z.ZodOptional) return forms(schema.unwrap());
  if (schema instanceof z.ZodUnion) return schema.options.flatMap(forms);
  return [schema];
}
