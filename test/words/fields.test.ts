import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { LISTS, PARTS, PLACES } from '../../src/page/form/questions.mjs';
import {
  additionsRequestSchema,
  areasRequestSchema,
  CELLS,
  planDocumentSchema,
  pressuresRequestSchema,
  ratingsRequestSchema,
  requirementsRequestSchema,
  stormRequestSchema,
} from '../../src/plan/index.ts';
import { BOUNDS } from '../../src/plan/quantities/field-bounds.ts';
import { DIMENSION_OF_BOUNDS, FIELD_BY_PLACE, FIELDS, fieldAt } from '../../src/words/index.ts';
import { forbiddenIn } from './forbidden-patterns.ts';

/** Sentences of more than twenty words, a name in quotes or a list in brackets counting as one. */
function longSentencesIn(text: string): readonly string[] {
  return text
    .replaceAll(/["“][^"”]*["”]|\[[^\]]*\]/g, 'name')
    .split(/[.?!:;]\s+/)
    .filter((sentence) => sentence.split(/\s+/).filter((word) => /[\p{L}\d]/u.test(word)).length > 20);
}

/** Every field of a schema by its place, '*' for a place in a list; both ends of a pair are the pair. */
function fieldsOf(schema: z.core.$ZodType, at = ''): string[] {
  if (schema instanceof z.ZodExactOptional || schema instanceof z.ZodOptional) return fieldsOf(schema.unwrap(), at);
  if (schema instanceof z.ZodUnion) {
    const plain = schema.options.some((option) => option instanceof z.ZodNumber);
    return schema.options
      .filter((option) => !plain || !(option instanceof z.ZodTuple))
      .flatMap((option) => fieldsOf(option, at));
  }
  if (schema instanceof z.ZodObject) {
    return Object.entries(schema.shape).flatMap(([key, member]) => [
      `${at}/${key}`,
      ...fieldsOf(member as z.core.$ZodType, `${at}/${key}`),
    ]);
  }
  if (schema instanceof z.ZodTuple) {
    return schema.def.items.flatMap((item, index) => [`${at}/${index}`, ...fieldsOf(item, `${at}/${index}`)]);
  }
  if (!(schema instanceof z.ZodArray)) return [];
  const inner = fieldsOf(schema.element, `${at}/*`);
  return inner.length > 0 ? inner : [`${at}/*`];
}

const places = new Set(fieldsOf(planDocumentSchema));

describe('the catalogue of fields', () => {
  it('has every field of the schema, and no other', () => {
    expect([...places].filter((place) => !FIELD_BY_PLACE.has(place))).toEqual([]);
    expect([...FIELD_BY_PLACE.keys()].filter((place) => !places.has(place))).toEqual([]);
    expect(places.size).toBeGreaterThan(250);
  });

  it('bounds every quantity by what is of its kind', () => {
    for (const [name, dimension] of Object.entries(DIMENSION_OF_BOUNDS)) {
      expect(BOUNDS[name as keyof typeof BOUNDS].dimension, name).toBe(dimension);
    }
    for (const [place, { of, bounds }] of FIELD_BY_PLACE) {
      expect(of, place).toBe(bounds === undefined ? undefined : DIMENSION_OF_BOUNDS[bounds]);
    }
  });

  it('is found by pointer, from inside a pair too', () => {
    expect(fieldAt('/loads/12/height/1')).toBe(FIELDS.load.height);
    expect(fieldAt('/loads/0/tubes/3/taper/1/2')).toBe(FIELDS.taperPiece[2]);
    expect(fieldAt('/ratings/0/supportedAt/1')).toBe(FIELDS.ratedSupport['*']);
    expect(fieldAt('/ratings/0/wind')).toBe(FIELDS.rating.wind);
    expect(fieldAt('/tower/colour')).toBeUndefined();
  });
});

/** Every text that the catalogue and the form have, by where it stands. */
const TEXTS: readonly (readonly [string, string])[] = [
  ...[...FIELD_BY_PLACE].flatMap(([place, { label, description, hint = '', one = '', add = '', choices = {} }]) =>
    [label, description, hint, one, add, ...Object.values(choices)].map((text) => [place, text] as const),
  ),
  ...[...PLACES].flatMap(([place, { blank = '' }]) => [[place, blank] as const]),
  ...[...LISTS].map(([place, { title }]) => [place, title] as const),
  ...PARTS.flatMap(({ id, title, lead = '' }) => [[id, title] as const, [id, lead] as const]),
  ...Object.entries(CELLS).flatMap(([id, { title, gives, parameters }]) =>
    [title, gives, ...Object.values(parameters).map(({ says }) => says)].map((text) => [id, text] as const),
  ),
  ...[
    planDocumentSchema,
    additionsRequestSchema,
    areasRequestSchema,
    pressuresRequestSchema,
    ratingsRequestSchema,
    stormRequestSchema,
    requirementsRequestSchema,
  ].flatMap((schema) =>
    [...JSON.stringify(z.toJSONSchema(schema)).matchAll(/"description":("(?:[^"\\]|\\.)*")/g)].map(
      ([, text]) => ['schema', JSON.parse(text as string) as string] as const,
    ),
  ),
];

describe('labels, hints and descriptions', () => {
  it('have none of the forbidden words', () => {
    expect(TEXTS.length).toBeGreaterThan(1000);
    expect(TEXTS.filter(([, text]) => forbiddenIn(text).length > 0)).toEqual([]);
  });

  it('have no sentence of more than twenty words', () => {
    expect(TEXTS.filter(([, text]) => longSentencesIn(text).length > 0)).toEqual([]);
  });

  it('are told where they are not so', () => {
    expect(forbiddenIn('What the maker says')).toHaveLength(1);
    expect(longSentencesIn(`${'word '.repeat(20)}more`)).toHaveLength(1);
    expect(longSentencesIn(`${'word '.repeat(20)}. more`)).toEqual([]);
  });
});
