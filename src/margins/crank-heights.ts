import { nth } from '../foundation/index.ts';
import { drawnOut } from '../structure/index.ts';
import { type Assessment, checksOfPlan } from './assess.ts';
import type { Check } from './checks/check.ts';
import { CHECK_KIND } from './checks/check-kinds.ts';
import { type LoweredInput, loweredInput } from './lowered-input.ts';
import { type Part, partsOf } from './parts.ts';
import { once } from './tower-model.ts';

/** A telescoping tower with its top at some height. */
export interface CrankedTo extends LoweredInput {
  /** Height of its top [m]. */
  readonly top: number;
  /** Of its travel: 0 nested, 1 drawn out [-]. */
  readonly share: number;
  /** Of what stands there in wind and by weight, sections slid in every order. */
  readonly checks: readonly Check[];
  readonly parts: readonly Part[];
  /** All its parts keep the margin in the site's wind, as far as they are decided, and none that is open could be over. */
  readonly keeps: boolean;
}

/** A telescoping tower at every height. */
export interface CrankHeights {
  /** From nested up. */
  readonly at: readonly CrankedTo[];
  /** The highest at which it keeps the margin in the site's wind, as at all lower ones it can stand at; none where it nowhere does. */
  readonly highest?: CrankedTo;
}

/** From nested to drawn out it is looked at in so many steps, quarters among them. @source derived */
const STEPS = 12;

/** The highest height is found to this share of the travel. @source derived */
const GRAIN = 1 / 200;

/**
 * How a telescoping tower fares at every height: looked at step by step, since what rides on a section may meet the one below
 * and a coefficient may jump, then closer between the last that keeps the margin and the first that does not.
 *
 * h = H_n + s·(H − H_n)
 *
 * @returns undefined where nothing slides, or the plan does not say how low it goes
 * @source common-practice
 */
export function crankHeightsOf(own: Assessment): CrankHeights | undefined {
  return once(own, heightsOf);
}

function heightsOf({ input }: Assessment): CrankHeights | undefined {
  const { tower } = input.station;
  const { nestedTop } = tower;
  const { top } = drawnOut(tower);
  if (nestedTop === undefined || !(top > nestedTop)) return undefined;
  const at = (share: number) => crankedTo(input, nestedTop + share * (top - nestedTop), share);
  const found = Array.from({ length: STEPS + 1 }, (_, step) => at(step / STEPS)).flatMap((each) => each ?? []);
  if (found.length <= STEPS) return undefined;
  // Where something is in the way it cannot come to stand, so that nothing is asked of it there.
  const reached = found.filter(({ clashes }) => clashes.length === 0);
  const count = reached.findIndex(({ keeps }) => !keeps);
  const highest = count < 0 ? reached.at(-1) : reached[count - 1];
  if (highest === undefined || count < 0) return { at: found, ...(highest ? { highest } : {}) };
  return { at: found, highest: closer(at, highest, nth(reached, count).share) };
}

/** By halves between one that keeps the margin and one that does not. */
function closer(at: (share: number) => CrankedTo | undefined, from: CrankedTo, to: number): CrankedTo {
  let [keeps, not] = [from, to];
  while (not - keeps.share > GRAIN) {
    const middle = at((keeps.share + not) / 2);
    if (middle?.keeps && middle.clashes.length === 0) keeps = middle;
    else not = (keeps.share + not) / 2;
  }
  return keeps;
}

function crankedTo(input: Assessment['input'], top: number, share: number): CrankedTo | undefined {
  const lowered = loweredInput(input, top);
  if (!lowered) return undefined;
  const checks = standing(checksOfPlan(lowered.input));
  const parts = partsOf(checks);
  const tower = parts.find(({ kind }) => kind === 'tower');
  const decided = tower?.verdict !== undefined && tower.verdict !== 'open';
  const keeps = decided && parts.every(({ verdict, checks: of }) => keepsMargin(verdict, of));
  return { ...lowered, top, share, checks, parts, keeps };
}

function keepsMargin(verdict: Part['verdict'], checks: readonly Check[]): boolean {
  if (verdict !== 'open') return verdict === undefined || verdict === 'within';
  // What is known of an open part counts as well.
  return checks.every(
    (check) => check.verdict === 'within' || (check.verdict === 'open' && (check.result?.ratio ?? 0) <= 1),
  );
}

/** The checks of what stands, in the wind and by its weight, without ice. */
export function standing(checks: readonly Check[]): readonly Check[] {
  return checks.filter(({ kind, withIce }) => !withIce && STANDING.has(CHECK_KIND[kind].loadedBy));
}

const STANDING: ReadonlySet<string> = new Set(['wind', 'weight']);
