import { GRAVITY, nth } from '../foundation/index.ts';
import { levelFactors, METHOD_BY_ID } from '../methods/index.ts';
import {
  allWeightsNotGiven,
  appurtenanceMasses,
  cutTower,
  type Guy,
  type HeldFailure,
  type HeldLoad,
  type Section,
  type SlicesInWind,
  type Station,
  type Stretch,
  sectionCarrying,
  sliceForces,
  solveHeldTower,
} from '../structure/index.ts';
import type { CheckContext } from './checks/check-kind.ts';
import type { TowerModel } from './model.ts';
import { once } from './tower-model.ts';

/** Galvanised steel strand of seven wires, extra high strength, ASTM A475: outside and wire [m], breaking [N], [kg/m]. @source astm-a475 */
export const STRANDS = [
  { diameter: 0.0047625, wire: 0.00157, breaking: 17750, mass: 0.1086 },
  { diameter: 0.00635, wire: 0.00203, breaking: 29580, mass: 0.1801 },
  { diameter: 0.0079375, wire: 0.00264, breaking: 49820, mass: 0.3051 },
] as const;
/** A guy this near to a strand's size is that strand [m]. */
const SAME_STRAND = 0.0002;
/** Initial tension as a share of breaking strength, where nobody tells it. @source common-practice */
const DRAWN = [0.07, 0.15] as const;
/** Of strand, new and stretched [Pa]. @source common-practice */
const YOUNG = [140e9, 190e9] as const;
/** Of a round strand across the wind, from memory. @source common-practice */
const DRAG_OF_GUY = 1.2;
/** Arm of the two forces that stand for a couple [m]. */
const COUPLE_ARM = 0.5;

/** Guys at one height: the largest over headings and over what is not told. */
export interface GuyLevel {
  readonly height: number;
  /** At the tower [N]. */
  readonly tension: number;
  /** What one anchor takes: level and up [N]. */
  readonly anchorLevel: number;
  readonly anchorUp: number;
  /** Of the strand [N]. */
  readonly breaking: number;
}

/** A guyed tower in the design wind, nominal level, each figure at its own worst. */
export interface GuyedForces {
  /** One of the ways in which it may stand gave no figures, for this. */
  readonly failure?: HeldFailure;
  readonly levels: readonly GuyLevel[];
  /** Shear [N] and push [N] at the foot, and the moment there if it is held [N·m]. */
  readonly foot: { readonly shear: number; readonly thrust: number; readonly moment: number };
  /** Of the top [m]. */
  readonly movement: number;
}

/**
 * Forces of a tower on guys, as a beam on cables: both ends of initial tension and stiffness of strand, foot hinged and held,
 * wind from everywhere that differs, all that hangs on it broadside.
 *
 * @param checked the plan, heights [m]
 * @returns forces [N, N·m]; undefined where guys, walls of legs, or weights are not all told
 * @source derived
 */
export function guyedForcesOf(checked: Pick<CheckContext, 'model'>): GuyedForces | undefined {
  return once(checked.model, workedOut);
}

function workedOut(model: TowerModel): GuyedForces | undefined {
  const { station } = model.input;
  const { tower } = station;
  const cut = cutTower(tower);
  const told = supportsOf(station);
  const loads = loadsOf(model);
  if (tower.support !== 'guyed' || tower.telescopes || !cut || !told || !loads) return undefined;
  if (allWeightsNotGiven(station).length > 0 || tower.weight === undefined) return undefined;
  const above = loads.reduce((most, { high }) => Math.max(most, high), tower.top);
  const pieces: Stretch[] = [];
  for (const { low, length, rigidity } of cut.pieces) {
    const below = pieces.at(-1);
    if (below && Math.abs(below.bending / rigidity - 1) < 1e-9)
      pieces[pieces.length - 1] = { ...below, high: low + length };
    else pieces.push({ low, high: low + length, bending: rigidity });
  }
  const last = nth(pieces, pieces.length - 1);
  const stretches = above > last.high + 1e-6 ? [...pieces, { ...last, low: last.high, high: above }] : pieces;
  const counts = new Set(told.map(({ count }) => count));
  const [count] = counts;
  const step = counts.size === 1 && count !== undefined ? Math.PI / (2 * count) : Math.PI / 12;
  const steps = counts.size === 1 ? 2 : 12;
  let failure: HeldFailure | undefined;
  let foot = { shear: 0, thrust: 0, moment: 0 };
  let movement = 0;
  const levels: GuyLevel[] = told.map(({ height, strand }) => ({
    height,
    tension: 0,
    anchorLevel: 0,
    anchorUp: 0,
    breaking: strand.breaking,
  }));
  for (const drawn of DRAWN)
    for (const young of YOUNG) {
      const guys = told.map((each) => guysOf(each, drawn, young, tower.foot));
      for (const footHeld of [false, true])
        for (let number = 0; number <= steps; number += 1) {
          const windTo = number * step;
          const held = { loads: loads.map((load) => blownTo(load, windTo)), windTo, onGuys: 1 };
          const result = solveHeldTower({ stretches, footHeld, guys: guys.flat(), brackets: [] }, held, [tower.top]);
          if (!result.forces) {
            failure ??= result.failure;
            continue;
          }
          const { forces } = result;
          foot = {
            shear: Math.max(foot.shear, forces.foot.shear),
            thrust: Math.max(foot.thrust, forces.foot.thrust),
            moment: Math.max(foot.moment, forces.foot.moment),
          };
          const top = forces.levels.find(({ z }) => Math.abs(z - tower.top) < 1e-6);
          if (top) movement = Math.max(movement, Math.hypot(top.east, top.north));
          let next = 0;
          guys.forEach((row, level) => {
            const found = forces.guys.slice(next, next + row.length);
            next += row.length;
            const most = nth(levels, level);
            levels[level] = {
              ...most,
              tension: Math.max(most.tension, ...found.map(({ atTower }) => atTower)),
              anchorLevel: Math.max(most.anchorLevel, ...found.map((each) => each.anchorLevel)),
              anchorUp: Math.max(most.anchorUp, ...found.map(({ anchorUp }) => anchorUp)),
            };
          });
        }
    }
  return { ...(failure === undefined ? {} : { failure }), levels, foot, movement };

  function guysOf(each: ToldSupport, drawn: number, young: number, ground: number): Guy[] {
    const { height, count: guysThere, radius, offset, strand } = each;
    const wires = (7 * Math.PI * strand.wire ** 2) / 4;
    const push = pressureAt(model, (height + ground) / 2) * DRAG_OF_GUY * strand.diameter;
    return Array.from({ length: guysThere }, (_, number) => ({
      height,
      offset,
      heading: (number * 2 * Math.PI) / guysThere,
      radius,
      anchorHeight: ground,
      stiffness: young * wires,
      tension: drawn * strand.breaking,
      weight: strand.mass * GRAVITY,
      drag: push,
    }));
  }
}

interface ToldSupport {
  readonly height: number;
  readonly count: number;
  readonly radius: number;
  readonly offset: number;
  readonly strand: (typeof STRANDS)[number];
}

/** Supports from the foot up; undefined where one is not told, is no strand known here, or cannot hold it from all sides. */
function supportsOf({ tower }: Station): readonly ToldSupport[] | undefined {
  const supports = [...tower.held]
    .sort((a, b) => a.height - b.height)
    .flatMap(({ height, by, guys }): ToldSupport[] => {
      if (by !== 'guys' || !guys || guys.count < 3) return [];
      const strand = STRANDS.find(({ diameter }) => Math.abs(diameter - guys.diameter) < SAME_STRAND);
      const offset = legAt(nth(tower.sections, sectionCarrying(tower.sections, height, 'outer')), height);
      if (!strand || offset === undefined || guys.radius <= offset) return [];
      return [{ height, count: guys.count, radius: guys.radius, offset, strand }];
    });
  // Guys that cross rub on each other: no such tower is worked out.
  const cross = supports.some(({ radius }, index) => radius > (supports[index + 1]?.radius ?? radius));
  return supports.length > 0 && supports.length === tower.held.length && !cross ? supports : undefined;
}

/** From the axis to a leg, or to the wall of a pole [m]. */
function legAt({ shape, low, high }: Section, height: number): number | undefined {
  if (!shape) return undefined;
  const width = shape.width[0] + ((shape.width[1] - shape.width[0]) * (height - low)) / (high - low);
  if (shape.kind !== 'lattice') return width / 2;
  return shape.faces === 3 ? width / Math.sqrt(3) : width / Math.SQRT2;
}

/** A force along the wind [N], with its weight. */
type Blown = Pick<HeldLoad, 'low' | 'high' | 'weight'> & { readonly force: number };

function blownTo({ low, high, weight, force }: Blown, windTo: number): HeldLoad {
  return { low, high, weight, east: force * Math.sin(windTo), north: force * Math.cos(windTo) };
}

function toNominal({ input, scenarios }: TowerModel): number {
  const { wind } = scenarios[0].appurtenances;
  return levelFactors(METHOD_BY_ID[input.method], wind.conditions.speedLevel).toNominalFactor / wind.toAllowableFactor;
}

/** Pressure of the wind on a guy, nominal level [Pa]. */
function pressureAt(model: TowerModel, height: number): number {
  const { wind } = model.scenarios[0].appurtenances;
  return (
    wind.toAllowableFactor *
    wind.forceDirectionFactor *
    Math.max(wind.pressure(height) * wind.gustEffect(undefined), wind.leastPressure) *
    toNominal(model)
  );
}

/** All but the guys: of the scenario that pushes most; what hangs on the tower broadside. */
function loadsOf(model: TowerModel): readonly Blown[] | undefined {
  const { input, site, hold } = model;
  const { station } = input;
  const { tower } = station;
  const factor = toNominal(model);
  const pushes = (cut: SlicesInWind, end: 'unfavourable' | 'favourable'): Blown[] => {
    const { front, side } = sliceForces(cut, site.speed, end, true);
    return cut.slices.flatMap(({ z, item }, index) => {
      const { kind, carriedBy } = nth(cut.items, item);
      if (kind === 'guys') return [];
      const force = factor * Math.max(nth(front, index), nth(side, index));
      if (carriedBy !== 'mast' || hold.bearing === undefined) return [{ low: z, high: z, weight: 0, force }];
      const atBearing = (force * (z - hold.foot)) / (hold.bearing - hold.foot);
      return [
        { low: hold.bearing, high: hold.bearing, weight: 0, force: atBearing },
        { low: hold.foot, high: hold.foot, weight: 0, force: force - atBearing },
      ];
    });
  };
  const each = model.scenarios.map(({ appurtenances, bareTower }) =>
    bareTower ? [...pushes(appurtenances, 'unfavourable'), ...pushes(bareTower, 'favourable')] : undefined,
  );
  const sum = (loads: readonly Blown[]) => loads.reduce((total, { force }) => total + force, 0);
  const worst = each.reduce((most, loads) => (most && loads ? (sum(loads) > sum(most) ? loads : most) : undefined));
  if (!worst || tower.weight === undefined) return undefined;
  const weights = appurtenanceMasses(station).map(({ low, high, carriedAt, mass }): Blown => {
    // What is spread comes down no lower than its upper end.
    const at = Math.min(carriedAt ?? Math.max(low, high), tower.top);
    return { low: at, high: at, weight: mass * GRAVITY, force: 0 };
  });
  const steady = station.loads.flatMap(({ shape, count, low, offset, weight }): Blown[] => {
    const place = Math.max(tower.foot + COUPLE_ARM, Math.min(low, tower.top));
    const turning = (count * (weight ?? 0) * GRAVITY * offset) / COUPLE_ARM;
    return [
      ...(shape.kind === 'wire' ? [{ low, high: low, weight: 0, force: count * (shape.pull ?? 0) }] : []),
      ...(turning > 0
        ? [
            { low: place, high: place, weight: 0, force: turning },
            { low: place - COUPLE_ARM, high: place - COUPLE_ARM, weight: 0, force: -turning },
          ]
        : []),
    ];
  });
  if (station.loads.some(({ shape }) => shape.kind === 'wire' && shape.pull === undefined)) return undefined;
  const own: Blown = { low: tower.foot, high: tower.top, weight: tower.weight * GRAVITY, force: 0 };
  return [own, ...atOnce([...worst, ...weights, ...steady])];
}

/** What acts at one height, as one. */
function atOnce(loads: readonly Blown[]): Blown[] {
  const by = new Map<string, Blown>();
  for (const load of loads) {
    const key = load.low.toFixed(4);
    const there = by.get(key);
    by.set(key, there ? { ...there, force: there.force + load.force, weight: there.weight + load.weight } : load);
  }
  return [...by.values()];
}
