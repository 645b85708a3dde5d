import { cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';
import {
  bundleDiameter,
  bundlesOf,
  outToOutWidth,
  packingRatio,
  RECTANGULAR_GROUP_COEFFICIENT,
  ROUND_GROUP_COEFFICIENT,
} from './bundle.ts';
import type { FlatFace } from './flat-member.ts';
import { faceOf, type LatticeFace, solidityOf } from './lattice-section.ts';
import type { AreaKind, LatticeShape, Lines, PoleShape, Shape, TubePiece } from './shape.ts';

/** How a method turns the area of a part into its effective projected area. */
export type DragRule =
  | { readonly of: 'stated'; readonly areaKind: AreaKind; readonly slenderFlats: boolean }
  | { readonly of: 'stated-force'; readonly force: number; readonly wind: number }
  | { readonly of: 'round'; readonly aspect: number; readonly diameter: number }
  | {
      readonly of: 'group';
      /** On its out-to-out width. */
      readonly coefficient: number;
      /** Widths of its lines together over that of the group. */
      readonly singly: number;
      /** Of one line. */
      readonly aspect: number;
      readonly diameter: number;
    }
  | { readonly of: 'flat'; readonly face: FlatFace }
  | { readonly of: 'dish'; readonly solidity: number }
  | { readonly of: 'lattice'; readonly face: LatticeFace }
  | { readonly of: 'pole'; readonly sides: PoleShape['sides']; readonly aspect: number; readonly width: number }
  | { readonly of: 'drag-area' }
  | { readonly of: 'wire-pull'; readonly wires: readonly TautWire[] };

/** A wire drawn between the tower and its far end, with its ice. */
export interface TautWire {
  readonly count: number;
  /** Straight from end to end [m]. */
  readonly chord: number;
  /** Level share of its pull [-]. */
  readonly level: number;
  /** Where it runs, clockwise from true north [rad]. */
  readonly heading: number;
  /** [m] */
  readonly diameter: number;
  /** In still air, along the chord [N]. */
  readonly tension: number;
  /** E·A, at most; at least, where its conductor is not told [N] */
  readonly stiffness: number;
  readonly softest?: number;
  /** Of each length, across the chord, as it was drawn and with its ice [N/m]. */
  readonly weight: number;
  readonly weightWithIce: number;
}

/** Something the wind touches, of one coefficient and one diameter, spread evenly over a height unless it tapers. */
export interface DragPart {
  readonly low: number;
  readonly high: number;
  /** Area seen by a wind along its heading, before any coefficient [m²]. */
  readonly front: number;
  /** Area seen by a wind across its heading [m²]. */
  readonly side: number;
  /** Diameter that decides its flow [m]; 0 where it does not matter. */
  readonly diameter: number;
  readonly rule: DragRule;
  /** For a word in the working. */
  readonly what: string;
  /** Of what tapers: the part as if it were everywhere as it is at a height; its own areas are those of its middle. */
  readonly asAt?: (z: number, trace?: Trace) => DragPart;
}

/** No piece along the height is taken longer than this; the ice at its middle then stands for it [m]. @source derived */
export const LONGEST_SLICE = 2;

export const projectedArea = defineFormula({
  id: 'projected-area',
  title: 'Area of a row of alike tubes across the wind',
  symbol: 'A',
  unit: 'area',
  expression: 'n * d * l',
  variables: [
    variable('n', 'how many', 'one', 1, 100),
    variable('d', 'diameter', 'diameter', 0.002, 2),
    variable('l', 'length in sight', 'length', 0.01, 100),
  ],
  cite: cite('derived', 'geometry', 'derived'),
  of: (count: number, diameter: number, length: number) => count * diameter * length,
});

/**
 * The parts of a body that hangs between two heights.
 *
 * @param low its lowest point above ground [m]
 * @param high its highest point above ground [m]
 * @param count how many alike hang there [-]
 * @example partsOfShape({ kind: 'plate', wide: 1, tall: 2, deep: 0.5 }, 10, 10, 1).length // 2
 */
export function partsOfShape(
  shape: Shape,
  low: number,
  high: number,
  count: number,
  trace?: Trace,
): readonly DragPart[] {
  const at = { low, high };
  switch (shape.kind) {
    case 'stated':
      return [
        part(at, 'stated area', [count * shape.front, count * shape.side], 0, {
          of: 'stated',
          areaKind: shape.areaKind,
          slenderFlats: shape.slenderFlats,
        }),
      ];
    case 'stated-force':
      return [
        part(at, 'stated force', [count, count], 0, { of: 'stated-force', force: shape.force, wind: shape.wind }),
      ];
    case 'tube': {
      if (shape.along !== 'upright') {
        const diameter = (shape.diameter[0] + shape.diameter[1]) / 2;
        const area = evaluate(trace, projectedArea, [count, diameter, shape.length]);
        return [tubePart(at, shape.along, area, diameter, shape.length / diameter)];
      }
      return taperedTube(shape.diameter, low, high, shape.length, count, trace);
    }
    case 'tubes':
      return shape.rows.flatMap((row) => {
        const total = row.pieces.reduce((sum, piece) => sum + piece.length, 0);
        const aspect = total / meanDiameter(row.pieces);
        return mergeAlike(row.pieces).map((piece) => {
          const area = evaluate(trace, projectedArea, [count * row.count, piece.diameter, piece.length]);
          return tubePart(at, row.along, area, piece.diameter, aspect);
        });
      });
    case 'plate': {
      const { wide, tall, deep } = shape;
      const face = part(at, 'face', [count * wide * tall, 0], 0, { of: 'flat', face: { wide, tall } });
      if (deep === 0) return [face];
      return [face, part(at, 'edge', [0, count * deep * tall], 0, { of: 'flat', face: { wide: deep, tall } })];
    }
    case 'dish':
      return dishParts(shape.diameter, shape.solidity, at, count);
    case 'wire': {
      // Half of a wire pulls on the tower, half on its far end; along its own heading only its slope faces the wind.
      const length = Math.hypot(shape.distance, shape.rise);
      const area = count * shape.diameter * (length / 2);
      const slope = 1 - (shape.distance / length) ** 2;
      const { diameter } = shape;
      const rule = { of: 'round', aspect: length / diameter, diameter } as const;
      return [part(at, 'half the wire', [area * slope, area], diameter, rule)];
    }
    case 'lattice':
      return latticeParts(shape, low, high, 0.35, count, trace);
    case 'pole':
      return poleParts(shape, low, high, (high - low) / ((shape.width[0] + shape.width[1]) / 2), count);
  }
}

/** Between which heights a part hangs. */
interface Ends {
  readonly low: number;
  readonly high: number;
}

/** A part with the areas that a wind along and across its heading sees. */
function part(
  { low, high }: Ends,
  what: string,
  [front, side]: readonly [front: number, side: number],
  diameter: number,
  rule: DragRule,
): DragPart {
  return { low, high, what, front, side, diameter, rule };
}

function tubePart(
  at: Ends,
  along: 'upright' | 'boom' | 'element',
  area: number,
  diameter: number,
  aspect: number,
): DragPart {
  const seen = [along === 'boom' ? 0 : area, along === 'element' ? 0 : area] as const;
  return part(at, along, seen, diameter, { of: 'round', aspect, diameter });
}

function meanDiameter(pieces: readonly TubePiece[]): number {
  let area = 0;
  let length = 0;
  for (const piece of pieces) {
    area += piece.diameter * piece.length;
    length += piece.length;
  }
  return area / length;
}

function mergeAlike(pieces: readonly TubePiece[]): readonly TubePiece[] {
  const lengths = new Map<number, number>();
  for (const piece of pieces) lengths.set(piece.diameter, (lengths.get(piece.diameter) ?? 0) + piece.length);
  return [...lengths].map(([diameter, length]) => ({ diameter, length }));
}

/**
 * Cuts a height into pieces no longer than the longest slice and hands each piece its ends, its middle and how many there are.
 *
 * @param low lower end [m]
 * @param high upper end [m]
 * @example cutAlong(0, 3, (ends) => ends) // [{ low: 0, high: 1.5 }, { low: 1.5, high: 3 }]
 */
export function cutAlong<T>(
  low: number,
  high: number,
  make: (ends: Ends, middleShare: number, pieces: number) => T,
): T[] {
  const pieces = Math.max(1, Math.ceil((high - low) / LONGEST_SLICE - 1e-9));
  return Array.from({ length: pieces }, (_, index) => {
    const ends = {
      low: low + ((high - low) * index) / pieces,
      high: low + ((high - low) * (index + 1)) / pieces,
    };
    return make(ends, (index + 0.5) / pieces, pieces);
  });
}

function taperedTube(
  [lower, upper]: readonly [number, number],
  low: number,
  high: number,
  length: number,
  count: number,
  trace: Trace | undefined,
): readonly DragPart[] {
  const aspect = length / ((lower + upper) / 2);
  if (lower === upper) {
    return [tubePart({ low, high }, 'upright', evaluate(trace, projectedArea, [count, lower, length]), lower, aspect)];
  }
  const ends = { low, high };
  return [
    tapering(ends, trace, (share, at) => {
      const diameter = lower + (upper - lower) * share;
      const area = evaluate(at, projectedArea, [count, diameter, length]);
      return tubePart(ends, 'upright', area, diameter, aspect);
    }),
  ];
}

/** A part whose width goes by its height: that of its middle, which tells what it is like at any other. */
function tapering(
  { low, high }: Ends,
  trace: Trace | undefined,
  like: (share: number, trace?: Trace) => DragPart,
): DragPart {
  if (high <= low) return like(0.5, trace);
  const asAt = (z: number, at?: Trace): DragPart => ({ ...like((z - low) / (high - low), at), asAt });
  return { ...like(0.5, trace), asAt };
}

/** Depth of a dish of ordinary focal length over its diameter, for its side view. @source common-practice */
const DISH_DEPTH = 0.25;

function dishParts(diameter: number, solidity: number, at: Ends, count: number): readonly DragPart[] {
  const rim = (count * Math.PI * diameter ** 2) / 4;
  const sideView = (2 / 3) * diameter * (DISH_DEPTH * diameter);
  const sideFace = { wide: diameter * DISH_DEPTH, tall: diameter };
  return [
    part(at, 'rim of the dish', [rim, 0], 0, { of: 'dish', solidity }),
    part(at, 'side of the dish', [0, count * sideView], 0, { of: 'flat', face: sideFace }),
  ];
}

/**
 * The parts of a lattice between two heights.
 *
 * A = ε·w·L
 *
 * @param low its foot above ground [m]
 * @param high its head above ground [m]
 * @param unknown solid share to take where nothing is said of the members [-]
 * @param count how many alike [-]
 * @returns its parts; front and side are the solid area of one face, or the maker's drag area
 * @example latticeParts({ kind: 'lattice', faces: 3, width: [0.5, 0.5], members: 'round', solid: { by: 'solidity', solidity: 0.2 } }, 0, 3, 0.1, 1)[0]?.front // 0.3
 * @source derived
 */
export function latticeParts(
  shape: LatticeShape,
  low: number,
  high: number,
  unknown: number,
  count: number,
  trace?: Trace,
): readonly DragPart[] {
  const { solid, width } = shape;
  if (solid.by === 'drag') {
    const area = count * solid.dragArea;
    return [part({ low, high }, 'stated drag area', [area, area], 0, { of: 'drag-area' })];
  }
  const like = (share: number, at?: Trace): DragPart => {
    const localWidth = width[0] + (width[1] - width[0]) * share;
    const solidity = solidityOf(shape, localWidth, high - low, unknown, at);
    const area = count * solidity * localWidth * (high - low);
    const face = faceOf(shape, localWidth, solidity);
    return part({ low, high }, 'lattice', [area, area], face.thickest, { of: 'lattice', face });
  };
  return [width[0] === width[1] ? like(0.5, trace) : tapering({ low, high }, trace, like)];
}

/**
 * The parts of a pole between two heights.
 *
 * A = w·L
 *
 * @param low its foot above ground [m]
 * @param high its head above ground [m]
 * @param aspect length over mean width of the whole member it belongs to [-]
 * @param count how many alike [-]
 * @example poleParts({ kind: 'pole', width: [0.1, 0.1], sides: 0 }, 0, 3, 30, 1)[0]?.front // 0.3
 * @source derived
 */
export function poleParts(
  shape: PoleShape,
  low: number,
  high: number,
  aspect: number,
  count: number,
): readonly DragPart[] {
  const like = (share: number): DragPart => {
    const width = shape.width[0] + (shape.width[1] - shape.width[0]) * share;
    const area = count * width * (high - low);
    return part({ low, high }, 'pole', [area, area], width, { of: 'pole', sides: shape.sides, aspect, width });
  };
  return [shape.width[0] === shape.width[1] ? like(0.5) : tapering({ low, high }, undefined, like)];
}

/**
 * The parts of a run of lines. Singly, flat or inside a lattice every line counts in full: the width of a flat arrangement with
 * the coefficient of a flat group, 1.5, is never less. A bundle counts by its out-to-out width with 1.2, lines in rows on a
 * ladder by theirs with 1.5, the longer side from wherever the wind comes; or by their lines singly, whichever is less. So do
 * lines on a ladder of which rows or spacing are not told.
 *
 * A = n·d·L, or D_b·L for each bundle, W·L on a ladder
 *
 * @param low lower end above ground [m]
 * @param high upper end above ground [m]
 * @example partsOfLines({ count: 3, diameter: 0.01, laid: 'single' }, 0, 10)[0]?.front // 0.3
 * @source tia222-g
 */
export function partsOfLines(lines: Lines, low: number, high: number, trace?: Trace): readonly DragPart[] {
  const { count, diameter, laid, inRows } = lines;
  const length = high - low;
  const aspect = length / diameter;
  const group = (what: string, grouped: number, width: number, coefficient: number): DragPart => {
    const area = evaluate(trace, projectedArea, [1, width, length]);
    const rule = { of: 'group', coefficient, singly: (grouped * diameter) / width, aspect, diameter } as const;
    return part({ low, high }, what, [area, area], width, rule);
  };
  if (laid === 'bundle' && count > 1) {
    return bundlesOf(count).map((each) => {
      const width = evaluate(trace, bundleDiameter, [packingRatio(each), diameter]);
      return group(`bundle of ${each}`, each, width, ROUND_GROUP_COEFFICIENT);
    });
  }
  if (laid === 'ladder' && count > 1 && inRows) {
    const { rows, spacing } = inRows;
    const each = Math.ceil(count / rows);
    const width = evaluate(trace, outToOutWidth, [Math.max(rows, each), spacing, diameter]);
    return [group(`${rows} rows of ${each}`, count, width, RECTANGULAR_GROUP_COEFFICIENT)];
  }
  const area = evaluate(trace, projectedArea, [count, diameter, length]);
  return [part({ low, high }, 'lines', [area, area], diameter, { of: 'round', aspect, diameter })];
}
