import { evaluate, type Trace, under } from '../../foundation/index.ts';
import { METHOD_BY_ID } from '../../methods/index.ts';
import {
  lyingMoments,
  momentAtJoint,
  type RaisingGear,
  raisingAt,
  sliceForces,
  type TiltingBody,
  useInBending,
  type Windward,
  windFactorToMoment,
} from '../../structure/index.ts';
import { speedByForce } from '../formulas.ts';
import { actualWindward } from '../holds-to.ts';
import { lowerAtGust } from '../lower-at.ts';
import type { TowerModel } from '../tower-model.ts';
import { verdictOf } from '../verdict.ts';
import type { Link } from './link.ts';

/** The actual gust across the lying tower, and the height upright of the place that decides [m/s, m]. */
export interface LyingWind {
  readonly gust: number;
  readonly height: number;
  /** The forecast gust up to which it keeps the wanted margin; absent where its weight alone takes that [m/s]. */
  readonly forecast?: number;
}

export interface LyingTower {
  readonly links: readonly Link[];
  readonly wind?: LyingWind;
}

/** A place along the lying tower. */
interface Place {
  /** Upright [m]. */
  readonly height: number;
  /** Bending by its weight [N·m]. */
  readonly byWeight: number;
  /** What the ratings prove there [N·m]. */
  readonly capacity: number;
}

/**
 * The lying tower, hung between hinge and gear: its bending by its own weight against what its ratings prove at every level,
 * and the gust across it that uses up the rest.
 *
 * u = M_g/M_cap; v at which √(M_w² + M_g²) = M_cap
 *
 * @param model the tower [-]
 * @param bodies all that tilts [-]
 * @param gear what holds it [-]
 * @returns the link and the gust [-]; nothing where the gear has no hold on the flat tower
 * @source derived
 */
export function lyingTower(model: TowerModel, bodies: readonly TiltingBody[], gear: RaisingGear): LyingTower {
  const base = { id: 'lying', kind: 'lying' } as const;
  const places = placesOf(model, bodies, gear);
  const used = places.map((place) => ({ ...place, use: useInBending.of(place.byWeight, place.capacity) }));
  const first = used[0];
  if (!first) return { links: [] };
  const worst = used.reduce((most, each) => (each.use > most.use ? each : most), first);
  if (!Number.isFinite(worst.use))
    return { links: [{ ...base, verdict: 'not-shown', because: 'unproven', needs: [] }] };
  const { use, byWeight, capacity, height } = worst;
  const result = {
    use,
    of: 'moment',
    demand: byWeight,
    capacity,
    height,
    useRange: [use, use],
    headings: {},
  } as const;
  // More than the wind proves of it says only that nobody has shown it lying.
  const verdict = verdictOf(use, use, model.inquiry.wanted.margin);
  if (verdict === 'over') return { links: [{ ...base, verdict: 'not-shown', because: 'unproven', needs: [], result }] };
  return { links: [{ ...base, verdict, needs: [], result }], ...windOf(model, places) };
}

function windOf(model: TowerModel, places: readonly Place[]): Pick<LyingTower, 'wind'> {
  const across = windAcross(model, places);
  if (!across) return {};
  const { margin, forecast } = model.inquiry.wanted;
  const keeping = windAcross(
    model,
    places.map((place) => ({ ...place, capacity: (1 - margin) * place.capacity })),
  );
  const keeps = keeping === undefined || keeping.gust === 0 ? {} : { forecast: lowerAtGust.of(keeping.gust, forecast) };
  return { wind: { gust: across.gust, height: across.place.height, ...keeps } };
}

function placesOf(model: TowerModel, bodies: readonly TiltingBody[], gear: RaisingGear): readonly Place[] {
  const hinge = model.inquiry.station.tower.hingeHeight as number;
  if (raisingAt(bodies, gear, 0).force === undefined) return [];
  const bent = model.checks
    .map((check, index) => ({ check, index, height: model.levels[check.level]?.z ?? 0 }))
    .filter(({ check, height }) => check.of === 'moment' && check.link === 'tower' && height >= hinge);
  const along = bent.map(({ height }) => height - hinge);
  const moments = lyingMoments(bodies, gear, along, 0);
  return bent.map(({ check, index, height }, place) => {
    let capacity = 0;
    for (const each of model.proven) {
      capacity = Math.max(capacity, Math.min(...each.low.map((proof) => proof[index] as number)));
    }
    for (const claim of model.momentClaims)
      if (claim.level === check.level) capacity = Math.max(capacity, claim.moment);
    return { height, byWeight: Math.abs(moments[place]?.moment ?? 0), capacity };
  });
}

/** The speed at which forces are taken: of slow flow, whose coefficients no faster one exceeds [m/s]. */
export const SLOW = 1;

interface Across {
  readonly gust: number;
  readonly scenario: number;
  readonly place: Place;
}

/** The least gust over places and readings: the upright tower's wind, every thing broadside or endwise, on the flat one. */
function windAcross(model: TowerModel, places: readonly Place[]): Across | undefined {
  if (!model.ownKnown) return undefined;
  let least: Across | undefined;
  model.scenarios.forEach((_, scenario) => {
    for (const place of places) {
      const moment = momentAtJoint.of(...forcesBeyond(model, scenario, place.height));
      if (moment === 0) continue;
      const gust = gustOf(model, place, moment);
      if (!least || gust < least.gust) least = { gust, scenario, place };
    }
  });
  return least;
}

function gustOf(model: TowerModel, { byWeight, capacity }: Place, moment: number, trace?: Trace): number {
  const factor = evaluate(trace, windFactorToMoment, [capacity, byWeight, moment]);
  return METHOD_BY_ID[model.inquiry.method].actualGust(evaluate(trace, speedByForce, [SLOW, factor]));
}

/**
 * Forces on all beyond a place at the slow speed, and their distances from it. The wind across the tower lies in the plane of
 * boom and elements, as it does upright: it meets a thing broadside or endwise, whichever bends more.
 */
function forcesBeyond(model: TowerModel, scenario: number, height: number): [readonly number[], readonly number[]] {
  const [hung, own] = actualWindward(model);
  const [forces, arms]: [number[], number[]] = [[], []];
  for (const cut of [hung[scenario], own[scenario]] as readonly (Windward | undefined)[]) {
    if (!cut) continue;
    const { front, side } = sliceForces(cut, SLOW, 'bad', false);
    cut.items.forEach((_, item) => {
      const beyond = cut.slices.flatMap((slice, index) =>
        slice.item === item && slice.z > height ? [{ index, arm: slice.z - height }] : [],
      );
      const momentOf = (each: readonly number[]) =>
        beyond.reduce((sum, { index, arm }) => sum + (each[index] as number) * arm, 0);
      const facing = momentOf(front) >= momentOf(side) ? front : side;
      for (const { index, arm } of beyond) {
        forces.push(facing[index] as number);
        arms.push(arm);
      }
    });
  }
  return [forces, arms];
}

/**
 * The working of the lying tower in the wind.
 *
 * @param model the tower [-]
 * @param bodies all that tilts [-]
 * @param gear what holds it [-]
 * @param trace the working [-]
 * @returns nothing [-]
 * @source derived
 */
export function explainLying(model: TowerModel, bodies: readonly TiltingBody[], gear: RaisingGear, trace: Trace): void {
  const across = windAcross(model, placesOf(model, bodies, gear));
  if (!across || across.gust === 0) return;
  const { place, scenario } = across;
  const hinge = model.inquiry.station.tower.hingeHeight as number;
  under(trace, 'by its weight', () => lyingMoments(bodies, gear, [place.height - hinge], 0, trace));
  const moment = evaluate(trace, momentAtJoint, forcesBeyond(model, scenario, place.height));
  gustOf(model, place, moment, trace);
}
