import type { Dimension } from '../foundation/index.ts';
import type { Compared } from '../margins/index.ts';

interface ComparedWords {
  /** The unit in which demand and capacity are told. */
  readonly dimension: Dimension;
  /** What governs, before its place: "shear". */
  readonly mode: string;
  /** Whether it has a height to tell. */
  readonly hasPlace: boolean;
}

/** What demand and capacity are of. */
export const COMPARED_WORDS = {
  moment: { dimension: 'moment', mode: 'bending', hasPlace: true },
  shear: { dimension: 'force', mode: 'shear', hasPlace: true },
  braces: { dimension: 'force', mode: 'bracing', hasPlace: true },
  'wind-ratio': { dimension: 'force', mode: 'wind on the tower itself', hasPlace: false },
  bending: { dimension: 'moment', mode: 'bending', hasPlace: true },
  leg: { dimension: 'force', mode: 'compression of a leg', hasPlace: true },
  brace: { dimension: 'force', mode: 'compression of a brace', hasPlace: true },
  'side-force': { dimension: 'force', mode: 'lateral force', hasPlace: true },
  'clamp-moment': { dimension: 'moment', mode: 'moment at the lower end of the mast', hasPlace: true },
  torque: { dimension: 'moment', mode: 'torque', hasPlace: true },
  gust: { dimension: 'speed', mode: 'square of the gusts', hasPlace: true },
  weight: { dimension: 'weight', mode: 'weight', hasPlace: true },
  overturning: { dimension: 'moment', mode: 'overturning', hasPlace: false },
  embedment: { dimension: 'moment', mode: 'lateral soil pressure', hasPlace: false },
  'sides-and-base': { dimension: 'moment', mode: 'soil at sides and base together', hasPlace: false },
  'soil-weight': { dimension: 'force', mode: 'weight on the soil', hasPlace: false },
  distance: { dimension: 'length', mode: 'distance', hasPlace: false },
  pull: { dimension: 'force', mode: 'pull on the gear', hasPlace: true },
  area: { dimension: 'area', mode: 'area alone', hasPlace: true },
  'leg-push': { dimension: 'force', mode: 'compression in a leg', hasPlace: true },
  thrust: { dimension: 'force', mode: 'thrust on the base', hasPlace: false },
  'guy-tension': { dimension: 'force', mode: 'guy tension', hasPlace: true },
} as const satisfies Record<Compared['of'], ComparedWords>;
