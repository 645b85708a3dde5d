import { UNKNOWN_SOLIDITY, type WindDirection } from '../areas/index.ts';
import { nth } from '../foundation/index.ts';
import { METHOD_BY_ID, type Wind, type WindStructure } from '../methods/index.ts';
import {
  type Cut,
  type Overlaps,
  overlapsOpen,
  shapeReadings,
  slicesInWind,
  type Tower,
  towerItems,
  windStructureOf,
  withShapesRead,
} from '../structure/index.ts';
import type { CheckInput } from './check-input.ts';
import type { Scenario } from './model.ts';
import { possibleMethods, ratedSpeed } from './rated-case.ts';

/** What of the tower itself the wind meets. */
export type SeenTower = Pick<Scenario, 'solidity' | 'overlaps' | 'shapes'>;

/** What of the tower itself the wind meets, item by item. */
export function itemsOf(tower: Tower, seen: SeenTower): ReturnType<typeof towerItems> {
  return towerItems(withShapesRead({ tower }, seen.shapes).tower, seen.solidity, seen.overlaps);
}

/** What tells two ways of seeing a tower apart. */
export function keyOf(seen: SeenTower): string {
  const { solidity, overlaps, shapes } = seen;
  return `${solidity} ${overlaps} ${shapes.sides} ${shapes.pattern}`;
}

/** A scenario before any wind. */
export type StillScenario = Omit<Scenario, 'appurtenances' | 'bareTower'>;

/** At least one. */
export type SomeOf<T> = readonly [T, ...T[]];

/**
 * Every way in which a wind may meet what stands: each heading that matters, and each plausible reading of what nobody gave of
 * the tower's shape.
 *
 * @throws RangeError where there is none, which cannot be
 */
export function scenariosOf(input: CheckInput, bareTowerKnown: boolean): SomeOf<StillScenario> {
  const { station } = input;
  const [usualShapes] = shapeReadings([]);
  if (!bareTowerKnown) {
    const ofKind = (kind: WindStructure['kind']): StillScenario => ({
      windStructure: windStructureOf(station, kind),
      direction: 'face',
      solidity: 0,
      overlaps: 'both',
      shapes: usualShapes,
      own: 'demand',
      least: true,
      open: kind,
    });
    const isPole = station.tower.sections.some((section) => section.shape);
    return isPole ? [ofKind('pole')] : [ofKind('lattice'), ofKind('pole')];
  }
  const shapes = station.tower.sections.flatMap((section) => (section.shape ? [section.shape] : []));
  const turnsMatter = shapes.some(
    (shape) =>
      shape.kind === 'lattice' &&
      shape.solid.by !== 'drag' &&
      (shape.faces === 4 || shape.members === 'flat' || (shape.solid.by === 'areas' && shape.solid.flat > 0)),
  );
  const open = shapes.some((shape) => shape.kind === 'lattice' && shape.solid.by === 'unknown');
  const directions: readonly WindDirection[] = turnsMatter ? ['face', 'corner'] : ['face'];
  const solidities = open ? [UNKNOWN_SOLIDITY.least, UNKNOWN_SOLIDITY.most] : [UNKNOWN_SOLIDITY.least];
  const seen: readonly Overlaps[] = overlapsOpen(station.tower.sections) ? ['both', 'outer'] : ['both'];
  const [first, ...rest] = shapeReadings(station.tower.sections).flatMap((shapes) => {
    const windStructure = windStructureOf(withShapesRead(station, shapes), 'lattice');
    return solidities.flatMap((solidity) => {
      const open = `${solidity} ${shapes.sides} ${shapes.pattern}`;
      return seen.flatMap((overlaps) =>
        directions.map(
          (direction): StillScenario => ({
            windStructure,
            direction,
            solidity,
            overlaps,
            shapes,
            own: 'demand',
            least: true,
            open,
          }),
        ),
      );
    });
  });
  if (!first) throw new RangeError('a tower meets the wind in no scenario');
  return [first, ...rest];
}

/** Every scenario as one or several. */
export function each<From, To>(all: SomeOf<From>, split: (scenario: From) => SomeOf<To>): SomeOf<To> {
  const [first, ...others] = all;
  return [...split(first), ...others.flatMap((scenario) => [...split(scenario)])];
}

/**
 * The fastest wind of a rating that may be by the site's standard, or the site's own.
 *
 * @param siteSpeed in the basis of its method [m/s]
 * @returns the speed; undefined without such a rating [m/s]
 */
export function fastestRated(input: Pick<CheckInput, 'ratings' | 'method'>, siteSpeed: number): number | undefined {
  const { ratings, method } = input;
  const speeds = ratings.flatMap(({ of, claim, wind }) => {
    if (of !== 'tower' || !wind || !possibleMethods(wind).includes(method)) return [];
    const rows = claim.kind === 'area' ? claim.rows.map(({ speed }) => speed) : [];
    return [wind.speed, ...rows].flatMap((speed) =>
      speed === undefined ? [] : [ratedSpeed(speed, wind, METHOD_BY_ID[method]).speed],
    );
  });
  return speeds.length === 0 ? undefined : Math.max(siteSpeed, ...speeds);
}

/**
 * Whether what the standard leaves open of the tower's own drag changes it up to a speed.
 *
 * @param speed in the basis of the wind; undefined where none is rated by it [m/s]
 */
export function readTwoWays(wind: Wind, cut: Cut, direction: WindDirection, speed: number | undefined): boolean {
  if (speed === undefined || cut.slices.length === 0) return false;
  const high = slicesInWind(wind, cut, 'demand', direction);
  const low = slicesInWind(wind, cut, 'capacity', direction);
  return (
    low.steadyUpTo < speed ||
    low.coefficientOf.some(({ byFlow }, number) => byFlow.slow !== nth(high.coefficientOf, number).byFlow.slow)
  );
}
