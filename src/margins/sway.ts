import { cite, defineFormula, evaluate, GRAVITY, type Trace, variable } from '../foundation/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import {
  allWeightsNotGiven,
  cutTower,
  firstModeAtLeast,
  firstModeAtMost,
  type HeldForces,
  heldTowerSolver,
  SECOND_MODE,
  STROUHAL_OF_ROUND,
  stretchesOf,
  vortexSpeed,
} from '../structure/index.ts';
import { blownTo, planBlowing } from './held/held-loads.ts';
import { inActualWind } from './holds-to.ts';
import type { TowerModel } from './model.ts';
import { once, steadyNotGiven } from './tower-model.ts';

export const leaningByFrequency = defineFormula({
  id: 'share-of-leaning-by-frequency',
  title: 'What the weight of a mass at the top adds as it leans, by how often it swings',
  symbol: 'theta',
  unit: 'one',
  expression: 'g / (h * (2 * pi * n_1)^2)',
  variables: [
    variable('g', 'pull of the earth on a unit of weight', 'force-per-weight', GRAVITY, GRAVITY),
    variable('h', 'height of the tower', 'length', 3, 60),
    variable('n_1', 'lowest frequency', 'frequency', 0.1, 10),
  ],
  cite: cite('derived', 'W·h²/(3·EI), and (2π·n)² = 3·EI·g/(W·h³)', 'derived'),
  of: (gravity: number, height: number, frequency: number) => gravity / (height * (2 * Math.PI * frequency) ** 2),
});

export const leaningShare = defineFormula({
  id: 'share-of-leaning-weight',
  title: 'What the leaning weight adds, as a share of the moment at the base',
  symbol: 'theta',
  unit: 'one',
  expression: '1 - M_1 / M_2',
  variables: [
    variable('M_1', 'moment with the weight left out', 'moment', 0, 1e7),
    variable('M_2', 'moment with the weight counted where it leans', 'moment', 1, 1e7),
  ],
  cite: cite('derived', 'second-order over first-order moment of a beam whose push bends it further', 'derived'),
  of: (without: number, withWeight: number) => 1 - without / withWeight,
});

/** How a tower that stands by itself bends. */
export interface Sway {
  /** What its leaning weight adds to the moment at its foot, as a share of the whole of it [-]. */
  readonly leaning: number;
  /** Of its top in the service gust: movement [m], lean [rad]. */
  readonly movement: number;
  readonly lean: number;
  /** At its foot in that gust, without and with its weight [N·m]. */
  readonly moments: readonly [number, number];
}

/** Actual gust in which movement is told. @source tia222-g */
export const SERVICE_GUST = 26.8224;
/** Leaning weight that adds more than this is told, and more than that is beyond these formulas. @source common-practice */
export const LEANING = { told: 0.1, most: 0.25 } as const;
/** The lean is taken over so much below the top, as a share of the height [-]. */
const NEAR_TOP = 0.02;
/** Movement goes with the wind, so that it is found where it is small, and grown back. */
const SLIGHT = 1e-3;

/**
 * How a tower that stands by itself bends: what its weight adds as it leans, and how far its top moves in a gust of service.
 *
 * θ = 1 − M_1/M_2, of the moments at the foot with weight left out and counted
 *
 * @param model of the tower
 * @returns shares [-], movement [m] and lean [rad]; undefined where walls or weights are not all told, or it is held or slides
 * @source derived
 */
export function swayOf(model: TowerModel): Sway | undefined {
  return once(model, bent);
}

function bent(model: TowerModel): Sway | undefined {
  const { station } = model.input;
  const { tower } = station;
  const cut = cutTower(tower);
  const stands = (tower.support === 'free' || tower.support === 'roof') && !tower.telescopes;
  if (!stands || !cut || !model.bareTowerKnown || steadyNotGiven(model).length > 0) return undefined;
  if (allWeightsNotGiven(station).length > 0) return undefined;
  const { foot, top } = tower;
  const below = top - NEAR_TOP * (top - foot);
  const solve = heldTowerSolver({ stretches: stretchesOf(cut.pieces), footHeld: true, guys: [], brackets: [] }, [
    below,
  ]);
  const weight = { low: foot, high: top, east: 0, north: 0, weight: (tower.weight ?? 0) * GRAVITY };
  let moments: readonly [number, number] = [0, 1];
  const worst = { leaning: 0, movement: 0, lean: 0 };
  for (const inWind of inActualWind(model)) {
    const { loads } = planBlowing(model, inWind, speedOfGust(model, SERVICE_GUST), 'unfavourable', 1, 1);
    const blown = loads.map((load) => blownTo({ ...load, force: load.force * SLIGHT }, 0));
    const solved = (each: readonly (typeof weight)[]): HeldForces | undefined =>
      solve({ loads: each, windTo: 0, onGuys: 0 }).forces;
    const [first, second] = [solved(blown.map((load) => ({ ...load, weight: 0 }))), solved([weight, ...blown])];
    if (!first || !second) return BEYOND;
    const at = (z: number) => (second.levels.find((level) => Math.abs(level.z - z) < 1e-6)?.north ?? 0) / SLIGHT;
    const here = leaningShare.of(first.foot.moment, second.foot.moment);
    if (here > worst.leaning) moments = [first.foot.moment / SLIGHT, second.foot.moment / SLIGHT];
    worst.leaning = Math.max(worst.leaning, here);
    worst.movement = Math.max(worst.movement, at(top));
    worst.lean = Math.max(worst.lean, Math.atan((at(top) - at(below)) / (top - below)));
  }
  return { ...worst, moments };
}

/** A cantilever bent by its own weight alone: 12.36·EI over 7.84·EI, at its top alone 3 over 2.47. @source derived */
const LEANS_MORE = 1.58;

/**
 * What its leaning weight adds to the moment at the foot of a tower that stands by itself, as a share of the whole: by its
 * walls and weights, else at the bad end of its frequency.
 *
 * θ = 1 − M_1/M_2; θ ≤ 1.58·g/(h·(2π·n)²)
 *
 * @param model of the tower
 * @returns share [-]; undefined where neither is known
 * @source derived
 */
export function leaningOf(model: TowerModel, trace?: Trace): number | undefined {
  const { station } = model.input;
  const { tower } = station;
  if (tower.support !== 'free' && tower.support !== 'roof') return undefined;
  const known = swayOf(model);
  if (known && trace && Number.isFinite(known.movement)) evaluate(trace, leaningShare, known.moments);
  if (known) return known.leaning;
  const frequency = tower.frequency ?? firstModeAtLeast(station);
  if (frequency === undefined) return undefined;
  return LEANS_MORE * evaluate(trace, leaningByFrequency, [GRAVITY, tower.top - tower.foot, frequency]);
}

/**
 * Whether a tower leans beyond what is compared here, or what its weight adds by that, where it is told, takes a ratio beyond 1.
 *
 * θ > 0.25, or θ > 0.1 and u/(1 − θ) > 1
 *
 * @param ratio of what is compared without it; none of a rating, which was stated of a tower that leans too [-]
 * @source common-practice
 */
export function leansTooFar(model: TowerModel, ratio = 0): boolean {
  const leaning = leaningOf(model) ?? 0;
  return leaning > LEANING.most || (leaning > LEANING.told && ratio > 1 - leaning);
}

/** Its weight alone lays it over. */
const BEYOND: Sway = {
  leaning: 1,
  movement: Number.POSITIVE_INFINITY,
  lean: Number.POSITIVE_INFINITY,
  moments: [0, 1],
};

/**
 * The working of how a tower that stands by itself sways.
 *
 * θ = 1 − M_1/M_2, or by frequency; v_cr = b·n/St
 *
 * @param model of the tower
 * @source derived
 */
export function explainSway(model: TowerModel, trace: Trace): void {
  leaningOf(model, trace);
  sheddingOf(model, trace);
}

/** A gust that has come, in the basis of the method [m/s]. */
function speedOfGust({ input, site }: TowerModel, gust: number): number {
  const { actualGust } = METHOD_BY_ID[input.method];
  let speed = site.speed;
  // The gust of a fastest mile grows faster than it does.
  for (let turn = 0; turn < 20; turn += 1) speed *= gust / actualGust(speed);
  return speed;
}

/** Steady winds in which eddies may shake a round pole: in its first way of swinging and in its second [m/s]. */
export interface Shedding {
  readonly first: readonly [number, number];
  readonly second: readonly [number, number];
}

/**
 * Steady winds in which eddies may shake a round pole that stands by itself.
 *
 * v_cr = b·n/St
 *
 * @param model of the tower
 * @returns from the narrowest width and lowest frequency to the widest and highest [m/s]; undefined of what is no such pole, or
 * of which no frequency is told or estimated
 * @source en1991-1-4
 */
export function sheddingOf(model: Pick<TowerModel, 'input'>, trace?: Trace): Shedding | undefined {
  const { tower } = model.input.station;
  const widths = tower.sections.flatMap(({ shape }) =>
    shape?.kind === 'pole' && shape.sides === 0 ? [...shape.width] : [],
  );
  const isPole = widths.length === 2 * tower.sections.length && (tower.support === 'free' || tower.support === 'roof');
  const least = tower.frequency ?? firstModeAtLeast(model.input.station);
  const most = tower.frequency ?? firstModeAtMost(model.input.station);
  if (!isPole || tower.telescopes || least === undefined || most === undefined) return undefined;
  const at = (width: number, frequency: number) => evaluate(trace, vortexSpeed, [width, frequency, STROUHAL_OF_ROUND]);
  const [narrow, wide] = [Math.min(...widths), Math.max(...widths)];
  const low = at(narrow, least);
  const high = at(wide, most);
  return { first: [low, high], second: [low * SECOND_MODE, high * SECOND_MODE] };
}
