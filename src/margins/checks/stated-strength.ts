import { nth } from '../../foundation/index.ts';
import { sliceForces } from '../../structure/index.ts';
import type { WindsHeld } from '../holds-to-ratio.ts';
import type { TowerModel } from '../model.ts';
import { type Rating, type RatingClaim, shareAllowed } from '../rating.ts';
import { once, steadyNotGiven } from '../tower-model.ts';
import { type Check, type CheckOf, type Compared, judged, openCheck, settled, withIce } from './check.ts';
import type { CheckContext, RoomRule } from './check-kind.ts';
import { type AskedOfHold, type MastAnswer, mastAnswer, roomOfHold, windsHeldByHold } from './mast-holds.ts';

/** What holds the mast, and what of a force it takes. */
export interface Holder {
  readonly kind: 'bearing' | 'rotator';
  readonly force: 'atBearing' | 'atFoot';
}

/** A rating of what holds the mast, and all that its check stands on. */
export interface HeldMast {
  readonly of: CheckOf;
  readonly model: TowerModel;
  readonly rating: Rating;
  /** What the mast does to it; absent where that is not known. */
  readonly mast?: MastAnswer;
}

/**
 * What holds the mast against what its maker states, one check for each rating of it.
 *
 * u = R_b/F_rated, R_f/F_rated, ΣF·e/t_rated, ΣW/W_rated
 *
 * @param own the check of what this holder alone may be stated for; undefined where it goes as for every holder
 * @source derived
 */
export function holderChecks(
  model: TowerModel,
  holder: Holder,
  own: (held: HeldMast) => Check | undefined,
): readonly Check[] {
  const { kind } = holder;
  const mast = once(model, mastAnswer);
  return model.input.ratings.flatMap((rating, index) => {
    if (rating.of !== kind) return [];
    const of = { id: `${kind}:${index + 1}`, kind, at: rating.at, number: index + 1 };
    const held = { of, model, rating, ...(mast ? { mast } : {}) };
    return [own(held) ?? holderCheck(held, holder)];
  });
}

/**
 * The same with ice: its weight, and the gust that goes with it. A weight needs nothing of the wind.
 *
 * @param own as of the holder without ice
 * @source asce7-10
 */
export function icedHolderChecks(
  known: Pick<CheckContext, 'model' | 'ice'>,
  holder: Holder,
  own: (held: HeldMast) => Check | undefined,
): readonly Check[] {
  const { model, ice } = known;
  if (!ice?.weights) return [];
  if (ice.shown) return withIce(holderChecks(ice.shown.model, holder, own));
  const bare = holderChecks({ ...model, ice: ice.weights, worked: new Map() }, holder, own);
  return withIce(
    bare.map((check) => (check.result?.of === 'weight' ? check : openCheck(checkOf(check), 'missing', ice.needs))),
  );
}

const checkOf = ({ id, kind, at, number }: Check): CheckOf => ({
  id,
  kind,
  at,
  ...(number === undefined ? {} : { number }),
});

function holderCheck(held: HeldMast, { kind, force }: Holder): Check {
  const { of, model, rating, mast } = held;
  const { claim } = rating;
  const { hold } = model;
  const needs = mastNeeds(model, mast);
  if (claim.kind === 'force') {
    const capacity = claim.force * shareAllowed(claim).low;
    const asked = mast?.[force];
    const height = kind === 'bearing' ? hold.bearing : hold.foot;
    const all = [...needs, ...steadyNotGiven(model, 'mast')];
    if (asked === undefined) return unknownCheck(of, all);
    const compared = { ...compare('side-force', asked, capacity, height), ...countedBy(mast, force) };
    return statedCheck(model, of, compared, all, windsHeldByHold(model, force, capacity), levelOf(rating, claim));
  }
  if (claim.kind === 'area') {
    const area = areaOnMast(model);
    const compared = compare('area', area, Math.min(...claim.rows.map((row) => row.area)));
    return openCheck(of, 'area-only', [], settled(compared));
  }
  if (claim.kind === 'weight') {
    if (mast?.weight === undefined) return unknownCheck(of, [...needs, ...weightNeeds(model)]);
    const all = [...needs, ...(model.ice?.needsOfMast ?? [])];
    return statedCheck(model, of, compare('weight', mast.weight, claim.weight, hold.foot), all);
  }
  return claim.kind === 'torque' ? torqueCheck(held, claim) : unknownCheck(of, needs);
}

/** What holds against the wind is the brake; where only the turning torque is told, that is all it surely has. */
function torqueCheck({ of, model, rating, mast }: HeldMast, claim: Extract<RatingClaim, { kind: 'torque' }>): Check {
  const { brake, torque } = claim;
  const stated = brake ?? torque;
  if (stated === undefined || !mast) return unknownCheck(of, mastNeeds(model, mast));
  if (mast.torque === 0) return openCheck(of, 'balanced');
  const share = shareAllowed(claim).low;
  const capacity = stated * share;
  const held = windsHeldByHold(model, 'torque', capacity);
  const compared = { ...compare('torque', mast.torque, capacity, model.hold.foot), ...countedBy(mast, 'torque') };
  const check = statedCheck(model, of, compared, [], held, levelOf(rating, claim));
  const turnsWith = torque === undefined ? undefined : torque * share;
  const turnsUpTo = turnsWith === undefined ? undefined : windsHeldByHold(model, 'torque', turnsWith).holdsTo?.gust;
  const turning = {
    heldBy: brake === undefined ? 'turning-torque' : 'brake',
    ...(turnsWith === undefined ? {} : { turnsWith }),
    ...(turnsUpTo === undefined ? {} : { turnsUpTo }),
  } as const;
  return check.result === undefined ? check : { ...check, result: { ...check.result, torque: turning } };
}

/** How more area on the mast loads what holds it. */
export function roomOfHolder(force: Holder['force']): RoomRule {
  return {
    onMastOnly: true,
    neededFor: undefined,
    left: ({ model }, check, { height }) => (check.withIce ? undefined : roomOfHold(model, check, force, height)),
  };
}

/** A check of which nothing is known to compare. */
export function unknownCheck(of: CheckOf, needs: readonly string[]): Check {
  return openCheck(of, needs.length > 0 ? 'missing' : 'not-computed', needs);
}

/**
 * A demand against a stated strength.
 *
 * u = demand/stated; at the favourable end the share that an allowable level would leave
 *
 * @param level what is open about the level of the rating
 * @source derived
 */
export function statedCheck(
  model: TowerModel,
  of: CheckOf,
  compared: Compared,
  needs: readonly string[],
  held: WindsHeld = {},
  level?: LevelOpen,
): Check {
  const ratioAtBest = compared.ratio * (level?.share ?? 1);
  const result = { ...compared, ratioRange: [ratioAtBest, compared.ratio] as const, headings: {} };
  if (needs.length > 0) return openCheck(of, 'missing', needs, result);
  return judged(of, { ...result, ...held }, { margin: model.input.wanted.margin, asks: level ? [level.at] : [] });
}

/** Where the level of a rating would be told, and the share of its ratio that is left if it is the allowable one. */
export interface LevelOpen {
  readonly at: string;
  readonly share: number;
}

/**
 * What is open about the level of a stated strength.
 *
 * low/high
 */
export function levelOf(rating: Rating, claim: Parameters<typeof shareAllowed>[0]): LevelOpen {
  const { low, high } = shareAllowed(claim);
  return { at: `${rating.at}/level`, share: low / high };
}

/** Effective area of mast and what it carries, each at its own worst heading, in the design wind [m²]. */
function areaOnMast({ scenarios, site }: TowerModel): number {
  const { appurtenances: cut } = scenarios[0];
  const { speed } = site;
  const forces = sliceForces(cut, speed, 'unfavourable', false);
  const areas = new Map<number, [front: number, side: number]>();
  cut.slices.forEach(({ z, item }, index) => {
    if (cut.items[item]?.carriedBy !== 'mast') return;
    const perArea =
      cut.wind.toAllowableFactor * cut.wind.forceDirectionFactor * cut.wind.pressure(z) * cut.wind.gustEffect(speed);
    const [front, side] = areas.get(item) ?? [0, 0];
    areas.set(item, [front + nth(forces.front, index) / perArea, side + nth(forces.side, index) / perArea]);
  });
  return [...areas.values()].reduce((sum, [front, side]) => sum + Math.max(front, side), 0);
}

/** The standard whose wind counts in what the mast asks of its hold, where it is not the plan's own method. */
export function countedBy(mast: MastAnswer | undefined, of: AskedOfHold): Pick<Compared, 'bySecondMethod'> {
  const bySecondMethod = mast?.bySecondMethod[of];
  return bySecondMethod === undefined ? {} : { bySecondMethod };
}

/** What keeps the forces of the mast from being known. */
export function mastNeeds(model: TowerModel, mast: MastAnswer | undefined): readonly string[] {
  if (mast) return [];
  return [model.input.station.mast ? '/mast/inside' : '/mast'];
}

/** Pointers to weights on the mast that are not told. */
function weightNeeds(model: TowerModel): readonly string[] {
  const { loads } = model.input.station;
  return loads.filter((load) => load.weight === undefined && load.on === 'mast').map((load) => `${load.at}/weight`);
}

/**
 * One comparison.
 *
 * u = demand/capacity
 *
 * @param demand what is asked [-]
 * @param capacity what is stated [-]
 * @param height where, if at one height [m]
 * @source derived
 */
export function compare(of: Compared['of'], demand: number, capacity: number, height?: number): Compared {
  return { of, demand, capacity, ratio: demand / capacity, ...(height === undefined ? {} : { height }) };
}
