import { evaluate, nth, remember, type Trace, under } from '../../foundation/index.ts';
import { type Bound, METHOD_BY_ID } from '../../methods/index.ts';
import {
  type Cut,
  type ForcePlace,
  type Mast,
  type MastBeam,
  type MastPiece,
  mastHeights,
  ratioInBending,
  type Slice,
  type SlicesInWind,
  sharedBending,
  sliceForces,
  type Tube,
  type WindItem,
} from '../../structure/index.ts';
import { agree, explainPieces, sumsByGroup } from '../explain-slices.ts';
import { roomByMoment, totalMoment } from '../formulas.ts';
import { windsHeld } from '../holds-to-ratio.ts';
import type { IceCase } from '../ice-case.ts';
import type { TowerModel } from '../model.ts';
import { forcePerArea, type RoomByCheck } from '../room-by-check.ts';
import { once, steadyNotGiven } from '../tower-model.ts';
import { type Check, type CheckOf, type CheckResult, judged, openCheck, withoutWinds } from './check.ts';
import type { CheckContext, CheckKind } from './check-kind.ts';
import {
  armAbove,
  beamOf,
  countsBeside,
  type MastWinds,
  mastInWind,
  type StillMoments,
  steadySpeed,
  stillMoments,
  worstHeadingOf,
} from './mast-in-wind.ts';

/** One place at which the mast may give. */
interface Place {
  readonly z: number;
  readonly tubes: readonly MastPiece[];
  /** By slice: moment for each newton on it [m]. */
  readonly arms: readonly number[];
  readonly still: StillMoments;
  readonly surely: number;
  readonly atMost: number;
}

interface MastModel {
  readonly beam: MastBeam;
  readonly places: readonly Place[];
  readonly winds: readonly MastWinds[];
}

export const mastKind: CheckKind<'mast'> = {
  kind: 'mast',
  part: 'mast',
  assess: ({ model, ice }) => [...mastCheck(model), ...icedMastCheck(model, ice)],
  explain: explainMast,
  loadedBy: 'wind',
  ownRemedies: ['mast-tube'],
  room: {
    onMastOnly: true,
    neededFor: 'mast',
    left: ({ model }, check, { height }) => (check.withIce ? undefined : mastRoom(model, height)),
  },
};

const MAST = { id: 'mast', kind: 'mast', at: '/mast' } as const;

/**
 * The mast against the yield of its own tube: bending where it is largest for what the tube is allowed, every load and the
 * mast's own wind at their worst headings together.
 *
 * u = |M|/(Fy·S/1.67)
 *
 * @source derived
 */
export function mastCheck(model: TowerModel): readonly Check[] {
  const { tower, mast, loads } = model.input.station;
  if (!mast) return loads.some((load) => load.low > tower.top + 1e-6) ? [openCheck(MAST, 'missing', ['/mast'])] : [];
  const needs = mastNeeds(mast);
  if (needs.length > 0) return [openCheck(MAST, 'missing', needs)];
  const found = mastModel(model);
  if (found === undefined) return [openCheck(MAST, 'not-computed')];
  const steadyUpTo = steadySpeed(found.winds);
  const held = windsHeld(model, {
    design: ratioBySpeed(found, (each) => each.design, steadyUpTo),
    actual: ratioBySpeed(found, (each) => each.actual(), steadyUpTo),
    steadyUpTo,
  });
  return [judgedMast(model, MAST, { ...resultAt(model, found, model.site.speed, true), ...held })];
}

/** The mast with ice, in the gust that goes with ice, against the same tube. */
function icedMastCheck(model: TowerModel, ice: IceCase | undefined): readonly Check[] {
  const { mast } = model.input.station;
  if (!mast || !ice || ice.weights === undefined) return [];
  const of = { ...MAST, id: 'mast:ice', withIce: true } as const;
  const needs = [...mastNeeds(mast), ...ice.needs];
  if (!ice.shown || needs.length > 0) return [openCheck(of, 'missing', needs)];
  const iced = ice.shown.model;
  const found = mastModel(iced);
  return [found ? judgedMast(iced, of, resultAt(iced, found, iced.site.speed, false)) : openCheck(of, 'not-computed')];
}

function resultAt(model: TowerModel, found: MastModel, speed: number, least: boolean): CheckResult {
  const unfavourable = worstOf(found, (each) => each.design, speed, 'unfavourable', least);
  const favourable = worstOf(found, (each) => each.design, speed, 'favourable', least);
  const bySecondMethod = countsBeside(model, unfavourable.cut.wind);
  return {
    ratio: unfavourable.ratio,
    of: 'bending',
    demand: unfavourable.moment,
    capacity: unfavourable.place.surely,
    height: unfavourable.place.z,
    ratioRange: [Math.min(favourable.ratioAtBest, unfavourable.ratio), unfavourable.ratio],
    headings: unfavourable.headings,
    ...(bySecondMethod === undefined ? {} : { bySecondMethod }),
  };
}

function judgedMast(model: TowerModel, of: CheckOf, result: CheckResult): Check {
  const pulls = steadyNotGiven(model, 'mast');
  if (pulls.length > 0) return openCheck(of, 'missing', pulls, withoutWinds(result));
  return judged(of, result, { margin: model.input.wanted.margin, asks: ruptureNotGiven(model) });
}

/** Area that may be added at a height on the mast before the mast itself reaches the wanted margin, the least over its places. */
function mastRoom(model: TowerModel, height: number): RoomByCheck | undefined {
  const { mast } = model.input.station;
  if (!mast || mastNeeds(mast).length > 0) return undefined;
  const found = mastModel(model);
  if (!found) return undefined;
  const wanted = model.input.wanted.margin;
  let least: RoomByCheck | undefined;
  once(model, worstMoments).forEach((moments, number) => {
    const { wind } = nth(found.winds, number).design;
    const perArea = forcePerArea(wind, height);
    found.places.forEach((place, index) => {
      const arm = height - place.z;
      if (arm <= 0 || place.z < (found.beam.bearing ?? found.beam.foot)) return;
      const [capacity, demand] = [place.surely, nth(moments, index)];
      const area = roomByMoment.of(wanted, capacity, demand, perArea, arm);
      if (!least || area < least.area)
        least = { height, on: 'mast', check: 'mast', area, of: 'moment', perArea, capacity, demand, arm };
    });
  });
  return least;
}

/** The moment at each place of the mast in the design wind, by wind [N·m]. */
function worstMoments(model: TowerModel): readonly (readonly number[])[] {
  const { winds, places } = mastModel(model) as MastModel;
  const { speed } = model.site;
  return winds.map(({ design }) => {
    const forces = sliceForces(design, speed, 'unfavourable', true);
    return places.map((place) => worstHeadingOf(design, forces, place.arms).value + stillOf(place));
  });
}

/** Pointers to what the mast's bending cannot do without. */
function mastNeeds(mast: Mast): readonly string[] {
  const { pieces } = mast;
  return [
    ...(pieces === undefined && mast.wall === undefined ? ['/mast/wall'] : []),
    ...(mast.yieldStrength === undefined && (pieces ?? [{ yieldStrength: undefined }]).some(noYield)
      ? ['/mast/yield']
      : []),
    ...(mast.foot === undefined ? ['/mast/inside'] : []),
  ];
}

/** An aluminium mast of which nobody says what it breaks at. */
export function ruptureNotGiven(model: TowerModel): readonly string[] {
  const { mast } = model.input.station;
  return mast?.material === 'aluminium' && mast.ultimateStrength === undefined ? ['/mast/ultimate'] : [];
}

const noYield = ({ yieldStrength }: { readonly yieldStrength?: number | undefined }) => yieldStrength === undefined;

function mastModel(model: TowerModel): MastModel | undefined {
  return once(model, mastModelInWind);
}

function mastModelInWind(model: TowerModel): MastModel | undefined {
  const { cut, winds } = once(model, mastInWind);
  const { mast } = model.input.station;
  const beam = mast && beamOf(mast);
  if (!beam) return undefined;
  const places = placesOf(model, beam, cut);
  return places && { beam, places, winds };
}

type AllowedOfTubes = NonNullable<ReturnType<typeof sharedBending>['allowed']>;

/** Heights at which the tube may give, with the arm of every slice there; undefined where a tube's strength is not shown. */
function placesOf(model: TowerModel, beam: MastBeam, cut: Cut): readonly Place[] | undefined {
  const hold = beam.bearing ?? beam.foot;
  const forces = cut.slices.map(({ low, high }): ForcePlace => ({ low, high }));
  const heights = mastHeights(beam, forces);
  const span = hold - beam.foot;
  const known = new Map<string, AllowedOfTubes | undefined>();
  const places: Place[] = [];
  for (const z of heights) {
    let below: string | undefined;
    for (const side of [-1, 1]) {
      if (side < 0 && z <= beam.foot) continue;
      const tubes = beam.pieces.filter(({ low, high }) =>
        side > 0 ? low <= z + 1e-9 && z + 1e-9 < high : low < z - 1e-9 && z - 1e-9 <= high,
      );
      if (tubes.length === 0) continue;
      const key = tubes.map((tube) => beam.pieces.indexOf(tube)).join();
      // The same tubes just above a height as just below it are asked once.
      if (key === below) continue;
      below = key;
      const allowed = remember(known, key, () => sharedBending(tubes as readonly Tube[]).allowed);
      if (!allowed) return undefined;
      const at = { z, tubes, ...allowed };
      if (z >= hold) {
        places.push({ ...at, arms: forces.map((force) => armAbove(force, z)), still: stillMoments(model, z) });
        continue;
      }
      // Below the bearing the moment of what is above it runs out towards the foot; what sits between bends the other way.
      const share = (z - beam.foot) / span;
      const atHold = stillMoments(model, hold);
      places.push({
        ...at,
        arms: forces.map((force) => share * armAbove(force, hold)),
        still: { pull: share * atHold.pull, eccentricWeight: share * atHold.eccentricWeight },
      });
      places.push({
        ...at,
        arms: forces.map((force) => armBetween(force, beam.foot, hold, z)),
        still: { pull: 0, eccentricWeight: 0 },
      });
    }
  }
  return places;
}

/** Moment at z of one newton between foot and bearing, as a beam on both has it. */
function armBetween({ low, high }: ForcePlace, foot: number, bearing: number, z: number): number {
  const middle = (low + high) / 2;
  if (middle <= foot || middle >= bearing) return 0;
  const span = bearing - foot;
  return z <= middle ? ((bearing - middle) * (z - foot)) / span : ((middle - foot) * (bearing - z)) / span;
}

const stillOf = ({ still }: Place): number => still.pull + still.eccentricWeight;

interface Worst {
  readonly cut: SlicesInWind;
  readonly ratio: number;
  readonly ratioAtBest: number;
  readonly moment: number;
  readonly place: Place;
  readonly headings: { readonly fixed?: number; readonly turning?: number };
}

interface LoadEffect {
  readonly cut: SlicesInWind;
  readonly place: Place;
  /** Moment of the wind, all headings at their worst [N·m]. */
  readonly value: number;
  readonly headings: Worst['headings'];
}

function loadEffectsAt(
  found: MastModel,
  windOf: (each: MastWinds) => SlicesInWind,
  speed: number,
  bound: Bound,
  least: boolean,
): readonly LoadEffect[] {
  return found.winds.flatMap((each) => {
    const cut = windOf(each);
    const forces = sliceForces(cut, speed, bound, least);
    return found.places.map((place) => {
      const { value, ...headings } = worstHeadingOf(cut, forces, place.arms);
      return { cut, place, value, headings };
    });
  });
}

/** The place at which the mast is used most, over its winds. */
function worstOf(
  found: MastModel,
  windOf: (each: MastWinds) => SlicesInWind,
  speed: number,
  bound: Bound,
  least = false,
): Worst {
  let worst: Worst | undefined;
  for (const { cut, place, value, headings } of loadEffectsAt(found, windOf, speed, bound, least)) {
    const moment = value + stillOf(place);
    const ratio = ratioInBending.of(moment, place.surely);
    if (worst === undefined || ratio > worst.ratio)
      worst = { ratio, ratioAtBest: ratioInBending.of(moment, place.atMost), moment, place, headings, cut };
  }
  return worst as Worst;
}

/** The largest ratio by the speed; up to where no coefficient changes the wind's share goes with the square of it. */
function ratioBySpeed(found: MastModel, windOf: (each: MastWinds) => SlicesInWind, steadyUpTo: number) {
  const slow = Math.min(1, steadyUpTo);
  let loadEffects: readonly LoadEffect[] | undefined;
  return (speed: number): number => {
    if (speed > steadyUpTo || steadyUpTo <= 0) return worstOf(found, windOf, speed, 'unfavourable').ratio;
    loadEffects ??= loadEffectsAt(found, windOf, slow, 'unfavourable', false);
    const share = (speed / slow) ** 2;
    let most = Number.NEGATIVE_INFINITY;
    for (const { value, place } of loadEffects)
      most = Math.max(most, ratioInBending.of(value * share + stillOf(place), place.surely));
    return most;
  };
}

function explainMast({ model, ice }: CheckContext, checks: readonly Check[], trace: Trace): void {
  for (const { withIce, result } of checks) {
    if (!result) continue;
    const inCase = withIce && ice?.shown ? ice.shown.model : model;
    const found = mastModel(inCase);
    const { speed } = inCase.site;
    if (found) {
      under(trace, withIce ? 'mast with ice' : 'mast', () => explainByMethods(found, speed, !withIce, trace));
    }
  }
}

/** By the plan's method, and by the one that speaks beside it where there is one. */
function explainByMethods(found: MastModel, speed: number, least: boolean, trace: Trace): void {
  const methods = new Set(found.winds.map(({ design }) => design.wind.method));
  if (methods.size === 1) explainCase(found, speed, least, trace);
  else
    for (const id of methods) {
      const winds = found.winds.filter(({ design }) => design.wind.method === id);
      under(trace, `by ${METHOD_BY_ID[id].title}`, () => explainCase({ ...found, winds }, speed, least, trace));
    }
}

/** Every force on it, the moment where it is used most, and what its tube is allowed there. */
function explainCase(found: MastModel, speed: number, least: boolean, trace: Trace): void {
  const worst = worstOf(found, (each) => each.design, speed, 'unfavourable', least);
  const { place, cut } = worst;
  const reachOf = (_: Slice, __: WindItem, index: number) => {
    const arm = nth(place.arms, index);
    return arm === 0 ? undefined : { share: 1, arm };
  };
  const pieces = explainPieces({ cut, speed, bound: 'unfavourable', least }, reachOf, trace);
  const { pull, eccentricWeight } = place.still;
  const sums = sumsByGroup(pieces, 'moment', trace);
  const moment = evaluate(trace, totalMoment, [...sums, 0, pull, eccentricWeight]);
  agree(moment, worst.moment, 'moment in the mast');
  const { allowed } = under(trace, 'tube where it is bent most', () => sharedBending(place.tubes, trace));
  if (allowed) evaluate(trace, ratioInBending, [moment, place.surely]);
}
