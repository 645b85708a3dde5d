import type { Material } from '../areas/index.ts';
import { cite, defineFormula, GRAVITY, variable } from '../foundation/index.ts';
import { counterpoiseLoad } from './counterpoise.ts';
import type { Stretch } from './held-tower.ts';
import type { Section, Station, Tower } from './station.ts';

/** Young's modulus [Pa] and density [kg/m³]: 29,000 and 10,100 ksi. @source common-practice */
export const MATERIALS: Readonly<Record<Material, { readonly youngsModulus: number; readonly density: number }>> = {
  steel: { youngsModulus: 200e9, density: 7850 },
  aluminium: { youngsModulus: 70e9, density: 2700 },
};

/** Longest piece of a section that is taken as one [m]; half of it changes the frequency by less than 0.1 %. @source derived */
export const PIECE = 0.25;

const diameter = (symbol: string, meaning: string, from: number, to: number) =>
  variable(symbol, meaning, 'diameter', from, to);

export const secondMomentOfTube = defineFormula({
  id: 'second-moment-tube',
  title: 'Second moment of area of a round tube',
  symbol: 'I',
  unit: 'second-moment',
  expression: 'pi / 64 * (D^4 - (D - 2 * t)^4)',
  variables: [diameter('D', 'outside diameter', 0.01, 2), diameter('t', 'wall', 0.0005, 0.005)],
  cite: cite('derived', 'annulus about its diameter', 'derived'),
  of: (outside: number, wall: number) => (Math.PI / 64) * (outside ** 4 - (outside - 2 * wall) ** 4),
});

export const secondMomentOfPolygon = defineFormula({
  id: 'second-moment-polygon',
  title: 'Second moment of area of a thin-walled pole of flat sides',
  symbol: 'I',
  unit: 'second-moment',
  expression: 'n * s * t * (r^2 + s^2 / 12) / 2',
  variables: [
    variable('n', 'number of sides', 'one', 8, 18),
    diameter('s', 'width of a side', 0.01, 0.8),
    diameter('r', 'from the axis to the middle of the wall of a side', 0.02, 1),
    diameter('t', 'wall', 0.0005, 0.02),
  ],
  cite: cite('derived', 'strips at r from the axis; half their polar moment', 'derived'),
  of: (sides: number, side: number, middle: number, wall: number) =>
    (sides * side * wall * (middle ** 2 + side ** 2 / 12)) / 2,
});

export const secondMomentOfLegs = defineFormula({
  id: 'second-moment-legs',
  title: 'Second moment of area of the legs of a lattice, its bracing taken as rigid',
  symbol: 'I',
  unit: 'second-moment',
  expression: 'k_n * A_leg * c^2 + n * I_leg',
  variables: [
    variable('k_n', '1/2 for three legs, 1 for four', 'one', 0.5, 1),
    variable('A_leg', 'area of one leg', 'area', 1e-5, 1e-2),
    diameter('c', 'from axis to axis of two neighbouring legs', 0.1, 3),
    variable('n', 'number of legs', 'one', 3, 4),
    variable('I_leg', 'second moment of one leg', 'second-moment', 1e-10, 1e-5),
  ],
  cite: cite('derived', 'three legs at c/√3, four at c/√2 from the axis; half their polar moment', 'derived'),
  of: (share: number, area: number, spacing: number, legs: number, own: number) =>
    share * area * spacing ** 2 + legs * own,
});

export const areaOfAngle = defineFormula({
  id: 'area-of-angle',
  title: 'Area of the metal of an angle of equal sides',
  symbol: 'A',
  unit: 'section-area',
  expression: 't * (2 * w - t)',
  variables: [diameter('w', 'width of a side', 0.01, 0.2), diameter('t', 'thickness', 0.001, 0.005)],
  cite: cite('derived', 'two strips, the corner counted once', 'derived'),
  of: (w: number, t: number) => t * (2 * w - t),
});

export const rayleighFrequency = defineFormula({
  id: 'rayleigh-frequency',
  title: 'Frequency of a shape of swinging; that of the lowest true one is no more',
  symbol: 'n_1',
  unit: 'frequency',
  expression: 'sqrt(k_e / m_e) / (2 * pi)',
  variables: [
    variable('k_e', 'stiffness of the shape, by the movement of its top', 'stiffness', 100, 1e7),
    variable('m_e', 'mass that swings with the top: Σm·(y/y_top)²', 'weight', 1, 1e4),
  ],
  cite: cite('derived', "Rayleigh's quotient with the shape under the weights laid sideways", 'derived'),
  of: (stiffness: number, mass: number) => Math.sqrt(stiffness / mass) / (2 * Math.PI),
});

/** A short piece of the tower: constant stiffness, its mass in its middle. */
export interface Piece {
  readonly low: number;
  readonly length: number;
  /** E·I [N·m²]. */
  readonly rigidity: number;
}

/** Something that swings [kg], and where. */
export interface Mass {
  readonly height: number;
  readonly mass: number;
}

/**
 * The lowest frequency of a tower that stands by itself, as high as it can be: foot and bracing rigid, joints without
 * play, the mast stiff, masses that the plan does not give left out. Each of these and Rayleigh's quotient itself errs to
 * the high side, so that a tower found under 1 Hz is under 1 Hz; one found over it need not be.
 *
 * n₁ ≤ √(g·Σ(W·y)/Σ(W·y²))/(2π), y the movement under all weights laid sideways
 *
 * Masses: walls of poles and legs (bracing left out), loads and lines by their stated weights, the mast by its wall. A
 * wire holds the tower as well as loading it, so that with wires there is no such bound.
 *
 * @returns the frequency [Hz]; undefined where the tower is held, telescopes, carries wires, or has a section whose wall
 *   or material is not given
 * @source derived
 */
export function firstModeAtMost(station: Station): number | undefined {
  const { tower, loads } = station;
  if (tower.support !== 'free' || tower.telescopes || loads.some((load) => load.shape.kind === 'wire'))
    return undefined;
  const cut = cutTower(tower);
  return cut && swing(cut.pieces, [...cut.masses, ...massesAloft(station)]);
}

/**
 * A tower in short pieces with the masses of their walls, bracing left out.
 *
 * @param tower its sections, heights in metres
 * @returns pieces and masses [kg]; undefined where a section has a wall or material that is not given
 * @source derived
 */
export function cutTower(tower: Tower): { readonly pieces: Piece[]; readonly masses: Mass[] } | undefined {
  const pieces: Piece[] = [];
  const masses: Mass[] = [];
  for (const section of tower.sections) if (!cutInto(section, pieces, masses)) return undefined;
  return pieces.length === 0 ? undefined : { pieces, masses };
}

/**
 * Pieces of a tower with those of one stiffness next to each other made one.
 *
 * @param pieces from the foot up [m, N·m²]
 * @returns stretches from the foot up [m, N·m²]
 */
export function stretchesOf(pieces: readonly Piece[]): readonly Stretch[] {
  const stretches: Stretch[] = [];
  for (const { low, length, rigidity } of pieces) {
    const below = stretches.at(-1);
    if (below && Math.abs(below.bending / rigidity - 1) < 1e-9)
      stretches[stretches.length - 1] = { ...below, high: low + length };
    else stretches.push({ low, high: low + length, bending: rigidity });
  }
  return stretches;
}

function cutInto(section: Section, pieces: Piece[], masses: Mass[]): boolean {
  const { shape, tubing, low, high } = section;
  if (!shape || !tubing) return false;
  const { youngsModulus, density } = MATERIALS[tubing.material];
  const count = Math.max(1, Math.ceil((high - low) / PIECE - 1e-9));
  const length = (high - low) / count;
  for (let number = 0; number < count; number += 1) {
    const share = (number + 0.5) / count;
    const found = profileAt(shape, shape.width[0] + share * (shape.width[1] - shape.width[0]), tubing.wall);
    if (!found) return false;
    const bottom = low + number * length;
    pieces.push({ low: bottom, length, rigidity: youngsModulus * found.secondMoment });
    masses.push({ height: bottom + length / 2, mass: density * found.area * length });
  }
  return true;
}

/** Area of the metal [m²] and second moment [m⁴] of a section. */
function profileAt(shape: NonNullable<Section['shape']>, width: number, wall: number) {
  if (shape.kind === 'pole') {
    if (shape.sides === 0) return { area: areaOfTube(width, wall), secondMoment: secondMomentOfTube.of(width, wall) };
    const middle = (width - wall) / 2;
    const side = 2 * middle * Math.tan(Math.PI / shape.sides);
    return {
      area: shape.sides * side * wall,
      secondMoment: secondMomentOfPolygon.of(shape.sides, side, middle, wall),
    };
  }
  if (shape.solid.by !== 'members') return undefined;
  const { leg } = shape.solid;
  // Of thin sides an angle has 5/48·A·w² about its own middle.
  const isAngle = shape.members === 'flat';
  const area = isAngle ? areaOfAngle.of(leg, wall) : areaOfTube(leg, wall);
  const own = isAngle ? (5 / 48) * area * leg ** 2 : secondMomentOfTube.of(leg, wall);
  return {
    area: shape.faces * area,
    secondMoment: secondMomentOfLegs.of(shape.faces === 3 ? 0.5 : 1, area, width - leg, shape.faces, own),
  };
}

function areaOfTube(outside: number, wall: number): number {
  return Math.PI * (outside - wall) * wall;
}

function massesAloft({ tower, mast, loads, cables }: Station): Mass[] {
  const masses: Mass[] = [];
  for (const { low, high, count, weight } of loads) {
    if (weight !== undefined) masses.push({ height: (low + high) / 2, mass: count * weight });
  }
  const spread = (low: number, high: number, perLength: number) => {
    const count = Math.max(1, Math.ceil((high - low) / PIECE - 1e-9));
    const length = (high - low) / count;
    for (let number = 0; number < count; number += 1)
      masses.push({ height: low + (number + 0.5) * length, mass: perLength * length });
  };
  for (const { low, high, count, weight } of cables) if (weight !== undefined) spread(low, high, count * weight);
  if (mast?.wall !== undefined && mast.material === 'steel') {
    const perLength = areaOfTube(mast.outside, mast.wall) * MATERIALS.steel.density;
    spread(Math.max(tower.foot, mast.tip - mast.length), mast.tip, perLength);
  }
  const counterpoise = counterpoiseLoad(tower);
  if (counterpoise?.weight !== undefined) masses.push({ height: counterpoise.low, mass: counterpoise.weight });
  return masses;
}

function swing(pieces: readonly Piece[], masses: readonly Mass[]): number {
  const falling = [...masses].sort((a, b) => b.height - a.height);
  const moments = new Array<number>(pieces.length);
  // Moment in the middle of each piece, from the top down: of all that lies above it.
  let next = 0;
  let weight = 0;
  let weightTimesHeight = 0;
  for (let index = pieces.length - 1; index >= 0; index -= 1) {
    const { low, length } = pieces[index] as Piece;
    const middle = low + length / 2;
    for (let mass = falling[next]; mass && mass.height > middle; mass = falling[next]) {
      weight += mass.mass * GRAVITY;
      weightTimesHeight += mass.mass * GRAVITY * mass.height;
      next += 1;
    }
    moments[index] = weightTimesHeight - weight * middle;
  }
  const rising = falling.reverse();
  let number = 0;
  let y = 0;
  let slope = 0;
  let work = 0;
  let moving = 0;
  const take = (movement: number, mass: number) => {
    work += mass * GRAVITY * movement;
    moving += mass * movement ** 2;
  };
  for (let index = 0; index < pieces.length; index += 1) {
    const { low, length, rigidity } = pieces[index] as Piece;
    const curvature = (moments[index] as number) / rigidity;
    for (let mass = rising[number]; mass && mass.height <= low + length; mass = rising[number]) {
      const up = mass.height - low;
      take(y + slope * up + (curvature * up ** 2) / 2, mass.mass);
      number += 1;
    }
    y += slope * length + (curvature * length ** 2) / 2;
    slope += curvature * length;
  }
  const { low, length } = pieces.at(-1) as Piece;
  for (const mass of rising.slice(number)) take(y + slope * (mass.height - low - length), mass.mass);
  return rayleighFrequency.of(work / y ** 2, moving / y ** 2);
}
