/** One thing in a plan that cannot be read: what was given, what is allowed, and in words what to do. */
export interface Fault {
  /** Where, as the fragment form of a JSON pointer: '#/loads/0/area'. */
  readonly pointer: string;
  readonly code: FaultCode;
  readonly given: string;
  readonly allowed: string;
  readonly says: string;
  /** What a text may mean that can be read in two ways, each as it can be written in its place. */
  readonly readings?: readonly string[];
}

/** Something that can be read but deserves a second look; it stands beside the answer and stops nothing. */
export interface EntryWarning {
  readonly pointer: string;
  readonly code: QueryCode;
  readonly says: string;
}

export type FaultCode =
  | 'missing'
  | 'unknown-field'
  | 'newer-format'
  | 'unknown-load'
  | 'wrong-type'
  | 'not-a-choice'
  | 'too-many'
  | 'too-few'
  | 'too-long'
  | 'unreadable'
  | 'ambiguous-comma'
  | 'unknown-unit'
  | 'out-of-bounds'
  | 'one-of'
  | 'goes-with'
  | 'name-not-unique'
  | 'height-or-above'
  | 'low-above-high'
  | 'base-above-top'
  | 'sections-do-not-add-up'
  | 'sections-do-not-overlap'
  | 'nested-outside'
  | 'nested-below-base'
  | 'stands-outside'
  | 'stands-in-the-way'
  | 'hinge-outside'
  | 'counterpoise-below-base'
  | 'support-outside'
  | 'guy-broken'
  | 'supported-but-free'
  | 'tapered-yet-uniform'
  | 'wall-too-thick'
  | 'rupture-below-yield'
  | 'leg-too-wide'
  | 'brace-too-wide'
  | 'panel-too-long'
  | 'solidity-too-high'
  | 'face-overfull'
  | 'mast-missing'
  | 'mast-inside-too-long'
  | 'mast-below-base'
  | 'mast-base-twice'
  | 'mast-misses-bearing'
  | 'bearing-below-mast'
  | 'piece-off-mast'
  | 'pieces-leave-a-gap'
  | 'pieces-do-not-nest'
  | 'load-above-mast'
  | 'load-below-mast'
  | 'load-below-base'
  | 'meets-ground'
  | 'iced-below-bare'
  | 'span-missing'
  | 'span-differs'
  | 'shape-missing'
  | 'shape-field-missing'
  | 'shape-field-foreign'
  | 'kind-field-missing'
  | 'kind-field-foreign'
  | 'cable-outside'
  | 'speed-twice'
  | 'return-periods-do-not-rise'
  | 'maxima-all-alike'
  | 'rating-height-absurd';

export type QueryCode =
  | 'decimal-comma'
  | 'speed-low'
  | 'speed-beyond-maps'
  | 'rated-speed-low'
  | 'area-of-no-small-tower'
  | 'top-of-no-small-tower'
  | 'area-of-nothing'
  | 'wished-weaker'
  | 'top-differs'
  | 'rating-left-out'
  | 'read-as-middle'
  | 'bearing-above-top'
  | 'mast-outside-differs'
  | 'nested-without-sections'
  | 'pieces-loose'
  | 'boom-meets-ground'
  | 'guys-incomplete'
  | 'guys-too-few'
  | 'guys-cross'
  | 'ladder-incomplete';

export function faultAt(pointer: string, code: FaultCode, given: string, allowed: string, says: string): Fault {
  return { pointer, code, given, allowed, says };
}

/** The same of a plan, placed in a request that holds it. */
export function inPlan<Placed extends { readonly pointer: string }>(each: Placed): Placed {
  return { ...each, pointer: `#/plan${each.pointer.slice(1)}` };
}

/** Whether something that came by JSON is an object. */
export function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The JSON pointer, without '#', of a member of what another pointer names. @source rfc6901 */
export function pointerTo(at: string, key: PropertyKey): string {
  return `${at}/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`;
}

/** What stands where a path leads, or undefined where that is nowhere. */
export function valueAt(document: unknown, path: readonly PropertyKey[]): unknown {
  let value = document;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}
