import { actualSpeedHoldsTo } from '../formulas.ts';
import { inActualWind, steadyUpTo } from '../holds-to.ts';
import { type HoldsTo, inSiteBasis } from '../holds-to-ratio.ts';
import type { TowerInWind, TowerModel } from '../model.ts';

/** What one way in which a tower may be makes of a wind, given what is in it by scenario [-]. */
export type UseOfWay<W> = (way: W, winds: readonly TowerInWind[], speed: number) => number;

/**
 * The winds that bring the way that rules there to a ratio: at them no other way reaches more.
 *
 * u(V) = target, closed in on in V²
 *
 * @param model of the tower
 * @param ways in which it may be
 * @param ruling the one with the largest use in the design wind
 * @param use of each, growing with the wind [-]
 * @param target the use that is looked for [-]
 * @returns both speeds [m/s]; undefined where it has that use without wind, or no wind brings it there
 * @source derived
 */
export function windsOfWays<W>(
  model: TowerModel,
  ways: readonly W[],
  ruling: W,
  use: UseOfWay<W>,
  target: number,
): HoldsTo | undefined {
  const { wind } = model.scenarios[0].appurtenances;
  const { speed } = model.site;
  const [designed, blown] = [withoutLeast(model.scenarios), withoutLeast(inActualWind(model))];
  const design = lowestOfWays(ways, ruling, (way, at) => use(way, designed, at), speed, target);
  if (design === undefined) return undefined;
  const actual = actualSpeedHoldsTo.of(design, wind.toAllowableFactor, wind.directionFactor, wind.importance);
  const steady = Math.min(steadyUpTo(model.scenarios), steadyUpTo(blown)) >= Math.max(design, actual, speed);
  const found = steady ? actual : lowestOfWays(ways, ruling, (way, at) => use(way, blown, at), actual, target);
  return found === undefined ? undefined : inSiteBasis(model.input, design, found, steady);
}

/**
 * Winds without the least pressure of their method, which no wind brings: still air is still in them.
 *
 * @param winds what is in the wind by scenario
 * @returns the same, in order
 */
export function withoutLeast(winds: readonly TowerInWind[]): readonly TowerInWind[] {
  return winds.map((each) => ({ ...each, least: false }));
}

/**
 * The lowest of what a use grows with at which any way reaches a target, closed in on in its square.
 *
 * @param ways in which a tower may be
 * @param ruling the one to begin with
 * @param use of each, growing [-]
 * @param near a value to begin with [m/s, or the root of what else grows]
 * @param target the use that is looked for [-]
 * @returns that value [as near]; undefined where it has that use from the beginning, or never
 */
export function lowestOfWays<W>(
  ways: readonly W[],
  ruling: W,
  use: (way: W, speed: number) => number,
  near: number,
  target: number,
): number | undefined {
  let [way, so] = [ruling, near];
  for (let turn = 0; turn <= ways.length; turn += 1) {
    const found = closedInOn((at) => use(way, at), target, so);
    if (found === undefined) return undefined;
    so = found;
    if (ways.length === 1) return so;
    const others = ways.map((each) => ({ each, use: use(each, so) }));
    const most = others.reduce((worst, each) => (each.use > worst.use ? each : worst));
    if (most.use <= target * (1 + 1e-5)) return so;
    way = most.each;
  }
  return so;
}

/** Where a growing use reaches a target, closed in on in the square of what it grows with. */
function closedInOn(useAt: (speed: number) => number, target: number, near: number): number | undefined {
  let [low, lowUse] = [0, useAt(0)];
  if (lowUse >= target) return undefined;
  let [high, highUse] = [near ** 2, useAt(near)];
  for (let turn = 0; highUse < target; turn += 1) {
    if (turn === 12) return undefined;
    [low, lowUse] = [high, highUse];
    high *= 1.6;
    highUse = useAt(Math.sqrt(high));
  }
  for (let turn = 0; turn < 60 && high - low > 1e-7 * high; turn += 1) {
    const byLine = low + ((target - lowUse) * (high - low)) / (highUse - lowUse);
    // In turns along the line and half-way, so that neither a curve nor a leap keeps it from closing in.
    const between = turn % 3 === 2 || !Number.isFinite(byLine) ? (low + high) / 2 : byLine;
    const use = useAt(Math.sqrt(between));
    if (Math.abs(use - target) < 1e-7) return Math.sqrt(between);
    if (use < target) [low, lowUse] = [between, use];
    else [high, highUse] = [between, use];
  }
  return Math.sqrt(low);
}
