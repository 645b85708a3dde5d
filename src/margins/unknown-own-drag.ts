import { type DragRule, type ForceCoefficient, type Role, UNKNOWN_SOLIDITY } from '../areas/index.ts';
import { evaluate, nth, type Trace } from '../foundation/index.ts';
import type { Wind, WindStructure } from '../methods/index.ts';
import type { Level } from '../structure/index.ts';
import { dragAreaForce } from './formulas.ts';
import type { TowerAsRated } from './tower-as-rated.ts';

/**
 * The wind on a tower whose shape is not known, against that in the maker's wind: the most over its levels.
 *
 * max over z of l·r·w_site(z)/w_r(z_r)
 *
 * @param asRated the tower it was rated for, where that is of another height
 * @returns the ratio [-]
 * @source derived
 */
export function largestWindRatio(
  site: Wind,
  rated: Wind,
  levels: readonly Level[],
  windStructure: WindStructure,
  asRated?: TowerAsRated,
): number {
  let largest = 0;
  const drags = dragsOf(site, rated, windStructure);
  for (const { z, ratedZ, moreOfIt } of levelsOfWindRatio(levels, asRated)) {
    const here = windOnDragArea(site, z) / windOnDragArea(rated, ratedZ);
    largest = Math.max(largest, moreOfIt * here * riseOf(drags, flowPerWidth(site, z), flowPerWidth(rated, ratedZ)));
  }
  return largest;
}

/** A level, its height on the tower as rated, and how much more moment by the wind on the tower itself there may be for it. */
export interface LevelOfWindRatio {
  readonly z: number;
  readonly ratedZ: number;
  readonly moreOfIt: number;
}

/**
 * The levels at which the wind on a tower of unknown shape is compared with that on the one it was rated for. With more of it
 * above a level than was rated, moments are larger by the cube of the lengths at most, where it is no wider than in
 * proportion to how far it is from the top.
 *
 * l = max(1, ((H − z)/(H_r − z_r))³)
 *
 * @source derived
 */
export function levelsOfWindRatio(
  levels: readonly Level[],
  asRated: TowerAsRated | undefined,
): readonly LevelOfWindRatio[] {
  if (!asRated) return levels.map(({ z }) => ({ z, ratedZ: z, moreOfIt: 1 }));
  const top = levels[0]?.z ?? Number.NaN;
  return levels.map(({ z }, level) => {
    const ratedZ = nth(asRated.levels, nth(asRated.levelFor, level)).z;
    const [length, ratedLength] = [top - z, asRated.tower.top - ratedZ];
    return { z, ratedZ, moreOfIt: length > ratedLength + 1e-9 ? (length / ratedLength) ** 3 : 1 };
  });
}

/** What a tower whose shape is not known may be made of. */
interface Plausible {
  /** The thinnest and the thickest tube it may show the wind [m]. */
  readonly thinnest: number;
  readonly thickest: number;
  readonly rules: (width: number) => readonly DragRule[];
}

/**
 * Of a pole its own width, of a lattice that of its round members, at both ends of its open solidity: what is between them,
 * and what is flat among them, changes less with the flow.
 *
 * @source common-practice
 */
const PLAUSIBLE: Readonly<Record<WindStructure['kind'], Plausible>> = {
  pole: {
    thinnest: 0.03,
    thickest: 0.9,
    rules: (width) => [{ of: 'pole', sides: 0, aspect: 25, width }],
  },
  lattice: {
    thinnest: 0.01,
    thickest: 0.14,
    rules: (width) =>
      Object.values(UNKNOWN_SOLIDITY).map((solidity) => ({
        of: 'lattice',
        face: { faces: 3, solidity, roundShare: 1, thinnest: width, thickest: width },
      })),
  },
};

/** Widths tried between the thinnest and the thickest: between two neighbours the ratio has one bend at most. */
const WIDTHS = 24;
/** On either side of a place where a coefficient steps, as a share of its width: less than two winds that are one differ by. */
const BESIDE_STEP = 1e-6;
/** How often what lies beside the worst width is cut. */
const CUTS = 18;

/**
 * By how much the coefficient of a tower whose shape is not known may be larger in the site's wind than in the rated one: it
 * falls where the flow is fast, and the slower of two winds has more of it. Every plausible width counts: those on both sides
 * of where a coefficient begins or ends to change in either wind, and a row of others whose worst is closed in on.
 *
 * max over widths and solidities of (C_site/C_slow)/(C_r/C_slow)
 *
 * @param z height above ground [m]
 * @param ratedZ height of the same place on the tower as rated [m]
 * @returns the factor [-], 1 or more
 */
export function coefficientRise(site: Wind, rated: Wind, z: number, windStructure: WindStructure, ratedZ = z): number {
  return riseOf(dragsOf(site, rated, windStructure), flowPerWidth(site, z), flowPerWidth(rated, ratedZ));
}

/** The coefficients of one reading of a tower, in the site's wind and in the rated one. */
interface Drag {
  readonly here: ForceCoefficient;
  readonly there: ForceCoefficient;
}

/** Every reading of a tower of some width. */
interface Drags {
  readonly thinnest: number;
  readonly thickest: number;
  readonly ofWidth: (width: number) => readonly Drag[];
  /** Of the widths that are tried at every height. */
  readonly ofRow: readonly { readonly width: number; readonly drags: readonly Drag[] }[];
  /** Flows at which a coefficient begins or ends to change, in the site's wind and in the rated one. */
  readonly limitsHere: readonly number[];
  readonly limitsThere: readonly number[];
}

function dragsOf(site: Wind, rated: Wind, windStructure: WindStructure): Drags {
  const { thinnest, thickest, rules } = PLAUSIBLE[windStructure.kind];
  const ofWidth = (width: number) =>
    rules(width).flatMap((rule) =>
      ROLES.map((role) => ({
        here: site.forceCoefficient(rule, role, 'face').byFlow,
        there: rated.forceCoefficient(rule, rated.method === site.method ? role : 'capacity', 'face').byFlow,
      })),
    );
  const ofRow = Array.from({ length: WIDTHS + 1 }, (_, index) => {
    const width = widthIn(thinnest, thickest, index);
    return { width, drags: ofWidth(width) };
  });
  const limitsOf = (which: keyof Drag) => [
    ...new Set(
      ofRow.flatMap(({ drags }) => drags.flatMap(({ [which]: { limit, fastFrom = limit } }) => [limit, fastFrom])),
    ),
  ];
  return { thinnest, thickest, ofWidth, ofRow, limitsHere: limitsOf('here'), limitsThere: limitsOf('there') };
}

function widthIn(thinnest: number, thickest: number, index: number): number {
  return thinnest * (thickest / thinnest) ** Math.min(1, Math.max(0, index / WIDTHS));
}

function riseOf(tower: Drags, siteFlow: number, ratedFlow: number): number {
  const { thinnest, thickest, ofWidth, ofRow, limitsHere, limitsThere } = tower;
  const riseAt = (width: number, drags: readonly Drag[]) => {
    let rise = 1;
    for (const { here, there } of drags) {
      const fallen = there.at(ratedFlow * width) / there.slow;
      rise = Math.max(rise, here.at(siteFlow * width) / here.slow / fallen);
    }
    return rise;
  };
  let most = 1;
  let worst = 0;
  ofRow.forEach(({ width, drags }, index) => {
    const rise = riseAt(width, drags);
    if (rise > most) [most, worst] = [rise, index];
  });
  const steps = [...limitsHere.map((limit) => limit / siteFlow), ...limitsThere.map((limit) => limit / ratedFlow)];
  for (const step of new Set(steps)) {
    for (const width of [step * (1 - BESIDE_STEP), step * (1 + BESIDE_STEP)]) {
      if (width > thinnest && width < thickest) most = Math.max(most, riseAt(width, ofWidth(width)));
    }
  }
  if (most === 1) return most;
  const [from, to] = [worst - 1, worst + 1].map((index) => widthIn(thinnest, thickest, index)) as [number, number];
  return Math.max(
    most,
    peakBetween((width) => riseAt(width, ofWidth(width)), from, to),
  );
}

/** Both readings of what a standard leaves open. */
const ROLES = ['demand', 'capacity'] as const satisfies readonly Role[];

function flowPerWidth(wind: Wind, z: number): number {
  return wind.flowPerSpeed(z) * wind.conditions.speed;
}

/** The largest of a function that rises and then falls, closed in on by the golden section. */
function peakBetween(of: (x: number) => number, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [first, second] = [high - golden * (high - low), low + golden * (high - low)];
  let [atFirst, atSecond] = [of(first), of(second)];
  for (let cut = 0; cut < CUTS; cut += 1) {
    if (atFirst < atSecond) {
      [low, first, atFirst] = [first, second, atSecond];
      second = low + golden * (high - low);
      atSecond = of(second);
    } else {
      [high, second, atSecond] = [second, first, atFirst];
      first = high - golden * (high - low);
      atFirst = of(first);
    }
  }
  return Math.max(atFirst, atSecond);
}

/**
 * Force of a wind on a unit of drag area of the tower itself, whose shape is not known.
 *
 * λ·Kd·q·G·C_A
 *
 * @param z height above ground [m]
 * @returns the force on a unit of area, allowable level [Pa]
 * @source derived
 */
export function windOnDragArea(wind: Wind, z: number, trace?: Trace): number {
  return evaluate(trace, dragAreaForce, [
    wind.toAllowableFactor,
    wind.forceDirectionFactor,
    wind.pressure(z, trace),
    wind.gustEffect(undefined, trace),
    wind.forceCoefficient({ of: 'drag-area' }, 'capacity', 'face').byFlow.at(0, trace),
  ]);
}
