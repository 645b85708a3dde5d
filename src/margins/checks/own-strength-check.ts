import type { Material } from '../../areas/index.ts';
import { evaluate, GRAVITY, nth, remember, type Trace, under } from '../../foundation/index.ts';
import { METHOD_BY_ID } from '../../methods/index.ts';
import {
  AMPLIFIED_AT_MOST,
  allowedPush,
  bracePush,
  forceInOverlap,
  legPush,
  MATERIALS,
  type Member,
  memberSection,
  momentAllowedBeside,
  momentAmplified,
  momentAtTail,
  momentOfLeaning,
  ownWeightOfLattice,
  type Panel,
  PLAUSIBLE_YIELD,
  type PoleAsColumn,
  poleLimits,
  poleSection,
  ratioInBending,
  rimOf,
  type Section,
  type SectionShape,
  type Station,
  secondMomentOfLegs,
  shearOfTorsion,
  type Tubing,
  useOfMember,
  weightAsAtTop,
  weightsNotGiven,
} from '../../structure/index.ts';
import { explainAsked } from '../explain-comparison.ts';
import { agree } from '../explain-slices.ts';
import { inActualWind, steadyUpTo } from '../holds-to.ts';
import { windsHeld } from '../holds-to-ratio.ts';
import type { Demand, TowerModel } from '../model.ts';
import { forcePerArea, type RoomByCheck, type RoomPlace } from '../room-by-check.ts';
import { demandOf, once, steadyNotGiven } from '../tower-model.ts';
import { type Check, type CheckResult, type ComparedOf, judged, openCheck, settled } from './check.ts';
import type { CheckContext, CheckKind } from './check-kind.ts';
import { reachOf } from './room-of-tower.ts';

/**
 * A tower that stands by itself, against what its members are allowed by their dimensions: beside a rating a witness, without one
 * what decides.
 */
export const ownStrengthKind: CheckKind<'own-strength'> = {
  kind: 'own-strength',
  part: 'tower',
  assess: (context) => ownStrengthCheck(context),
  explain: (context, checks, trace) => {
    const [check] = checks;
    if (check?.result) under(trace, 'own strength', () => explain(context, trace));
  },
  loadedBy: 'wind',
  room: { onMastOnly: false, neededFor: 'all', left: roomOfMembers },
};

const OWN = { id: 'own-strength', kind: 'own-strength', at: '/tower' } as const;

/** Of an allowable strength by AISC 360, what TIA-222-G and -H take: 0.6 of 0.9 of it, over 1/1.67. @source tia222-h */
const SHARE_BY_TIA = 0.6 * 0.9 * 1.67;

/** Share of the length of a brace that bows where its ends are welded to the legs. @source tia222-g */
const WELDED_ENDS = 0.7;

type LatticeShape = Extract<SectionShape, { kind: 'lattice' }>;
type MembersOf = Extract<LatticeShape['solid'], { by: 'members' }>;

/** A section that tells what its own strength hangs on. */
type ToldSection = Section & {
  readonly tubing: Tubing;
  readonly of:
    | { readonly kind: 'pole'; readonly shape: Extract<SectionShape, { kind: 'pole' }> }
    | {
        readonly kind: 'lattice';
        readonly shape: LatticeShape;
        readonly members: MembersOf & { readonly pattern: Panel['pattern'] };
        readonly braceWall: number;
      };
};

interface OwnSections {
  readonly told: readonly ToldSection[];
  /** Pointers to what its strength waits for. */
  readonly missing: readonly string[];
  /** A section that carries by bending its legs. */
  readonly notComputed: boolean;
}

/** The sections of a tower that stands by itself, once something of their metal is told; none of any other tower. */
function ownSections(station: Station): OwnSections | undefined {
  const { tower } = station;
  if (tower.support !== 'free' && tower.support !== 'roof') return undefined;
  if (tower.sections.every(({ tubing }) => tubing === undefined)) return undefined;
  const told: ToldSection[] = [];
  const missing = new Set<string>();
  let notComputed = false;
  for (const section of tower.sections) {
    const { shape, tubing, notGiven = [], at } = section;
    const lacks = (...fields: string[]) => {
      for (const field of fields) missing.add(`${at}/${field}`);
    };
    if (shape === undefined) lacks('shape');
    else if (notGiven.length > 0) lacks(...notGiven);
    // What draws in and slides besides hands its shear over in a way not looked into.
    else if (tower.telescopes && shape.width[0] !== shape.width[1]) notComputed = true;
    else if (shape.kind === 'pole') {
      if (tubing === undefined) lacks('wall');
      else told.push({ ...section, tubing, of: { kind: 'pole', shape } });
    } else if (shape.solid.by !== 'members') lacks('leg', 'brace', 'panel');
    else {
      const { solid } = shape;
      const { pattern } = solid;
      if (tubing === undefined) lacks('legWall');
      if (tubing?.braceWall === undefined) lacks('braceWall');
      if (pattern === 'rungs') notComputed = true;
      else if (tubing?.braceWall !== undefined) {
        const { braceWall } = tubing;
        told.push({ ...section, tubing, of: { kind: 'lattice', shape, members: { ...solid, pattern }, braceWall } });
      }
    }
  }
  return { told, missing: [...missing], notComputed };
}

/**
 * Whether a tower's own strength is all there is to go by, and all there need be: a pole in one piece, of which no manufacturer
 * says anything.
 *
 * @param model of the tower
 * @source project-rule
 */
export function goesByOwnStrength(model: Pick<TowerModel, 'input'>): boolean {
  const { input } = model;
  const own = ownSections(input.station);
  if (own === undefined || own.missing.length > 0 || own.notComputed) return false;
  const pieces = own.told.filter(({ within }) => !within);
  const isPole = pieces.length === 1 && own.told.every(({ of }) => of.kind === 'pole');
  return isPole && !input.ratings.some(({ of, claim }) => of === 'tower' && claim.kind !== 'weight');
}

/** What nobody tells, by the end at which it counts. */
interface Ends {
  readonly yield: 'least' | 'most';
  readonly legFree: 'least' | 'most';
  /** How firmly braces hold at their ends and where they cross, which no field tells. */
  readonly braces: 'least' | 'most';
}

const WORST: Ends = { yield: 'least', legFree: 'least', braces: 'least' };
const BEST: Ends = { yield: 'most', legFree: 'most', braces: 'most' };

function ownStrengthCheck({ model, unfavourable }: CheckContext): readonly Check[] {
  const { station } = model.input;
  const own = ownSections(station);
  if (own === undefined) return [];
  const isRated = model.claims.length + model.momentClaims.length > 0;
  if (own.missing.length > 0) return isRated ? [] : [openCheck(OWN, 'missing', own.missing)];
  const found = own.notComputed ? undefined : worstOf(model, unfavourable, WORST);
  if (found === undefined) return isRated ? [] : [openCheck(OWN, 'not-computed')];
  const favourable = demandOf(model, model.scenarios, model.site.speed, 'favourable', true);
  const atBest = worstOf(model, favourable, BEST)?.ratio ?? found.ratio;
  const steady = steadyUpTo(model.scenarios);
  const byWind = (scenarios: Parameters<typeof demandOf>[1]) => (speed: number) =>
    worstOf(model, demandOf(model, scenarios, speed, 'unfavourable', false), WORST)?.ratio ?? Number.POSITIVE_INFINITY;
  const actual = inActualWind(model);
  const { ratio, of, demand, capacity, height } = found;
  const result: CheckResult = {
    ...settled({ ratio, of, demand, capacity, height }),
    ratioRange: [Math.min(atBest, ratio), ratio],
    ...windsHeld(model, {
      design: byWind(model.scenarios),
      actual: byWind(actual),
      steadyUpTo: Math.min(steady, steadyUpTo(actual)),
    }),
  };
  const missing = [...new Set([...weightsNotGiven(station), ...steadyNotGiven(model)])];
  const asks = ratio > 1 && atBest <= 1 ? asksOf(model, unfavourable, ratio) : [];
  const check = judged(OWN, result, {
    margin: model.input.wanted.margin,
    favourable: atBest,
    missing,
    because: asks.length > 0 ? 'not-given' : 'brace-ends',
    asks,
  });
  if (!isRated) return [check];
  // A rating counts where it speaks; beside it dimensions are a witness, or a contradiction that forbids a firm word.
  if (check.verdict === 'over') return [openCheck(OWN, 'contradicts-rating', [], check.result)];
  return check.verdict === 'open' ? [] : [check];
}

/**
 * What its members take over what they are allowed, at the worst of what nobody tells.
 *
 * @param model of a tower that tells them
 * @param demand what the wind asks
 * @returns the ratio [-]; undefined where it is not shown
 * @source project-rule
 */
export function ownStrengthUse(model: TowerModel, demand: Demand): number | undefined {
  return worstOf(model, demand, WORST)?.ratio;
}

/** Square metres by which the growth of its ratio is found [m²]. */
const A_LITTLE = 0.01;

/**
 * What its members leave at a place, where they are shown.
 *
 * u(A) = 1 − m, of a ratio that grows with the area
 */
function roomOfMembers(context: CheckContext, check: Check, place: RoomPlace): RoomByCheck | 'unlimited' | undefined {
  const { model, unfavourable } = context;
  const { result, verdict } = check;
  if (result === undefined || verdict === 'open') return undefined;
  const perAreas = model.scenarios.map(({ appurtenances }) => forcePerArea(appurtenances.wind, place.height));
  const ratioWith = (area: number) => {
    const scenarios = unfavourable.scenarios.map((scenario, number) => ({
      ...scenario,
      wind: scenario.wind.map(
        (asked, index) => asked + area * nth(perAreas, number) * reachOf(model, nth(model.comparisons, index), place),
      ),
    }));
    return worstOf(model, { ...unfavourable, scenarios }, WORST)?.ratio ?? Number.POSITIVE_INFINITY;
  };
  const target = 1 - model.input.wanted.margin;
  const here = ratioWith(0);
  let area = ((target - here) * A_LITTLE) / (ratioWith(A_LITTLE) - here);
  if (!Number.isFinite(area)) return 'unlimited';
  // Another place may govern with more area, and shear takes from the moment: closed in on from the far side.
  for (let turn = 0; turn < 60 && area > 0; turn += 1) {
    const over = ratioWith(area) - target;
    if (Math.abs(over) < 1e-9) break;
    const slope = (ratioWith(area + A_LITTLE) - ratioWith(area)) / A_LITTLE;
    area = Math.max(0, area - over / slope);
  }
  const perArea = Math.max(...perAreas);
  const grows = area === 0 ? 0 : (target - here) / area;
  return { ...place, check: OWN.id, area, perArea, capacity: 1, demand: here, arm: grows / perArea };
}

/** What nobody tells of its metal, what lowers the ratio most first. */
function asksOf(model: TowerModel, demand: Demand, ratio: number): readonly string[] {
  const { told } = ownSections(model.input.station) as OwnSections;
  const silent = {
    yield: told.filter(({ tubing }) => tubing.yieldStrength === undefined),
    legFree: told.filter(({ tubing, of }) => of.kind === 'lattice' && hasOpenLegs(of.members) && !tubing.legFree),
  };
  const fields = (['yield', 'legFree'] as const).map((field) => {
    const at = [...new Set(silent[field].map((section) => `${section.at}/${field}`))];
    const known = at.length > 0 ? worstOf(model, demand, { ...WORST, [field]: 'most' }) : undefined;
    return { at, ratio: known?.ratio ?? ratio };
  });
  return fields.sort((one, other) => one.ratio - other.ratio).flatMap(({ at }) => at);
}

/** A zigzag may hold a leg at every panel, or by one face alone at every second. */
const hasOpenLegs = ({ pattern }: Pick<MembersOf, 'pattern'>) => pattern === 'zigzag';

const isCrossed = ({ of }: ToldSection) => of.kind === 'lattice' && of.members.pattern === 'cross';

interface Worst {
  readonly ratio: number;
  readonly of: ComparedOf;
  readonly height: number;
  readonly demand: number;
  readonly capacity: number;
  readonly explain: (trace: Trace) => void;
}

/** What acts where two comparisons of one place are made, the moment and the shear there. */
interface Acting {
  readonly moment: number;
  /** Of a lattice what its braces take, of a pole its shear. */
  readonly braced: number;
  readonly torsion: number;
}

/** A place that is compared, with all that does not hang on the wind worked out. */
interface Place {
  /** Number of the comparison of the moment; that of the shear is the next. */
  readonly index: number;
  readonly section: ToldSection;
  /** What its members take comes of moment and shear together. */
  readonly ofBoth?: true;
  readonly uses: (acting: Acting) => readonly Use[];
}

/** Places by what nobody tells; undefined where what is allowed somewhere is not shown. */
function placesOf(model: TowerModel, ends: Ends): readonly Place[] | undefined {
  return remember(model.worked, ends, () => workedOut(model, ends)) as readonly Place[] | undefined;
}

function workedOut(model: TowerModel, ends: Ends): readonly Place[] | undefined {
  const { told } = ownSections(model.input.station) as OwnSections;
  const column = once(model, asColumn);
  if (column === undefined) return undefined;
  const places: Place[] = [];
  for (const [index, comparison] of model.comparisons.entries()) {
    if (comparison.of !== 'moment' || model.comparisons[index + 1]?.of !== 'shear') continue;
    const section = nth(told, comparison.section);
    const uses = usesAt(model, section, column, comparison.level, ends);
    if (uses === undefined) return undefined;
    places.push({ index, section, uses });
  }
  for (let number = 1; number < told.length; number += 1) {
    const overlap = overlapOf(model, column, number, ends);
    if (overlap === undefined) return undefined;
    places.push(...overlap);
  }
  return places;
}

function usesAt(model: TowerModel, section: ToldSection, column: PoleAsColumn, level: number, ends: Ends) {
  const usesOf = section.of.kind === 'pole' ? usesOfPole : usesOfLattice;
  return usesOf(model, section, column, level, ends);
}

/** Shorter than this a section stands on the other, and does not slide in it [m]. */
const NO_OVERLAP = 1e-6;

/**
 * Where a section slides in another it hands its moment over as two forces: one and its shear at the rim, one at its lower end. Both
 * sections take them between.
 */
function overlapOf(model: TowerModel, column: PoleAsColumn, number: number, ends: Ends): readonly Place[] | undefined {
  const { told } = ownSections(model.input.station) as OwnSections;
  const inner = nth(told, number);
  const rim = rimOf(told, number);
  const length = rim - inner.low;
  if (length < NO_OVERLAP) return [];
  const outer = told.slice(0, number).findLast(({ high }) => Math.abs(high - rim) < NO_OVERLAP);
  const index = model.comparisons.findIndex(
    ({ of, section, place }) => of === 'moment' && section === number && place === 'joint',
  );
  if (outer === undefined || index < 0) return undefined;
  const { level } = nth(model.comparisons, index);
  const places: Place[] = [];
  for (const section of [inner, outer]) {
    const uses = usesAt(model, section, column, level, ends);
    if (uses === undefined) return undefined;
    places.push({
      index,
      section,
      ofBoth: true,
      uses: ({ moment, braced, torsion }) => {
        // In the inner one the shear is handed over with the moment at the rim.
        const beside = section === inner ? shearOfTorsion(inner, torsion, rim) : braced;
        const there = (trace?: Trace): Acting => ({
          moment: section === inner ? moment : evaluate(trace, momentAtTail, [moment, braced, length]),
          braced: evaluate(trace, forceInOverlap, [moment, length, beside]),
          torsion,
        });
        return uses(there()).map((use) => ({
          ...use,
          explain: (trace) => {
            there(trace);
            use.explain(trace);
          },
        }));
      },
    });
  }
  return places;
}

/** The place at which the members are used most; undefined where that of one is not shown. */
function worstOf(model: TowerModel, demand: Demand, ends: Ends): Worst | undefined {
  let worst: Worst | undefined;
  for (const { index, section, ofBoth, uses } of placesOf(model, ends) ?? []) {
    const comparison = nth(model.comparisons, index);
    const sideways = nth(model.comparisons, index + 1);
    const { level } = comparison;
    for (const [scenario, asked] of demand.scenarios.entries()) {
      const acting: Acting = {
        moment: nth(asked.wind, index) + nth(demand.dead, index),
        braced: nth(asked.wind, index + 1) + nth(demand.dead, index + 1),
        torsion: nth(asked.appurtenances.torsion, level),
      };
      for (const use of uses(acting)) {
        if (worst !== undefined && use.ratio <= worst.ratio) continue;
        const { explain, ...compared } = use;
        worst = {
          ...compared,
          height: nth(model.levels, level).z,
          explain: (trace) => {
            const askedOf = (of: typeof comparison, value: number) =>
              agree(explainAsked(model, { comparison: of, scenario }, trace), value, 'what its members take');
            if (use.of === 'brace' || ofBoth) askedOf(sideways, acting.braced);
            // Braces that are crossed shorten with the legs.
            if (use.of !== 'brace' || ofBoth || isCrossed(section)) askedOf(comparison, acting.moment);
            explain(trace);
          },
        };
      }
    }
  }
  return worst;
}

type Use = Omit<Worst, 'height'>;

function usesOfPole(
  model: TowerModel,
  section: ToldSection,
  column: PoleAsColumn,
  level: number,
  ends: Ends,
): Place['uses'] | undefined {
  const tube = tubeAt(section, nth(model.levels, level).z, ends.yield);
  const limits = poleLimits(tube, column, SHARE_BY_TIA);
  if (limits === undefined) return undefined;
  return ({ moment, braced: shear, torsion }) => {
    const beside = (trace?: Trace) => momentAllowedBeside(limits, { shear, torsion }, SHARE_BY_TIA, trace);
    const allowed = beside();
    const explain = (trace: Trace) => {
      poleLimits(tube, column, SHARE_BY_TIA, trace);
      beside(trace);
      evaluate(trace, ratioInBending, [moment, allowed]);
    };
    return [{ ratio: ratioInBending.of(moment, allowed), of: 'bending', demand: moment, capacity: allowed, explain }];
  };
}

function usesOfLattice(
  model: TowerModel,
  section: ToldSection,
  column: PoleAsColumn,
  level: number,
  ends: Ends,
): Place['uses'] | undefined {
  const { of, tubing } = section;
  if (of.kind !== 'lattice') return undefined;
  const { input } = model;
  const { z } = nth(model.levels, level);
  const { shape, members } = of;
  const panel: Panel = {
    faces: shape.faces,
    pattern: members.pattern,
    width: widthAt(section, z) - members.leg,
    height: members.panel,
  };
  const { columnShare } = METHOD_BY_ID[input.method];
  const leg = memberOf(section, 'leg', ends);
  const brace = memberOf(section, 'brace', ends);
  const firm = ends.braces === 'most';
  const crossed = isCrossed(section);
  const openLeg = hasOpenLegs(members) && ends.legFree === 'least' ? 2 * members.panel : members.panel;
  const offCentre = shape.members === 'flat';
  const length = Math.hypot(panel.width, panel.height) * (crossed && firm ? 0.5 : 1);
  const ofLeg = (trace?: Trace) =>
    allowedPush(leg, { length: tubing.legFree ?? openLeg, share: 1 }, columnShare, trace);
  const ofBrace = (trace?: Trace) =>
    allowedPush(brace, { length, share: firm && !offCentre ? WELDED_ENDS : 1, offCentre }, columnShare, trace);
  const amplifiedBy = (trace?: Trace) =>
    evaluate(trace, momentAmplified, [
      column.weight,
      column.height,
      MATERIALS[tubing.material].youngsModulus,
      column.leastSecondMoment,
    ]);
  const [legAllowed, braceAllowed, amplified] = [ofLeg(), ofBrace(), amplifiedBy()];
  if (legAllowed === undefined || braceAllowed === undefined) return undefined;
  if (!(amplified >= 1 && amplified <= AMPLIFIED_AT_MOST)) return undefined;
  const [legArea, braceArea] = [memberSection(leg).area, memberSection(brace).area];
  // What a rating says it covers no moment has.
  const covered = Math.min(nth(model.dead.weight, level), model.coveredWeight) * GRAVITY;
  const above = ownWeightAbove(model, z);
  // The line that lifts a section presses the one below it by as much again, for every section that it lifts.
  const lifted = input.station.tower.telescopes ? sectionsAbove(model, section) : 0;
  const weight = covered + above + lifted * (above + nth(model.dead.weight, level) * GRAVITY);
  return ({ moment, braced, torsion }) => {
    const inLeg = (trace?: Trace) => {
      const leaning = evaluate(trace, momentOfLeaning, [amplified, moment]);
      return legPush(panel, { moment: leaning, weight, braced, torsion }, trace);
    };
    const legInWind = inLeg();
    const strained = crossed && !firm ? { legPush: legInWind, legArea, braceArea } : undefined;
    const inBrace = (trace?: Trace) => bracePush(panel, { moment, weight, braced, torsion }, strained, trace);
    const braceInWind = inBrace();
    const used = (push: number, allowed: number) => ({
      ratio: useOfMember.of(push, allowed),
      demand: push,
      capacity: allowed,
    });
    const legsToo = (trace: Trace) => {
      amplifiedBy(trace);
      inLeg(trace);
    };
    return [
      {
        ...used(legInWind, legAllowed),
        of: 'leg',
        explain: (trace) => {
          legsToo(trace);
          ofLeg(trace);
          evaluate(trace, useOfMember, [legInWind, legAllowed]);
        },
      },
      {
        ...used(braceInWind, braceAllowed),
        of: 'brace',
        explain: (trace) => {
          if (strained) legsToo(trace);
          inBrace(trace);
          ofBrace(trace);
          evaluate(trace, useOfMember, [braceInWind, braceAllowed]);
        },
      },
    ];
  };
}

const sectionsAbove = ({ input }: TowerModel, { high }: ToldSection): number =>
  input.station.tower.sections.filter((other) => other.high > high + NO_OVERLAP).length;

function memberOf({ of, tubing }: ToldSection, which: 'leg' | 'brace', ends: Ends): Member {
  if (of.kind !== 'lattice') throw new TypeError('a pole has no members');
  const [size, wall] = which === 'leg' ? [of.members.leg, tubing.wall] : [of.members.brace, of.braceWall];
  const form = of.shape.members === 'flat' ? 'angle' : 'round';
  return { form, size, wall, material: tubing.material, yieldStrength: yieldOf(tubing, ends.yield) };
}

const yieldOf = ({ yieldStrength, material }: Tubing, end: 'least' | 'most'): number =>
  yieldStrength ?? PLAUSIBLE_YIELD[material][end];

function widthAt({ low, high, of: { shape } }: ToldSection, z: number): number {
  const [below, above] = shape.width;
  return below + ((above - below) * (z - low)) / (high - low);
}

/** As it is at a height of a taper. */
function tubeAt(section: ToldSection, z: number, yieldEnd: 'least' | 'most') {
  const { tubing, of } = section;
  const sides = of.kind === 'pole' ? of.shape.sides : 0;
  // Rupture of a metal whose yield nobody tells may come before the yield that counts for it.
  const { ultimateStrength: rupture, ...rest } = tubing;
  const atRupture = rest.yieldStrength !== undefined && rupture !== undefined ? { ultimateStrength: rupture } : {};
  return { ...rest, ...atRupture, sides, outside: widthAt(section, z), yieldStrength: yieldOf(tubing, yieldEnd) };
}

/** What a metre of a section weighs, at least [kg/m]. */
function weightPerLength(section: ToldSection, z: number): number | undefined {
  const { of, tubing } = section;
  const { density } = MATERIALS[tubing.material];
  if (of.kind === 'pole') {
    const found = poleSection(tubeAt(section, z, 'least'), 1);
    return found && found.area * density;
  }
  const { members, shape } = of;
  const [leg, brace] = (['leg', 'brace'] as const).map((which) => memberSection(memberOf(section, which, WORST)).area);
  const panel = { faces: shape.faces, pattern: members.pattern, width: widthAt(section, z), height: members.panel };
  return ownWeightOfLattice.of(
    density,
    panel.faces,
    leg as number,
    panel.pattern === 'cross' ? 2 : 1,
    brace as number,
    panel.width,
    panel.height,
  );
}

/** What a metre of each section weighs by its metal, at its lower and upper end [kg/m]. */
function weightsPerLength({ input }: TowerModel): readonly (readonly [number, number])[] {
  const { told } = ownSections(input.station) as OwnSections;
  return told.map((section) => [
    weightPerLength(section, section.low) ?? 0,
    weightPerLength(section, section.high) ?? 0,
  ]);
}

/** Of the tower itself above a height: by its metal or by its weight, whichever is more [N]. */
function ownWeightAbove(model: TowerModel, z: number): number {
  const { tower } = model.input.station;
  const ofMetal = once(model, weightsPerLength).reduce((sum, [below, above], number) => {
    const { low, high } = nth(tower.sections, number);
    const from = Math.max(z, low);
    if (from >= high) return sum;
    const here = below + ((above - below) * (from - low)) / (high - low);
    return sum + ((here + above) / 2) * (high - from);
  }, 0);
  // Towers are no lighter below than above.
  const share = (tower.top - z) / (tower.top - tower.foot);
  return GRAVITY * Math.max(ofMetal, (tower.weight ?? 0) * share);
}

function asColumn(model: TowerModel): PoleAsColumn | undefined {
  const { station } = model.input;
  const { tower } = station;
  const { told } = ownSections(station) as OwnSections;
  const aloft = nth(model.dead.weight, model.levels.length - 1);
  let leastSecondMoment = Number.POSITIVE_INFINITY;
  for (const section of told)
    for (const z of [section.low, section.high]) {
      const second = secondMomentAt(section, z);
      if (second === undefined) return undefined;
      leastSecondMoment = Math.min(leastSecondMoment, second);
    }
  const own = ownWeightAbove(model, tower.foot) / GRAVITY;
  return { height: tower.top - tower.foot, weight: weightAsAtTop.of(GRAVITY, aloft, own), leastSecondMoment };
}

function secondMomentAt(section: ToldSection, z: number): number | undefined {
  const { of } = section;
  if (of.kind === 'pole') return poleSection(tubeAt(section, z, 'least'), 1)?.secondMoment;
  const { area } = memberSection(memberOf(section, 'leg', WORST));
  const { faces } = of.shape;
  return secondMomentOfLegs.of(faces === 3 ? 0.5 : 1, area, widthAt(section, z) - of.members.leg, faces, 0);
}

function explain({ model, unfavourable }: CheckContext, trace: Trace): void {
  const { station } = model.input;
  const aloft = nth(model.dead.weight, model.levels.length - 1);
  evaluate(trace, weightAsAtTop, [GRAVITY, aloft, ownWeightAbove(model, station.tower.foot) / GRAVITY]);
  worstOf(model, unfavourable, WORST)?.explain(trace);
}

/** Yields that nobody tells, by metal. */
export function yieldsAssumed(station: Station): readonly Material[] {
  const { told = [] } = ownSections(station) ?? {};
  return [...new Set(told.flatMap(({ tubing }) => (tubing.yieldStrength === undefined ? [tubing.material] : [])))];
}
