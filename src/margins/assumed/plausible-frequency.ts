import { atMost } from '../../foundation/index.ts';
import { METHOD_BY_ID } from '../../methods/index.ts';
import {
  firstModeAtLeast,
  firstModeAtMost,
  latticeModeAtLeast,
  type Station,
  type Tower,
} from '../../structure/index.ts';
import type { CheckInput } from '../check-input.ts';

/** The lowest and the highest that a frequency may plausibly be [Hz]. */
interface Frequencies {
  readonly least: number;
  /** The highest that is flexible. */
  readonly between: number;
  readonly most: number;
}

/** A lattice no higher than so many times its least width is stiff. @source common-practice */
const STOUT_LATTICE = 4;
/** A pole no higher than so many times its least width is stiff. @source derived */
const STOUT_POLE = 15;
/** A frequency that counts as under a limit without being told from it. */
const JUST_UNDER = 1 - 1e-9;
/** Tall poles and extended crank-ups may swing half as often as low ones, from low to tall [m]; a 20 m crank-up has 0.49 Hz. @source derived */
const LOW = 6;
const TALL = 12;
const TALL_SHARE = 0.5;

/**
 * Frequency of a cantilever of steel or aluminium with its own mass once more at its top, times height squared over width
 * [Hz·m]: √(3/1.243)/(2π)·√(E/ρ)·r/b, √(E/ρ) 5,048 m/s. Of a lattice r = b/3: three legs, r² = b²/6, and bracing half as
 * heavy as they; of a thin round pole r = b/√8.
 *
 * @source derived
 */
export const LADEN_CANTILEVER = { lattice: 416, pole: 441 } as const;

/**
 * What the lowest frequency of a tower may be of which nobody tells it, where the standard counts it. Where its members are
 * known, Dunkerley's sum, and Rayleigh's quotient where even that is under the limit; an estimate above the limit proves
 * nothing of a pole. Else by height, and for what stands at one height by width, and weight where that is known.
 *
 * @param input the plan as it says itself
 * @returns both ends [Hz]; undefined where the standard does not count it, the tower leans on something, or is too stout or wide to be flexible
 * @source common-practice
 */
export function plausibleFrequency(input: CheckInput): Frequencies | undefined {
  const { method, station } = input;
  const { flexibleBelow: limit } = METHOD_BY_ID[method];
  const { tower } = station;
  const leans = tower.support === 'guyed' || tower.support === 'bracketed';
  if (limit === undefined || tower.frequency !== undefined || leans || isStout(tower)) return undefined;
  const under = limit * JUST_UNDER;
  const byMembers = firstModeAtLeast(station);
  const least = byMembers === undefined || byMembers >= under ? leastBySize(station, limit) : byMembers;
  if (least === undefined) return undefined;
  if (byMembers === undefined) return { least: Math.min(least, under), between: under, most: limit };
  const most = Math.min(limit, firstModeAtMost(station) ?? limit);
  return { least: Math.min(byMembers, under), between: Math.min(most, under), most };
}

const heightOf = ({ foot, top }: Tower) => top - foot;

function widthsOf({ sections }: Tower): { readonly least: number; readonly mean: number } | undefined {
  const widths = sections.flatMap(({ shape }) => shape?.width ?? []);
  if (widths.length < 2 * sections.length) return undefined;
  return { least: Math.min(...widths), mean: widths.reduce((sum, width) => sum + width, 0) / widths.length };
}

const isLattice = ({ sections }: Tower) => sections.every(({ shape }) => shape?.kind === 'lattice');

function isStout(tower: Tower): boolean {
  const widths = widthsOf(tower);
  if (widths === undefined || isExtended(tower)) return false;
  return atMost(heightOf(tower), (isLattice(tower) ? STOUT_LATTICE : STOUT_POLE) * widths.least);
}

/** Nested, its sections stand inside each other. */
function isExtended({ telescopes, nestedTop, top }: Tower): boolean {
  return telescopes && (nestedTop === undefined || top > nestedTop);
}

/**
 * The lowest plausible by height and width alone.
 *
 * n = k·b/h², b the mean width
 *
 * @returns undefined of a lattice that stands at one height and is not under the limit so
 */
function leastBySize(station: Station, limit: number): number | undefined {
  const { tower } = station;
  const byWeight = latticeModeAtLeast(station);
  if (byWeight !== undefined) return byWeight < limit ? byWeight : undefined;
  const height = heightOf(tower);
  const widths = widthsOf(tower);
  const lattice = isLattice(tower);
  const constant = lattice ? LADEN_CANTILEVER.lattice : LADEN_CANTILEVER.pole;
  const byWidth = widths === undefined ? Number.POSITIVE_INFINITY : (constant * widths.mean) / height ** 2;
  if (lattice && !isExtended(tower)) return byWidth < limit ? byWidth : undefined;
  const share = Math.min(1, Math.max(0, (height - LOW) / (TALL - LOW)));
  return Math.min(byWidth, limit * (1 - share * (1 - TALL_SHARE)));
}
