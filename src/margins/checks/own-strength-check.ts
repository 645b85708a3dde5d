import type { Material } from '../../areas/index.ts';
import { evaluate, GRAVITY, nth, type Trace, under } from '../../foundation/index.ts';
import { METHOD_BY_ID } from '../../methods/index.ts';
import {
  allowedMomentOfPole,
  bracePush,
  legPush,
  MATERIALS,
  type Member,
  memberSection,
  memberUse,
  momentAmplified,
  momentOfLeaning,
  ownWeightOfLattice,
  type Panel,
  PLAUSIBLE_YIELD,
  type PoleAsColumn,
  poleSection,
  ratioInBending,
  type Section,
  type SectionShape,
  type Station,
  secondMomentOfLegs,
  type Tubing,
  weightAsAtTop,
  weightsNotGiven,
} from '../../structure/index.ts';
import { explainAsked } from '../explain-comparison.ts';
import { agree } from '../explain-slices.ts';
import { inActualWind, steadyUpTo } from '../holds-to.ts';
import { windsHeld } from '../holds-to-ratio.ts';
import type { Demand, ScenarioDemand, TowerModel } from '../model.ts';
import { demandOf, once, steadyNotGiven } from '../tower-model.ts';
import { type Check, type CheckResult, type ComparedOf, judged, openCheck, settled } from './check.ts';
import type { CheckContext, CheckKind } from './check-kind.ts';

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
  room: undefined,
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
  if ((tower.support !== 'free' && tower.support !== 'roof') || tower.telescopes) return undefined;
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
  const asks = asksOf(model, unfavourable, ratio);
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
  readonly shear: number;
  readonly braced: number;
  readonly torsion: number;
}

/** The place at which the members are used most; undefined where that of one is not shown. */
function worstOf(model: TowerModel, demand: Demand, ends: Ends): Worst | undefined {
  const { told } = ownSections(model.input.station) as OwnSections;
  const column = once(model, asColumn);
  if (column === undefined) return undefined;
  let worst: Worst | undefined;
  for (const [index, comparison] of model.comparisons.entries()) {
    const sideways = model.comparisons[index + 1];
    if (comparison.of !== 'moment' || sideways?.of !== 'shear') continue;
    const { level } = comparison;
    const section = nth(told, comparison.section);
    for (const [scenario, asked] of demand.scenarios.entries()) {
      const acting: Acting = {
        moment: nth(asked.wind, index) + nth(demand.dead, index),
        shear: shearAt(model, asked, level),
        braced: nth(asked.wind, index + 1) + nth(demand.dead, index + 1),
        torsion: nth(asked.appurtenances.torsion, level),
      };
      const uses =
        section.of.kind === 'pole'
          ? poleUse(model, section, column, level, acting, ends)
          : latticeUse(model, section, column, level, acting, ends);
      if (uses === undefined) return undefined;
      for (const use of uses) {
        if (worst !== undefined && use.ratio <= worst.ratio) continue;
        const { explain, ...compared } = use;
        worst = {
          ...compared,
          height: nth(model.levels, level).z,
          explain: (trace) => {
            const asked = (of: typeof comparison, value: number) =>
              agree(explainAsked(model, { comparison: of, scenario }, trace), value, 'what its members take');
            if (use.of === 'brace') asked(sideways, acting.braced);
            // Braces that are crossed shorten with the legs.
            if (use.of !== 'brace' || isCrossed(section)) asked(comparison, acting.moment);
            explain(trace);
          },
        };
      }
    }
  }
  return worst;
}

function shearAt({ dead }: TowerModel, { appurtenances, bareTower }: ScenarioDemand, level: number): number {
  const steady = nth(dead.pullShear, level) + nth(dead.eccentricWeightShear, level);
  return nth(appurtenances.shear, level) + (bareTower ? nth(bareTower.shear, level) : 0) + steady;
}

type Use = Omit<Worst, 'height'>;

function poleUse(
  model: TowerModel,
  section: ToldSection,
  column: PoleAsColumn,
  level: number,
  { moment, shear, torsion }: Acting,
  ends: Ends,
): readonly Use[] | undefined {
  const tube = tubeAt(section, nth(model.levels, level).z, ends.yield);
  const capacity = (trace?: Trace) => allowedMomentOfPole(tube, column, { shear, torsion }, SHARE_BY_TIA, trace);
  const allowed = capacity();
  if (allowed === undefined) return undefined;
  const explain = (trace: Trace) => {
    capacity(trace);
    evaluate(trace, ratioInBending, [moment, allowed]);
  };
  return [{ ratio: ratioInBending.of(moment, allowed), of: 'bending', demand: moment, capacity: allowed, explain }];
}

function latticeUse(
  model: TowerModel,
  section: ToldSection,
  column: PoleAsColumn,
  level: number,
  { moment, braced, torsion }: Acting,
  ends: Ends,
): readonly Use[] | undefined {
  const { of, tubing } = section;
  if (of.kind !== 'lattice') return undefined;
  const { z } = nth(model.levels, level);
  const { shape, members } = of;
  const panel: Panel = {
    faces: shape.faces,
    pattern: members.pattern,
    width: widthAt(section, z) - members.leg,
    height: members.panel,
  };
  const { columnShare } = METHOD_BY_ID[model.input.method];
  const youngsModulus = MATERIALS[tubing.material].youngsModulus;
  const lean = [column.weight, column.height, youngsModulus, column.leastSecondMoment] as const;
  // What a rating says it covers no moment has.
  const covered = Math.min(nth(model.dead.weight, level), model.coveredWeight) * GRAVITY;
  const weight = covered + ownWeightAbove(model.input.station, z);
  const leg = memberOf(section, 'leg', ends);
  const brace = memberOf(section, 'brace', ends);
  const inLeg = (trace?: Trace) => {
    const amplified = evaluate(trace, momentAmplified, lean);
    const leaning = evaluate(trace, momentOfLeaning, [amplified, moment]);
    return legPush(panel, { moment: leaning, weight, braced, torsion }, trace);
  };
  const legsOf = (trace?: Trace) => {
    const most = hasOpenLegs(members) && ends.legFree === 'least' ? 2 * members.panel : members.panel;
    return memberUse(inLeg(trace), leg, { length: tubing.legFree ?? most, share: 1 }, columnShare, trace);
  };
  const bracesOf = (trace?: Trace) => {
    const firm = ends.braces === 'most';
    const crossed = isCrossed(section);
    const strained = {
      legPush: inLeg(crossed && !firm ? trace : undefined),
      legArea: memberSection(leg).area,
      braceArea: memberSection(brace).area,
    };
    const push = bracePush(panel, { moment, weight, braced, torsion }, firm ? undefined : strained, trace);
    const offCentre = shape.members === 'flat';
    const length = Math.hypot(panel.width, panel.height) * (crossed && firm ? 0.5 : 1);
    const hold = { length, share: firm && !offCentre ? WELDED_ENDS : 1, offCentre };
    return memberUse(push, brace, hold, columnShare, trace);
  };
  const uses: Use[] = [];
  for (const [kind, use] of [
    ['leg', legsOf],
    ['brace', bracesOf],
  ] as const) {
    const found = use();
    if (found === undefined) return undefined;
    const { ratio, push: demand, allowed: capacity } = found;
    uses.push({ ratio, of: kind, demand, capacity, explain: (trace) => use(trace) });
  }
  return uses;
}

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

/** Of the tower itself above a height: by its metal or by its weight, whichever is more [N]. */
function ownWeightAbove(station: Station, z: number): number {
  const { tower } = station;
  const { told } = ownSections(station) as OwnSections;
  const ofMetal = told.reduce((sum, section) => {
    const from = Math.max(z, section.low);
    if (from >= section.high) return sum;
    const ends = [from, section.high].map((at) => weightPerLength(section, at) ?? 0);
    return sum + ((nth(ends, 0) + nth(ends, 1)) / 2) * (section.high - from);
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
  const own = ownWeightAbove(station, tower.foot) / GRAVITY;
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
  evaluate(trace, weightAsAtTop, [GRAVITY, aloft, ownWeightAbove(station, station.tower.foot) / GRAVITY]);
  worstOf(model, unfavourable, WORST)?.explain(trace);
}

/** Yields that nobody tells, by metal. */
export function yieldsAssumed(station: Station): readonly Material[] {
  const { told = [] } = ownSections(station) ?? {};
  return [...new Set(told.flatMap(({ tubing }) => (tubing.yieldStrength === undefined ? [tubing.material] : [])))];
}
