import { nth } from '../../foundation/index.ts';
import type { MethodId } from '../../methods/index.ts';
import {
  type ForcePlace,
  type Mast,
  type MastBeam,
  mastBending,
  type SliceForces,
  type SlicesInWind,
  sharedBending,
  sliceForces,
  type WindItem,
} from '../../structure/index.ts';
import { roomByMoment, roomByShear } from '../formulas.ts';
import { type WindsHeld, windsHeld } from '../holds-to-ratio.ts';
import type { TowerModel } from '../model.ts';
import { forcePerArea, type RoomByCheck } from '../room-by-check.ts';
import { once } from '../tower-model.ts';
import type { Check } from './check.ts';
import {
  armAbove,
  beamOf,
  countsBeside,
  eccentricWeightOnMast,
  type MastWinds,
  mastInWind,
  piecesOf,
  pullOf,
  pullOfWires,
  steadySpeed,
  stillMoments,
  worstHeadingOf,
} from './mast-in-wind.ts';

/** What the mast does to what holds it, and how far its tip moves, in the design wind at the unfavourable end of the readings. */
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
  /** Weight of mast and what it carries, with what ice on it is known [kg]; absent: some weight is not known. */
  readonly weight?: number;
  /** Movement of its tip [m]; absent: its stiffness is not known. */
  readonly tipMovement?: number;
  /** Worst bending, and where [N·m, m]. */
  readonly bending?: { readonly moment: number; readonly height: number };
  /** What the method that speaks beside the plan's own makes larger. */
  readonly bySecondMethod: Readonly<Partial<Record<AskedOfHold, MethodId>>>;
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
    if (of === 'atFoot') return { share: () => 1, shareAt: () => 1, still: pullOfWires(model, () => 1) };
    if (of === 'atBearing') return undefined;
    const shareAt = (z: number) => Math.max(0, z - foot);
    const still = pullOfWires(model, shareAt) + eccentricWeightOnMast(model);
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
    still: pullOfWires(model, shareAt) + eccentricWeightOnMast(model) / span,
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
 * R_b = (ΣF(z − z_f) + ΣW·e)/s, R_f = (ΣF·max(z − z_b, 0) + ΣW·e)/s, t = ΣF·e; clamped, M = ΣF(z − z_f) + ΣW·e
 *
 * What blows below the bearing would relieve the foot; it is not counted on.
 *
 * @returns forces, torque, weight and movement; undefined without a mast, or where its foot is not told
 * @source derived
 */
export function mastAnswer(model: TowerModel): MastAnswer | undefined {
  const { mast } = model.input.station;
  const hold = mast && holdOfMast(mast);
  if (!mast || !hold) return undefined;
  const { foot, bearing } = hold;
  const { speed } = model.site;
  const beam = beamOf(mast);
  const inWinds = once(model, mastInWind).winds.map(({ design }) => {
    const forces = sliceForces(design, speed, 'unfavourable', model.ice === undefined);
    const by = (share: Reach['share']) =>
      worstHeadingOf(
        design,
        forces,
        design.slices.map((slice) => share(slice, nth(design.items, slice.item))),
      ).value;
    return { wind: design.wind, by, moved: movementOf(model, beam, design, forces) };
  });
  const bySecondMethod: Partial<Record<AskedOfHold, MethodId>> = {};
  const asked = (of: AskedOfHold): number | undefined => {
    const reach = reachOf(model, of, foot, bearing);
    if (!reach) return undefined;
    const [first, ...others] = inWinds.map(({ wind, by }) => ({ wind, value: by(reach.share) + reach.still }));
    const worst = others.reduce((most, each) => (each.value > (most?.value ?? 0) ? each : most), first);
    const second = worst && countsBeside(model, worst.wind);
    if (second !== undefined) bySecondMethod[of] = second;
    return worst?.value;
  };
  const atBearing = asked('atBearing');
  const clampMoment = asked('clampMoment');
  // Each figure is of the wind that makes it largest.
  const moved = inWinds.map((each) => each.moved);
  const tipMovement = largest(moved, (each) => each.tipMovement)?.tipMovement;
  const bending = largest(moved, (each) => each.bending?.moment)?.bending;
  return {
    force: Math.max(...inWinds.map(({ by }) => by(() => 1))),
    torque: asked('torque') as number,
    atFoot: asked('atFoot') as number,
    ...(atBearing === undefined ? {} : { atBearing }),
    ...(clampMoment === undefined ? {} : { clampMoment }),
    ...weightOf(model, mast),
    ...(tipMovement === undefined ? {} : { tipMovement }),
    ...(bending === undefined ? {} : { bending }),
    bySecondMethod,
  };
}

function largest<T>(all: readonly T[], by: (each: T) => number | undefined): T | undefined {
  return all.reduce<T | undefined>(
    (most, each) => (most === undefined || (by(each) ?? 0) > (by(most) ?? 0) ? each : most),
    undefined,
  );
}

/**
 * The winds to which what holds the mast keeps to what its maker states.
 *
 * (ΣF·share + what stays)/stated = 1
 *
 * @param stated force [N], moment or torque [N·m]
 * @returns the winds; none where the mast is not told or no wind brings it there
 * @source derived
 */
export function windsHeldByHold(model: TowerModel, of: AskedOfHold, stated: number): WindsHeld {
  const { mast } = model.input.station;
  const hold = mast && holdOfMast(mast);
  const reach = hold && reachOf(model, of, hold.foot, hold.bearing);
  // The gust that goes with ice is not the site's wind.
  if (!reach || model.ice) return {};
  const { cut, winds } = once(model, mastInWind);
  const shares = cut.slices.map((slice) => reach.share(slice, nth(cut.items, slice.item)));
  const steadyUpTo = steadySpeed(winds);
  const ratioBy = (windOf: (each: MastWinds) => SlicesInWind) => {
    const asked = (speed: number) =>
      Math.max(
        ...winds.map((each) => {
          const loadEffects = windOf(each);
          return worstHeadingOf(loadEffects, sliceForces(loadEffects, speed, 'unfavourable', false), shares).value;
        }),
      );
    const slow = Math.min(1, steadyUpTo);
    let loadEffects: number | undefined;
    return (speed: number): number => {
      if (speed > steadyUpTo || steadyUpTo <= 0) return (asked(speed) + reach.still) / stated;
      loadEffects ??= asked(slow);
      return (loadEffects * (speed / slow) ** 2 + reach.still) / stated;
    };
  };
  return windsHeld(model, {
    design: ratioBy((each) => each.design),
    actual: ratioBy((each) => each.actual()),
    steadyUpTo,
  });
}

/**
 * Area that may be added at a height on the mast before what holds the mast reaches the wanted margin of what its maker states
 * of its force, or of the moment it takes alone.
 *
 * A = ((1 − m)·F_rated − R)/(λ·q·G·share), ((1 − m)·M_rated − M_f)/(λ·q·G·(z − z_f))
 *
 * @param height where more would hang [m]
 * @returns the area; undefined where neither force nor moment is shown, or nothing at that height reaches it
 * @source derived
 */
export function roomOfHold(
  model: TowerModel,
  check: Check,
  force: 'atBearing' | 'atFoot',
  height: number,
): RoomByCheck | undefined {
  const { id, verdict, result } = check;
  const { mast } = model.input.station;
  const hold = mast && holdOfMast(mast);
  if (!hold || verdict === 'open' || (result?.of !== 'side-force' && result?.of !== 'clamp-moment')) return undefined;
  const clamped = result.of === 'clamp-moment';
  const reach = reachOf(model, clamped ? 'clampMoment' : force, hold.foot, hold.bearing);
  const arm = reach?.shareAt?.(height) ?? 0;
  if (arm <= 0) return undefined;
  const perArea = Math.max(...once(model, mastInWind).winds.map(({ design }) => forcePerArea(design.wind, height)));
  const { capacity, demand } = result;
  const area = (clamped ? roomByMoment : roomByShear).of(model.input.wanted.margin, capacity, demand, perArea, arm);
  return { height, on: 'mast', check: id, area, of: clamped ? 'moment' : 'shear', perArea, capacity, demand, arm };
}

function weightOf(model: TowerModel, mast: Mast): { readonly weight?: number } {
  const pieces = piecesOf(mast);
  if (!pieces) return {};
  let weight = model.ice?.onMast ?? 0;
  for (const piece of pieces) weight += sharedBending([piece]).weightPerLength * (piece.high - piece.low);
  for (const load of model.input.station.loads) {
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
  cut: SlicesInWind,
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
    const item = nth(cut.items, number);
    const [front, side] = [nth(forces.front, index), nth(forces.side, index)];
    const angle = (item.turn === 'turning' ? turning : fixed) ?? item.heading;
    const force =
      item.turn === 'turning' || item.turn === 'fixed'
        ? front * Math.cos(angle - item.heading) ** 2 + side * Math.sin(angle - item.heading) ** 2
        : Math.max(front, side);
    return { low, high, force };
  });
  for (const load of model.input.station.loads) {
    if (load.on === 'mast' && pullOf(load) > 0) acting.push({ low: load.low, high: load.low, force: pullOf(load) });
  }
  const { tip } = mastBending(beam, acting);
  const still = stillMoments(model, hold);
  return {
    tipMovement: Math.abs(tip.movement),
    bending: { moment: value + still.pull + still.eccentricWeight, height: hold },
  };
}
