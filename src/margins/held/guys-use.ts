import { nth } from '../../foundation/index.ts';
import { type Bound, type GuyRule, levelFactors, METHOD_BY_ID } from '../../methods/index.ts';
import type { HeldFailure } from '../../structure/index.ts';
import type { HoldsTo } from '../holds-to-ratio.ts';
import type { TowerInWind, TowerModel } from '../model.ts';
import { once } from '../tower-model.ts';
import { guyUse } from './held-formulas.ts';
import { planBlowing, SPEED_BEYOND, TO_STRENGTH } from './held-loads.ts';
import { askedOfHeld, type HeldModel, type HeldReading, heldModelOf } from './held-model.ts';
import { breakingOf, shareOfEnds } from './supports.ts';
import { type UseOfWay, windsOfWays, withoutLeast } from './winds-of-ways.ts';

/** The guy that is used most, against its own strength. */
export interface GuyUse {
  readonly ratio: number;
  /** Of the guys with everything that is not told at its good end. */
  readonly favourable: number;
  /** Tension [N], share of breaking, share of the ends [-], breaking strength [N]. */
  readonly by: readonly [number, number, number, number];
  readonly height: number;
  /** The winds that bring it to a ratio. */
  readonly reaching: (target: number) => HoldsTo | undefined;
  readonly inStillAir: number;
}

/** One way in which guys may be drawn, in one scenario, by one rule. */
interface Way {
  readonly rule: GuyRule;
  readonly reading: HeldReading;
  readonly scenario: number;
}

/**
 * Tension of the guys against what their strand and its ends bear, by the rule of the site's standard.
 *
 * u = T/(k·T_b·e)
 *
 * @param model of the tower
 * @returns ratio [-] and forces [N] of the level that is used most; undefined without guys that are told; or why there are none
 * @source derived
 */
export function guyUseOf(model: TowerModel): GuyUse | HeldFailure | undefined {
  return once(model, used);
}

function used(model: TowerModel): GuyUse | HeldFailure | undefined {
  const held = heldModelOf(model);
  if (!held || held.supports.guys.length === 0) return undefined;
  if (held.failure !== undefined) return held.failure;
  const { guyRules } = METHOD_BY_ID[model.input.method];
  const ways = guyRules.flatMap((rule) =>
    held.readings.flatMap((reading) => model.scenarios.map((_, scenario): Way => ({ rule, reading, scenario }))),
  );
  const { speed } = model.site;
  const found: { readonly way: Way; readonly use: Use }[] = [];
  for (const way of ways) {
    const use = useOf(model, held, way, model.scenarios, speed, 'unfavourable');
    if (typeof use === 'string') return use;
    found.push({ way, use });
  }
  const worst = found.reduce((most, each) => (each.use.ratio > most.use.ratio ? each : most));
  const beyond = useOf(model, held, worst.way, model.scenarios, speed * SPEED_BEYOND, 'unfavourable');
  if (typeof beyond === 'string') return beyond;
  const byWind: UseOfWay<Way> = (way, winds, at) => {
    const use = useOf(model, held, way, winds, at, 'unfavourable');
    return typeof use === 'string' ? Number.POSITIVE_INFINITY : use.ratio;
  };
  return {
    ...worst.use,
    favourable: Math.min(worst.use.ratio, leastOf(found)),
    reaching: (target) => windsOfWays(model, ways, worst.way, byWind, target),
    inStillAir: byWind(worst.way, withoutLeast(model.scenarios), 0),
  };
}

/** Every rule counts; of the readings the best. */
function leastOf(found: readonly { readonly way: Way; readonly use: Use }[]): number {
  const byReading = new Map<HeldReading, number>();
  for (const { way, use } of found) byReading.set(way.reading, Math.max(byReading.get(way.reading) ?? 0, use.atBest));
  return Math.min(...byReading.values());
}

interface Use {
  readonly ratio: number;
  readonly atBest: number;
  /** Tension [N], share of breaking, share of the ends [-], breaking strength [N]. */
  readonly by: readonly [number, number, number, number];
  readonly height: number;
}

function useOf(
  model: TowerModel,
  held: HeldModel,
  { rule, reading, scenario }: Way,
  winds: readonly TowerInWind[],
  speed: number,
  bound: Bound,
): Use | HeldFailure {
  const steady = rule.level === 'nominal' ? 1 : TO_STRENGTH;
  const blowing = planBlowing(model, nth(winds, scenario), speed, bound, factorOf(model, rule), steady);
  const asked = askedOfHeld(held, reading, blowing, () => 0);
  if (typeof asked === 'string') return asked;
  let worst: Use = { ratio: 0, atBest: 0, by: [0, 1, 1, 1], height: 0 };
  asked.tensions.forEach((tension, level) => {
    const guys = nth(held.supports.guys, level);
    const [breaking, ends] = [breakingOf(guys), shareOfEnds(guys.there.ends)];
    const ratio = guyUse.of(tension, rule.share, ends.least, breaking.least);
    const atBest = Math.max(worst.atBest, guyUse.of(tension, rule.share, ends.most, breaking.most));
    const by = [tension, rule.share, ends.least, breaking.least] as const;
    worst = ratio > worst.ratio ? { ratio, atBest, by, height: guys.height } : { ...worst, atBest };
  });
  return worst;
}

/** From the allowable level to the one a rule is for. */
function factorOf({ input, scenarios }: TowerModel, { level }: GuyRule): number {
  if (level === 'strength') return TO_STRENGTH;
  const { wind } = scenarios[0].appurtenances;
  return levelFactors(METHOD_BY_ID[input.method], wind.conditions.speedLevel).toNominalFactor / wind.toAllowableFactor;
}

/**
 * What of the guys is not told, and would say more of their strength.
 *
 * @param model of the tower
 * @returns pointers
 */
export function notToldOfGuys(model: TowerModel): readonly string[] {
  return model.input.station.tower.held.flatMap(({ guys }, index) => {
    if (!guys) return [];
    const at = `/tower/supportedAt/${index}`;
    return [
      ...(guys.grade === undefined && guys.breakingStrength === undefined ? [`${at}/grade`] : []),
      ...(guys.ends === undefined ? [`${at}/ends`] : []),
      ...(guys.tension === undefined ? [`${at}/tension`] : []),
    ];
  });
}
