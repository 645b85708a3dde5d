import type { z } from 'zod';

/** What no reader changes. */
type Settled<T> = T extends readonly (infer Item)[]
  ? readonly Settled<Item>[]
  : T extends object
    ? { readonly [Key in keyof T]: Settled<T[Key]> }
    : T;

/** What a schema describes. */
export type Described<S extends z.ZodType> = Settled<z.output<S>>;

/** The same, where a member that may be absent may also be undefined. */
type Told<T> = { [Key in keyof T]: object extends Pick<T, Key> ? T[Key] | undefined : T[Key] };

/** A part of an answer without the members that there is nothing to tell of; a member its schema does not know is refused. */
export function told<T extends object>(members: Told<T>): T {
  const kept: Partial<Record<string, unknown>> = {};
  for (const [key, value] of Object.entries(members)) if (value !== undefined) kept[key] = value;
  return kept as T;
}
