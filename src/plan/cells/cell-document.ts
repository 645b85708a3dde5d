import { STAND_IN_METHOD } from '../../methods/index.ts';
import { fromFormText } from '../form-text.ts';
import { CELLS, type CellId } from './cell-definitions.ts';

type Given = ReadonlyMap<string, string>;
type Fields = Record<string, unknown>;

/** Where nothing depends on the site or the tower, these stand in so that the rest can be read. */
const ANY_SITE = { wind: { speed: 100 }, exposure: 'C' };
const ANY_TOWER = { support: 'free', top: 1 };
/** A height that no coefficient of slow wind depends on. */
const ANY_HEIGHT = 100;

const LATTICE = { shape: 'lattice', faces: 3, members: 'round', width: 1 };
const POLE = { shape: 'pole', width: 1 };

const SITE_PARAMETERS = [
  'speed',
  'basis',
  'exposure',
  'terrain',
  'riskCategory',
  'groundElevation',
  'topographicFactor',
];

/** Whether an area is asked for in the wind of a site, and not in slow wind. */
export function hasSite(given: Given): boolean {
  return SITE_PARAMETERS.some((name) => given.has(name));
}

const some = (given: Given, names: readonly string[]) => names.some((name) => given.has(name));

/** What a cell's document holds beside what its parameters say. */
function fixedParts(id: CellId, given: Given, structure: 'lattice' | 'pole'): Fields {
  const own = { method: STAND_IN_METHOD, site: ANY_SITE, tower: ANY_TOWER };
  switch (id) {
    case 'pressure':
      return { structure };
    case 'force':
      return {
        // On what does not sway.
        tower: { support: 'free', frequency: 1, ...(structure === 'lattice' ? LATTICE : POLE) },
        loads: [{ name: 'load', areaKind: 'effective' }],
      };
    case 'area':
      return { method: STAND_IN_METHOD, loads: [{ name: 'load', ...spanOf(given) }] };
    case 'speed':
      return { ...own, site: { exposure: 'C' }, ratings: [{ of: 'tower', area: 1 }] };
    case 'rating':
    case 'allowed-area':
      return { structure, ratings: [{ of: 'tower' }] };
    case 'mast-moment':
      return { ...own, mast: { length: 1 } };
    case 'bundle-width':
      return { ...own, cables: [{ arrangement: 'bundle' }] };
    case 'chance':
      return {
        ...own,
        // Whichever basis both are in, the same straight line turns both into gusts, and the chance stays.
        site: { wind: { basis: 'gust3-nominal' }, exposure: 'C', climate: { basis: 'gust3-nominal' } },
        wanted: { years: 1 },
      };
    case 'lower-at':
      return { ...own, site: { exposure: 'C' } };
    case 'station':
      return {
        tower: some(given, ['width', 'faces', 'members']) ? { shape: 'lattice' } : {},
        ...(some(given, ['area', 'areaKind', 'above']) ? { loads: [{ name: 'antenna' }] } : {}),
        ...(some(
          given,
          [...given.keys()].filter((name) => name.startsWith('rated')),
        )
          ? { ratings: [{ of: 'tower' }] }
          : {}),
      };
  }
}

/** Where the shape hangs, if nobody said; the height of a lattice and of a pole is its length. */
function spanOf(given: Given): Fields {
  const length = given.get('length');
  const shape = given.get('shape');
  const tall = shape === 'lattice' || shape === 'pole';
  const upright = shape === 'tube' && (given.get('along') ?? 'upright') === 'upright';
  const height = tall ? (length === undefined ? {} : { height: [0, length] }) : { height: ANY_HEIGHT };
  if (given.has('height')) return tall || length === undefined ? {} : { length };
  if (upright && length !== undefined) return { height: [0, length] };
  return { ...height, ...(tall || length === undefined ? {} : { length }) };
}

/** The small plan document that a row of a cell is read from, by its parameters as text, none of them blank. */
export function cellDocument(id: CellId, given: Given, units: string, structure: 'lattice' | 'pole'): Fields {
  const document: Fields = structuredClone({ units, ...fixedParts(id, given, structure) });
  for (const [name, { at }] of Object.entries(CELLS[id].parameters)) {
    const text = given.get(name);
    if (text === undefined) continue;
    for (const pointer of at) put(document, pointer, name === 'returnPeriods' ? chartOf(text) : text);
  }
  if (id === 'allowed-area') putRatingsOwn(document, given);
  const typed = fromFormText(document) as Fields;
  // As the text of a form an empty list would say nothing.
  return id === 'station' && given.get('cables')?.trim() === '0' ? { ...typed, cables: [] } : typed;
}

/** "10:76;50:92" as pairs; what is no pair stays text, for the reader to refuse. */
function chartOf(text: string): unknown {
  return text.split(';').map((pair) => {
    const ends = pair.split(':').map((end) => end.trim());
    return ends.length === 2 ? ends : pair.trim();
  });
}

/** Of the other wind what is not said is the rating's own; a basis of its own belongs to a standard of its own. */
function putRatingsOwn(document: Fields, given: Given): void {
  const same = (to: string, from: string, pointer: string) => {
    const text = given.get(from);
    if (!given.has(to) && text !== undefined) put(document, pointer, text);
  };
  const otherMethod = given.has('toMethod');
  same('toMethod', 'method', '/to/wind/method');
  if (!otherMethod) same('toBasis', 'basis', '/to/wind/basis');
  if (!given.has('toTerrain')) same('toExposure', 'exposure', '/to/wind/exposure');
  if (!given.has('toExposure')) same('toTerrain', 'terrain', '/to/wind/terrain');
  same('toRiskCategory', 'riskCategory', '/to/wind/riskCategory');
  same('toHeight', 'height', '/to/height');
}

/** Sets a member by its pointer, whose parts are ours. */
function put(document: Fields, pointer: string, value: unknown): void {
  const path = pointer.slice(1).split('/');
  let owner = document;
  for (const [index, key] of path.slice(0, -1).entries()) {
    owner[key] ??= /^\d+$/.test(path[index + 1] as string) ? [] : {};
    owner = owner[key] as Fields;
  }
  owner[path.at(-1) as string] = value;
}
