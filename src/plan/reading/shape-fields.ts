import { pointerTo } from '../faults/fault.ts';
import { FIELDS_OF_SHAPE, type ShapeField, type ShapeFields, type ShapeName } from '../schema/shape-schema.ts';
import type { PlanReader } from './plan-reader.ts';

const SHAPES_OF_FIELD = new Map<string, ShapeName[]>();
for (const [shape, fields] of Object.entries(FIELDS_OF_SHAPE)) {
  for (const field of fields) SHAPES_OF_FIELD.set(field, [...(SHAPES_OF_FIELD.get(field) ?? []), shape as ShapeName]);
}

/** The first field of a shape that an object has, apart from names it uses for something else. */
export function firstShapeField(fields: object, own: readonly string[]): ShapeField | undefined {
  for (const key in fields) if (SHAPES_OF_FIELD.has(key) && !own.includes(key)) return key as ShapeField;
  return undefined;
}

/**
 * Faults every field that belongs to another shape than the object has, apart from names it uses for something else.
 */
export function refuseForeignFields(
  reader: PlanReader,
  fields: object,
  shape: ShapeName,
  at: string,
  own: readonly string[],
): boolean {
  let found = false;
  for (const field in fields) {
    const shapes = SHAPES_OF_FIELD.get(field);
    if (shapes === undefined || shapes.includes(shape) || own.includes(field)) continue;
    found = true;
    const belongs = shapes.join(' or ');
    const allowed = FIELDS_OF_SHAPE[shape].join(', ');
    const stated = shape === 'stated' && !Object.hasOwn(fields, 'shape');
    const says = stated
      ? `${reader.words(at)}: "${field}" describes a ${belongs}. Say so with "shape", or give an area.`
      : `${reader.words(at)}: "${field}" belongs to ${belongs}, and this is a ${shape}. Leave it out; a ${shape} has ${allowed}.`;
    reader.fault(pointerTo(at, field), 'shape-field-foreign', field, allowed, says);
  }
  return found;
}

/** Faults every field a shape cannot do without and does not have. */
export function requireFields(
  reader: PlanReader,
  fields: ShapeFields,
  shape: ShapeName,
  needed: readonly ShapeField[],
  at: string,
): void {
  for (const field of needed) {
    if (fields[field] !== undefined) continue;
    const says =
      shape === 'stated'
        ? `${reader.words(at)} needs "${field}" too: give it, or one "area" instead.`
        : `${reader.words(at)}: shape "${shape}" needs "${field}": give it, or choose another shape.`;
    reader.fault(pointerTo(at, field), 'shape-field-missing', 'nothing', field, says);
  }
}
