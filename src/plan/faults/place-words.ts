import { FIELD_BY_PLACE } from '../../words/index.ts';

/** What one entry of a list is called, by the name of the list. */
const ONE_OF_LIST: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    [...FIELD_BY_PLACE].flatMap(([place, { one }]) =>
      one === undefined ? [] : [[place.slice(place.lastIndexOf('/') + 1), one]],
    ),
  ),
  proposals: 'proposal',
  add: 'added load',
  remove: 'removed load',
  candidates: 'tower',
  quotes: 'wind',
};

const spaced = (name: string) =>
  name.replaceAll(/([a-z])([A-Z])/g, (_, before, after) => `${before} ${after.toLowerCase()}`);

/** Longer names are cut where a sentence calls something by them. */
const NAME_AT_MOST = 60;
const shortName = (name: string) => (name.length > NAME_AT_MOST ? `${name.slice(0, NAME_AT_MOST - 1)}…` : name);

/**
 * A place in the plan in the reader's words, "beam area": things by the name their owner gave them, and a capital at the
 * start unless that is a name.
 */
export function placeWords(document: unknown, path: readonly PropertyKey[]): string {
  const words: string[] = [];
  let value = document;
  let list = '';
  let named = false;
  for (const key of path) {
    value = typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[key] : undefined;
    if (typeof key === 'number') {
      const name = typeof value === 'object' && value !== null ? (value as { name?: unknown }).name : undefined;
      words.pop();
      if (typeof name === 'string' && name.trim() !== '') {
        named = true;
        words.splice(0, words.length, shortName(name.trim()));
      } else words.push(`${ONE_OF_LIST[list] ?? spaced(list)} ${key + 1}`);
    } else {
      list = String(key);
      words.push(spaced(list));
    }
  }
  const text = words.join(' ');
  if (text === '') return 'The plan';
  return named ? text : `${text[0]?.toUpperCase()}${text.slice(1)}`;
}
