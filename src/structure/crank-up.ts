import {
  cite,
  defineFormula,
  evaluate,
  GRAVITY,
  listVariable,
  Refusal,
  type Trace,
  variable,
} from '../foundation/index.ts';
import { movedLoad } from './moved-load.ts';
import { drawnOut, posturesAt } from './posture.ts';
import type { Section, Station } from './station.ts';

export const hoistPullFormula = defineFormula({
  id: 'hoist-pull-of-crank-up',
  title: 'Pull of the hoist line where each section lifts the next, friction extra',
  symbol: 'P',
  unit: 'force',
  expression: 'sum((k - 1) .* W)',
  variables: [
    listVariable('k', 'number of each section from below, 1 the fixed one', 'one', 1, 10),
    listVariable('W', 'its weight, with all that rides on it', 'force', 0, 1e5),
  ],
  cite: cite('derived', 'section k rises (k − 1) times what the line takes in; equal work', 'derived'),
  of: (numbers: readonly number[], weights: readonly number[]) =>
    numbers.reduce((sum, number, index) => sum + (number - 1) * (weights[index] as number), 0),
});

/**
 * Pull of the hoist line of a crank-up in which each section lifts the next, a single line to the drum. Friction of
 * sheaves and guides is extra, and a section that jams can take any pull.
 *
 * P = Σ(k − 1)·W_k, k = 1 the fixed section
 *
 * @param masses of each section from the foot up, with all that rides on it; loads and mast with the uppermost [kg]
 * @returns the pull [N]
 * @throws Refusal where there are fewer than two sections, or a mass is none or less than nothing
 * @example hoistPull([80, 60, 50]) // 1569.064
 * @source derived
 */
export function hoistPull(masses: readonly number[], trace?: Trace): number {
  if (masses.length < 2 || !masses.every((mass) => Number.isFinite(mass) && mass >= 0)) {
    const says = `A hoist lifts a tower of two or more sections, each of 0 kg or more: ${masses.join(', ')}.`;
    throw new Refusal('hoisted-sections', says);
  }
  const numbers = masses.map((_, index) => index + 1);
  return evaluate(trace, hoistPullFormula, [numbers, masses.map((mass) => mass * GRAVITY)]);
}

export const nestedDropFormula = defineFormula({
  id: 'drop-of-nested-section',
  title: 'How far a section of a telescoping tower sinks when the tower is nested, all overlaps alike',
  symbol: 'd_k',
  unit: 'length',
  expression: '(k - 1) / (n - 1) * (H - H_n)',
  variables: [
    variable('k', 'number of the section from below, 1 the fixed one', 'one', 1, 10),
    variable('n', 'number of sections', 'one', 2, 10),
    variable('H', 'height of the top, extended', 'length', 2, 60),
    variable('H_n', 'height of the top, nested', 'length', 1, 30),
  ],
  cite: cite('derived', 'every section slides the same way into the one below it', 'derived'),
  of: (number: number, count: number, top: number, nested: number) => ((number - 1) / (count - 1)) * (top - nested),
});

/** A telescoping tower let down. */
export interface NestedTower {
  readonly sections: readonly Section[];
  /** How far each section has sunk [m], from the foot up. */
  readonly drops: readonly number[];
}

/**
 * The sections of a telescoping tower when it is nested, each sunk evenly into the one below it.
 *
 * d_k = (k − 1)/(n − 1)·(H − H_n)
 *
 * @param sections from the foot up, as they stand extended
 * @param nestedTop height of the top when nested [m]
 * @returns the sections where they then are, and how far each has sunk
 * @throws Refusal where there are fewer than two, the nested top is above the extended one, or a section would sink below the
 *   foot of the tower
 * @example nestedSections([{ low: 0, high: 6 }, { low: 5, high: 11 }, { low: 10, high: 16 }], 7).drops // [0, 4.5, 9]
 * @source derived
 */
export function nestedSections(sections: readonly Section[], nestedTop: number, trace?: Trace): NestedTower {
  const count = sections.length;
  const top = sections.at(-1)?.high ?? Number.NaN;
  const foot = sections[0]?.low ?? Number.NaN;
  if (count < 2 || !(nestedTop > foot && nestedTop <= top)) {
    const says = `A tower of ${count} sections from ${foot} m to ${top} m does not nest to ${nestedTop} m.`;
    throw new Refusal('nested-top', says, '/tower/nested');
  }
  const drops = sections.map((_, index) => evaluate(trace, nestedDropFormula, [index + 1, count, top, nestedTop]));
  const nested = sections.map((section, index) => {
    const drop = drops[index] as number;
    return { ...section, low: section.low - drop, high: section.high - drop };
  });
  const sunk = nested.findIndex(({ low }) => low < foot - 1e-6);
  if (sunk >= 0) {
    const says = `Nested to ${nestedTop} m, section ${sunk + 1} from below would reach below the tower's base. The nested top is higher, or the sections overlap unevenly.`;
    throw new Refusal('nested-below-foot', says, '/tower/nested');
  }
  return { sections: nested, drops };
}

/** Where something on a telescoping tower is when the tower is nested. */
export interface NestedPlace {
  readonly height: number;
  /** Number of the section that carries it, 1 the fixed one. */
  readonly section: number;
  /** Its section has sunk so far that it meets the rim of the one outside: it must come off, or the tower does not nest. */
  readonly clashes: boolean;
}

/** Which of two sections holds what is just at the rim of the outer one. */
export type AtRim = 'inner' | 'outer';

/**
 * The section that carries something: where two overlap the outer one, above the tower the uppermost.
 *
 * the first whose upper end is above it
 *
 * @param height of the thing [m]
 * @param atRim which holds what is just at a rim: the inner one is lifted and is in the way
 * @returns its place among the sections [-]
 * @example sectionCarrying([{ low: 0, high: 6 }, { low: 5, high: 11 }], 6, 'inner') // 1
 */
export function sectionCarrying(sections: readonly Pick<Section, 'high'>[], height: number, atRim: AtRim): number {
  const slack = atRim === 'inner' ? -1e-9 : 1e-9;
  const found = sections.findIndex(({ high }) => height < high + slack);
  return found < 0 ? sections.length - 1 : found;
}

/**
 * Where something fixed to a telescoping tower is when the tower is nested. Where two sections overlap it is on the outer
 * one, and above the tower it rides with the uppermost.
 *
 * h' = h − d_k
 *
 * @param extended sections from the foot up, extended
 * @param height where it is with the tower extended [m]
 * @param atRim which section holds what is just at a rim: the inner one is lifted and is in the way
 * @returns its height [m], its section, and whether it is in the way
 * @example nestedPlace([{ low: 0, high: 6 }, { low: 5, high: 11 }], nestedSections([{ low: 0, high: 6 }, { low: 5, high: 11 }], 7), 10.5) // { height: 6.5, section: 2, clashes: false }
 * @source derived
 */
export function nestedPlace(
  extended: readonly Section[],
  nested: NestedTower,
  height: number,
  atRim: AtRim = 'inner',
): NestedPlace {
  const index = sectionCarrying(extended, height, atRim);
  const sunk = height - (nested.drops[index] as number);
  const rim = index === 0 ? undefined : (nested.sections[index - 1] as Section).high;
  return { height: sunk, section: index + 1, clashes: rim !== undefined && sunk < rim - 1e-9 };
}

/** A station with its tower nested, and what on it then is in the way. */
export interface NestedStation {
  readonly station: Station;
  /** Names of the loads that meet the rim of an outer section. */
  readonly clashes: readonly string[];
}

/**
 * The whole station in its lowered posture: sections nested, mast and loads sunk with what carries them, lines from their
 * own lower end to where their upper end has sunk. A wire still runs to its own far end, and keeps the pull it is given
 * with, which it would not; a frequency stays that of the tower extended, which is lower.
 *
 * h' = h − d_k
 *
 * @returns the station nested, and the loads in the way; undefined where the tower does not telescope, its nested top is
 *   or its sections are not given, it hangs in guys, which are slack then, or is held above its fixed section
 * @throws Refusal as `nestedSections`
 * @source derived
 */
export function nestedStation(station: Station): NestedStation | undefined {
  const { nestedTop } = station.tower;
  if (nestedTop === undefined || !canSlide(station.tower)) return undefined;
  const { tower } = station;
  const nested = nestedSections(drawnOut(tower).sections, nestedTop);
  const drops = nested.drops.map((drop, index) => drop - (tower.drops?.[index] ?? 0));
  return movedTo(station, nestedTop, { sections: nested.sections, drops });
}

/**
 * The whole station with its top at another height, as `nestedStation`, in every order in which its sections may slide; all
 * alike first.
 *
 * h' = h − d_k
 *
 * @param top height of the top there [m]
 * @returns a station for each order; none where nothing slides so, or its sections do not come to stand there
 * @source derived
 */
export function stationsAt(station: Station, top: number): readonly NestedStation[] {
  if (!canSlide(station.tower)) return [];
  return posturesAt(station.tower, top).map((posture) => movedTo(station, top, posture));
}

function canSlide({ telescopes, sectionsGiven, support, held, sections, foot }: Station['tower']): boolean {
  const fixed = sections[0]?.high ?? foot;
  const free = !held.some(({ height, by }) => by === 'guys' || height > fixed);
  return telescopes && sectionsGiven && support !== 'guyed' && free;
}

function movedTo(station: Station, top: number, posture: NestedTower): NestedStation {
  const { tower, mast, loads, cables } = station;
  const ride = tower.top - top;
  const clashes: string[] = [];
  const sunkLoads = loads.map((load) => {
    if (load.on === 'mast') return movedLoad(load, -ride);
    const place = nestedPlace(tower.sections, posture, load.low);
    if (place.clashes) clashes.push(load.name);
    return movedLoad(load, place.height - load.low);
  });
  const sunkCables = cables.map((run) => {
    const high = nestedPlace(tower.sections, posture, run.high, 'outer').height;
    return { ...run, low: Math.min(nestedPlace(tower.sections, posture, run.low).height, high), high };
  });
  const sunkMast = mast && {
    ...mast,
    tip: mast.tip - ride,
    ...(mast.foot !== undefined && { foot: mast.foot - ride }),
    ...(mast.bearing !== undefined && { bearing: mast.bearing - ride }),
  };
  const { drops: before, ...standing } = tower;
  const drops = posture.drops.map((drop, index) => drop + (before?.[index] ?? 0));
  const isDown = drops.some((drop) => Math.abs(drop) > 1e-9);
  return {
    station: {
      ...station,
      tower: { ...standing, top, sections: posture.sections, ...(isDown ? { drops } : {}) },
      ...(sunkMast && { mast: sunkMast }),
      loads: sunkLoads,
      cables: sunkCables,
    },
    clashes,
  };
}
