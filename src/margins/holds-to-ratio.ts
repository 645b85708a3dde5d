import { lowestReaching } from '../foundation/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import type { Tower } from '../structure/index.ts';
import { FASTEST_MILE_OFFSET } from '../wind/index.ts';
import type { CheckInput } from './check-input.ts';
import type { TowerModel } from './model.ts';

/** The lowest winds at which a check reaches ratio 1, the dead load kept. */
export interface HoldsTo {
  /** In the basis in which the site's speed was given [m/s]. */
  readonly design: number;
  /** Actual 3-second gust at 10 m over open ground [m/s]. */
  readonly gust: number;
  /** No coefficient changes on the way, so that one line of the working gives it. */
  readonly steady: boolean;
}

/** How the ratio of a check goes with the wind: in the design wind, and in a wind that has come. */
export interface RatioByWind {
  readonly design: (speed: number) => number;
  readonly actual: (speed: number) => number;
  /** Speed up to which no coefficient changes, in either wind [m/s]. */
  readonly steadyUpTo: number;
}

/** What a check holds to, and the gust that leaves the wanted margin where a tower can be lowered. */
export interface WindsHeld {
  readonly holdsTo?: HoldsTo;
  readonly keepsMarginTo?: number;
  /** Its ratio without wind, where that alone leaves less than the wanted margin. */
  readonly ratioWithoutWind?: number;
}

/**
 * The lowest winds at which a check reaches ratio 1, and the gust at which it reaches one less the wanted margin where the
 * tower can be lowered before it.
 *
 * u(V) = 1; u(V) = 1 − m
 *
 * @source derived
 */
export function windsHeld(model: TowerModel, ratio: RatioByWind): WindsHeld {
  return heldBy(model, windsReaching(model.input, ratio, model.site.speed), ratio.design(0));
}

/**
 * What a check holds to, from how the winds that bring it to a ratio are found.
 *
 * u(V) = 1; u(V) = 1 − m; u(0) where it is over 1 − m
 *
 * @param reaching the winds that bring it to a ratio, where there are any
 * @param still its ratio without wind [-]
 * @source derived
 */
export function heldBy(model: TowerModel, reaching: (ratio: number) => HoldsTo | undefined, still: number): WindsHeld {
  const kept = 1 - model.input.wanted.margin;
  const holdsTo = reaching(1);
  const { station, gustsAtMargin } = model.input;
  const keeps = holdsTo && (gustsAtMargin || canBeLowered(station)) ? reaching(kept) : undefined;
  return {
    ...(holdsTo ? { holdsTo } : {}),
    ...(keeps ? { keepsMarginTo: keeps.gust } : {}),
    ...(Number.isFinite(still) && still > kept ? { ratioWithoutWind: still } : {}),
  };
}

/**
 * Whether a tower can be lowered, so that a gust at which to do it is worth working out.
 *
 * @example canBeLowered({ tower: { telescopes: true } }) // true
 */
export function canBeLowered(station: { readonly tower: Pick<Tower, 'hingeHeight' | 'telescopes'> }): boolean {
  return station.tower.hingeHeight !== undefined || station.tower.telescopes;
}

/**
 * The lowest winds at which a check reaches a ratio; none where it has it without wind, or no wind brings it there.
 *
 * u(V) = target, looked for upward
 *
 * @param speed of the site, in the basis of its method [m/s]
 * @returns both speeds [m/s] by the ratio, above 0 [-]
 * @source derived
 */
export function windsReaching(input: Pick<CheckInput, 'method' | 'site'>, ratio: RatioByWind, speed: number) {
  const ends = (of: (speed: number) => number): KnownRatios => ({ of, still: of(0), near: speed, here: of(speed) });
  const [design, actual] = [ends(ratio.design), ends(ratio.actual)];
  return (target: number): HoldsTo | undefined => {
    const designSpeed = lowestSpeed(design, target, ratio.steadyUpTo);
    const actualSpeed = lowestSpeed(actual, target, ratio.steadyUpTo);
    if (designSpeed === undefined || actualSpeed === undefined) return undefined;
    return inSiteBasis(input, designSpeed, actualSpeed, Math.max(designSpeed, actualSpeed) <= ratio.steadyUpTo);
  };
}

/**
 * A speed of the method's and an actual one, in the words in which the plan gave its wind.
 *
 * design: in the basis of the plan; gust: 3 s, 10 m, in the open
 *
 * @param design speed in the basis of the method [m/s]
 * @param actual speed of a wind that has come, in the basis of the method [m/s]
 * @param steady whether no coefficient changes on the way
 * @returns both speeds [m/s]; undefined where so little wind has no fastest mile
 */
export function inSiteBasis(
  input: Pick<CheckInput, 'method' | 'site'>,
  design: number,
  actual: number,
  steady: boolean,
): HoldsTo | undefined {
  const { method: id, site } = input;
  const method = METHOD_BY_ID[id];
  const basis = site.basis ?? method.basis;
  // So little wind has no fastest mile; it holds to nothing worth a figure.
  if (basis === 'fastest-mile' && method.fromOwnBasis(design, 'gust3-nominal', 'rating') <= FASTEST_MILE_OFFSET) {
    return undefined;
  }
  const asItIs = site.returnYears === undefined || method.speedLevel(basis) === 'strength';
  const ofYears = asItIs ? 1 : method.returnPeriod.speedFor(1, site.returnYears);
  return {
    // Turned round with the same ratio by which the site's speed was taken.
    design: method.fromOwnBasis(design / ofYears, basis, 'rating'),
    gust: method.actualGust(actual),
    steady,
  };
}

/** The use by the wind, and what it is without wind and at a speed near by. */
interface KnownRatios {
  readonly of: (speed: number) => number;
  readonly still: number;
  readonly near: number;
  readonly here: number;
}

function lowestSpeed(ratio: KnownRatios, target: number, steadyUpTo: number): number | undefined {
  const { still, near, here } = ratio;
  if (still >= target || !(here > still) || !Number.isFinite(here)) return undefined;
  // Where nothing changes on the way the ratio grows with the square of the speed.
  const guess = near * Math.sqrt((target - still) / (here - still));
  if (guess <= steadyUpTo && near <= steadyUpTo) {
    const found = bySquares(ratio, target, guess);
    if (found !== undefined) return found;
  }
  const reaches = (speed: number) => ratio.of(speed) >= target;
  return lowestReaching(reaches, 0.3 * guess, 3 * guess, 90) ?? lowestReaching(reaches, 3 * guess, 30 * guess, 200);
}

/** Close in on a growing use by secants in the square of the speed; undefined where they do not settle. */
function bySquares(ratio: KnownRatios, target: number, guess: number): number | undefined {
  let [x0, y0] = [0, ratio.still - target];
  let [x1, y1] = [guess * guess, ratio.of(guess) - target];
  for (let turn = 0; turn < 12; turn += 1) {
    if (Math.abs(y1) < 1e-12) return Math.sqrt(x1);
    if (y1 === y0) return undefined;
    const x2 = x1 - (y1 * (x1 - x0)) / (y1 - y0);
    if (!(x2 > 0)) return undefined;
    [x0, y0, x1, y1] = [x1, y1, x2, ratio.of(Math.sqrt(x2)) - target];
  }
  return Math.abs(y1) < 1e-9 ? Math.sqrt(x1) : undefined;
}
