/*
 * Effective projected areas, typed a second time from the engineering basis, section 5. Lengths in m, areas in m².
 */
import {
  type AreaKind,
  FLAT_ROW,
  FOOT,
  type LatticeShape,
  type Lines,
  type Method,
  MPH,
  type PoleShape,
  PSF,
} from './told-station.ts';
import { constantOf, forceOnArea, heightFactor, isAsce, isTia, pressureAt, type Wind } from './wind-by-hand.ts';

/** Surfaces of round members by EN 1991-1-4, m. */
export const GALVANISED = 0.0002;
export const POLISHED = 0.000002;

/** Straight lines between the points of a table, level outside. */
export function between(points: readonly (readonly [number, number])[], x: number): number {
  const [first] = points as [readonly [number, number]];
  if (x <= first[0]) return first[1];
  for (let index = 1; index < points.length; index++) {
    const [x0, y0] = points[index - 1] as [number, number];
    const [x1, y1] = points[index] as [number, number];
    if (x <= x1) return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
  }
  return (points.at(-1) as [number, number])[1];
}

/** C of TIA-222, mph ft: the speed at the height times the width. */
function flow(wind: Wind, width: number, z: number): number {
  const pressure = wind.importance * wind.topography(z) * heightFactor(wind.method, wind.ground, z);
  return ((Math.sqrt(pressure) * wind.coefficientSpeed) / MPH) * (width / FOOT);
}

/** Limits of slow and fast flow: those of H are 39 and 78 for the speeds of strength level. */
const slowTo = (method: Method) => (method === 'tia222-h' ? 39 : 32);

function tiaRound(wind: Wind, c: number, aspect: number): number {
  const slow = slowTo(wind.method);
  const h = wind.method === 'tia222-h';
  const at =
    c <= slow
      ? [0.7, 0.8, 1.2]
      : c <= 2 * slow
        ? [(h ? 4.14 : 3.76) / c ** 0.485, (h ? 3.66 : 3.37) / c ** 0.415, (h ? 46.8 : 38.4) / c]
        : [0.5, 0.6, 0.6];
  return between(
    [2.5, 7, 25].map((width, index) => [width, at[index] as number] as const),
    aspect,
  );
}

/** Figures of EN 1991-1-4 for a long round cylinder and for its ends. */
function enRound(wind: Wind, width: number, length: number, z: number): number {
  const speed = Math.sqrt((2 * pressureAt(wind, z)) / 1.25);
  const reynolds = (speed * width) / 15e-6 / 1e6;
  const fast = 1.2 + (0.18 * Math.log10((10 * wind.roughness) / width)) / (1 + 0.4 * Math.log10(reynolds));
  const long = wind.ice === undefined ? Math.min(1.2, Math.max(0.11 / reynolds ** 1.4, fast)) : 1.2;
  return long * endEffect(length, width);
}

/** The bent line of settled-values, section 2, and the slenderness of Table 7.16, at most 70. */
export function endEffect(length: number, width: number): number {
  const share = between(
    [
      [15, 1],
      [50, 0.7],
    ],
    length,
  );
  const slenderness = Math.max(1, Math.min(70, (share * length) / width));
  return between(
    [
      [0, 0.6],
      [1, 0.698],
      [Math.log10(70), 0.918],
      [Math.log10(200), 1],
    ],
    Math.log10(slenderness),
  );
}

/** The step of ASCE's table for chimneys, D times the root of q: 2.5 in ft and psf, 5.3 in m and Pa. */
const stepOf = (wind: Wind) => (wind.system === 'us' ? 2.5 * FOOT * Math.sqrt(PSF) : 5.3);

function asceRound(wind: Wind, width: number, aspect: number, z: number, claimed: boolean): number {
  const pressure = pressureAt(wind, z);
  const slow = between(
    [
      [1, 0.7],
      [7, 0.8],
      [25, 1.2],
    ],
    aspect,
  );
  const step = (stepOf(wind) / width) ** 2;
  if (pressure <= step || wind.ice !== undefined) return slow;
  // The force just below the step is checked too: a wind on the way up must not be worse.
  const fast = between(
    [
      [1, 0.5],
      [7, 0.6],
      [25, 0.7],
    ],
    aspect,
  );
  if (claimed) return fast;
  return Math.max(fast, (slow * step) / pressure);
}

/** Coefficient of a round member of the length (tip to tip) and the width at the height z. */
export function roundMember(told: Wind, width: number, length: number, z: number, ofTower = false): number {
  const { method } = told;
  // What hangs on a tower has surfaces of its own, at their worst; the tower's own is tried at both ends.
  const wind = ofTower || told.rated ? told : { ...told, roughness: GALVANISED };
  const aspect = length / width;
  if (isTia(method)) return tiaRound(wind, wind.ice === undefined ? flow(wind, width, z) : 0, aspect);
  if (isAsce(method)) return asceRound(wind, width, aspect, z, wind.roughness === POLISHED);
  if (method === 'eia222-f')
    return between(
      [
        [7, 0.8],
        [25, 1.2],
      ],
      aspect,
    );
  if (method === 'en1991-1-4') return enRound(wind, width, length, z);
  return 2 / 3;
}

/** A board or the side of a box: by the longer edge over the shorter, of ASCE by its width over its height. */
export function board(wind: Wind, wide: number, tall: number): number {
  const { method } = wind;
  if (method === 'en1991-1-4') return 1.8;
  if (isAsce(method)) {
    const row = [
      [0.05, 1.95],
      [0.1, 1.9],
      [0.2, 1.85],
      [0.5, 1.85],
      [1, 1.8],
      [2, 1.8],
      [4, 1.85],
      [5, 1.85],
      [10, 1.85],
      [20, 1.9],
      [30, 1.9],
      [45, 1.95],
    ] as const;
    return between(row, wide / tall);
  }
  const aspect = Math.max(wide, tall) / Math.min(wide, tall);
  if (method === 'eia222-f')
    return between(
      [
        [7, 1.4],
        [25, 2],
      ],
      aspect,
    );
  return between(
    [
      [2.5, 1.2],
      [7, 1.4],
      [25, 2],
    ],
    aspect,
  );
}

/** What a stated area of a load is multiplied by (basis 5, stated areas of loads). */
export function statedLoad(kind: AreaKind): number {
  return { effective: 1, 'projected-round': 1.2, 'projected-flat': 2, 'flat-plate': 1.8 }[kind];
}

/** What a stated area of a rating is multiplied by (basis 5, stated areas of ratings). */
export function statedRating(kind: AreaKind, method: Method): number {
  if (method === 'rs222-c')
    return { effective: 1, 'projected-round': 2 / 3, 'projected-flat': 1, 'flat-plate': 1 }[kind];
  const compact = method === 'eia222-f' ? 1.4 : 1.2;
  return { effective: 1, 'projected-round': 1, 'projected-flat': compact, 'flat-plate': compact }[kind];
}

/** Effective area whose force is the stated one at the stated speed. */
export const areaOfForce = (wind: Wind, force: number, speed: number) => force / (constantOf(wind.system) * speed ** 2);

interface FaceAreas {
  /** Of one face, m² for each metre of height. */
  readonly round: number;
  readonly flat: number;
  /** Round members by their width, m²/m. */
  readonly byWidth: readonly { readonly width: number | undefined; readonly area: number }[];
}

/** Solid areas of one face, with ice of the thickness on every member. */
function faceAreas(shape: LatticeShape, width: number, length: number, ice: number): FaceAreas {
  const { by } = shape;
  if (by.told === 'members') {
    const leg = by.leg + 2 * ice;
    const brace = by.brace + 2 * ice;
    // From leg axis to leg axis, of which the part between the legs is seen.
    const axes = width - by.leg;
    const clear = (width - by.leg - leg) / axes;
    const run = by.pattern === 'rungs' ? axes : Math.hypot(axes, by.panel);
    const braces = (by.pattern === 'cross' ? 2 : 1) * brace * run * clear;
    const legs = 2 * leg;
    const area = legs + braces / by.panel;
    const round = shape.round || ice > 0;
    return {
      round: round ? area : 0,
      flat: round ? 0 : area,
      byWidth: round
        ? [
            { width: leg, area: legs },
            { width: brace, area: braces / by.panel },
          ]
        : [],
    };
  }
  if (ice > 0) throw new Error('ice is put on members that are told only');
  if (by.told === 'solidity') {
    const area = by.solidity * width;
    const round = shape.round ? area : 0;
    return { round, flat: area - round, byWidth: [{ width: undefined, area: round }] };
  }
  if (by.told === 'areas') {
    return {
      round: by.round / length,
      flat: by.flat / length,
      byWidth: [{ width: undefined, area: by.round / length }],
    };
  }
  throw new Error('a drag area has no members');
}

/** Factor on a round member of a lattice (basis 5). */
function roundInLattice(wind: Wind, solidity: number, width: number | undefined, z: number): number {
  const e = solidity;
  if (!isTia(wind.method)) return Math.min(1, 0.51 * e ** 2 + 0.57);
  const slow = Math.min(1, 0.57 - 0.14 * e + 0.86 * e ** 2 - 0.24 * e ** 3);
  if (width === undefined || wind.ice !== undefined) return slow;
  const fast = 0.36 + 0.26 * e + 0.97 * e ** 2 - 0.63 * e ** 3;
  const limit = slowTo(wind.method);
  return between(
    [
      [limit, slow],
      [2 * limit, fast],
    ],
    flow(wind, width, z),
  );
}

/** Angle of the wind to the normal of a face, degrees. */
export type WindAngle = 0 | 45 | 60;

/** The winds a shape is looked at in: where it has its least drag, and its greatest (basis 1, rule 6). */
export const anglesOf = (shape: LatticeShape | PoleShape): readonly WindAngle[] =>
  shape.kind === 'pole' ? [0] : shape.faces === 4 ? [0, 45] : [0, 60];

function enLattice(shape: LatticeShape, areas: FaceAreas, solidity: number, angle: WindAngle): number {
  const [c1, c2] = shape.faces === 4 ? [2.25, 1.5] : [1.9, 1.4];
  const f = solidity;
  const solid = areas.round + areas.flat;
  const flats = 1.76 * c1 * (1 - c2 * f + f ** 2);
  const rounds = c1 * (1 - c2 * f) + (c1 + 0.875) * f ** 2;
  const face = (flats * areas.flat + rounds * areas.round) / solid;
  const radians = (angle * Math.PI) / 180;
  if (shape.faces === 4) {
    const k1 = (0.55 * areas.flat + 0.8 * areas.round) / solid;
    const k2 = f <= 0.2 || f >= 0.8 ? 0.2 : f <= 0.5 ? f : 1 - f;
    return face * (1 + k1 * k2 * Math.sin(2 * radians) ** 2);
  }
  return face * (areas.round / solid + (areas.flat / solid) * (1 - 0.1 * Math.sin(1.5 * radians) ** 2));
}

/** Drag area of a metre of lattice, of `width` at the height z, in a section of the length. */
export function lattice(
  wind: Wind,
  shape: LatticeShape,
  width: number,
  length: number,
  z: number,
  angle: WindAngle,
): number {
  const ice = wind.ice?.(z) ?? 0;
  if (shape.by.told === 'drag-area') return shape.by.area / length;
  const areas = faceAreas(shape, width, length, ice);
  const solid = areas.round + areas.flat;
  const e = solid / (width + 2 * ice);
  const { method } = wind;
  if (method === 'rs222-c') return (areas.flat + (2 / 3) * areas.round) * (shape.faces === 4 ? 1.75 : 1.5);
  if (method === 'en1991-1-4') return solid * enLattice(shape, areas, e, angle);
  const drag = shape.faces === 4 ? 4 * e ** 2 - 5.9 * e + 4 : 3.4 * e ** 2 - 4.7 * e + 3.4;
  const rounds = areas.byWidth.reduce((sum, { width: of, area }) => sum + area * roundInLattice(wind, e, of, z), 0);
  if (shape.faces === 4) {
    return drag * (areas.flat + rounds) * (angle === 45 ? Math.min(1.2, 1 + 0.75 * e) : 1);
  }
  // TIA-222-F has the factors of its later editions (from memory).
  const flats = isTia(method) || method === 'eia222-f' ? (angle === 60 ? 0.8 : 1) : 1;
  return drag * (areas.flat * flats + rounds);
}

/** What a wind sees of a metre of lattice: its solid area; where only a drag area is told, that. */
export function latticeSeen(shape: LatticeShape, width: number, length: number): number {
  if (shape.by.told === 'drag-area') return shape.by.area / length;
  const { round, flat } = faceAreas(shape, width, length, 0);
  return round + flat;
}

/** Coefficient of a pole of the width at the height z, `long` from end to end. */
export function pole(wind: Wind, shape: PoleShape, width: number, long: number, z: number): number {
  const { method } = wind;
  if (isTia(method)) {
    const slow = slowTo(method);
    const c = wind.ice === undefined ? (flow(wind, width, z) * 32) / slow : 0;
    const fast = { 0: 0.6, 18: 0.65, 16: 0.75, 12: 1, 8: 1.2 }[shape.sides];
    if (c < 32) return 1.2;
    if (c > 64) return fast;
    return { 0: 38.4 / c, 18: 25.8 / c ** 0.885, 16: 12.6 / c ** 0.678, 12: 2.99 / c ** 0.263, 8: 1.2 }[shape.sides];
  }
  if (shape.sides !== 0) throw new Error(`a pole of ${shape.sides} sides by ${method} is not in this calculator`);
  if (method === 'eia222-f') {
    const c = flow({ ...wind, importance: 1, topography: () => 1 }, width, z);
    return c <= 32 || wind.ice !== undefined ? 1.2 : c >= 64 ? 0.59 : 130 / c ** 1.3;
  }
  return roundMember(wind, width, long, z, true);
}

/** Enclosing diameter of n equal circles packed round, over the diameter of one (n = 1 to 19). */
const PACKED = [
  1, 2, 2.1547, 2.4142, 2.7013, 3, 3, 3.3048, 3.6131, 3.813, 3.9238, 4.0296, 4.2361, 4.3284, 4.5214, 4.6154, 4.792,
  4.8637, 4.8637,
];

/** Width that a run of lines counts with, m: singly, or as a group if that is less. */
export function linesWidth(lines: Lines): number {
  const singly = lines.count * lines.width;
  if (lines.arrangement !== 'bundle') return singly;
  const packed = PACKED[lines.count - 1];
  if (packed === undefined) throw new Error('more lines than one bundle holds');
  return Math.min(singly, packed * lines.width);
}

/** Effective area of a metre of a run of lines. */
export function linesArea(wind: Wind, lines: Lines, z: number): number {
  const long = lines.to - lines.from;
  const each = lines.width + 2 * (wind.ice?.(z) ?? 0);
  const singly = lines.count * each * roundMember(wind, each, long, z);
  if (lines.arrangement === FLAT_ROW) return Math.min(singly, lines.count * lines.width * 1.5);
  if (lines.arrangement !== 'bundle') return singly;
  return Math.min(singly, linesWidth(lines) * 1.2);
}

/** The least force of ASCE 7 on an area, N at the allowable level: 16 psf. */
export const leastForce = (wind: Wind, area: number) =>
  wind.leastPressure && isAsce(wind.method) ? wind.level * 16 * PSF * area : 0;

/** Force on an effective area at the height z, at least the 16 psf on what is seen of it. */
export const forceOn = (wind: Wind, effective: number, seen: number, z: number) =>
  Math.max(forceOnArea(wind, z) * effective, leastForce(wind, seen));
