import { cite, defineFormula, evaluate, FOOT, POUND, type Trace, variable } from '../foundation/index.ts';
import { cutAlong, type DragPart } from './drag-part.ts';
import type { LatticeShape, PoleShape, Shape, StatedShape } from './shape.ts';

/** Density of glaze ice [kg/m³]: 56 lb/ft³. @source asce7-10 */
export const ICE_DENSITY = (56 * POUND) / FOOT ** 3;

export const icedDiameter = defineFormula({
  id: 'iced-diameter',
  title: 'Size of a member with ice all round',
  symbol: 'D_i',
  unit: 'diameter',
  expression: 'D + 2 * t_d',
  variables: [
    variable('D', 'bare size', 'diameter', 0.001, 2),
    variable('t_d', 'thickness of ice', 'diameter', 0, 0.2),
  ],
  cite: cite('asce7-10', '10.5; geometry', 'derived'),
  of: (diameter: number, ice: number) => diameter + 2 * ice,
});

export const iceWeightPerLength = defineFormula({
  id: 'ice-weight-per-length',
  title: 'Weight of the ice round a member, a length',
  symbol: 'w_i',
  unit: 'weight-per-length',
  expression: 'rho_i * pi * t_d * (D + t_d)',
  variables: [
    variable('rho_i', 'density of glaze ice, 56 lb/ft³', 'density', 897.03, 897.04),
    variable('t_d', 'thickness of ice', 'diameter', 0, 0.2),
    variable('D', 'bare diameter', 'diameter', 0.001, 2),
  ],
  cite: cite('asce7-10', 'Eq. 10.4-1, p. 48, times the density', 'published'),
  of: (density: number, ice: number, diameter: number) => density * Math.PI * ice * (diameter + ice),
});

/**
 * A body with ice all round, or undefined where geometry cannot tell: a stated area without a stated iced one, a lattice
 * whose members are not known.
 *
 * D + 2t
 *
 * @param ice thickness of ice [m]
 * @example icedShape({ kind: 'plate', wide: 0.3, tall: 0.6, deep: 0 }, 0.01)?.kind // 'plate'
 * @source asce7-10
 */
export function icedShape(shape: Shape, ice: number, trace?: Trace): Shape | undefined {
  const grown = (size: number) => evaluate(trace, icedDiameter, [size, ice]);
  switch (shape.kind) {
    case 'stated':
      return shape.icedArea === undefined ? undefined : icedStated(shape, shape.icedArea);
    case 'stated-force':
      return shape.icedArea === undefined
        ? undefined
        : icedStated({ kind: 'stated', areaKind: 'effective', slenderFlats: false }, shape.icedArea);
    case 'tube':
      return { ...shape, diameter: [grown(shape.diameter[0]), grown(shape.diameter[1])] };
    case 'tubes':
      return {
        ...shape,
        rows: shape.rows.map((row) => ({
          ...row,
          pieces: row.pieces.map((piece) => ({ ...piece, diameter: grown(piece.diameter) })),
        })),
      };
    case 'plate':
      return { ...shape, wide: grown(shape.wide), tall: grown(shape.tall), deep: grown(shape.deep) };
    case 'dish':
      // Ice bridges a mesh.
      return { ...shape, diameter: grown(shape.diameter), solidity: 1 };
    case 'wire':
      return { ...shape, diameter: grown(shape.diameter) };
    case 'lattice':
      return icedLattice(shape, ice, trace);
    case 'pole':
      return icedPole(shape, ice, trace);
  }
}

function icedStated(shape: Omit<StatedShape, 'front' | 'side'>, area: number): StatedShape {
  return { ...shape, front: area, side: area };
}

/**
 * A lattice with ice on every member, or undefined where its members are not known.
 *
 * leg + 2t, brace + 2t, at most until the face is full
 *
 * @param ice thickness of ice [m]
 * @source asce7-10
 */
export function icedLattice(shape: LatticeShape, ice: number, trace?: Trace): LatticeShape | undefined {
  const { solid } = shape;
  if (solid.by !== 'members') return undefined;
  const grown = (size: number) => evaluate(trace, icedDiameter, [size, ice]);
  const leg = grown(solid.leg);
  const width = [grown(shape.width[0]), grown(shape.width[1])] as const;
  // A face whose members have grown together has no coefficient of its own.
  if (2 * leg >= Math.min(...width)) return undefined;
  return { ...shape, width, solid: { ...solid, leg, brace: grown(solid.brace) } };
}

/**
 * A pole with ice all round; its corners vanish.
 *
 * w + 2t
 *
 * @param ice thickness of ice [m]
 * @example icedPole({ kind: 'pole', width: [0.1, 0.1], sides: 8 }, 0.01).sides // 0
 * @source asce7-10
 */
export function icedPole(shape: PoleShape, ice: number, trace?: Trace): PoleShape {
  const grown = (size: number) => evaluate(trace, icedDiameter, [size, ice]);
  return { kind: 'pole', sides: 0, width: [grown(shape.width[0]), grown(shape.width[1])] };
}

/**
 * Round parts with ice, cut along the height so that each piece has the ice of its middle.
 *
 * A·(D + 2t)/D; of a group its own width grows less than the widths of its lines together
 *
 * @param part a round part, of one line or of several alike, or a group of lines
 * @param iceAt thickness of ice by height [m]
 * @source asce7-10
 */
export function icedRoundPart(part: DragPart, iceAt: (z: number) => number, trace?: Trace): readonly DragPart[] {
  return cutAlong(part.low, part.high, ({ low, high }, _, count) => {
    const ice = iceAt((low + high) / 2);
    const growth = evaluate(trace, icedDiameter, [part.diameter, ice]) / part.diameter;
    const { rule } = part;
    const ofOne = rule.of === 'group' ? (rule.diameter + 2 * ice) / rule.diameter : 1;
    const grown = rule.of === 'group' ? { rule: { ...rule, singly: (rule.singly * ofOne) / growth } } : {};
    return { ...part, ...grown, low, high, front: (part.front * growth) / count, side: (part.side * growth) / count };
  });
}

/**
 * Parts whose round members stand in slow flow, as iced ones do.
 *
 * @returns the same without a diameter that could speed the flow up
 * @source asce7-10
 */
export function inSlowFlow(parts: readonly DragPart[]): readonly DragPart[] {
  return parts.map(slowed);
}

function slowed(part: DragPart): DragPart {
  const { rule, asAt } = part;
  return {
    ...part,
    diameter: 0,
    rule: rule.of === 'lattice' ? { of: 'lattice', face: { ...rule.face, thinnest: 0, thickest: 0 } } : rule,
    ...(asAt ? { asAt: (z, trace) => slowed(asAt(z, trace)) } : {}),
  };
}

/** How many braces a panel of one face has. */
const BRACES = { zigzag: 1, cross: 2, rungs: 1 } as const;

/**
 * Mass of the ice on a body. Flat faces and dishes by π·t·A of one side; a stated area has none that geometry tells.
 *
 * ρ·π·t·(D + t)·L
 *
 * @param ice thickness of ice [m]
 * @param length its height where it stands as a section or upright [m]
 * @returns the mass [kg]; 0 for a stated area
 * @source asce7-10
 */
export function iceMass(shape: Shape, ice: number, length: number, trace?: Trace): number {
  const along = (diameter: number, total: number) =>
    total * evaluate(trace, iceWeightPerLength, [ICE_DENSITY, ice, diameter]);
  const onPlate = (area: number) => ICE_DENSITY * Math.PI * ice * area;
  switch (shape.kind) {
    case 'stated':
    case 'stated-force':
      return 0;
    case 'tube':
      return along((shape.diameter[0] + shape.diameter[1]) / 2, shape.length);
    case 'tubes':
      return shape.rows.reduce(
        (sum, row) =>
          sum + row.count * row.pieces.reduce((inner, piece) => inner + along(piece.diameter, piece.length), 0),
        0,
      );
    case 'plate':
      return onPlate(shape.wide * shape.tall + shape.deep * (shape.wide + shape.tall));
    case 'dish':
      return onPlate((Math.PI * shape.diameter ** 2) / 4);
    case 'wire':
      return along(shape.diameter, Math.hypot(shape.distance, shape.rise) / 2);
    case 'lattice': {
      const { solid } = shape;
      if (solid.by !== 'members') return 0;
      const width = (shape.width[0] + shape.width[1]) / 2;
      const slant = solid.pattern === 'rungs' ? width : Math.hypot(width, solid.panel);
      const braces = (BRACES[solid.pattern] * slant * length) / solid.panel;
      return shape.faces * (along(solid.leg, length) + along(solid.brace, braces));
    }
    case 'pole':
      return along((shape.width[0] + shape.width[1]) / 2, length);
  }
}
