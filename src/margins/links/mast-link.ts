import { evaluate, GRAVITY, remember, type Trace, under } from '../../foundation/index.ts';
import { METHOD_BY_ID, type Reading, type Wind } from '../../methods/index.ts';
import {
  type Cut,
  creditedPieces,
  cutIntoSlices,
  type ForcePlace,
  type Load,
  type Mast,
  type MastBeam,
  type MastPiece,
  mastBending,
  mastHeights,
  type Slice,
  type SliceForces,
  sharedBending,
  sliceForces,
  type Tube,
  useInBending,
  type WindItem,
  type Windward,
  windward,
} from '../../structure/index.ts';
import { agree, explainSlice, type Reaching, sumGroup } from '../explain-slices.ts';
import { roomByMoment, roomByShear, totalMoment } from '../formulas.ts';
import { type WindsHeld, windsHeld } from '../holds-to-use.ts';
import type { IceCase, IceCaseShown } from '../ice-case.ts';
import { forcePerArea, type RoomByLink } from '../room-by-link.ts';
import { once, type Scenario, siteSpeed, siteWind, type TowerModel } from '../tower-model.ts';
import { verdictOf } from '../verdict.ts';
import type { Link } from './link.ts';

/** What the mast does to what holds it, and how far its tip moves, in the design wind at the bad end of the readings. */
export interface MastAnswer {
  /** Force on its upper bearing, and on what holds its foot, each at its own worst heading [N], allowable level. */
  readonly atBearing?: number;
  readonly atFoot: number;
  /** Moment at its foot, which what holds it there takes alone [N·m]; absent where a bearing takes it as a couple. */
  readonly clampMoment?: number;
  /** Of its loads and itself, all headings at their worst [N]. */
  readonly force: number;
  /** Of what hangs off its axis [N·m]. */
  readonly torque: number;
  /** Weight of mast and what it carries [kg]; absent: some weight is not known. */
  readonly weight?: number;
  /** Movement of its tip [m]; absent: its stiffness is not known. */
  readonly tipMovement?: number;
  /** Worst bending, and where [N·m, m]. */
  readonly bending?: { readonly moment: number; readonly height: number };
}

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

/** What hangs on the mast, and the winds on it. */
interface MastInWind {
  readonly cut: Cut;
  readonly winds: readonly MastWinds[];
}

interface MastWinds {
  readonly design: Windward;
  readonly actual: () => Windward;
}

/**
 * The mast against the yield of its own tube: bending where it is largest for what the tube is allowed, every load and the
 * mast's own wind at their worst headings together.
 *
 * u = |M|/(Fy·S/1.67)
 *
 * @param model the tower [-]
 * @returns the link, where there is a mast or ought to be one [-]
 * @source derived
 */
export function mastLink(model: TowerModel): readonly Link[] {
  const { tower, mast, loads } = model.inquiry.station;
  const base = { id: 'mast', kind: 'mast' } as const;
  const notShown = (because: 'missing' | 'not-computed', needs: readonly string[]): readonly Link[] => [
    { ...base, verdict: 'not-shown', because, needs },
  ];
  if (!mast) return loads.some((load) => load.low > tower.top + 1e-6) ? notShown('missing', ['/mast']) : [];
  const needs = mastNeeds(mast);
  if (needs.length > 0) return notShown('missing', needs);
  const found = mastModel(model);
  if (found === undefined) return notShown('not-computed', []);
  const pulls = untoldPulls(model);
  const { speed } = siteSpeed(model.inquiry);
  const bad = worstOf(found, (each) => each.design, speed, 'bad', true);
  const good = worstOf(found, (each) => each.design, speed, 'good', true);
  const steadyUpTo = steadySpeed(found.winds);
  const held = windsHeld(model, {
    design: useBySpeed(found, (each) => each.design, steadyUpTo),
    actual: useBySpeed(found, (each) => each.actual(), steadyUpTo),
    steadyUpTo,
  });
  const result = {
    use: bad.use,
    of: 'bending',
    demand: bad.moment,
    capacity: bad.place.surely,
    height: bad.place.z,
    useRange: [Math.min(good.useAtBest, bad.use), bad.use],
    headings: bad.headings,
    ...held,
  } as const;
  if (pulls.length > 0) {
    const { holdsTo: _, keepsMarginTo: __, ...rest } = result;
    return [{ ...base, verdict: 'not-shown', because: 'missing', needs: pulls, result: rest }];
  }
  const verdict = verdictOf(bad.use, good.useAtBest, model.inquiry.wanted.margin);
  if (verdict !== 'not-shown') return [{ ...base, verdict, needs: [], result }];
  return [{ ...base, verdict, because: 'unsettled', needs: [...ruptureUntold(model)], result }];
}

/**
 * The mast with ice, in the gust that goes with ice, against the same tube.
 *
 * u = |M|/(Fy·S/1.67), iced areas at the ice case's own wind
 *
 * @param model the bare tower [-]
 * @param ice the ice case, where ice is given [-]
 * @returns the link, where mast and ice are given and the method has a rule for ice [-]
 * @source asce7-10
 */
export function icedMastLink(model: TowerModel, ice: IceCase | undefined): readonly Link[] {
  const { mast } = model.inquiry.station;
  if (!mast || !ice || ice.thicknessAtTop === undefined) return [];
  const base = { id: 'mast:ice', kind: 'mast', withIce: true } as const;
  const needs = [...mastNeeds(mast), ...ice.needs];
  if (!ice.shown || needs.length > 0) return [{ ...base, verdict: 'not-shown', because: 'missing', needs }];
  const found = icedMastModel(ice.shown);
  if (!found) return [{ ...base, verdict: 'not-shown', because: 'not-computed', needs: [] }];
  const { speed } = ice.shown;
  const bad = worstOf(found, (each) => each.design, speed, 'bad');
  const good = worstOf(found, (each) => each.design, speed, 'good');
  const result = {
    use: bad.use,
    of: 'bending',
    demand: bad.moment,
    capacity: bad.place.surely,
    height: bad.place.z,
    useRange: [Math.min(good.useAtBest, bad.use), bad.use],
    headings: bad.headings,
  } as const;
  const pulls = untoldPulls(model);
  if (pulls.length > 0) return [{ ...base, verdict: 'not-shown', because: 'missing', needs: pulls, result }];
  const verdict = verdictOf(bad.use, good.useAtBest, model.inquiry.wanted.margin);
  if (verdict !== 'not-shown') return [{ ...base, verdict, needs: [], result }];
  return [{ ...base, verdict, because: 'unsettled', needs: [...ruptureUntold(model)], result }];
}

/**
 * Wires on the mast whose pull nobody tells.
 *
 * n = Σ 1
 *
 * @param model the tower [-]
 * @returns pointers to what is missing [-]
 * @source derived
 */
export function untoldPulls(model: TowerModel): readonly string[] {
  return model.inquiry.station.loads
    .filter((load) => load.on === 'mast' && load.shape.kind === 'wire' && load.shape.pull === undefined)
    .map((load) => `${load.at}/tension`);
}

/**
 * Area that may be added at a height on the mast before the mast itself reaches the wanted margin.
 *
 * A = ((1 − m)·M_all − M)/(λ·q·G·a), the least over its places
 *
 * @param model the tower [-]
 * @param height where it would hang [m]
 * @returns the area and what decides it; none where the mast is not shown [-]
 * @source derived
 */
export function mastRoom(model: TowerModel, height: number): readonly RoomByLink[] {
  const { mast } = model.inquiry.station;
  if (!mast || mastNeeds(mast).length > 0) return [];
  const found = mastModel(model);
  if (!found) return [];
  const wanted = model.inquiry.wanted.margin;
  let least: RoomByLink | undefined;
  once(model, worstMoments).forEach((moments, number) => {
    const { wind } = (found.winds[number] as MastWinds).design;
    const perArea = forcePerArea(wind, height);
    found.places.forEach((place, index) => {
      const arm = height - place.z;
      if (arm <= 0 || place.z < (found.beam.bearing ?? found.beam.foot)) return;
      const [capacity, demand] = [place.surely, moments[index] as number];
      const area = roomByMoment.of(wanted, capacity, demand, perArea, arm);
      if (!least || area < least.area)
        least = { height, on: 'mast', link: 'mast', area, of: 'moment', perArea, capacity, demand, arm };
    });
  });
  return least ? [least] : [];
}

/** The moment at each place of the mast in the design wind, by wind [N·m]. */
function worstMoments(model: TowerModel): readonly (readonly number[])[] {
  const { winds, places } = mastModel(model) as MastModel;
  const { speed } = siteSpeed(model.inquiry);
  return winds.map(({ design }) => {
    const forces = sliceForces(design, speed, 'bad', true);
    return places.map((place) => worstHeadingOf(design, forces, place.arms).value + stillOf(place));
  });
}

/**
 * Area that may be added at a height on the mast before what holds the mast reaches the wanted margin of what its maker states
 * of its force, or of the moment it takes alone.
 *
 * A = ((1 − m)·F_rated − R)/(λ·q·G·share), ((1 − m)·M_rated − M_f)/(λ·q·G·(z − z_f))
 *
 * @param model the tower [-]
 * @param links of the tower [-]
 * @param height where it would hang [m]
 * @returns by link, the area [-]
 * @source derived
 */
export function roomOfHolds(model: TowerModel, links: readonly Link[], height: number): readonly RoomByLink[] {
  const { mast } = model.inquiry.station;
  const hold = mast && holdOfMast(mast);
  if (!hold) return [];
  const winds = once(model, mastInWind).winds;
  return links.flatMap(({ id, kind, verdict, result }) => {
    if (verdict === 'not-shown' || (result?.of !== 'side-force' && result?.of !== 'clamp-moment')) return [];
    const clamped = result.of === 'clamp-moment';
    const asked = clamped ? 'clampMoment' : kind === 'bearing' ? 'atBearing' : 'atFoot';
    const reach = reachOf(model, asked, hold.foot, hold.bearing);
    const arm = reach?.shareAt?.(height) ?? 0;
    if (arm <= 0) return [];
    const perArea = Math.max(...winds.map(({ design }) => forcePerArea(design.wind, height)));
    const { capacity, demand } = result;
    const area = (clamped ? roomByMoment : roomByShear).of(model.inquiry.wanted.margin, capacity, demand, perArea, arm);
    const of = clamped ? 'moment' : 'shear';
    return [{ height, on: 'mast', link: id, area, of, perArea, capacity, demand, arm } as const];
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

/**
 * An aluminium mast of which nobody says what it breaks at.
 *
 * n = Σ 1
 *
 * @param model the tower [-]
 * @returns a pointer, or none [-]
 * @source derived
 */
export function ruptureUntold(model: TowerModel): readonly string[] {
  const { mast } = model.inquiry.station;
  return mast?.material === 'aluminium' && mast.ultimateStrength === undefined ? ['/mast/ultimate'] : [];
}

const noYield = ({ yieldStrength }: { readonly yieldStrength?: number | undefined }) => yieldStrength === undefined;

/** The mast as a beam, of the tubes that may be counted on; undefined where a wall is not told or its foot is not. */
function beamOf(mast: Mast): MastBeam | undefined {
  const { foot } = mast;
  const pieces = piecesOf(mast);
  if (foot === undefined || pieces === undefined) return undefined;
  const { bearing } = mast;
  return { pieces: creditedPieces(pieces), foot, ...(bearing !== undefined && bearing > foot ? { bearing } : {}) };
}

function piecesOf(mast: Mast): readonly MastPiece[] | undefined {
  const { foot } = mast;
  if (foot === undefined) return undefined;
  const metal = {
    material: mast.material,
    ...(mast.ultimateStrength === undefined ? {} : { ultimateStrength: mast.ultimateStrength }),
  };
  const strength = (own: number | undefined) => {
    const yieldStrength = own ?? mast.yieldStrength;
    return yieldStrength === undefined ? {} : { yieldStrength };
  };
  if (mast.pieces) {
    return mast.pieces.map(({ outside, wall, from, to, yieldStrength }) => ({
      ...metal,
      ...strength(yieldStrength),
      outside,
      wall,
      low: foot + from,
      high: foot + to,
    }));
  }
  if (mast.wall === undefined) return undefined;
  return [{ ...metal, ...strength(undefined), outside: mast.outside, wall: mast.wall, low: foot, high: mast.tip }];
}

/** The wind on the mast and what it carries, with the gust factor that the method has for a mast. */
function mastWinds(model: TowerModel, cut: Cut): readonly MastWinds[] {
  const exposed = [...new Set(model.scenarios.map((scenario) => scenario.exposed))];
  return exposed.map((each) => {
    const on = (actual: boolean) =>
      windward(withMastGust(model, siteWind(model.inquiry, each, actual), each), cut, 'demand', 'face');
    let actual: Windward | undefined;
    return {
      design: on(false),
      actual: () => {
        actual ??= on(true);
        return actual;
      },
    };
  });
}

/** A wind with the gust factor that the method has for a mast, where it has one. */
function withMastGust({ inquiry }: TowerModel, wind: Wind, exposed: Scenario['exposed']): Wind {
  const { mastGust } = METHOD_BY_ID[inquiry.method];
  if (!mastGust) return wind;
  return { ...wind, gustEffect: (speed, trace) => Math.max(wind.gustEffect(speed), mastGust(exposed, trace)) };
}

function icedMastModel({ model }: IceCaseShown): MastModel | undefined {
  const cut = mastCut(model);
  const winds = model.scenarios.map(({ exposed }, scenario) => {
    const { wind } = model.hungWind[scenario] as Windward;
    const design = windward(withMastGust(model, wind, exposed), cut, 'demand', 'face');
    return { design, actual: () => design };
  });
  return mastModelIn(model, { cut, winds });
}

function mastModel(model: TowerModel): MastModel | undefined {
  return once(model, inSiteWind);
}

const inSiteWind = (model: TowerModel) => mastModelIn(model, once(model, mastInWind));

function mastModelIn(model: TowerModel, { cut, winds }: MastInWind): MastModel | undefined {
  const { mast } = model.inquiry.station;
  const beam = mast && beamOf(mast);
  if (!beam) return undefined;
  const places = placesOf(model, beam, cut);
  return places && { beam, places, winds };
}

function mastInWind(model: TowerModel): MastInWind {
  const cut = mastCut(model);
  return { cut, winds: mastWinds(model, cut) };
}

function mastCut(model: TowerModel): Cut {
  return cutIntoSlices(
    model.hung.filter((item) => item.carriedBy === 'mast'),
    [],
  );
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
        still: { pull: share * atHold.pull, leaning: share * atHold.leaning },
      });
      places.push({
        ...at,
        arms: forces.map((force) => armBetween(force, beam.foot, hold, z)),
        still: { pull: 0, leaning: 0 },
      });
    }
  }
  return places;
}

/** Moment at z of one newton, as far as it acts above. */
function armAbove({ low, high }: ForcePlace, z: number): number {
  if (high <= z) return 0;
  if (low >= z) return (low + high) / 2 - z;
  return (high - z) ** 2 / (2 * (high - low));
}

/** Moment at z of one newton between foot and bearing, as a beam on both has it. */
function armBetween({ low, high }: ForcePlace, foot: number, bearing: number, z: number): number {
  const middle = (low + high) / 2;
  if (middle <= foot || middle >= bearing) return 0;
  const span = bearing - foot;
  return z <= middle ? ((bearing - middle) * (z - foot)) / span : ((middle - foot) * (bearing - z)) / span;
}

const stillOf = ({ still }: Place): number => still.pull + still.leaning;

/** Moments that are there without wind [N·m]. */
interface StillMoments {
  /** Of the pull of wires, as a vector sum. */
  readonly pull: number;
  /** Of weight off the axis. */
  readonly leaning: number;
}

function stillMoments(model: TowerModel, z: number): StillMoments {
  let east = 0;
  let north = 0;
  for (const load of model.inquiry.station.loads) {
    if (load.on !== 'mast' || load.low <= z || load.shape.kind !== 'wire') continue;
    const moment = pullOf(load) * (load.low - z);
    east += moment * Math.sin(load.shape.heading);
    north += moment * Math.cos(load.shape.heading);
  }
  return { pull: Math.hypot(east, north), leaning: leaningOnMast(model, z) };
}

/** Moment of what rides on the mast above a height, or all along it, off its axis; ice with its level [N·m]. */
function leaningOnMast({ inquiry: { station }, iceOnLoads }: TowerModel, z = Number.NEGATIVE_INFINITY): number {
  let leaning = 0;
  station.loads.forEach((load, number) => {
    if (load.on !== 'mast' || load.low <= z) return;
    const mass = load.count * (load.weight ?? 0) + (iceOnLoads?.[number] ?? 0);
    leaning += mass * load.offset * GRAVITY;
  });
  return leaning;
}

function pullOf(load: Load): number {
  return load.shape.kind === 'wire' ? load.count * (load.shape.pull ?? 0) : 0;
}

interface Worst {
  readonly cut: Windward;
  readonly use: number;
  readonly useAtBest: number;
  readonly moment: number;
  readonly place: Place;
  readonly headings: { readonly fixed?: number; readonly turning?: number };
}

interface Blown {
  readonly cut: Windward;
  readonly place: Place;
  /** Moment of the wind, all headings at their worst [N·m]. */
  readonly value: number;
  readonly headings: Worst['headings'];
}

function blownAt(
  found: MastModel,
  windOf: (each: MastWinds) => Windward,
  speed: number,
  reading: Reading,
  least: boolean,
): readonly Blown[] {
  return found.winds.flatMap((each) => {
    const cut = windOf(each);
    const forces = sliceForces(cut, speed, reading, least);
    return found.places.map((place) => {
      const { value, ...headings } = worstHeadingOf(cut, forces, place.arms);
      return { cut, place, value, headings };
    });
  });
}

/** The place at which the mast is used most, over its winds. */
function worstOf(
  found: MastModel,
  windOf: (each: MastWinds) => Windward,
  speed: number,
  reading: Reading,
  least = false,
): Worst {
  let worst: Worst | undefined;
  for (const { cut, place, value, headings } of blownAt(found, windOf, speed, reading, least)) {
    const moment = value + stillOf(place);
    const use = useInBending.of(moment, place.surely);
    if (worst === undefined || use > worst.use)
      worst = { use, useAtBest: useInBending.of(moment, place.atMost), moment, place, headings, cut };
  }
  return worst as Worst;
}

/** The largest use by the speed; up to where no coefficient changes the wind's share goes with the square of it. */
function useBySpeed(found: MastModel, windOf: (each: MastWinds) => Windward, steadyUpTo: number) {
  const slow = Math.min(1, steadyUpTo);
  let blown: readonly Blown[] | undefined;
  return (speed: number): number => {
    if (speed > steadyUpTo || steadyUpTo <= 0) return worstOf(found, windOf, speed, 'bad').use;
    blown ??= blownAt(found, windOf, slow, 'bad', false);
    const share = (speed / slow) ** 2;
    let most = Number.NEGATIVE_INFINITY;
    for (const { value, place } of blown)
      most = Math.max(most, useInBending.of(value * share + stillOf(place), place.surely));
    return most;
  };
}

/** The largest of a weighted sum of forces over headings: what turns together, and what faces its own way. */
function worstHeadingOf(
  cut: Windward,
  forces: SliceForces,
  weights: readonly number[],
): { readonly value: number; readonly fixed?: number; readonly turning?: number } {
  let still = 0;
  const groups = { turning: [0, 0, 0], fixed: [0, 0, 0] };
  for (let number = 0; number < weights.length; number += 1) {
    const weight = weights[number] as number;
    if (weight === 0) continue;
    const item = cut.items[(cut.slices[number] as Slice).item] as WindItem;
    const front = weight * (forces.front[number] as number);
    const side = weight * (forces.side[number] as number);
    if (item.turn === 'still' || item.turn === 'own-worst') {
      still += Math.max(front, side);
      continue;
    }
    const sums = groups[item.turn];
    const half = (front - side) / 2;
    sums[0] = (sums[0] as number) + (front + side) / 2;
    sums[1] = (sums[1] as number) + half * Math.cos(2 * item.heading);
    sums[2] = (sums[2] as number) + half * Math.sin(2 * item.heading);
  }
  const worst = ([mean, cosine, sine]: number[]) => (mean as number) + Math.hypot(cosine as number, sine as number);
  const heading = ([, cosine, sine]: number[]) => {
    if (Math.hypot(cosine as number, sine as number) < 1e-9) return undefined;
    const angle = Math.atan2(sine as number, cosine as number) / 2;
    return angle < 0 ? angle + Math.PI : angle;
  };
  const [turning, fixed] = [heading(groups.turning), heading(groups.fixed)];
  return {
    value: still + worst(groups.turning) + worst(groups.fixed),
    ...(turning === undefined ? {} : { turning }),
    ...(fixed === undefined ? {} : { fixed }),
  };
}

/** What the mast asks of what holds it. */
export type AskedOfHold = 'atBearing' | 'atFoot' | 'clampMoment' | 'torque';

/** How much of a force on the mast comes there, and what comes there without wind [N or N·m]. */
interface Reach {
  readonly share: (place: ForcePlace, item: WindItem) => number;
  /** The same of what is on the axis at one height; absent of a torque. */
  readonly shareAt?: (z: number) => number;
  readonly still: number;
}

function reachOf(model: TowerModel, of: AskedOfHold, foot: number, bearing: number | undefined): Reach | undefined {
  if (of === 'torque') return { share: (_, item) => item.offset, still: 0 };
  if (bearing === undefined) {
    if (of === 'atFoot') return { share: () => 1, shareAt: () => 1, still: pullForce(model, () => 1) };
    if (of === 'atBearing') return undefined;
    const shareAt = (z: number) => Math.max(0, z - foot);
    const still = pullForce(model, shareAt) + leaningOnMast(model);
    return { share: (place) => armAbove(place, foot), shareAt, still };
  }
  if (of === 'clampMoment') return undefined;
  const span = bearing - foot;
  const shareAt =
    of === 'atBearing'
      ? (z: number) => (z - foot) / span
      : // What blows below the bearing would take from it; it is not counted on.
        (z: number) => Math.max(0, z - bearing) / span;
  return {
    share: ({ low, high }) => shareAt((low + high) / 2),
    shareAt,
    still: pullForce(model, shareAt) + leaningOnMast(model) / span,
  };
}

function holdOfMast(mast: Mast): { readonly foot: number; readonly bearing?: number } | undefined {
  const { foot, bearing } = mast;
  if (foot === undefined) return undefined;
  return bearing !== undefined && bearing > foot ? { foot, bearing } : { foot };
}

/**
 * What the mast does to what holds it, whatever its own strength.
 *
 * R_b = (ΣF(z − z_f) + ΣW·e)/s, R_f = (ΣF(z − z_b) + ΣW·e)/s, t = ΣF·e; clamped, M = ΣF(z − z_f) + ΣW·e
 *
 * @param model the tower [-]
 * @returns forces, torque, weight and movement [-]; undefined without a mast, or where its foot is not told
 * @source derived
 */
export function mastAnswer(model: TowerModel): MastAnswer | undefined {
  const { mast } = model.inquiry.station;
  const hold = mast && holdOfMast(mast);
  if (!mast || !hold) return undefined;
  const { foot, bearing } = hold;
  const { speed } = siteSpeed(model.inquiry);
  const beam = beamOf(mast);
  let answer: MastAnswer | undefined;
  for (const { design } of once(model, mastInWind).winds) {
    const forces = sliceForces(design, speed, 'bad', true);
    const by = (share: Reach['share']) =>
      worstHeadingOf(
        design,
        forces,
        design.slices.map((slice) => share(slice, design.items[slice.item] as WindItem)),
      ).value;
    const asked = (of: AskedOfHold) => {
      const reach = reachOf(model, of, foot, bearing);
      return reach && by(reach.share) + reach.still;
    };
    const force = by(() => 1);
    const atBearing = asked('atBearing');
    const clampMoment = asked('clampMoment');
    const here: MastAnswer = {
      force,
      torque: asked('torque') as number,
      atFoot: asked('atFoot') as number,
      ...(atBearing === undefined ? {} : { atBearing }),
      ...(clampMoment === undefined ? {} : { clampMoment }),
      ...weightOf(model, mast),
      ...movementOf(model, beam, design, forces),
    };
    if (answer === undefined || here.force > answer.force) answer = here;
  }
  return answer;
}

/**
 * The winds to which what holds the mast keeps to what its maker states.
 *
 * (ΣF·share + what stays)/stated = 1
 *
 * @param model the tower [-]
 * @param of what is asked of it [-]
 * @param stated force [N], moment or torque [N·m]
 * @returns the winds [-]; none where the mast is not told or no wind brings it there
 * @source derived
 */
export function windsHeldByHold(model: TowerModel, of: AskedOfHold, stated: number): WindsHeld {
  const { mast } = model.inquiry.station;
  const hold = mast && holdOfMast(mast);
  const reach = hold && reachOf(model, of, hold.foot, hold.bearing);
  if (!reach) return {};
  const { cut, winds } = once(model, mastInWind);
  const shares = cut.slices.map((slice) => reach.share(slice, cut.items[slice.item] as WindItem));
  const steadyUpTo = steadySpeed(winds);
  const useBy = (windOf: (each: MastWinds) => Windward) => {
    const asked = (speed: number) =>
      Math.max(
        ...winds.map((each) => {
          const blown = windOf(each);
          return worstHeadingOf(blown, sliceForces(blown, speed, 'bad', false), shares).value;
        }),
      );
    const slow = Math.min(1, steadyUpTo);
    let blown: number | undefined;
    return (speed: number): number => {
      if (speed > steadyUpTo || steadyUpTo <= 0) return (asked(speed) + reach.still) / stated;
      blown ??= asked(slow);
      return (blown * (speed / slow) ** 2 + reach.still) / stated;
    };
  };
  return windsHeld(model, {
    design: useBy((each) => each.design),
    actual: useBy((each) => each.actual()),
    steadyUpTo,
  });
}

/** Speed up to which no coefficient of what the mast carries changes [m/s]. */
function steadySpeed(winds: readonly MastWinds[]): number {
  return Math.min(...winds.flatMap((each) => [each.design.steadyUpTo, each.actual().steadyUpTo]));
}

function pullForce(model: TowerModel, weight: (z: number) => number): number {
  let east = 0;
  let north = 0;
  for (const load of model.inquiry.station.loads) {
    if (load.on !== 'mast' || load.shape.kind !== 'wire') continue;
    const pull = pullOf(load) * weight(load.low);
    east += pull * Math.sin(load.shape.heading);
    north += pull * Math.cos(load.shape.heading);
  }
  return Math.hypot(east, north);
}

function weightOf(model: TowerModel, mast: Mast): { readonly weight?: number } {
  const pieces = piecesOf(mast);
  if (!pieces) return {};
  let weight = 0;
  for (const piece of pieces) weight += sharedBending([piece]).weightPerLength * (piece.high - piece.low);
  for (const load of model.inquiry.station.loads) {
    if (load.on !== 'mast') continue;
    if (load.weight === undefined) return {};
    weight += load.count * load.weight;
  }
  return { weight };
}

/** The tip moves most, near enough, for the heading that bends the mast most where it is held. */
function movementOf(
  model: TowerModel,
  beam: MastBeam | undefined,
  cut: Windward,
  forces: SliceForces,
): Pick<MastAnswer, 'tipMovement' | 'bending'> {
  if (!beam) return {};
  const hold = beam.bearing ?? beam.foot;
  const { value, turning, fixed } = worstHeadingOf(
    cut,
    forces,
    cut.slices.map(({ low, high }) => armAbove({ low, high }, hold)),
  );
  const acting = cut.slices.map(({ low, high, item: number }, index) => {
    const item = cut.items[number] as WindItem;
    const [front, side] = [forces.front[index] as number, forces.side[index] as number];
    const angle = (item.turn === 'turning' ? turning : fixed) ?? item.heading;
    const force =
      item.turn === 'turning' || item.turn === 'fixed'
        ? front * Math.cos(angle - item.heading) ** 2 + side * Math.sin(angle - item.heading) ** 2
        : Math.max(front, side);
    return { low, high, force };
  });
  for (const load of model.inquiry.station.loads) {
    if (load.on === 'mast' && pullOf(load) > 0) acting.push({ low: load.low, high: load.low, force: pullOf(load) });
  }
  const { tip } = mastBending(beam, acting);
  const still = stillMoments(model, hold);
  return {
    tipMovement: Math.abs(tip.movement),
    bending: { moment: value + still.pull + still.leaning, height: hold },
  };
}

/**
 * The working of the mast: every force on it, the moment where it is used most, and what its tube is allowed there.
 *
 * M = ΣF·a + M_dead, u = M/M_all
 *
 * @param model the tower [-]
 * @param trace the working [-]
 * @returns nothing [-]
 * @source derived
 */
export function explainMast(model: TowerModel, trace: Trace): void {
  const { mast } = model.inquiry.station;
  if (!mast || mastNeeds(mast).length > 0) return;
  const found = mastModel(model);
  if (found) explainCase(found, siteSpeed(model.inquiry).speed, true, trace);
}

/**
 * The working of the mast with ice.
 *
 * M = ΣF·a + M_dead, u = M/M_all
 *
 * @param model the bare tower [-]
 * @param ice the ice case [-]
 * @param trace the working [-]
 * @returns nothing [-]
 * @source asce7-10
 */
export function explainIcedMast(model: TowerModel, ice: IceCase | undefined, trace: Trace): void {
  const { mast } = model.inquiry.station;
  if (!mast || mastNeeds(mast).length > 0 || !ice?.shown) return;
  const found = icedMastModel(ice.shown);
  if (found) explainCase(found, ice.shown.speed, false, trace);
}

function explainCase(found: MastModel, speed: number, least: boolean, trace: Trace): void {
  const worst = worstOf(found, (each) => each.design, speed, 'bad', least);
  const { place, cut } = worst;
  const forces = sliceForces(cut, speed, 'bad', least);
  const pieces = cut.slices.flatMap((slice, index): Reaching[] => {
    const arm = place.arms[index] as number;
    if (arm === 0) return [];
    const item = cut.items[slice.item] as WindItem;
    const [along, across] = under(trace, item.name, () =>
      explainSlice(cut, slice, index, forces, speed, 'bad', least, trace),
    );
    const group = item.turn === 'own-worst' ? 'still' : item.turn;
    return [{ group, heading: item.heading, along, across, share: 1, arm }];
  });
  const sum = (group: Reaching['group']) =>
    sumGroup(
      pieces.filter((each) => each.group === group),
      'moment',
      trace,
    );
  const moment = evaluate(trace, totalMoment, [
    sum('still'),
    sum('turning'),
    sum('fixed'),
    0,
    place.still.pull,
    place.still.leaning,
  ]);
  agree(moment, worst.moment, 'moment in the mast');
  const { allowed } = under(trace, 'tube where it is bent most', () => sharedBending(place.tubes, trace));
  if (allowed) evaluate(trace, useInBending, [moment, place.surely]);
}
