/** Loads pasted from a sheet: a row a load, headed by what each column is. */
import { LOADS } from './questions.mjs';

/** What people write at the head of a column, beside the names of the plan and the words of the form. @type {Readonly<Record<string, string>>} */
const HEADS = {
  antenna: '/name',
  what: '/name',
  load: '/name',
  'above top': '/above',
  'height above top': '/above',
  'wind area': '/area',
  depth: '/deep',
  quantity: '/count',
  number: '/count',
};

/** @param {string} head */
const tidyHead = (head) =>
  head
    .toLowerCase()
    .replaceAll(/\s*[([].*$/g, '')
    .replaceAll(/[^a-z]+/g, ' ')
    .trim();

/** @type {Map<string, string>} */
const PLACES = new Map([
  ...LOADS.row
    .filter(({ at }) => !at.slice(1).includes('/'))
    .flatMap(
      ({ at, label }) =>
        /** @type {[string, string][]} */ ([
          [tidyHead(label), at],
          [tidyHead(at.slice(1).replaceAll(/([A-Z])/g, ' $1')), at],
          [at.slice(1).toLowerCase(), at],
        ]),
    ),
  ...Object.entries(HEADS),
]);

/** Words for choices and for yes and no. @param {string} at @param {string} text */
function answerFor(at, text) {
  const question = LOADS.row.find((each) => each.at === at);
  const word = text.toLowerCase();
  if (question?.kind === 'yes')
    return /^(yes|y|true|x|1)$/.test(word) ? 'true' : /^(no|n|false|0)$/.test(word) ? 'false' : text;
  const choice = question?.choices?.find(([key, words]) => key === word || words.toLowerCase() === word);
  return choice ? choice[0] : text;
}

/** @param {string} line @param {string} sign @returns {string[]} */
function cellsOf(line, sign) {
  if (sign === '\t') return line.split('\t').map((cell) => cell.trim());
  const cells = [...line.matchAll(new RegExp(`(?:^|${sign})(?:"((?:[^"]|"")*)"|([^${sign}]*))`, 'g'))];
  return cells.map(([, quoted, bare]) => (quoted?.replaceAll('""', '"') ?? bare ?? '').trim());
}

/**
 * The loads in a pasted text, or in words why there are none.
 *
 * @param {string} text
 * @returns {{ rows: Record<string, string>[], says?: undefined } | { rows?: undefined, says: string }}
 */
export function pastedLoads(text) {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '');
  const [first = ''] = lines;
  const sign = first.includes('\t') ? '\t' : first.includes(';') ? ';' : ',';
  const heads = cellsOf(first, sign);
  const places = heads.map((head) => PLACES.get(tidyHead(head)) ?? PLACES.get(head.toLowerCase()));
  if (!places.includes('/name')) {
    return {
      says: `The first row must say what each column is, such as name, above, area. It reads: ${first.slice(0, 80)}`,
    };
  }
  const strange = heads.filter((head, index) => places[index] === undefined && head !== '');
  if (strange.length > 0) {
    return {
      says: `No question goes with the ${strange.length === 1 ? 'column' : 'columns'} ${strange.join(', ')}: rename or leave out.`,
    };
  }
  const rows = lines.slice(1).map((line) => {
    const cells = cellsOf(line, sign);
    /** @type {Record<string, string>} */
    const row = {};
    places.forEach((at, index) => {
      const cell = cells[index] ?? '';
      if (at !== undefined && cell !== '') row[at.slice(1)] = answerFor(at, cell);
    });
    return row;
  });
  return rows.length > 0 ? { rows } : { says: 'Below the heads there is no row.' };
}
