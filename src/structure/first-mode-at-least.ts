import { partsOfShape } from '../areas/index.ts';
import { cite, defineFormula, variable } from '../foundation/index.ts';
import { appurtenanceMasses } from './appurtenance-masses.ts';
import { cutTower, MATERIALS, type Mass, PIECE, type Piece, secondMomentOfTube } from './first-mode.ts';
import type { Load, Mast, Station, Tower } from './station.ts';

/** Bracing that nobody lists, as a share of the mass of the legs. @source common-practice */
const BRACING_SHARE = 0.3;
/** How much lower a lattice swings because its bracing gives. @source common-practice */
const BRACING_GIVES = 0.9;
/** A load whose weight is not given, for each square metre that it shows the wind [kg/m²]. @source common-practice */
const LOAD_PER_AREA = 80;
/** A line whose weight is not given, for its volume: 0.15 kg/m at 0.4 in [kg/m³]. @source common-practice */
const LINE_DENSITY = 1850;
/** A rotator whose weight is not given [kg]. @source common-practice */
const ROTATOR = 25;
/** Wall of a mast that is not given, where a thick one asks more and where a thin one does [m]. @source common-practice */
const MAST_WALL = { thick: 0.006, thin: 0.003 } as const;
/** Radius of gyration of a lattice, as a share of its width. @source derived */
const GYRATION = 1 / 3;
/** Side of the block where none is given, as a share of the height of the tower, and of its width below; the larger. @source common-practice */
const BLOCK_SIDE = { ofHeight: 0.1, ofWidth: 3 } as const;
/** What weak ordinary soil may carry: clay, 1500 psf [Pa]; IBC 2018, Table 1806.2. @source ibc-2018-soils */
const WEAK_SOIL = 71820;

export const dunkerleyFrequency = defineFormula({
  id: 'dunkerley-frequency',
  title: 'Frequency that the lowest one is no less than',
  symbol: 'n_1',
  unit: 'frequency',
  expression: '1 / (2 * pi * tau)',
  variables: [
    variable('tau', 'root of the sum of each mass times its movement for a unit force there', 'period', 0.005, 5),
  ],
  cite: cite('derived', 'Dunkerley: 1/ω² is no more than the sum over the masses, each alone', 'derived'),
  of: (root: number) => 1 / (2 * Math.PI * root),
});

export const footingStiffness = defineFormula({
  id: 'footing-stiffness',
  title: 'Stiffness of a block footing against tilting',
  symbol: 'k_theta',
  unit: 'moment',
  expression: '120 / l_1 * q_a * W * L^3 / 12',
  variables: [
    variable('l_1', 'one metre', 'length', 1, 1),
    variable('q_a', 'what the soil may carry', 'pressure', 50e3, 600e3),
    variable('W', 'side of the block across', 'length', 0.5, 5),
    variable('L', 'side of the block along', 'length', 0.5, 5),
  ],
  cite: cite('common-practice', 'subgrade reaction 120·q_a a metre, from memory', 'memory'),
  of: (metre: number, bearing: number, across: number, along: number) =>
    ((120 / metre) * bearing * across * along ** 3) / 12,
});

/**
 * The lowest frequency of a tower that stands by itself, as low as it can be: Dunkerley's sum, bracing and footing that
 * give, and for every weight that is not given a plausible one on the heavy side. That of the mast on top counts.
 *
 * n₁ ≥ 1/(2π√Σ(m·δ)), δ the movement of each mass for a unit force there
 *
 * @param footing stiffness against tilting [N·m]; else by its block, or by a block of usual size on weak soil
 * @returns the frequency [Hz]; undefined where the tower is held or telescopes, or has a section whose wall or material is
 *   not given
 * @source derived
 */
export function firstModeAtLeast(station: Station, footing = footingOf(station.tower)): number | undefined {
  const { tower } = station;
  if (tower.support === 'guyed' || tower.support === 'bracketed' || tower.telescopes) return undefined;
  const cut = cutTower(tower);
  if (cut === undefined) return undefined;
  const isLattice = tower.sections.some(({ shape }) => shape?.kind === 'lattice');
  const own = ownMasses(cut.masses, tower, isLattice ? 1 + BRACING_SHARE : 1);
  return (isLattice ? BRACING_GIVES : 1) * lowestOf(station, cut.pieces, own, footing);
}

/**
 * The same of a lattice of which nobody tells the members, by its width and its weight.
 *
 * r = b/3: three legs, r² = b²/6, and bracing half as heavy as they
 *
 * @param footing stiffness against tilting [N·m], as of `firstModeAtLeast`
 * @returns the frequency [Hz]; undefined of what is no lattice at one height, or where a weight is not given
 * @source derived
 */
export function latticeModeAtLeast(station: Station, footing = footingOf(station.tower)): number | undefined {
  const { sections, weight, foot, top, telescopes } = station.tower;
  if (telescopes) return undefined;
  const pieces: Piece[] = [];
  const masses: Mass[] = [];
  for (const { shape, weight: own, low, high } of sections) {
    const mass = own ?? (weight === undefined ? undefined : (weight * (high - low)) / (top - foot));
    if (shape?.kind !== 'lattice' || mass === undefined) return undefined;
    const count = Math.max(1, Math.ceil((high - low) / PIECE - 1e-9));
    const length = (high - low) / count;
    for (let number = 0; number < count; number += 1) {
      const bottom = low + number * length;
      const width = shape.width[0] + ((number + 0.5) / count) * (shape.width[1] - shape.width[0]);
      const metal = mass / (high - low) / MATERIALS.steel.density;
      const rigidity = MATERIALS.steel.youngsModulus * metal * (width * GYRATION) ** 2;
      pieces.push({ low: bottom, length, rigidity });
      masses.push({ height: bottom + length / 2, mass: mass / count });
    }
  }
  return pieces.length === 0 ? undefined : BRACING_GIVES * lowestOf(station, pieces, masses, footing);
}

function lowestOf(station: Station, pieces: readonly Piece[], own: readonly Mass[], footing: number): number {
  const { tower, mast } = station;
  const moves = movementOf(pieces);
  const clamp = mast && (mast.bearing ?? mast.foot ?? tower.top);
  const sum = [...own, ...massesAloft(station)].reduce((so, { mass, height }) => {
    const bends = mast && clamp !== undefined && height > clamp ? mastBends(mast, clamp, height) : 0;
    return so + mass * (moves(height) + (height - tower.foot) ** 2 / footing + bends);
  }, 0);
  return dunkerleyFrequency.of(Math.sqrt(sum));
}

function footingOf({ foundation, foot, top, sections }: Tower): number {
  if (foundation?.kind !== 'block') {
    const width = sections[0]?.shape?.width[0] ?? 0;
    const side = Math.max(BLOCK_SIDE.ofHeight * (top - foot), BLOCK_SIDE.ofWidth * width);
    return footingStiffness.of(1, WEAK_SOIL, side, side);
  }
  const { length, width, bearing } = foundation;
  return footingStiffness.of(1, bearing, Math.max(length, width), Math.min(length, width));
}

/** The masses of the walls with bracing, or more where the weight that is given is more. */
function ownMasses(walls: readonly Mass[], { sections, weight }: Tower, times: number): readonly Mass[] {
  const bySections = sections.reduce((sum, section) => sum + (section.weight ?? 0), 0);
  const reckoned = times * walls.reduce((sum, { mass }) => sum + mass, 0);
  const heavier = times * Math.max(1, (weight ?? 0) / reckoned, bySections / reckoned);
  return walls.map(({ mass, height }) => ({ mass: heavier * mass, height }));
}

/** Everything aloft, what is not given at a plausible weight on the heavy side. */
function massesAloft(station: Station): readonly Mass[] {
  const { mast, loads, cables, rotator } = station;
  const turns = rotator !== undefined || loads.some((load) => load.on === 'mast' && load.turns);
  const told: Station = {
    ...station,
    ...(mast && mast.wall === undefined && mast.pieces === undefined
      ? { mast: { ...mast, wall: Math.min(MAST_WALL.thick, mast.outside / 2) } }
      : {}),
    ...(turns ? { rotator: { weight: rotator?.weight ?? ROTATOR } } : {}),
    loads: loads.map((load) => ({ ...load, weight: load.weight ?? LOAD_PER_AREA * areaOf(load) })),
    cables: cables.map((run) => ({ ...run, weight: run.weight ?? (LINE_DENSITY * Math.PI * run.diameter ** 2) / 4 })),
  };
  return appurtenanceMasses(told).flatMap(({ mass, low, high }) => {
    const count = Math.max(1, Math.ceil((high - low) / PIECE - 1e-9));
    return Array.from({ length: count }, (_, number) => ({
      mass: mass / count,
      height: low + ((number + 0.5) * (high - low)) / count,
    }));
  });
}

/** What one of a load shows the wind [m²]. */
function areaOf({ shape, low, high }: Load): number {
  const parts = partsOfShape(shape, low, high, 1);
  const shown = (side: 'front' | 'side') => parts.reduce((sum, part) => sum + part[side], 0);
  return Math.max(shown('front'), shown('side'));
}

/** The movement at a height for a unit force there, by the bending of what is below [m/N]. */
function movementOf(pieces: readonly Piece[]): (height: number) => number {
  return (height) =>
    pieces.reduce((sum, { low, length, rigidity }) => {
      const [far, near] = [height - low, Math.max(0, height - low - length)];
      return far <= 0 ? sum : sum + (far ** 3 - near ** 3) / (3 * rigidity);
    }, 0);
}

/** What the mast itself adds to that above where it is clamped, its lower end at its foot [m/N]. */
function mastBends(mast: Mast, clamp: number, height: number): number {
  const foot = mast.tip - mast.length;
  const rigidityAt = (z: number) => {
    const wall = mast.wall ?? Math.min(MAST_WALL.thin, mast.outside / 2);
    const tubes = mast.pieces ?? [{ outside: mast.outside, wall, from: 0, to: mast.length }];
    // What stands above its tip is held as stiffly.
    const place = Math.min(Math.max(z - foot, 0), mast.length) * (1 - 1e-9);
    const there = tubes.filter(({ from, to }) => from <= place && place <= to);
    return (
      MATERIALS[mast.material].youngsModulus *
      there.reduce((sum, { outside, wall }) => sum + secondMomentOfTube.of(outside, wall), 0)
    );
  };
  const count = Math.max(1, Math.ceil((height - clamp) / PIECE));
  const length = (height - clamp) / count;
  let bends = 0;
  for (let number = 0; number < count; number += 1) {
    const arm = (count - number - 0.5) * length;
    bends += (arm ** 2 * length) / rigidityAt(height - arm);
  }
  // Between its foot and its bearing it bends as a beam on two supports, and so turns at the bearing.
  const inside = mast.foot === undefined ? 0 : Math.max(0, clamp - mast.foot);
  return bends + ((height - clamp) ** 2 * inside) / (3 * rigidityAt(clamp));
}
