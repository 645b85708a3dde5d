import { nth, remember, type Trace, under } from '../../foundation/index.ts';
import type { Bound } from '../../methods/index.ts';
import {
  allWeightsNotGiven,
  type BlockComparison,
  blockFooting,
  type ConcreteInSoil,
  deadLoadOf,
  type FootLoad,
  type Foundation,
  openFacts,
  type PierComparison,
  type Profile,
  pierFooting,
  profileOf,
  type SlicesInWind,
  type SoilFact,
  type SoilHolds,
  type SoilReading,
  type SoilUse,
  sliceForces,
  soilHolds,
  soilReading,
  soilUse,
} from '../../structure/index.ts';
import type { Comparison } from '../comparisons.ts';
import { holdsTo, inActualWind, steadyUpTo } from '../holds-to.ts';
import { heldBy, type RatioByWind, windsReaching } from '../holds-to-ratio.ts';
import type { TowerInWind, TowerModel } from '../model.ts';
import { explainLegs, type Reactions, withoutWindOf } from '../reactions.ts';
import { forcePerArea, type RoomByCheck, type RoomPlace } from '../room-by-check.ts';
import { leansTooFar } from '../sway.ts';
import { once, steadyNotGiven } from '../tower-model.ts';
import { type ComparisonRatio, ratioInCalm } from '../tower-ratio.ts';
import { type Check, type CheckResult, type Compared, judged, openCheck, withIce } from './check.ts';
import type { CheckContext, CheckKind } from './check-kind.ts';

/** What the footing does, beside its ratio. */
export interface FoundationAnswer {
  readonly kind: Foundation['kind'];
  readonly load: FootLoad;
  readonly block?: BlockComparison;
  readonly pier?: PierComparison;
  readonly soil: SoilAnswer;
  /** Twice the lateral value of the soil is counted, as its plan says it may. */
  readonly isolatedPole?: true;
}

/** By what the concrete holds in its soil. */
export interface SoilAnswer {
  /** With what is open answered against it: by the base alone, by the sides alone, and by both where they count. */
  readonly base?: SoilUse;
  readonly sides?: SoilUse;
  readonly both?: SoilUse;
  /** The ratio if one fact alone were answered for it. */
  readonly ratioIf: readonly { readonly fact: SoilFact; readonly ratio: number }[];
}

interface FoundationResult {
  readonly check: Check;
  readonly answer?: FoundationAnswer;
}

export const foundationKind: CheckKind<'foundation'> = {
  kind: 'foundation',
  part: 'footing',
  assess: (context) => (standsOnRoof(context) ? [] : [once(context, foundationResult).check, ...icedFooting(context)]),
  explain: (context, _, trace) => {
    under(trace, 'footing', () => explainFoundation(context, trace));
    under(trace, 'legs at the base', () => explainLegs(context.model, context.reactions, trace));
  },
  loadedBy: 'wind',
  ownRemedies: ['footing'],
  room: { onMastOnly: false, neededFor: undefined, left: roomOfFooting },
};

/** On a roof there is no soil, so that nobody is asked for a footing; one that is given all the same is not passed over. */
function standsOnRoof({ model }: CheckContext): boolean {
  const { support, foundation } = model.input.station.tower;
  return support === 'roof' && foundation === undefined;
}

const FOUNDATION = { id: 'foundation', kind: 'foundation', at: '/tower/foundation' } as const;

/**
 * What the footing does, beside its ratio.
 *
 * at the nominal load of foundations
 *
 * @returns loads and sides; undefined where none is described, or nothing is worked out of it
 * @source ibc-2018
 */
export function foundationAnswer(context: CheckContext): FoundationAnswer | undefined {
  return once(context, foundationResult).answer;
}

/**
 * The footing: a block against overturning and the pressure under its toe, a pier by its depth, or one built to the
 * maker's drawing, for which his ratings speak.
 */
function foundationResult(context: CheckContext): FoundationResult {
  const { model, reactions } = context;
  const { tower } = model.input.station;
  const { foundation } = tower;
  if (!foundation) return { check: openCheck(FOUNDATION, 'missing', [FOUNDATION.at]) };
  if (tower.support === 'guyed' || tower.support === 'bracketed' || tower.support === 'roof')
    return { check: openCheck(FOUNDATION, 'held') };
  if (foundation.kind === 'manufacturer') return { check: byMaker(context) };
  const load = footLoad(context);
  const { withoutWind } = reactions;
  const at = (wind: FootWind): FootLoad => ({
    ...load,
    shear: wind.shear + withoutWind.shear,
    moment: wind.moment + withoutWind.moment,
  });
  const concrete = concreteOf(foundation);
  const [worst, best] = bothReadings(concrete, load);
  const ratioAt = (wind: FootWind) => used(concrete, worst, at(wind)).governs.ratio;
  const compared = comparedOf(used(concrete, worst, load).governs);
  const missing = [
    ...(hangsOnWeight(foundation) && load.weight === undefined ? allWeightsNotGiven(model.input.station) : []),
    ...(model.bareTowerKnown ? [] : ['/tower/shape']),
    ...steadyNotGiven(model),
  ];
  const winds = windsAtFoot(context);
  const { speed } = model.site;
  const reaches = (target: number) => {
    if (missing.length > 0) return undefined;
    return windsReaching(model.input, byRatio(winds, ratioAt), speed)(target);
  };
  const readTwoWays = model.scenarios.some(({ appurtenances }) => appurtenances.readTwoWays);
  const least = readTwoWays ? at(windAtFoot(model, model.scenarios, speed, 'favourable', reactions.toNominal)) : load;
  const favourable = Math.min(compared.ratio, used(concrete, best, least).governs.ratio);
  const ratioIf = openFacts(concrete)
    .map((fact) => ({ fact, ratio: ratioWith(concrete, load, new Set([fact])) }))
    .filter(({ ratio }) => ratio < compared.ratio);
  const result = {
    ...compared,
    height: tower.foot,
    ratioRange: [Math.min(favourable, compared.ratio), compared.ratio] as const,
    headings: {},
    ...heldBy(model, reaches, ratioAt({ shear: 0, moment: 0 })),
  };
  const check = judged(FOUNDATION, result, {
    margin: model.input.wanted.margin,
    favourable,
    missing,
    ...asking(concrete, load, compared.ratio, ratioIf),
  });
  return {
    check:
      check.verdict !== 'over' && leansTooFar(model, compared.ratio)
        ? openCheck(FOUNDATION, 'beyond-small-movement', missing, result)
        : check,
    answer: {
      kind: foundation.kind,
      load,
      ...sidesOf(foundation, load),
      soil: { ...partsOf(used(concrete, worst, load)), ratioIf },
      ...(foundation.isolatedPole ? { isolatedPole: true } : {}),
    },
  };
}

/**
 * The footing with ice, in the gust that goes with it. Ice that has fallen holds nothing down, and what is left presses: both
 * are tried.
 */
function icedFooting({ model, ice, ...context }: CheckContext): readonly Check[] {
  const { tower } = model.input.station;
  const { foundation } = tower;
  if (!foundation || !ice?.weights) return [];
  if (tower.support === 'guyed' || tower.support === 'bracketed' || tower.support === 'roof') return [];
  const { shown, weights } = ice;
  if (!shown) return withIce([openCheck(FOUNDATION, 'missing', ice.needs)]);
  const iced = shown.model;
  if (foundation.kind === 'manufacturer') {
    const { ratios, unfavourable } = shown;
    return withIce([byMaker({ ...context, model: iced, ratios, withoutLeast: unfavourable })]);
  }
  const steady = withoutWindOf(iced);
  const { weight } = context.reactions;
  const bare = weightOn(context.reactions);
  const concrete = concreteOf(foundation);
  const at = (bound: Bound): Compared => {
    const wind = windAtFoot(iced, iced.scenarios, iced.site.speed, bound, shown.toNominal);
    const load = { shear: wind.shear + steady.shear, moment: wind.moment + steady.moment };
    const both = weight === undefined ? [bare] : [bare, { weight: weight + weights.all }];
    return both
      .map((dead) => {
        const [worst, best] = bothReadings(concrete, dead);
        return comparedOf(used(concrete, bound === 'unfavourable' ? worst : best, load).governs);
      })
      .reduce((most, each) => (each.ratio > most.ratio ? each : most));
  };
  const [worst, best] = [at('unfavourable'), at('favourable')];
  const missing = [
    ...(hangsOnWeight(foundation)
      ? [...(weight === undefined ? allWeightsNotGiven(model.input.station) : []), ...weights.needs]
      : []),
    ...steadyNotGiven(iced),
  ];
  const result: CheckResult = {
    ...worst,
    height: tower.foot,
    ratioRange: [Math.min(best.ratio, worst.ratio), worst.ratio],
    headings: {},
  };
  const asks = asking(concrete, { shear: 0, moment: 0, ...bare }, worst.ratio, []);
  return withIce([
    judged(FOUNDATION, result, { margin: model.input.wanted.margin, favourable: best.ratio, missing, ...asks }),
  ]);
}

type Concrete = Exclude<Foundation, { kind: 'manufacturer' }>;

/** The concrete by what is there, whatever the plan calls it. */
function concreteOf(foundation: Concrete): ConcreteInSoil {
  const { head } = foundation;
  if (foundation.kind === 'pier')
    return { ...foundation, plan: { diameter: foundation.diameter }, thickness: foundation.depth + head };
  const { length, width, depth: thickness } = foundation;
  return {
    ...foundation,
    plan: { length, width },
    thickness,
    depth: Math.max(0, thickness - head),
    head: Math.min(head, thickness),
    constrained: false,
  };
}

/** Of a pier that holds by its sides alone no weight is asked. */
const hangsOnWeight = (foundation: Concrete) => foundation.bearing !== undefined;

/** A reading of the soil, and what holds by it. */
interface ReadSoil extends SoilReading {
  readonly holds: SoilHolds;
}

function readSoil(concrete: ConcreteInSoil, weight: Weight, facts: ReadonlySet<SoilFact>): ReadSoil {
  const reading = soilReading(concrete, facts);
  return { ...reading, holds: soilHolds(concrete, deadLoadOf(concrete, { shear: 0, moment: 0, ...weight }), reading) };
}

/** What is open answered against the footing, and for it: then side and base count together, unless the official says no. */
function bothReadings(concrete: ConcreteInSoil, weight: Weight): readonly [ReadSoil, ReadSoil] {
  const all = new Set(openFacts(concrete));
  return [readSoil(concrete, weight, new Set()), readSoil(concrete, weight, all)];
}

function used(concrete: ConcreteInSoil, soil: ReadSoil, load: Pick<FootLoad, 'shear' | 'moment'>, trace?: Trace) {
  return soilUse(concrete, soil.holds, load, soil.together, trace);
}

const ratioWith = (concrete: ConcreteInSoil, load: FootLoad, facts: ReadonlySet<SoilFact>) =>
  used(concrete, readSoil(concrete, load, facts), load).governs.ratio;

const AT: Readonly<Record<SoilFact, string>> = {
  bearingNet: '/tower/foundation/bearingNet',
  isolatedPole: '/tower/foundation/isolatedPole',
  soilLateral: '/tower/foundation/soilLateral',
  soilBearing: '/tower/foundation/soilBearing',
  bothAccepted: '/tower/foundation/bothAccepted',
};

/** Whose answer settles it: those of the soil where they can, else whether side and base count together. */
function asking(concrete: ConcreteInSoil, load: FootLoad, ratio: number, ratioIf: SoilAnswer['ratioIf']) {
  if (ratio <= 1) return {};
  const open = openFacts(concrete);
  const ofSoil = open.filter((fact) => fact !== 'bothAccepted');
  const settles = ratioIf.filter(({ fact, ratio: then }) => fact !== 'bothAccepted' && then <= 1);
  const facts =
    settles.length > 0
      ? settles.map(({ fact }) => fact)
      : ratioWith(concrete, load, new Set(ofSoil)) <= 1
        ? ofSoil
        : open;
  return facts.length === 0 ? {} : { because: 'not-given' as const, asks: facts.map((fact) => AT[fact]) };
}

const COMPARED_OF = {
  base: 'overturning',
  sides: 'embedment',
  'sides-and-base': 'sides-and-base',
  weight: 'soil-weight',
} as const satisfies Record<SoilUse['of'], Compared['of']>;

const comparedOf = ({ of, ratio, demand, capacity }: SoilUse): Compared => ({
  of: COMPARED_OF[of],
  ratio,
  demand,
  capacity,
});

function partsOf({ base, sides, both }: ReturnType<typeof soilUse>): Omit<SoilAnswer, 'ratioIf'> {
  return { ...(base ? { base } : {}), ...(sides ? { sides } : {}), ...(both ? { both } : {}) };
}

/** Pressure and tipping of a block, the depth that a pier needs: shown beside what decides. */
function sidesOf(foundation: Concrete, load: FootLoad, trace?: Trace): Pick<FoundationAnswer, 'block' | 'pier'> {
  if (foundation.kind === 'pier') return { pier: pierFooting(foundation, load, trace) };
  return { block: blockFooting(foundation, load, trace) };
}

type Weight = Pick<FootLoad, 'weight' | 'leastWeight'>;

/** The weight on the footing, or what of it is known. */
function weightOn({ weight, leastWeight }: Reactions): Weight {
  return weight === undefined ? { leastWeight } : { weight };
}

/** The design wind at the foot, at the nominal level, with what stays: shear and moment each at its worst heading. */
function footLoad({ model, unfavourable, reactions }: CheckContext): FootLoad {
  const { withoutWind, toNominal } = reactions;
  const last = model.levels.length - 1;
  const most = (of: 'shear' | 'moment') =>
    Math.max(
      ...unfavourable.scenarios.map(
        ({ appurtenances, bareTower }) => nth(appurtenances[of], last) + (bareTower ? nth(bareTower[of], last) : 0),
      ),
    );
  return {
    shear: toNominal * most('shear') + withoutWind.shear,
    moment: toNominal * most('moment') + withoutWind.moment,
    ...weightOn(reactions),
  };
}

/**
 * Area that may be added at a height before the footing reaches the wanted margin: by base, sides or both its ratio grows in
 * line with the force. One by the maker's drawing goes as the tower does.
 *
 * A = (1 − m − u)/(u_1 − u) for u_1 with one square metre
 */
function roomOfFooting(
  context: CheckContext,
  { verdict, withIce: iced }: Check,
  { height, on }: RoomPlace,
): RoomByCheck | 'unlimited' | undefined {
  const { model, reactions } = context;
  const { foundation, foot } = model.input.station.tower;
  if (verdict === 'open' || !foundation || iced) return undefined;
  if (foundation.kind === 'manufacturer') return 'unlimited';
  const most = 1 - model.input.wanted.margin;
  const load = footLoad(context);
  const concrete = concreteOf(foundation);
  const soil = readSoil(concrete, load, new Set());
  const perArea =
    reactions.toNominal *
    Math.max(...model.scenarios.map(({ appurtenances }) => forcePerArea(appurtenances.wind, height)));
  const withOne = { ...load, shear: load.shear + perArea, moment: load.moment + perArea * (height - foot) };
  const [now, more] = [used(concrete, soil, load), used(concrete, soil, withOne)];
  // By each way the ratio grows in line with the area; what governs is the way that leaves most.
  const rooms = (['base', 'sides', 'both'] as const).flatMap((way) => {
    const [before, after] = [now[way], more[way]];
    if (!before || !after || !(after.ratio > before.ratio)) return [];
    return [{ demand: before.ratio, more: after.ratio - before.ratio }];
  });
  const left = (room: { demand: number; more: number }) => (most - room.demand) / room.more;
  const room = rooms.reduce<(typeof rooms)[number] | undefined>(
    (so, each) => (so && left(so) >= left(each) ? so : each),
    undefined,
  );
  if (!room) return undefined;
  const common = { height, on, check: FOUNDATION.id, perArea };
  return { ...common, capacity: 1, demand: room.demand, arm: room.more / perArea, area: left(room) };
}

interface FootWind {
  readonly shear: number;
  readonly moment: number;
}

interface WindsAtFoot {
  readonly design: (speed: number) => FootWind;
  readonly actual: (speed: number) => FootWind;
  readonly steadyUpTo: number;
}

const byRatio = ({ design, actual, steadyUpTo }: WindsAtFoot, ratio: (wind: FootWind) => number): RatioByWind => ({
  design: (V) => ratio(design(V)),
  actual: (V) => ratio(actual(V)),
  steadyUpTo,
});

/** The wind at the foot by its speed; up to where no coefficient changes it goes with the square of it. */
function windsAtFoot({ model, reactions }: CheckContext): WindsAtFoot {
  const blowing = inActualWind(model);
  const steady = Math.min(steadyUpTo(model.scenarios), steadyUpTo(blowing));
  const scaled = (find: (V: number) => FootWind) => {
    let unit: FootWind | undefined;
    return (V: number): FootWind => {
      if (V > steady || steady <= 0) return find(V);
      unit ??= find(Math.min(1, steady));
      const share = (V / Math.min(1, steady)) ** 2;
      return { shear: unit.shear * share, moment: unit.moment * share };
    };
  };
  return {
    design: scaled((V) => windAtFoot(model, model.scenarios, V, 'unfavourable', reactions.toNominal)),
    // A wind that has come acts with all its force on the same footing.
    actual: scaled((V) => windAtFoot(model, blowing, V, 'unfavourable', 1)),
    steadyUpTo: steady,
  };
}

/** Shear and moment of the wind at the foot, the largest over what is open about the tower. */
function windAtFoot(
  model: TowerModel,
  scenarios: readonly TowerInWind[],
  speed: number,
  bound: Bound,
  factor: number,
): FootWind {
  if (speed <= 0) return { shear: 0, moment: 0 };
  const last = model.levels.length - 1;
  const profiles = new Map<SlicesInWind, Profile>();
  const profile = (cut: SlicesInWind) =>
    remember(profiles, cut, () => profileOf(cut, sliceForces(cut, speed, bound, false), model.levels, model.hold));
  let shear = 0;
  let moment = 0;
  for (const { appurtenances, bareTower } of scenarios) {
    const hanging = profile(appurtenances);
    const itself = bareTower && profile(bareTower);
    shear = Math.max(shear, nth(hanging.shear, last) + (itself ? nth(itself.shear, last) : 0));
    moment = Math.max(moment, nth(hanging.moment, last) + (itself ? nth(itself.moment, last) : 0));
  }
  return { shear: factor * shear, moment: factor * moment };
}

/** Built to the drawing that goes with the rating: what is proven at the foot of the tower is proven of its footing. */
function byMaker({ model, ratios, withoutLeast }: Pick<CheckContext, 'model' | 'ratios' | 'withoutLeast'>): Check {
  const { tower } = model.input.station;
  const ofFoot = ({ check, level }: Comparison) => check === 'tower' && model.levels[level]?.z === tower.foot;
  const atFoot = ratios.filter(({ comparison }) => ofFoot(comparison));
  const worst = atFoot.reduce<ComparisonRatio | undefined>(
    (most, ratio) => (most && most.unfavourable >= ratio.unfavourable ? most : ratio),
    undefined,
  );
  if (!worst || !Number.isFinite(worst.unfavourable)) return openCheck(FOUNDATION, 'missing', ['/ratings']);
  const favourable = Math.max(...atFoot.map((ratio) => ratio.favourable));
  const reaches = (target: number) => holdsTo(model, ofFoot, withoutLeast, target);
  const result = {
    ratio: worst.unfavourable,
    of: worst.byWindRatio ? ('wind-ratio' as const) : worst.comparison.of,
    demand: worst.demand,
    capacity: worst.capacity,
    height: tower.foot,
    ratioRange: [Math.min(favourable, worst.unfavourable), worst.unfavourable] as const,
    headings: {},
    ...(model.ice ? {} : heldBy(model, reaches, ratioInCalm(model, ofFoot))),
  };
  // More than the rating shows at the foot says nothing of the concrete but that the maker has not shown it.
  const by = { margin: model.input.wanted.margin, favourable: 0, because: 'beyond-rating' } as const;
  return judged(FOUNDATION, result, by);
}

function explainFoundation(context: CheckContext, trace: Trace): void {
  const { foundation } = context.model.input.station.tower;
  if (!foundation || foundation.kind === 'manufacturer') return;
  const load = footLoad(context);
  const concrete = concreteOf(foundation);
  sidesOf(foundation, load, trace);
  used(concrete, readSoil(concrete, load, new Set()), load, trace);
}
