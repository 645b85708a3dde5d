import { cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';
import { bundleDiameter, bundlesOf, packingRatio } from './bundle.ts';
import type { FlatFace } from './flat-member.ts';
import { faceOf, type LatticeFace, solidityOf } from './lattice-section.ts';
import type { AreaKind, LatticeShape, Lay, PoleShape, Shape, TubePiece } from './shape.ts';

/** How a method turns the area of a part into its effective projected area. */
export type DragRule =
  | { readonly of: 'stated'; readonly areaKind: AreaKind; readonly slenderFlats: boolean }
  | { readonly of: 'stated-force'; readonly force: number; readonly wind: number }
  | { readonly of: 'round'; readonly aspect: number; readonly diameter: number }
  | { readonly of: 'round-group' }
  | { readonly of: 'flat'; readonly face: FlatFace }
  | { readonly of: 'dish'; readonly solidity: number }
  | { readonly of: 'lattice'; readonly face: LatticeFace }
  | { readonly of: 'pole'; readonly sides: PoleShape['sides']; readonly aspect: number; readonly width: number }
  | { readonly of: 'drag-area' };

/** Something the wind touches, of one coefficient and one diameter, spread evenly over a height. */
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
}

/** No piece along the height is taken longer than this; the pressure at its middle then stands for it [m]. @source derived */
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
        {
          ...at,
          what: 'stated area',
          front: count * shape.front,
          side: count * shape.side,
          diameter: 0,
          rule: { of: 'stated', areaKind: shape.areaKind, slenderFlats: shape.slenderFlats },
        },
      ];
    case 'stated-force':
      return [
        {
          ...at,
          what: 'stated force',
          front: count,
          side: count,
          diameter: 0,
          rule: { of: 'stated-force', force: shape.force, wind: shape.wind },
        },
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
      const front: DragPart = {
        ...at,
        what: 'face',
        front: count * shape.wide * shape.tall,
        side: 0,
        diameter: 0,
        rule: { of: 'flat', face: { wide: shape.wide, tall: shape.tall } },
      };
      if (shape.deep === 0) return [front];
      return [
        front,
        {
          ...at,
          what: 'edge',
          front: 0,
          side: count * shape.deep * shape.tall,
          diameter: 0,
          rule: { of: 'flat', face: { wide: shape.deep, tall: shape.tall } },
        },
      ];
    }
    case 'dish':
      return dishParts(shape.diameter, shape.solidity, at, count);
    case 'wire': {
      // Half of a wire pulls on the tower, half on its far end; along its own heading only its slope faces the wind.
      const length = Math.hypot(shape.distance, shape.rise);
      const area = count * shape.diameter * (length / 2);
      const slope = 1 - (shape.distance / length) ** 2;
      return [
        {
          ...at,
          what: 'half the wire',
          front: area * slope,
          side: area,
          diameter: shape.diameter,
          rule: { of: 'round', aspect: length / shape.diameter, diameter: shape.diameter },
        },
      ];
    }
    case 'lattice':
      return latticeParts(shape, low, high, 0.35, count, trace);
    case 'pole':
      return poleParts(shape, low, high, (high - low) / ((shape.width[0] + shape.width[1]) / 2), count);
  }
}

function tubePart(
  at: { low: number; high: number },
  along: 'upright' | 'boom' | 'element',
  area: number,
  diameter: number,
  aspect: number,
): DragPart {
  return {
    ...at,
    what: along,
    front: along === 'boom' ? 0 : area,
    side: along === 'element' ? 0 : area,
    diameter,
    rule: { of: 'round', aspect, diameter },
  };
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

/** Cuts a height into pieces no longer than the longest slice and hands each piece its share and its middle. */
function cut<T>(low: number, high: number, make: (from: number, to: number, middleShare: number) => T): T[] {
  const pieces = Math.max(1, Math.ceil((high - low) / LONGEST_SLICE - 1e-9));
  return Array.from({ length: pieces }, (_, index) => {
    const from = low + ((high - low) * index) / pieces;
    const to = low + ((high - low) * (index + 1)) / pieces;
    return make(from, to, (index + 0.5) / pieces);
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
  return cut(low, high, (from, to, share) => {
    const diameter = lower + (upper - lower) * share;
    const visible = high > low ? (length * (to - from)) / (high - low) : length;
    return tubePart(
      { low: from, high: to },
      'upright',
      evaluate(trace, projectedArea, [count, diameter, visible]),
      diameter,
      aspect,
    );
  });
}

/** Depth of a dish of ordinary focal length over its diameter, for its side view. @source common-practice */
const DISH_DEPTH = 0.25;

function dishParts(
  diameter: number,
  solidity: number,
  at: { low: number; high: number },
  count: number,
): readonly DragPart[] {
  const sideView = (2 / 3) * diameter * (DISH_DEPTH * diameter);
  return [
    {
      ...at,
      what: 'rim of the dish',
      front: (count * Math.PI * diameter ** 2) / 4,
      side: 0,
      diameter: 0,
      rule: { of: 'dish', solidity },
    },
    {
      ...at,
      what: 'side of the dish',
      front: 0,
      side: count * sideView,
      diameter: 0,
      rule: { of: 'flat', face: { wide: diameter * DISH_DEPTH, tall: diameter } },
    },
  ];
}

/**
 * The parts of a lattice between two heights, cut where it tapers.
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
    return [{ low, high, what: 'stated drag area', front: area, side: area, diameter: 0, rule: { of: 'drag-area' } }];
  }
  const piece = (from: number, to: number, share: number): DragPart => {
    const localWidth = width[0] + (width[1] - width[0]) * share;
    const solidity = solidityOf(shape, localWidth, high - low, unknown, trace);
    const area = count * solidity * localWidth * (to - from);
    const face = faceOf(shape, localWidth, solidity);
    return {
      low: from,
      high: to,
      what: 'lattice',
      front: area,
      side: area,
      diameter: face.thickest,
      rule: { of: 'lattice', face },
    };
  };
  if (width[0] === width[1]) return [piece(low, high, 0.5)];
  return cut(low, high, piece);
}

/**
 * The parts of a pole between two heights, cut where it tapers.
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
  const piece = (from: number, to: number, share: number): DragPart => {
    const width = shape.width[0] + (shape.width[1] - shape.width[0]) * share;
    const area = count * width * (to - from);
    return {
      low: from,
      high: to,
      what: 'pole',
      front: area,
      side: area,
      diameter: width,
      rule: { of: 'pole', sides: shape.sides, aspect, width },
    };
  };
  if (shape.width[0] === shape.width[1]) return [piece(low, high, 0.5)];
  return cut(low, high, piece);
}

/**
 * The parts of a run of lines. Singly, flat or inside a lattice every line counts in full: the width of a flat arrangement with
 * the coefficient of a flat group, 1.5, is never less. A bundle counts by its out-to-out width, where that is less.
 *
 * A = n·d·L, or D_b·L for each bundle
 *
 * @param count how many lines [-]
 * @param diameter of one line [m]
 * @param low lower end above ground [m]
 * @param high upper end above ground [m]
 * @example partsOfLines(3, 0.01, 0, 10, 'single')[0]?.front // 0.3
 * @source tia222-g
 */
export function partsOfLines(
  count: number,
  diameter: number,
  low: number,
  high: number,
  laid: Lay,
  trace?: Trace,
): readonly DragPart[] {
  const length = high - low;
  if (laid === 'bundle' && count > 1) {
    return bundlesOf(count).map((lines) => {
      const width = evaluate(trace, bundleDiameter, [packingRatio(lines), diameter]);
      const area = evaluate(trace, projectedArea, [1, width, length]);
      return {
        low,
        high,
        what: `bundle of ${lines}`,
        front: area,
        side: area,
        diameter: width,
        rule: { of: 'round-group' },
      };
    });
  }
  const area = evaluate(trace, projectedArea, [count, diameter, length]);
  return [
    {
      low,
      high,
      what: 'lines',
      front: area,
      side: area,
      diameter,
      rule: { of: 'round', aspect: length / diameter, diameter },
    },
  ];
}
