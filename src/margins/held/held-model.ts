import { GRAVITY, nth } from '../../foundation/index.ts';
import {
  allWeightsNotGiven,
  cutTower,
  type HeldCase,
  type HeldFailure,
  type HeldForces,
  type HeldLoad,
  type HeldResult,
  heldTowerSolver,
  type Section,
  sectionCarrying,
  shearOfTorsion,
  stretchesOf,
} from '../../structure/index.ts';
import type { TowerModel } from '../model.ts';
import { leansOn } from '../stated-for.ts';
import { once, steadyNotGiven } from '../tower-model.ts';
import { pushInLeg } from './held-formulas.ts';
import { type Blowing, blownTo } from './held-loads.ts';
import { type SupportReading, type Supports, supportReadings, supportsOf } from './supports.ts';

/** Between two supports it is looked at so many times. */
const PLACES_BETWEEN = 12;
/** Just above or below a height [m]. */
const BESIDE = 1e-4;

/** A tower on guys or brackets as a beam on cables and springs, in every way in which what nobody tells of it may be. */
export interface HeldModel {
  readonly supports: Supports;
  readonly readings: readonly HeldReading[];
  /** Where the wind blows to, in every way that differs, clockwise from north [rad]. */
  readonly headings: readonly number[];
  /** How many stretches of steel there are of which each is alike: what is shown of it anywhere is shown of all of it. */
  readonly zones: number;
  /** In one reading or another it finds no balance even in still air. */
  readonly failure?: HeldFailure;
}

export interface HeldReading extends SupportReading {
  readonly footHeld: boolean;
  readonly solve: (held: HeldCase) => HeldResult;
  /** By level asked for: the zone below it and above it, what its legs and braces take for a force there. */
  readonly levels: readonly HeldLevel[];
  /** Without wind, nothing on it. */
  readonly still: HeldForces;
  readonly ownWeight: HeldLoad;
}

export interface HeldLevel {
  readonly z: number;
  readonly below?: HeldSide;
  readonly above?: HeldSide;
}

interface HeldSide {
  readonly zone: number;
  readonly section: Section;
  /** Share of one leg in the push along the tower [-], and the arm on which it takes the moment [m]. */
  readonly byThrust: number;
  readonly arm: number;
  /** Without wind [N]. */
  readonly still: number;
}

/**
 * What the model of a held tower cannot do without, of a tower that leans on guys or brackets.
 *
 * @returns pointers; none where it is worked out
 * @source project-rule
 */
export function heldNeeds(model: TowerModel): readonly string[] {
  return once(model, needsOf);
}

function needsOf(model: TowerModel): readonly string[] {
  const { station } = model.input;
  const { tower } = station;
  const walls = tower.sections.flatMap(({ at, shape, tubing }) => {
    const wants = shape?.kind === 'pole' ? 'wall' : 'legWall';
    return shape && tubing ? [] : [`${at}/${wants}`];
  });
  return [
    ...new Set([
      ...supportsOf(tower).needs,
      ...(model.bareTowerKnown ? [] : ['/tower/shape']),
      ...walls,
      ...steadyNotGiven(model).filter((pointer) => !pointer.endsWith('/weight')),
    ]),
  ];
}

/**
 * Weights that nobody tells: without them a held tower is compared with what is known, which only ever asks less.
 *
 * @param model of the tower
 * @returns pointers
 * @source project-rule
 */
export function heldWeightsNotGiven(model: TowerModel): readonly string[] {
  const { station } = model.input;
  const own = station.tower.weight === undefined ? ['/tower/weight'] : [];
  return [...new Set([...own, ...allWeightsNotGiven(station), ...steadyNotGiven(model)])];
}

/**
 * The model of a tower on guys or brackets.
 *
 * @returns undefined of a tower that stands by itself or slides, and where something it needs is not told
 * @source derived
 */
export function heldModelOf(model: TowerModel): HeldModel | undefined {
  return once(model, built);
}

function built(model: TowerModel): HeldModel | undefined {
  const { tower } = model.input.station;
  const cut = cutTower(tower);
  if (!leansOn(tower) || tower.telescopes || !cut || heldNeeds(model).length > 0) return undefined;
  const supports = supportsOf(tower);
  const stretches = stretchesOf(cut.pieces);
  const places = placesOn(model, supports);
  const zoneOf = new Map<string, number>();
  const zoneAt = (section: Section, z: number, side: string) => {
    const { uniform, make, low } = section;
    const key = uniform ? (make ?? `from ${low}`) : `${z.toFixed(4)} ${side}`;
    const known = zoneOf.get(key);
    if (known !== undefined) return known;
    zoneOf.set(key, zoneOf.size);
    return zoneOf.size - 1;
  };
  const feet = tower.baseHeld === undefined ? [false, true] : [tower.baseHeld];
  const ownWeight: HeldLoad = {
    low: tower.foot,
    high: tower.top,
    east: 0,
    north: 0,
    weight: (tower.weight ?? 0) * GRAVITY,
  };
  let failure: HeldFailure | undefined;
  const readings = supportReadings(supports, tower.foot).flatMap((reading) =>
    feet.flatMap((footHeld): HeldReading[] => {
      const { guys, brackets } = reading;
      const solve = heldTowerSolver({ stretches, footHeld, guys, brackets }, places);
      const { forces: still, failure: atRest } = solve({ loads: [ownWeight], windTo: 0, onGuys: 0 });
      if (!still) {
        failure ??= atRest;
        return [];
      }
      const levels = still.levels.map(({ z, thrustBelow, thrustAbove }): HeldLevel => {
        const sideAt = (side: 'below' | 'above', thrust: number): HeldSide | undefined => {
          const beside = side === 'below' ? z - BESIDE : z + BESIDE;
          if (beside < tower.foot || beside > tower.top) return undefined;
          const section = nth(tower.sections, sectionCarrying(tower.sections, beside, 'outer'));
          const takes = legTakes(section, z);
          return { zone: zoneAt(section, z, side), section, ...takes, still: takes.byThrust * thrust };
        };
        const [below, above] = [sideAt('below', thrustBelow), sideAt('above', thrustAbove)];
        return { z, ...(below ? { below } : {}), ...(above ? { above } : {}) };
      });
      return [{ ...reading, footHeld, solve, levels, still, ownWeight }];
    }),
  );
  const common = { supports, readings, headings: headingsOf(supports), zones: zoneOf.size };
  return { ...common, ...(failure === undefined ? {} : { failure }) };
}

/** Ends of sections, what hangs on it, hold of the mast, and between any two supports. */
function placesOn({ input, hold }: TowerModel, { guys, brackets }: Supports): readonly number[] {
  const { tower, loads } = input.station;
  const { foot, top, sections } = tower;
  const held = [foot, ...guys.map(({ height }) => height), ...brackets, top].sort((a, b) => a - b);
  const between = held.slice(1).flatMap((high, index) => {
    const low = nth(held, index);
    return Array.from({ length: PLACES_BETWEEN }, (_, number) => low + ((high - low) * number) / PLACES_BETWEEN);
  });
  const ends = sections.flatMap(({ low, high }) => [low, high]);
  const hung = loads.filter(({ on }) => on === 'tower').map(({ low }) => low);
  return [...between, ...ends, ...hung, hold.foot, ...(hold.bearing === undefined ? [] : [hold.bearing])];
}

/** Evenly spread guys look the same again from every half of their spacing. */
function headingsOf({ guys }: Supports): readonly number[] {
  if (guys.length === 0) return [0];
  const counts = new Set(guys.map(({ there }) => there.count));
  const [count = 3] = counts;
  const step = counts.size === 1 ? Math.PI / (2 * count) : Math.PI / 12;
  return Array.from({ length: counts.size === 1 ? 3 : 13 }, (_, number) => number * step);
}

/** What one leg takes of push and moment; of a pole its wall, as if it were one leg. */
function legTakes(section: Section, z: number): { readonly byThrust: number; readonly arm: number } {
  const { shape, tubing, low, high } = section;
  if (!shape) return { byThrust: 1, arm: Number.POSITIVE_INFINITY };
  const width = shape.width[0] + ((shape.width[1] - shape.width[0]) * (z - low)) / (high - low);
  if (shape.kind === 'pole') return { byThrust: 1, arm: (width - (tubing?.wall ?? 0)) / 4 };
  const spacing = width - (shape.solid.by === 'members' ? shape.solid.leg : 0);
  const arm = spacing * (shape.faces === 3 ? Math.sqrt(3) / 2 : Math.SQRT2);
  // Where legs run together to a point there is no moment.
  return { byThrust: 1 / shape.faces, arm: arm > 1e-3 ? arm : Number.POSITIVE_INFINITY };
}

/** How the push in one leg comes about [N, N·m]. */
export interface InLeg {
  readonly thrust: number;
  readonly moment: number;
  readonly side: Pick<HeldSide, 'byThrust' | 'arm' | 'still'>;
}

/** What one wind asks of a held tower, each figure at the worst of its headings; what is there in still air not counted. */
export interface HeldAsked {
  /** By zone: most push in a leg, force across in braces, and where [N, m]. */
  readonly legs: Float64Array;
  readonly braces: Float64Array;
  readonly legsAt: Float64Array;
  /** Thrust and moment there, and what of them comes into one leg. */
  readonly inLegs: readonly (InLeg | undefined)[];
  readonly bracesAt: Float64Array;
  /** At the foot, where guys push on it [N]. */
  readonly thrust: number;
  /** By level of guys [N]. */
  readonly guys: readonly number[];
  /** The same, with what is there in still air [N]. */
  readonly tensions: readonly number[];
}

/**
 * What a wind asks of a held tower in one reading of it.
 *
 * leg: N/n + M/(k·b), less N/n in still air; braces: V + √3·t/b
 *
 * @param held model of the tower
 * @param reading of what nobody tells
 * @param blowing forces and the wind on guys [N, Pa]
 * @param torsionAt by height [N·m]
 * @param upTo nothing above this height is looked at [m]
 * @returns the figures, or why there are none
 * @source derived
 */
export function askedOfHeld(
  held: HeldModel,
  reading: HeldReading,
  blowing: Blowing,
  torsionAt: (z: number) => number,
  upTo = Number.POSITIVE_INFINITY,
): HeldAsked | HeldFailure {
  const { zones: count, supports, headings } = held;
  const legs = new Float64Array(count);
  const braces = new Float64Array(count);
  const legsAt = new Float64Array(count);
  const bracesAt = new Float64Array(count);
  const inLegs: (InLeg | undefined)[] = [];
  const guys = supports.guys.map(() => 0);
  const tensions = supports.guys.map(() => 0);
  let thrust = 0;
  const onGuys = reading.guys.map(({ height, anchorHeight }) => blowing.onGuys((height + anchorHeight) / 2));
  for (const windTo of headings) {
    const loads = [reading.ownWeight, ...blowing.loads.map((each) => blownTo(each, windTo))];
    const { forces, failure } = reading.solve({ loads, windTo, onGuys });
    if (!forces) return failure;
    forces.levels.forEach((at, index) => {
      const { z, below, above } = nth(reading.levels, index);
      if (z > upTo + BESIDE) return;
      const look = (side: HeldSide, N: number, M: number, V: number) => {
        const { zone, section, byThrust, arm, still } = side;
        const push = pushInLeg.of(byThrust, N, M, arm, still);
        if (push > (legs[zone] as number)) {
          [legs[zone], legsAt[zone]] = [push, z];
          inLegs[zone] = { thrust: N, moment: M, side };
        }
        const across = V + shearOfTorsion(section, torsionAt(z), z);
        if (across > (braces[zone] as number)) [braces[zone], bracesAt[zone]] = [across, z];
      };
      if (below) look(below, at.thrustBelow, at.momentBelow, at.shearBelow);
      if (above && z < upTo - BESIDE) look(above, at.thrustAbove, at.momentAbove, at.shearAbove);
    });
    // Brackets push nothing down: what weighs on the foot is in its legs.
    if (guys.length > 0) thrust = Math.max(thrust, forces.foot.thrust - reading.still.foot.thrust);
    let next = 0;
    supports.guys.forEach(({ there }, level) => {
      const still = nth(reading.still.guys, next).atTower;
      const most = Math.max(...forces.guys.slice(next, next + there.count).map(({ atTower }) => atTower));
      next += there.count;
      tensions[level] = Math.max(nth(tensions, level), most);
      guys[level] = Math.max(nth(guys, level), most - still);
    });
  }
  return { legs, braces, legsAt, bracesAt, inLegs, thrust, guys, tensions };
}
