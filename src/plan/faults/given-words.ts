/** What was given, short enough to be repeated in a message. */
export function givenWords(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (Number.isNaN(value)) return 'not a number';
  if (typeof value === 'string') return value.length > 60 ? `"${value.slice(0, 57)}…"` : `"${value}"`;
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  return 'an object';
}
