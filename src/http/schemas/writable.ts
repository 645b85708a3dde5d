/** The same type without `readonly`, as the response schemas spell it. */
export type Writable<T> = T extends (...inputs: never[]) => unknown
  ? T
  : T extends object
    ? { -readonly [K in keyof T]: Writable<T[K]> }
    : T;

/** A document of the worksheet room as the type of its response schema; nothing is copied. */
export function writable<T>(document: T): Writable<T> {
  return document as Writable<T>;
}
