import { evaluate, GRAVITY, nth, type Trace, under } from '../../foundation/index.ts';
import {
  allowedMomentOfPole,
  PLAUSIBLE_YIELD,
  type PoleAsColumn,
  ratioInBending,
  type Section,
  secondMomentOfTube,
  type Tubing,
  tubeSection,
  weightAsAtTop,
  weightsNotGiven,
} from '../../structure/index.ts';
import { explainAsked } from '../explain-comparison.ts';
import { agree } from '../explain-slices.ts';
import { inActualWind, steadyUpTo } from '../holds-to.ts';
import { windsHeld } from '../holds-to-ratio.ts';
import type { Demand, TowerModel } from '../model.ts';
import { demandOf, once, steadyNotGiven } from '../tower-model.ts';
import { type Check, type CheckResult, judged, openCheck, settled } from './check.ts';
import type { CheckContext, CheckKind } from './check-kind.ts';

/** A round steel pole that stands by itself, against its own steel: beside a rating a witness, without one what decides. */
export const poleSteelKind: CheckKind<'pole-steel'> = {
  kind: 'pole-steel',
  part: 'tower',
  assess: (context) => poleSteelCheck(context),
  explain: (context, checks, trace) => {
    const [check] = checks;
    if (check?.result) under(trace, 'steel of the pole', () => explain(context, trace));
  },
  loadedBy: 'wind',
  room: undefined,
};

const STEEL = { id: 'pole-steel', kind: 'pole-steel', at: '/tower' } as const;

/** Of an allowable strength by AISC 360, what TIA-222-G and -H take: 0.6 of 0.9 of it, over 1/1.67. @source tia222-h */
const SHARE_BY_TIA = 0.6 * 0.9 * 1.67;

interface PoleSection extends Section {
  readonly tubing: Tubing;
}

/** The sections of a round steel pole that stands by itself and tells its walls; none of any other tower. */
function poleSections({ tower }: TowerModel['input']['station']): readonly PoleSection[] {
  if ((tower.support !== 'free' && tower.support !== 'roof') || tower.telescopes) return [];
  const told = tower.sections.filter(
    (section): section is PoleSection =>
      section.shape?.kind === 'pole' &&
      section.shape.sides === 0 &&
      !section.notGiven?.includes('sides') &&
      section.tubing?.material === 'steel',
  );
  return told.length === tower.sections.length ? told : [];
}

/**
 * Whether the steel of a pole is all there is to go by, and all there need be: a pole in one piece, of which no manufacturer
 * says anything.
 *
 * @param model of the tower
 * @source project-rule
 */
export function goesBySteelAlone(model: Pick<TowerModel, 'input'>): boolean {
  const { input } = model;
  const pieces = poleSections(input.station).filter(({ within }) => !within);
  return pieces.length === 1 && !input.ratings.some(({ of, claim }) => of === 'tower' && claim.kind !== 'weight');
}

function poleSteelCheck({ model, unfavourable }: CheckContext): readonly Check[] {
  const sections = poleSections(model.input.station);
  if (sections.length === 0) return [];
  const found = worstOf(model, unfavourable, 'least');
  if (found === undefined) return [openCheck(STEEL, 'not-computed')];
  const favourable = demandOf(model, model.scenarios, model.site.speed, 'favourable', true);
  const atBest = worstOf(model, favourable, 'most')?.ratio ?? found.ratio;
  const steady = steadyUpTo(model.scenarios);
  const byWind = (scenarios: Parameters<typeof demandOf>[1]) => (speed: number) =>
    worstOf(model, demandOf(model, scenarios, speed, 'unfavourable', false), 'least')?.ratio ??
    Number.POSITIVE_INFINITY;
  const actual = inActualWind(model);
  const result: CheckResult = {
    ...settled({
      ratio: found.ratio,
      of: 'bending',
      demand: found.moment,
      capacity: found.allowed,
      height: found.z,
    }),
    ratioRange: [Math.min(atBest, found.ratio), found.ratio],
    ...windsHeld(model, {
      design: byWind(model.scenarios),
      actual: byWind(actual),
      steadyUpTo: Math.min(steady, steadyUpTo(actual)),
    }),
  };
  const missing = [...new Set([...weightsNotGiven(model.input.station), ...steadyNotGiven(model)])];
  const check = judged(STEEL, result, {
    margin: model.input.wanted.margin,
    favourable: atBest,
    missing,
    because: 'not-given',
    asks: yieldsNotGiven(sections),
  });
  return besideRating(model, check);
}

/** A rating counts where it speaks; beside it the steel is a witness, or a contradiction that forbids a firm word. */
function besideRating(model: TowerModel, check: Check): readonly Check[] {
  if (model.claims.length + model.momentClaims.length === 0) return [check];
  if (check.verdict === 'over') return [openCheck(STEEL, 'contradicts-rating', [], check.result)];
  return check.verdict === 'open' ? [] : [check];
}

const yieldsNotGiven = (sections: readonly PoleSection[]): readonly string[] => [
  ...new Set(sections.filter(({ tubing }) => tubing.yieldStrength === undefined).map(({ at }) => `${at}/yield`)),
];

interface Worst {
  readonly ratio: number;
  readonly z: number;
  readonly moment: number;
  readonly allowed: number;
  readonly explain: (trace: Trace) => void;
}

/** The place at which the steel is used most; undefined where that of one is not shown. */
function worstOf(model: TowerModel, demand: Demand, yieldEnd: 'least' | 'most'): Worst | undefined {
  const pole = once(model, poleAsColumn);
  const sections = poleSections(model.input.station);
  const { pullShear, eccentricWeightShear } = model.dead;
  let worst: Worst | undefined;
  for (const [index, comparison] of model.comparisons.entries()) {
    if (comparison.of !== 'moment') continue;
    const { level } = comparison;
    const { z } = nth(model.levels, level);
    const tube = tubeAt(nth(sections, comparison.section), z, yieldEnd);
    for (const [scenario, { wind, appurtenances, bareTower }] of demand.scenarios.entries()) {
      const steady = nth(pullShear, level) + nth(eccentricWeightShear, level);
      const shear = nth(appurtenances.shear, level) + (bareTower ? nth(bareTower.shear, level) : 0) + steady;
      const moment = nth(wind, index) + nth(demand.dead, index);
      const forces = { shear, torsion: nth(appurtenances.torsion, level) };
      const allowed = allowedMomentOfPole(tube, pole, forces, SHARE_BY_TIA);
      if (allowed === undefined) return undefined;
      const ratio = ratioInBending.of(moment, allowed);
      if (worst !== undefined && ratio <= worst.ratio) continue;
      const explain = (trace: Trace) => {
        agree(explainAsked(model, { comparison, scenario }, trace), moment, 'moment in the pole');
        allowedMomentOfPole(tube, pole, forces, SHARE_BY_TIA, trace);
        evaluate(trace, ratioInBending, [moment, allowed]);
      };
      worst = { ratio, z, moment, allowed, explain };
    }
  }
  return worst;
}

/** As it is at a height of a taper. */
function tubeAt({ low, high, shape, tubing }: PoleSection, z: number, yieldEnd: 'least' | 'most') {
  const [below, above] = shape?.width ?? [0, 0];
  const outside = below + ((above - below) * (z - low)) / (high - low);
  return { ...tubing, outside, yieldStrength: tubing.yieldStrength ?? PLAUSIBLE_YIELD[yieldEnd] };
}

function poleAsColumn(model: TowerModel): PoleAsColumn {
  const { station } = model.input;
  const { tower } = station;
  const sections = poleSections(station);
  const aloft = nth(model.dead.weight, model.levels.length - 1);
  const own = sections.reduce((sum, section) => {
    const tubes = [section.low, section.high].map((z) => tubeSection(tubeAt(section, z, 'least')).weightPerLength);
    return sum + ((nth(tubes, 0) + nth(tubes, 1)) / 2) * (section.high - section.low);
  }, 0);
  const narrowest = sections.flatMap((section) =>
    (section.shape?.width ?? []).map((width) => secondMomentOfTube.of(width, section.tubing.wall)),
  );
  return {
    height: tower.top - tower.foot,
    weight: weightAsAtTop.of(GRAVITY, aloft, Math.max(own, tower.weight ?? 0)),
    leastSecondMoment: Math.min(...narrowest),
  };
}

function explain({ model, unfavourable }: CheckContext, trace: Trace): void {
  const { station } = model.input;
  const aloft = nth(model.dead.weight, model.levels.length - 1);
  const pole = once(model, poleAsColumn);
  const own = pole.weight / GRAVITY - aloft;
  evaluate(trace, weightAsAtTop, [GRAVITY, aloft, own / 0.32]);
  if (station.tower.sections.length > 0) worstOf(model, unfavourable, 'least')?.explain(trace);
}
