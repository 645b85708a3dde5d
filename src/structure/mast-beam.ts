import {
  cite,
  defineFormula,
  evaluate,
  listVariable,
  Refusal,
  type Trace,
  under,
  variable,
} from '../foundation/index.ts';
import { ratioInBending, type SharedBending, sharedBending, type Tube, type TubeNotShown } from './tube-section.ts';

/** A tube of the mast between two heights [m]. Pieces that overlap are sleeves: they share the moment. */
export interface MastPiece extends Tube {
  readonly low: number;
  readonly high: number;
}

/** A mast, held sideways at its foot and its bearing, or clamped at its foot where there is no bearing. Heights [m]. */
export interface MastBeam {
  readonly pieces: readonly MastPiece[];
  readonly foot: number;
  readonly bearing?: number;
}

/** Where a sideways force takes hold: at one height, or spread evenly between two [m]. */
export interface ForcePlace {
  readonly low: number;
  readonly high: number;
}

/** A sideways force [N], in one plane; against the others it is negative. */
export interface BeamForce extends ForcePlace {
  readonly force: number;
}

/** Pieces of length under this are rounding, not a gap in the mast [m]. */
const HAIR = 1e-6;

const forces = (symbol: string, meaning: string) => listVariable(symbol, meaning, 'force', -1e4, 1e4);
const arms = (symbol: string, meaning: string) => listVariable(symbol, meaning, 'length', -20, 20);
const span = variable('s', 'from lower end to bearing', 'length', 0.1, 10);
const moment = (symbol: string, meaning: string) => variable(symbol, meaning, 'moment', -1e5, 1e5);
const length = variable('L', 'length of the stretch', 'length', 0.001, 10);
const slope = (symbol: string, meaning: string) => variable(symbol, meaning, 'one', -1, 1);
const movement = (symbol: string, meaning: string) => variable(symbol, meaning, 'diameter', -5, 5);
const spreadForce = variable('w', 'force for each length, spread over the stretch', 'force-per-length', -1e4, 1e4);
const moduli = listVariable('E', "Young's moduli of the tubes there", 'stress', 1e10, 3e11);
const seconds = listVariable('I', 'their second moments', 'second-moment', 1e-9, 1e-4);

const sumOfProducts = (a: readonly number[], b: readonly number[]) =>
  a.reduce((sum, each, index) => sum + each * (b[index] as number), 0);

export const mastBearingForce = defineFormula({
  id: 'mast-bearing-force',
  title: 'Force of a mast on its upper bearing',
  symbol: 'R_b',
  unit: 'force',
  expression: 'sum(F .* a) / s',
  variables: [forces('F', 'forces on the mast'), arms('a', 'their heights above its lower end'), span],
  cite: cite('derived', 'moments about the lower end', 'derived'),
  of: (F: readonly number[], a: readonly number[], s: number) => sumOfProducts(F, a) / s,
});

export const mastFootForce = defineFormula({
  id: 'mast-foot-force',
  title: 'Force of a mast at its lower end, opposite to the bearing where negative',
  symbol: 'R_f',
  unit: 'force',
  expression: '-sum(F .* a) / s',
  variables: [forces('F', 'forces on the mast'), arms('a', 'their heights over its bearing'), span],
  cite: cite('derived', 'moments about the bearing', 'derived'),
  of: (F: readonly number[], a: readonly number[], s: number) => -sumOfProducts(F, a) / s,
});

export const mastClampForce = defineFormula({
  id: 'mast-clamp-force',
  title: 'Force of a mast on the clamp at its lower end',
  symbol: 'R_f',
  unit: 'force',
  expression: 'sum(F)',
  variables: [forces('F', 'forces on the mast')],
  cite: cite('derived', 'sum of forces', 'derived'),
  of: (F: readonly number[]) => F.reduce((sum, each) => sum + each, 0),
});

export const mastMomentFormula = defineFormula({
  id: 'mast-moment',
  title: 'Bending moment in a mast',
  symbol: 'M',
  unit: 'moment',
  expression: 'sum(F .* a) - R_b * c',
  variables: [
    forces('F', 'forces above the place'),
    arms('a', 'their heights over it'),
    variable('R_b', 'force on the bearing, where it is above the place', 'force', -1e5, 1e5),
    variable('c', 'height of the bearing over the place; 0 where it is not above', 'length', 0, 10),
  ],
  cite: cite('derived', 'moments of all above the place', 'derived'),
  of: (F: readonly number[], a: readonly number[], R: number, c: number) => sumOfProducts(F, a) - R * c,
});

export const slopeAlongBeam = defineFormula({
  id: 'slope-along-beam',
  title: 'Slope at the upper end of a stretch of one stiffness',
  symbol: 'theta_1',
  unit: 'one',
  expression: 'theta_0 + (L * (M_0 + M_1) / 2 - w * L^3 / 12) / sum(E .* I)',
  variables: [
    slope('theta_0', 'slope at its lower end'),
    length,
    moment('M_0', 'moment at its lower end'),
    moment('M_1', 'moment at its upper end'),
    spreadForce,
    moduli,
    seconds,
  ],
  cite: cite('derived', 'curvature M/(E·I), integrated; M is a parabola between M_0 and M_1', 'derived'),
  of: (theta: number, L: number, M0: number, M1: number, w: number, E: readonly number[], I: readonly number[]) =>
    theta + ((L * (M0 + M1)) / 2 - (w * L ** 3) / 12) / sumOfProducts(E, I),
});

export const movementAlongBeam = defineFormula({
  id: 'movement-along-beam',
  title: 'Movement of the upper end of a stretch of one stiffness',
  symbol: 'y_1',
  unit: 'diameter',
  expression: 'y_0 + theta_0 * L + (L^2 * (2 * M_0 + M_1) / 6 - w * L^4 / 24) / sum(E .* I)',
  variables: [
    movement('y_0', 'movement of its lower end'),
    slope('theta_0', 'slope at its lower end'),
    length,
    moment('M_0', 'moment at its lower end'),
    moment('M_1', 'moment at its upper end'),
    spreadForce,
    moduli,
    seconds,
  ],
  cite: cite('derived', 'curvature M/(E·I), integrated twice; M is a parabola between M_0 and M_1', 'derived'),
  of: (
    y: number,
    theta: number,
    L: number,
    M0: number,
    M1: number,
    w: number,
    E: readonly number[],
    I: readonly number[],
  ) => y + theta * L + ((L ** 2 * (2 * M0 + M1)) / 6 - (w * L ** 4) / 24) / sumOfProducts(E, I),
});

export const slopeAtBearing = defineFormula({
  id: 'slope-at-bearing',
  title: 'Slope at the bearing, once the mast is turned so that the bearing has not moved',
  symbol: 'theta_b',
  unit: 'one',
  expression: 'theta_1 - y_1 / s',
  variables: [
    slope('theta_1', 'slope at the bearing with the lower end kept upright'),
    movement('y_1', 'movement of the bearing with the lower end kept upright'),
    span,
  ],
  cite: cite('derived', 'a turn about the lower end', 'derived'),
  of: (theta: number, y: number, s: number) => theta - y / s,
});

/** What happens at one height of the mast. */
export interface MastStation {
  readonly z: number;
  /** Of all above, the bearing's answer counted where it stands above or here [N]. */
  readonly shear: number;
  /** Positive where it bends as a force at the tip does [N·m]. */
  readonly moment: number;
  /** Against |moment|, by the weaker of what is just above and just below; undefined where that is not shown. */
  readonly ratio?: number;
  /** Out of plumb [m]; absent above the tip. */
  readonly movement?: number;
}

/** Where the mast is used most. */
export interface MastRatio {
  readonly z: number;
  readonly moment: number;
  /** What the section is surely allowed, and at most [N·m]. */
  readonly allowed: { readonly surely: number; readonly atMost: number };
  readonly ratio: number;
  /** The use if what the plan leaves not stated turns out well. */
  readonly ratioAtBest: number;
  /** The pieces there, and the one that decides. */
  readonly pieces: readonly number[];
  readonly decides: number;
}

export interface MastBending {
  /** Force handed to the bearing, along the forces [N]; absent without a bearing. */
  readonly atBearing?: number;
  /** Force handed to what holds the foot, along the forces: under a bearing it comes out negative [N]. */
  readonly atFoot: number;
  /** Moment handed to the clamp at the foot [N·m]; 0 with a bearing. */
  readonly clampMoment: number;
  /** Moment at the bearing, or at the clamp [N·m]. */
  readonly momentAtHold: number;
  /** From the foot up: every end of a piece, of a force, the bearing. */
  readonly stations: readonly MastStation[];
  /** Absent where no stretch that bends has an allowed moment. */
  readonly worst?: MastRatio;
  /** Pieces in stretches that bend and whose allowed moment is not shown; the worst then stands for the others only. */
  readonly notShown: readonly TubeNotShown[];
  /** At the upper end of the uppermost piece: how far it moves [m] and its slope. */
  readonly tip: { readonly z: number; readonly movement: number; readonly slope: number };
}

/** A stretch between two neighbouring stations. */
interface Stretch {
  readonly low: number;
  readonly high: number;
  readonly spread: number;
  readonly shearAtTop: number;
  readonly momentAtTop: number;
  readonly momentAtBase: number;
  /** Places of its tubes among the pieces; none above the tip. */
  readonly pieces: readonly number[];
  readonly bending?: SharedBending;
}

function refuse(code: string, says: string): never {
  throw new Refusal(code, says);
}

/** Height of the upper end of the uppermost piece. */
function tipOf({ pieces }: MastBeam): number {
  return Math.max(...pieces.map(({ high }) => high));
}

function checked(beam: MastBeam, places: readonly ForcePlace[]): void {
  const { pieces, foot, bearing } = beam;
  if (pieces.length === 0) refuse('mast-none', 'A mast has a tube at least.');
  if (!pieces.every(({ low, high }) => high > low && Number.isFinite(high - low))) {
    refuse('mast-piece-impossible', 'A piece of the mast ends above where it begins.');
  }
  const tip = tipOf(beam);
  if (!(foot < tip)) refuse('mast-foot-impossible', 'The mast is supported below its tip.');
  if (bearing !== undefined && !(bearing > foot && bearing <= tip)) {
    refuse('mast-bearing-impossible', 'The bearing is above the lower end of the mast and not above its tip.');
  }
  for (const { low, high } of places) {
    if (!(low >= foot - HAIR && high >= low && Number.isFinite(high))) {
      refuse('force-off-mast', 'A force on the mast acts above its lower end, from low to high.');
    }
  }
}

/** What of a force lies above a height, as a force and its arm. */
function above(place: ForcePlace, z: number): { readonly share: number; readonly arm: number } {
  const { low, high } = place;
  if (high <= z) return { share: 0, arm: 0 };
  if (low >= z) return { share: 1, arm: (low + high) / 2 - z };
  return { share: (high - z) / (high - low), arm: (high - z) / 2 };
}

const middle = ({ low, high }: ForcePlace) => (low + high) / 2;

/**
 * Heights at which the moment in a mast can be largest, but for stretches whose shear changes sign inside: foot, bearing,
 * ends of pieces and of forces.
 *
 * @returns the heights from the foot up [m]
 * @example mastHeights({ pieces: [{ low: 0, high: 3, outside: 0.05, wall: 0.004, material: 'steel' }], foot: 0, bearing: 1 }, [{ low: 2, high: 2 }]) // [0, 1, 2, 3]
 */
export function mastHeights(beam: MastBeam, places: readonly ForcePlace[]): readonly number[] {
  const { pieces, foot, bearing } = beam;
  const ends = [...pieces, ...places].flatMap(({ low, high }) => [low, high]);
  const all = [foot, ...(bearing === undefined ? [] : [bearing]), ...ends.filter((z) => z > foot)];
  return [...new Set(all)].sort((a, b) => a - b);
}

/**
 * Bending moment in a mast at one height.
 *
 * M = ΣF(z_i − z) over the forces above, less R_b(z_b − z) below the bearing
 *
 * @param z height [m]
 * @param atBearing force on the bearing, as found from the same forces; 0 without one [N]
 * @returns the moment [N·m]
 * @example mastMoment({ pieces: [], foot: 0, bearing: 1 }, [{ low: 3, high: 3, force: 10 }], 0.5, 30) // 10
 * @source derived
 */
export function mastMoment(
  beam: MastBeam,
  acting: readonly BeamForce[],
  z: number,
  atBearing: number,
  trace?: Trace,
): number {
  const over = acting.filter(({ high }) => high > z);
  const reach = beam.bearing === undefined ? 0 : Math.max(0, beam.bearing - z);
  const F = over.map((each) => each.force * above(each, z).share);
  const a = over.map((each) => above(each, z).arm);
  return evaluate(trace, mastMomentFormula, [F.length ? F : [0], a.length ? a : [0], reach > 0 ? atBearing : 0, reach]);
}

function holds(beam: MastBeam, acting: readonly BeamForce[], trace: Trace | undefined) {
  const { foot, bearing } = beam;
  const F = acting.length ? acting.map(({ force }) => force) : [0];
  const from = (z: number) => (acting.length ? acting.map((each) => middle(each) - z) : [0]);
  if (bearing === undefined) {
    return { atFoot: evaluate(trace, mastClampForce, [F]), clampMoment: mastMoment(beam, acting, foot, 0, trace) };
  }
  const atBearing = evaluate(trace, mastBearingForce, [F, from(foot), bearing - foot]);
  const atFoot = evaluate(trace, mastFootForce, [F, from(bearing), bearing - foot]);
  return { atBearing, atFoot, clampMoment: 0 };
}

/** The stretches from the top down, and the shear just below each station. */
function stretchesOf(beam: MastBeam, acting: readonly BeamForce[], atBearing: number, heights: readonly number[]) {
  const tip = tipOf(beam);
  const known = new Map<string, SharedBending>();
  const stretches: Stretch[] = [];
  const shears: number[] = [];
  let shear = 0;
  let sum = 0;
  for (let index = heights.length - 1; index >= 0; index -= 1) {
    const high = heights[index] as number;
    for (const { low: at, high: to, force } of acting) if (at === to && at === high) shear += force;
    if (beam.bearing === high) shear -= atBearing;
    shears.unshift(shear);
    if (index === 0) break;
    const low = heights[index - 1] as number;
    const half = (low + high) / 2;
    const L = high - low;
    let spread = 0;
    for (const { low: from, high: to, force } of acting) {
      if (to > from && from < half && half < to) spread += force / (to - from);
    }
    const momentAtBase = sum + shear * L + (spread * L ** 2) / 2;
    const places = beam.pieces.flatMap((piece, place) => (piece.low < half && half < piece.high ? [place] : []));
    if (places.length === 0 && L > HAIR && half < tip) {
      refuse('mast-gap', 'There is a gap between two pieces of the mast.');
    }
    const key = places.join();
    if (places.length > 0 && !known.has(key))
      known.set(key, sharedBending(places.map((at) => beam.pieces[at] as Tube)));
    const bending = known.get(key);
    const stretch = { low, high, spread, shearAtTop: shear, momentAtTop: sum, momentAtBase, pieces: places };
    stretches.unshift(bending ? { ...stretch, bending } : stretch);
    sum = momentAtBase;
    shear += spread * L;
  }
  return { stretches, shears };
}

/** Where in a stretch |M| is largest: at an end, or where the shear changes its sign. */
function placesOfLargest({ low, high, spread, shearAtTop, momentAtTop, momentAtBase }: Stretch) {
  const found = [
    { z: low, moment: momentAtBase },
    { z: high, moment: momentAtTop },
  ];
  const down = spread === 0 ? 0 : -shearAtTop / spread;
  if (down > 0 && down < high - low) {
    found.push({ z: high - down, moment: momentAtTop + shearAtTop * down + (spread * down ** 2) / 2 });
  }
  return found;
}

/** Movement of every station, from the foot up, and the slope at the tip. */
function movementsOf(beam: MastBeam, stretches: readonly Stretch[], trace: Trace | undefined) {
  const { foot, bearing } = beam;
  const tip = tipOf(beam);
  const movements = [0];
  let y = 0;
  let theta = 0;
  for (const { low, high, spread, momentAtTop, momentAtBase, bending } of stretches) {
    if (low >= tip) break;
    const L = high - low;
    if (bending) {
      const E = bending.sections.map(({ youngsModulus }) => youngsModulus);
      const I = bending.sections.map(({ secondMoment }) => secondMoment);
      const next = evaluate(trace, movementAlongBeam, [y, theta, L, momentAtBase, momentAtTop, spread, E, I]);
      theta = evaluate(trace, slopeAlongBeam, [theta, L, momentAtBase, momentAtTop, spread, E, I]);
      y = next;
    } else y += theta * L;
    movements.push(y);
    if (bearing === high) {
      const turn = -y / (bearing - foot);
      theta = evaluate(trace, slopeAtBearing, [theta, y, bearing - foot]);
      for (let index = 0; index < movements.length; index += 1) {
        const station = index === 0 ? foot : (stretches[index - 1] as Stretch).high;
        movements[index] = (movements[index] as number) + turn * (station - foot);
      }
      movements[movements.length - 1] = 0;
      y = 0;
    }
  }
  return { movements, slope: theta };
}

/**
 * A mast bent by sideways forces in one plane: what it hands to bearing and foot, its moment along its length, the
 * section used most, and how far its tip moves.
 *
 * R_b = ΣF(z_i − z_f)/s, M = ΣF(z_i − z) − R_b(z_b − z), u = |M|/M_all, y'' = M/(E·I)
 *
 * Bearing and foot hold without play and let the mast turn; without a bearing the foot is clamped. A force above the tip
 * stands on something of its own that hands it down. A force between foot and bearing bends the other way than one above,
 * so that a caller who is not sure of it compares without it as well. Weight on the bent mast is not counted.
 *
 * @param acting the forces on it, each at its worst for the heading the caller chose
 * @throws Refusal mast-none, mast-piece-impossible, mast-foot-impossible, mast-bearing-impossible, mast-gap, force-off-mast,
 *   force-impossible, and as its sections do
 * @example mastBending({ pieces: [{ low: 0, high: 3, outside: 0.05, wall: 0.004, material: 'steel' }], foot: 0, bearing: 1 }, [{ low: 3, high: 3, force: 100 }]).atBearing // 300
 * @source derived
 */
export function mastBending(beam: MastBeam, acting: readonly BeamForce[], trace?: Trace): MastBending {
  checked(beam, acting);
  if (!acting.every(({ force }) => Number.isFinite(force))) refuse('force-impossible', 'A force is a number.');
  const { foot, bearing } = beam;
  const held = under(trace, 'what holds the mast', () => holds(beam, acting, trace));
  const heights = mastHeights(beam, acting);
  const { stretches, shears } = stretchesOf(beam, acting, held.atBearing ?? 0, heights);
  const ratios = stretches.map((stretch) => usesOf(stretch));
  const worst = ratios.flat().reduce<MastRatio | undefined>((a, b) => (a && a.ratio >= b.ratio ? a : b), undefined);
  if (trace) traceWorst(beam, acting, held.atBearing ?? 0, worst, trace);
  const { movements, slope: tipSlope } = under(trace, 'how far the mast moves', () =>
    movementsOf(beam, stretches, trace),
  );
  const stations = heights.map((z, index): MastStation => {
    const momentHere =
      index === 0 ? (stretches[0] as Stretch).momentAtBase : (stretches[index - 1] as Stretch).momentAtTop;
    const moved = movements[index];
    const ratio = ratioAt(momentHere, [stretches[index - 1], stretches[index]]);
    return {
      z,
      shear: shears[index] as number,
      moment: momentHere,
      ...(ratio === undefined ? {} : { ratio }),
      ...(moved === undefined ? {} : { movement: moved }),
    };
  });
  const tip = tipOf(beam);
  const hold = bearing ?? foot;
  return {
    ...held,
    momentAtHold: (stations.find(({ z }) => z === hold) as MastStation).moment,
    stations,
    ...(worst ? { worst } : {}),
    notShown: notShownOf(stretches),
    tip: { z: tip, movement: movements[heights.indexOf(tip)] as number, slope: tipSlope },
  };
}

function usesOf(stretch: Stretch): MastRatio[] {
  const { bending, pieces } = stretch;
  if (!bending?.allowed) return [];
  const { allowed, decides } = bending;
  return placesOfLargest(stretch).map(({ z, moment: here }) => ({
    z,
    moment: here,
    allowed,
    ratio: ratioInBending.of(here, allowed.surely),
    ratioAtBest: ratioInBending.of(here, allowed.atMost),
    pieces,
    decides: pieces[decides ?? 0] as number,
  }));
}

/** Use at a station by the stretches that meet there; undefined where one of them bends and is not shown. */
function ratioAt(here: number, meeting: readonly (Stretch | undefined)[]): number | undefined {
  let ratio: number | undefined;
  for (const stretch of meeting) {
    if (!stretch?.bending) continue;
    if (!stretch.bending.allowed) return undefined;
    ratio = Math.max(ratio ?? 0, ratioInBending.of(here, stretch.bending.allowed.surely));
  }
  return ratio;
}

function notShownOf(stretches: readonly Stretch[]): readonly TubeNotShown[] {
  const found = new Map<number, TubeNotShown>();
  for (const stretch of stretches) {
    const { bending, pieces } = stretch;
    if (!bending || placesOfLargest(stretch).every((place) => place.moment === 0)) continue;
    for (const { tube, why } of bending.notShown)
      found.set(pieces[tube] as number, { tube: pieces[tube] as number, why });
  }
  return [...found.values()].sort((a, b) => a.tube - b.tube);
}

function traceWorst(
  beam: MastBeam,
  acting: readonly BeamForce[],
  atBearing: number,
  worst: MastRatio | undefined,
  trace: Trace,
): void {
  if (beam.bearing !== undefined) {
    under(trace, 'at the bearing', () => mastMoment(beam, acting, beam.bearing as number, atBearing, trace));
  }
  if (!worst) return;
  under(trace, 'where the mast is used most', () => {
    const { allowed } = sharedBending(
      worst.pieces.map((place) => beam.pieces[place] as Tube),
      trace,
    );
    const here = mastMoment(beam, acting, worst.z, atBearing, trace);
    if (allowed) evaluate(trace, ratioInBending, [here, allowed.surely]);
  });
}
