import { evaluate, nth, remember, type Trace, under, zeros } from '../../foundation/index.ts';
import { METHOD_BY_ID } from '../../methods/index.ts';
import {
  lyingMoments,
  momentAtJoint,
  type RaisingGear,
  raisingAt,
  ratioInBending,
  rimOf,
  type SliceForces,
  type SlicesInWind,
  sliceForces,
  type TiltingBody,
  windFactorToMoment,
} from '../../structure/index.ts';
import { surelyShown } from '../capacity.ts';
import { lowerAtGust, speedByForce } from '../formulas.ts';
import { inActualWind } from '../holds-to.ts';
import type { TowerModel } from '../model.ts';
import { once } from '../tower-model.ts';
import { type Check, judged, openCheck, settled } from './check.ts';

/** The actual gust across the lying tower, and the height upright of the place that decides [m/s, m]. */
export interface LyingWind {
  readonly gust: number;
  readonly height: number;
  /** The forecast gust up to which it keeps the wanted margin; absent where its weight alone takes that [m/s]. */
  readonly forecast?: number;
}

export interface LyingTower {
  readonly checks: readonly Check[];
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
 * @param hinge its height [m]
 * @returns the check and the gust; nothing where the gear has no hold on the flat tower
 * @source derived
 */
export function lyingTower(
  model: TowerModel,
  hinge: number,
  bodies: readonly TiltingBody[],
  gear: RaisingGear,
): LyingTower {
  const places = placesOf(model, hinge, bodies, gear);
  const used = places.map((place) => ({
    ...place,
    // What nothing weighs on uses nothing, proven or not.
    ratio: place.byWeight === 0 ? 0 : ratioInBending.of(place.byWeight, place.capacity),
  }));
  const first = used[0];
  if (!first) return { checks: [] };
  const of = { id: 'lying', kind: 'lying', at: '/tower/hinge' } as const;
  const worst = used.reduce((most, each) => (each.ratio > most.ratio ? each : most), first);
  if (!Number.isFinite(worst.ratio)) return { checks: [openCheck(of, 'beyond-rating')] };
  const { ratio, byWeight, capacity, height } = worst;
  const result = settled({ ratio, of: 'moment', demand: byWeight, capacity, height });
  // More than the wind proves of it says only that nobody has shown it lying.
  const by = { margin: model.input.wanted.margin, favourable: 0, because: 'beyond-rating' } as const;
  const check = judged(of, result, by);
  return { checks: [check], ...(check.verdict === 'open' ? {} : windOf(model, places)) };
}

function windOf(model: TowerModel, places: readonly Place[]): Pick<LyingTower, 'wind'> {
  const moments = momentsAcross(model, places);
  const across = leastGust(model, places, moments);
  if (!across) return {};
  const { margin, forecast } = model.input.wanted;
  const kept = places.map((place) => ({ ...place, capacity: (1 - margin) * place.capacity }));
  const keeping = leastGust(model, kept, moments);
  const keeps = keeping === undefined || keeping.gust === 0 ? {} : { forecast: lowerAtGust.of(keeping.gust, forecast) };
  return { wind: { gust: across.gust, height: across.place.height, ...keeps } };
}

/**
 * Along the lying tower it is looked at every so far, at all levels, and where its gear takes hold, which bends it most [m].
 *
 * @source common-practice
 */
const SPACING = 0.5;

function placesOf(
  model: TowerModel,
  hinge: number,
  bodies: readonly TiltingBody[],
  gear: RaisingGear,
): readonly Place[] {
  const { top } = model.input.station.tower;
  if (raisingAt(bodies, gear, 0).force === undefined) return [];
  const steps = Math.ceil((top - hinge) / SPACING);
  const between = Array.from({ length: steps }, (_, index) => hinge + ((top - hinge) * index) / steps);
  // What is not known to be uniform has levels close together, and is proven at those.
  const compared = new Set([hinge + gear.attach[0], ...model.levels.map(({ z }) => z)]);
  const heights = new Set([...compared, ...between]);
  const looked = [...heights].filter((z) => z >= hinge && z < top).sort((a, b) => a - b);
  const moments = lyingMoments(
    bodies,
    gear,
    looked.map((z) => z - hinge),
    0,
  );
  const proofs = once(model, momentProofs);
  return looked.flatMap((height, index) =>
    proofs
      .filter(({ low, high, uniform }) => low <= height && height <= high && (uniform || compared.has(height)))
      .map(({ proofAt }) => ({
        height,
        byWeight: Math.abs(moments[index]?.moment ?? 0),
        capacity: proofAt(height),
      })),
  );
}

interface SectionProof {
  readonly low: number;
  readonly high: number;
  readonly uniform: boolean;
  readonly proofAt: (height: number) => number;
}

/** By section, the moment its ratings prove: all along a uniform one, else that of the next level above. */
function momentProofs(model: TowerModel): readonly SectionProof[] {
  const { sections } = model.input.station.tower;
  return sections.map((section, number) => {
    const own = model.comparisons.flatMap((comparison, index) =>
      comparison.of === 'moment' && comparison.section === number
        ? [{ height: nth(model.levels, comparison.level).z, proof: surelyShown(model, index) }]
        : [],
    );
    const proofAt = (height: number) => {
      const above = own.filter((each) => each.height >= height - 1e-9).sort((a, b) => a.height - b.height)[0];
      const inUniform = section.uniform ? Math.max(0, ...own.map(({ proof }) => proof)) : 0;
      return Math.max(inUniform, above?.proof ?? 0);
    };
    return { low: rimOf(sections, number), high: section.high, uniform: section.uniform, proofAt };
  });
}

/** The speed at which forces are taken: of slow flow, whose coefficients no faster one exceeds [m/s]. */
export const SLOW = 1;

interface Across {
  readonly gust: number;
  readonly scenario: number;
  readonly place: Place;
}

/** The least gust over places and readings; none where the wind on the tower itself is not known. */
function leastGust(
  model: TowerModel,
  places: readonly Place[],
  moments: readonly (readonly number[])[],
): Across | undefined {
  if (!model.bareTowerKnown) return undefined;
  let least: Across | undefined;
  moments.forEach((each, scenario) => {
    places.forEach((place, index) => {
      const moment = nth(each, index);
      if (moment === 0) return;
      const gust = gustOf(model, place, moment);
      if (!least || gust < least.gust) least = { gust, scenario, place };
    });
  });
  return least;
}

/**
 * By scenario and place, the moment of a slow wind across the flat tower, as strong as on the upright one. It lies in the plane
 * of boom and elements, as it does upright: it meets a thing broadside or endwise, whichever bends more.
 */
function momentsAcross(model: TowerModel, places: readonly Place[]): readonly (readonly number[])[] {
  const found = new Map<SlicesInWind, readonly number[]>();
  return inActualWind(model).map(({ appurtenances, bareTower }) => {
    const sums = places.map(() => 0);
    for (const cut of [appurtenances, bareTower]) {
      if (!cut) continue;
      const moments = remember(found, cut, () => momentsOf(cut, places));
      moments.forEach((moment, place) => {
        sums[place] = nth(sums, place) + moment;
      });
    }
    return sums;
  });
}

function momentsOf(cut: SlicesInWind, places: readonly Place[]): readonly number[] {
  const forces = sliceForces(cut, SLOW, 'unfavourable', false);
  const sums = zeros(places.length);
  cut.items.forEach((_, item) => {
    places.forEach(({ height }, place) => {
      const [front, side] = momentsOfItem(cut, forces, item, height);
      sums[place] = nth(sums, place) + Math.max(front, side);
    });
  });
  return sums;
}

/** Moments about a place of what of an item lies beyond it, broadside and endwise. */
function momentsOfItem(cut: SlicesInWind, forces: SliceForces, item: number, height: number): [number, number] {
  let front = 0;
  let side = 0;
  for (let index = nth(cut.from, item); index < nth(cut.from, item + 1); index += 1) {
    const arm = nth(cut.slices, index).z - height;
    if (arm <= 0) continue;
    front += nth(forces.front, index) * arm;
    side += nth(forces.side, index) * arm;
  }
  return [front, side];
}

function gustOf(model: TowerModel, { byWeight, capacity }: Place, moment: number, trace?: Trace): number {
  const factor = evaluate(trace, windFactorToMoment, [capacity, byWeight, moment]);
  return METHOD_BY_ID[model.input.method].actualGust(evaluate(trace, speedByForce, [SLOW, factor]));
}

/** Forces on all beyond a place at the slow speed, and their distances from it. */
function forcesBeyond(model: TowerModel, scenario: number, height: number): [readonly number[], readonly number[]] {
  const { appurtenances, bareTower } = nth(inActualWind(model), scenario);
  const [forces, arms]: [number[], number[]] = [[], []];
  for (const cut of [appurtenances, bareTower]) {
    if (!cut) continue;
    const found = sliceForces(cut, SLOW, 'unfavourable', false);
    cut.items.forEach((_, item) => {
      const [front, side] = momentsOfItem(cut, found, item, height);
      const facing = front >= side ? found.front : found.side;
      for (let index = nth(cut.from, item); index < nth(cut.from, item + 1); index += 1) {
        const arm = nth(cut.slices, index).z - height;
        if (arm <= 0) continue;
        forces.push(nth(facing, index));
        arms.push(arm);
      }
    });
  }
  return [forces, arms];
}

/**
 * The working of the lying tower in the wind.
 *
 * @param hinge its height [m]
 */
export function explainLying(
  model: TowerModel,
  hinge: number,
  bodies: readonly TiltingBody[],
  gear: RaisingGear,
  trace: Trace,
): void {
  const places = placesOf(model, hinge, bodies, gear);
  const across = leastGust(model, places, momentsAcross(model, places));
  if (!across || across.gust === 0) return;
  const { place, scenario } = across;
  under(trace, 'by its weight', () => lyingMoments(bodies, gear, [place.height - hinge], 0, trace));
  const moment = evaluate(trace, momentAtJoint, forcesBeyond(model, scenario, place.height));
  gustOf(model, place, moment, trace);
}
