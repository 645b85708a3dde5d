import { lowestReaching } from '../foundation/index.ts';
import { fromOwnBasis, METHOD_BY_ID } from '../methods/index.ts';
import { basicWindFor, FASTEST_MILE_OFFSET } from '../wind/index.ts';
import type { HoldsTo } from './holds-to.ts';
import type { Inquiry } from './inquiry.ts';

/** How the use of a link goes with the wind: in the design wind, and in a wind that has come. */
export interface UseByWind {
  readonly design: (speed: number) => number;
  readonly actual: (speed: number) => number;
  /** Speed up to which no coefficient changes, in either wind [m/s]. */
  readonly steadyUpTo: number;
}

/**
 * The lowest winds at which a link reaches a use.
 *
 * u(V) = target, looked for upward
 *
 * @param inquiry the plan in SI [-]
 * @param use how its use goes with the wind [-]
 * @param speed of the site, in the basis of its method [m/s]
 * @param target the use [-], above 0
 * @returns both speeds [m/s]; undefined where the link has it without wind, or no wind brings it there
 * @source derived
 */
export function holdsToUse(
  inquiry: Pick<Inquiry, 'method' | 'site'>,
  use: UseByWind,
  speed: number,
  target: number,
): HoldsTo | undefined {
  const design = lowestSpeed(use.design, speed, target, use.steadyUpTo);
  const actual = lowestSpeed(use.actual, speed, target, use.steadyUpTo);
  if (design === undefined || actual === undefined) return undefined;
  return inWords(inquiry, design, actual, Math.max(design, actual) <= use.steadyUpTo);
}

/**
 * A speed of the method's and an actual one, in the words in which the plan gave its wind.
 *
 * design: in the basis of the plan; gust: 3 s, 10 m, in the open
 *
 * @param inquiry the plan in SI [-]
 * @param design speed in the basis of the method [m/s]
 * @param actual speed of a wind that has come, in the basis of the method [m/s]
 * @param steady whether no coefficient changes on the way [-]
 * @returns both speeds [m/s]; undefined where so little wind has no fastest mile
 * @source derived
 */
export function inWords(
  inquiry: Pick<Inquiry, 'method' | 'site'>,
  design: number,
  actual: number,
  steady: boolean,
): HoldsTo | undefined {
  const { method: id, site } = inquiry;
  const method = METHOD_BY_ID[id];
  const basis = site.basis ?? method.basis;
  // So little wind has no fastest mile; it holds to nothing worth a figure.
  if (basis === 'fastest-mile' && fromOwnBasis(method, design, 'gust3-nominal', 'rating') <= FASTEST_MILE_OFFSET) {
    return undefined;
  }
  const ofYears = site.returnYears === undefined ? 1 : basicWindFor(1, site.returnYears);
  const nominalMap = method.id === 'tia222-g' && basis === 'gust3-strength';
  return {
    // Turned round with the same ratio by which the site's speed was taken.
    design: nominalMap ? design : fromOwnBasis(method, design / ofYears, basis, 'rating'),
    gust: method.actualGust(actual),
    steady,
  };
}

function lowestSpeed(
  use: (speed: number) => number,
  near: number,
  target: number,
  steadyUpTo: number,
): number | undefined {
  const still = use(0);
  const here = use(near);
  if (still >= target || !(here > still) || !Number.isFinite(here)) return undefined;
  // Where nothing changes on the way the use grows with the square of the speed.
  const guess = near * Math.sqrt((target - still) / (here - still));
  if (guess <= steadyUpTo && near <= steadyUpTo) {
    const found = bySquares(use, target, guess);
    if (found !== undefined) return found;
  }
  const reaches = (speed: number) => use(speed) >= target;
  return lowestReaching(reaches, 0.3 * guess, 3 * guess, 90) ?? lowestReaching(reaches, 3 * guess, 30 * guess, 200);
}

/** Close in on a growing use by secants in the square of the speed; undefined where they do not settle. */
function bySquares(use: (speed: number) => number, target: number, guess: number): number | undefined {
  let [x0, y0] = [0, use(0) - target];
  let [x1, y1] = [guess * guess, use(guess) - target];
  for (let turn = 0; turn < 12; turn += 1) {
    if (Math.abs(y1) < 1e-12) return Math.sqrt(x1);
    if (y1 === y0) return undefined;
    const x2 = x1 - (y1 * (x1 - x0)) / (y1 - y0);
    if (!(x2 > 0)) return undefined;
    [x0, y0, x1, y1] = [x1, y1, x2, use(Math.sqrt(x2)) - target];
  }
  return Math.abs(y1) < 1e-9 ? Math.sqrt(x1) : undefined;
}
