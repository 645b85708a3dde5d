import { appurtenanceMasses, sliceForces, untoldWeights } from '../../structure/index.ts';
import type { WindsHeld } from '../holds-to-ratio.ts';
import { type Rating, type RatingClaim, shareAllowed } from '../rating.ts';
import { misfitsOf } from '../stated-for.ts';
import { siteSpeed, stillUntold, type TowerModel } from '../tower-model.ts';
import { verdictOf } from '../verdict.ts';
import type { Check, Compared } from './check.ts';
import { type MastAnswer, windsHeldByHold } from './mast-holds.ts';

/**
 * Bearing, rotator and weight aloft against what their makers state: one check for each stated strength; and one for a
 * rotator that holds a mast without a bearing, whose moment nobody states.
 *
 * u = R_b/F_rated, R_f/F_rated, M_f/M_rated, ΣF·e/t_rated, ΣW/W_rated
 *
 * @param model the tower [-]
 * @param mast what the mast does to what holds it, where that is known [-]
 * @returns the checks; none where nothing is stated [-]
 * @source derived
 */
export function statedStrengthChecks(model: TowerModel, mast: MastAnswer | undefined): readonly Check[] {
  const stated = model.input.ratings.flatMap((rating, number) => {
    if (rating.of === 'bearing' || rating.of === 'rotator') return holderCheck(model, rating, number, mast);
    if (rating.of === 'tower' && rating.claim.kind === 'weight') return [weightAloft(model, rating, number)];
    return [];
  });
  return [...stated, ...unstatedClampCheck(model, mast)];
}

/** A mast without a bearing hands its moment whole to the rotator it is clamped on: that is shown by a moment, or not at all. */
function unstatedClampCheck(model: TowerModel, mast: MastAnswer | undefined): readonly Check[] {
  const { station, ratings } = model.input;
  if (!station.mast || station.mast.bearing !== undefined) return [];
  const ofRotator = ratings.filter(({ of }) => of === 'rotator');
  if (!station.rotator && ofRotator.length === 0) return [];
  if (ofRotator.some(({ claim }) => claim.kind === 'moment')) return [];
  const needs = [...mastNeeds(model, mast), ...stillUntold(model, 'mast'), '/ratings'];
  return [{ id: 'rotator', kind: 'rotator', verdict: 'open', because: 'missing', needs }];
}

function checkOf(
  model: TowerModel,
  base: Pick<Check, 'id' | 'kind'>,
  compared: Compared | undefined,
  needs: readonly string[],
  held: WindsHeld = {},
  level?: LevelOpen,
): Check {
  if (compared === undefined) {
    return { ...base, verdict: 'open', because: needs.length > 0 ? 'missing' : 'not-computed', needs };
  }
  const ratioAtBest = compared.ratio * (level?.share ?? 1);
  const verdict = verdictOf(compared.ratio, ratioAtBest, model.input.wanted.margin);
  const result = { ...compared, ratioRange: [ratioAtBest, compared.ratio] as const, headings: {} };
  if (needs.length > 0) return { ...base, verdict: 'open', because: 'missing', needs, result };
  const open =
    verdict === 'open' && level ? ({ because: 'readings-disagree', needs: [level.at] } as const) : { needs: [] };
  return { ...base, verdict, ...open, result: { ...result, ...held } };
}

/** Where the level of a rating would be told, and the share of its ratio that is left if it is the allowable one. */
interface LevelOpen {
  readonly at: string;
  readonly share: number;
}

function levelOf({ at }: Rating, claim: Parameters<typeof shareAllowed>[0]): LevelOpen {
  const { low, high } = shareAllowed(claim);
  return { at: `${at}/level`, share: low / high };
}

function holderCheck(
  model: TowerModel,
  rating: Rating,
  number: number,
  mast: MastAnswer | undefined,
): readonly Check[] {
  const { claim } = rating;
  const kind = rating.of === 'bearing' ? 'bearing' : 'rotator';
  const base = { id: `${kind}:${number + 1}`, kind } as const;
  const needs = mastNeeds(model, mast);
  if (kind === 'bearing' && mast && mast.atBearing === undefined) {
    return [{ ...base, verdict: 'open', because: 'no-bearing', needs: [] }];
  }
  if (kind === 'rotator' && claim.kind === 'moment')
    return [clampCheck(model, base, claim, mast, levelOf(rating, claim))];
  if (claim.kind === 'force') {
    const capacity = claim.force * shareAllowed(claim).low;
    const force = kind === 'bearing' ? mast?.atBearing : mast?.atFoot;
    const height = kind === 'bearing' ? model.hold.bearing : model.hold.foot;
    const held = windsHeldByHold(model, kind === 'bearing' ? 'atBearing' : 'atFoot', capacity);
    const compared = force === undefined ? undefined : compare('side-force', force, capacity, height);
    const all = [...needs, ...stillUntold(model, 'mast')];
    return [checkOf(model, base, compared, all, held, levelOf(rating, claim))];
  }
  if (claim.kind === 'area') {
    const area = areaOnMast(model);
    const capacity = Math.min(...claim.rows.map((row) => row.area));
    const ratio = area / capacity;
    const result = { of: 'area', demand: area, capacity, ratio, ratioRange: [ratio, ratio], headings: {} } as const;
    return [{ ...base, verdict: 'open', because: 'area-only', needs: [], result }];
  }
  if (claim.kind === 'torque') return [torqueCheck(model, base, claim, mast, levelOf(rating, claim))];
  if (claim.kind === 'weight') {
    const weight = mast?.weight;
    if (weight === undefined) return [checkOf(model, base, undefined, [...needs, ...weightNeeds(model)])];
    return [checkOf(model, base, compare('weight', weight, claim.weight, model.hold.foot), needs)];
  }
  return [checkOf(model, base, undefined, needs)];
}

function clampCheck(
  model: TowerModel,
  base: Pick<Check, 'id' | 'kind'>,
  claim: Extract<RatingClaim, { kind: 'moment' }>,
  mast: MastAnswer | undefined,
  level: LevelOpen,
): Check {
  if (!mast) return checkOf(model, base, undefined, mastNeeds(model, mast));
  if (mast.clampMoment === undefined) return { ...base, verdict: 'open', because: 'held-by-bearing', needs: [] };
  const capacity = claim.moment * shareAllowed(claim).low;
  const compared = compare('clamp-moment', mast.clampMoment, capacity, model.hold.foot);
  const held = windsHeldByHold(model, 'clampMoment', capacity);
  return checkOf(model, base, compared, stillUntold(model, 'mast'), held, level);
}

/** What holds against the wind is the brake; where only the turning torque is told, that is all it surely has. */
function torqueCheck(
  model: TowerModel,
  base: Pick<Check, 'id' | 'kind'>,
  claim: Extract<RatingClaim, { kind: 'torque' }>,
  mast: MastAnswer | undefined,
  level: LevelOpen,
): Check {
  const { brake, torque } = claim;
  const stated = brake ?? torque;
  if (stated === undefined || !mast) return checkOf(model, base, undefined, mastNeeds(model, mast));
  if (mast.torque === 0) return { ...base, verdict: 'open', because: 'balanced', needs: [] };
  const capacity = stated * shareAllowed(claim).low;
  const held = windsHeldByHold(model, 'torque', capacity);
  const check = checkOf(model, base, compare('torque', mast.torque, capacity, model.hold.foot), [], held, level);
  const turnsWith = torque === undefined ? undefined : torque * shareAllowed(claim).low;
  const turnsUpTo = turnsWith === undefined ? undefined : windsHeldByHold(model, 'torque', turnsWith).holdsTo?.gust;
  const of = {
    heldBy: brake === undefined ? 'turning-torque' : 'brake',
    ...(turnsWith === undefined ? {} : { turnsWith }),
    ...(turnsUpTo === undefined ? {} : { turnsUpTo }),
  } as const;
  return check.result === undefined ? check : { ...check, result: { ...check.result, torque: of } };
}

/** Effective area of mast and what it carries, each at its own worst heading, in the design wind [m²]. */
function areaOnMast({ appurtenancesInWind, input }: TowerModel): number {
  const cut = appurtenancesInWind[0];
  if (!cut) return 0;
  const { speed } = siteSpeed(input);
  const forces = sliceForces(cut, speed, 'unfavourable', false);
  const areas = new Map<number, [front: number, side: number]>();
  cut.slices.forEach(({ z, item }, index) => {
    if (cut.items[item]?.carriedBy !== 'mast') return;
    const perArea =
      cut.wind.toAllowableFactor * cut.wind.forceDirectionFactor * cut.wind.pressure(z) * cut.wind.gustEffect(speed);
    const [front, side] = areas.get(item) ?? [0, 0];
    areas.set(item, [
      front + (forces.front[index] as number) / perArea,
      side + (forces.side[index] as number) / perArea,
    ]);
  });
  return [...areas.values()].reduce((sum, [front, side]) => sum + Math.max(front, side), 0);
}

function mastNeeds(model: TowerModel, mast: MastAnswer | undefined): readonly string[] {
  if (mast) return [];
  return [model.input.station.mast ? '/mast/inside' : '/mast'];
}

function weightAloft(model: TowerModel, rating: Rating, number: number): Check {
  const base = { id: `weight:${number + 1}`, kind: 'weight' } as const;
  const { station } = model.input;
  const misfits = misfitsOf(rating, station.tower).map((misfit) => `${rating.at}/${misfit}`);
  if (misfits.length > 0) return checkOf(model, base, undefined, misfits);
  const needs = untoldWeights(station);
  const weight = appurtenanceMasses(station).reduce((sum, { mass }) => sum + mass, 0);
  const capacity = rating.claim.kind === 'weight' ? rating.claim.weight : 0;
  return checkOf(model, base, compare('weight', weight, capacity), needs);
}

/** Pointers to weights on the mast that are not told. */
function weightNeeds(model: TowerModel): readonly string[] {
  const { loads } = model.input.station;
  return loads.filter((load) => load.weight === undefined && load.on === 'mast').map((load) => `${load.at}/weight`);
}

function compare(of: Compared['of'], demand: number, capacity: number, height?: number): Compared {
  return { of, demand, capacity, ratio: demand / capacity, ...(height === undefined ? {} : { height }) };
}
