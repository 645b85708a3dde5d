import type { LatticeSolid, PoleShape } from '../areas/index.ts';
import type { NotGivenOfShape, Section, Station } from './station.ts';

/** One reading of what nobody told of the shapes of a tower. */
export interface ShapeReading {
  readonly sides: PoleShape['sides'];
  readonly pattern: Extract<LatticeSolid, { readonly by: 'members' }>['pattern'];
}

/**
 * What a shape may be where nobody tells: the most and the least a wind finds in a pole of one width, and every bracing of one
 * panel.
 *
 * @source common-practice
 */
const PLAUSIBLE = {
  sides: [0, 8],
  pattern: ['rungs', 'zigzag', 'cross'],
} as const satisfies { readonly [K in NotGivenOfShape]: readonly ShapeReading[K][] };

/**
 * Every reading of the shapes of a tower; one alone where all is told.
 *
 * @example shapeReadings([{ name: '', at: '', low: 0, high: 3, uniform: true, notGiven: ['sides'] }]).length // 2
 * @source common-practice
 */
export function shapeReadings(sections: readonly Section[]): readonly [ShapeReading, ...ShapeReading[]] {
  const open = new Set(sections.flatMap(({ notGiven = [] }) => notGiven));
  const [first, second] = open.has('sides') ? PLAUSIBLE.sides : ([0] as const);
  const patterns = open.has('pattern') ? PLAUSIBLE.pattern : (['zigzag'] as const);
  const withSides = (sides: PoleShape['sides']) => patterns.map((pattern) => ({ sides, pattern }));
  const [one, ...others] = [...withSides(first), ...(second === undefined ? [] : withSides(second))];
  if (!one) throw new RangeError('a shape has no reading');
  return [one, ...others];
}

/** A station whose tower has what nobody told of its shapes by one reading. */
export function withShapesRead<S extends Pick<Station, 'tower'>>(station: S, reading: ShapeReading): S {
  const { tower } = station;
  if (tower.sections.every(({ notGiven }) => notGiven === undefined)) return station;
  return { ...station, tower: { ...tower, sections: tower.sections.map((section) => readAs(section, reading)) } };
}

function readAs(section: Section, { sides, pattern }: ShapeReading): Section {
  const { shape, notGiven } = section;
  if (notGiven === undefined || shape === undefined) return section;
  if (shape.kind === 'pole') return { ...section, shape: { ...shape, sides } };
  if (shape.solid.by !== 'members') return section;
  return { ...section, shape: { ...shape, solid: { ...shape.solid, pattern } } };
}
