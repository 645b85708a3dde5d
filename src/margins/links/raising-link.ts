import type { Trace } from '../../foundation/index.ts';
import { METHOD_BY_ID } from '../../methods/index.ts';
import {
  type Handling,
  handling,
  hungMasses,
  type Laid,
  leastWindHeld,
  lyingMoments,
  type Raising,
  type RaisingGear,
  raisingAt,
  raisingThrough,
  sliceForces,
  type TiltingBody,
  untoldWeights,
  type WindForce,
} from '../../structure/index.ts';
import { actualWindward } from '../holds-to.ts';
import { halvesOf } from '../reach.ts';
import type { TowerModel } from '../tower-model.ts';
import { verdictOf } from '../verdict.ts';
import { ratedGear } from './gear-rating.ts';
import type { Link } from './link.ts';

/** Raising and lowering of a hinged tower. */
export interface RaisingAnswer {
  readonly raising?: Raising;
  /** The actual gust that brings the gear to its working load on the way, and the tower's angle then [m/s, rad]. */
  readonly gust?: { readonly gust: number; readonly angle: number };
  /** The lying tower's antennas and the ground. */
  readonly handling?: Handling;
}

export interface RaisingResult {
  readonly links: readonly Link[];
  readonly answer?: RaisingAnswer;
}

/** From flat to upright. */
const TRAVEL = { from: 0, to: Math.PI / 2 } as const;

/**
 * Raising a hinged tower: the pull of its gear through the whole travel against its working load, and the bending of the
 * lying tower against what its ratings prove.
 *
 * u = max ΣW·x/r over F_work; u = M(z)/M_cap(z)
 *
 * @param model the tower [-]
 * @returns the links and the statics; nothing where the tower has no hinge [-]
 * @source derived
 */
export function raisingLinks(model: TowerModel): RaisingResult {
  const { station } = model.inquiry;
  const { tower } = station;
  if (tower.hingeHeight === undefined) return { links: [] };
  const laid = handlingOf(model, tower.hingeHeight);
  const base = { id: 'raising', kind: 'raising' } as const;
  const gear = gearOf(model);
  const needs = [...(gear ? [] : ['/tower/hinge/raisedBy']), ...weightNeeds(model)];
  if (!gear || needs.length > 0) {
    return { links: [{ ...base, verdict: 'not-shown', because: 'missing', needs }], answer: { handling: laid } };
  }
  const bodies = bodiesOf(model, tower.hingeHeight);
  const raising = raisingThrough(bodies, gear, TRAVEL);
  const gust = windOnTheWay(model, inOnePlace(bodies), gear, tower.hingeHeight);
  const answer = { raising, handling: laid, ...(gust ? { gust } : {}) };
  const { worst, workingLoad, use } = raising;
  if (raising.unbounded || !worst) {
    // Somewhere on the way the gear has no hold on the tower, whatever its strength.
    return { links: [{ ...base, verdict: 'not-shown', because: 'no-hold', needs: [] }], answer };
  }
  if (workingLoad === undefined || use === undefined) {
    const missing = ['/tower/hinge/raisedBy/rating'];
    return {
      links: [{ ...base, verdict: 'not-shown', because: 'missing', needs: missing }, ...lyingLink(model, bodies, gear)],
      answer,
    };
  }
  const result = {
    use,
    of: 'pull',
    demand: Math.abs(worst.force),
    capacity: workingLoad,
    useRange: [use, use],
    headings: {},
  } as const;
  const verdict = verdictOf(use, use, model.inquiry.wanted.margin);
  return { links: [{ ...base, verdict, needs: [], result }, ...lyingLink(model, bodies, gear)], answer };
}

/** The plan's gear; its working load from the gear itself, else from a rating of gear. */
function gearOf({ inquiry }: TowerModel): RaisingGear | undefined {
  const { raisedBy } = inquiry.station.tower;
  if (!raisedBy || raisedBy.workingLoad !== undefined) return raisedBy;
  return { ...raisedBy, ...ratedGear(inquiry.ratings) };
}

/** Everything that tilts, its own weight spread evenly. */
function bodiesOf({ inquiry: { station } }: TowerModel, hinge: number): readonly TiltingBody[] {
  const { tower } = station;
  const span = tower.top - tower.foot;
  const bodies: TiltingBody[] = [];
  const add = (mass: number, low: number, high: number) => {
    // What is below the hinge stays down.
    const from = Math.max(low, hinge);
    if (high < hinge || mass === 0) return;
    const share = high > low ? (high - from) / (high - low) : 1;
    bodies.push({ mass: mass * share, low: from - hinge, high: high - hinge, offset: 0 });
  };
  add(tower.weight ?? 0, tower.top - span, tower.top);
  for (const { mass, low, high } of hungMasses(station)) add(mass, low, high);
  return bodies;
}

/** The same weight in its centre: its moment about the hinge is the same at every angle. */
function inOnePlace(bodies: readonly TiltingBody[]): readonly TiltingBody[] {
  let mass = 0;
  let first = 0;
  for (const body of bodies) {
    mass += body.mass;
    first += (body.mass * (body.low + body.high)) / 2;
  }
  return [{ mass, low: first / mass, high: first / mass, offset: 0 }];
}

function weightNeeds({ inquiry: { station } }: TowerModel): readonly string[] {
  return [...(station.tower.weight === undefined ? ['/tower/weight'] : []), ...untoldWeights(station)];
}

/** The least gust on the way that brings the gear to its working load: the upright tower's wind, level, on the tilted one. */
function windOnTheWay(
  model: TowerModel,
  bodies: readonly TiltingBody[],
  gear: RaisingGear,
  hinge: number,
): RaisingAnswer['gust'] {
  const [hung, own] = actualWindward(model);
  const speed = 10;
  let least: RaisingAnswer['gust'];
  model.scenarios.forEach((_, scenario) => {
    // Square to the tower they have the same moment at every angle, so that one force stands for all.
    let force = 0;
    let moment = 0;
    for (const cut of [hung[scenario], own[scenario]]) {
      if (!cut) continue;
      const { front, side } = sliceForces(cut, speed, 'bad', false);
      cut.slices.forEach(({ z }, index) => {
        if (z <= hinge) return;
        const here = Math.max(front[index] as number, side[index] as number);
        force += here;
        moment += here * (z - hinge);
      });
    }
    if (force === 0) return;
    const forces: WindForce[] = [{ force, along: moment / force, acts: 'square' }];
    const held = leastWindHeld(bodies, gear, TRAVEL, { speed, forces });
    if (held?.reaches === undefined) return;
    const gust = METHOD_BY_ID[model.inquiry.method].actualGust(held.reaches);
    if (!least || gust < least.gust) least = { gust, angle: held.angle };
  });
  return least;
}

/** The lying tower hangs between hinge and gear: its bending against what its ratings prove at every level. */
function lyingLink(model: TowerModel, bodies: readonly TiltingBody[], gear: RaisingGear): readonly Link[] {
  const { tower } = model.inquiry.station;
  const hinge = tower.hingeHeight as number;
  if (raisingAt(bodies, gear, 0).force === undefined) return [];
  const base = { id: 'lying', kind: 'lying' } as const;
  let worst: { use: number; demand: number; capacity: number; height: number } | undefined;
  const bent = model.checks
    .map((check, index) => ({ check, index, height: model.levels[check.level]?.z ?? 0 }))
    .filter(({ check, height }) => check.of === 'moment' && check.link === 'tower' && height >= hinge);
  const places = bent.map(({ height }) => height - hinge);
  const moments = lyingMoments(bodies, gear, places, 0);
  bent.forEach(({ check, index, height }, place) => {
    const demand = Math.abs(moments[place]?.moment ?? 0);
    let capacity = 0;
    for (const each of model.proven) {
      capacity = Math.max(capacity, Math.min(...each.low.map((proof) => proof[index] as number)));
    }
    for (const claim of model.momentClaims)
      if (claim.level === check.level) capacity = Math.max(capacity, claim.moment);
    const use = demand === 0 ? 0 : demand / capacity;
    if (!worst || use > worst.use) worst = { use, demand, capacity, height };
  });
  if (!worst || !Number.isFinite(worst.use)) return [{ ...base, verdict: 'not-shown', because: 'unproven', needs: [] }];
  const result = { ...worst, of: 'moment', useRange: [worst.use, worst.use], headings: {} } as const;
  // More than the wind proves of it says only that nobody has shown it lying.
  const verdict = verdictOf(worst.use, worst.use, model.inquiry.wanted.margin);
  if (verdict === 'over') return [{ ...base, verdict: 'not-shown', because: 'unproven', needs: [], result }];
  return [{ ...base, verdict, needs: [], result }];
}

function handlingOf({ inquiry: { station } }: TowerModel, hinge: number): Handling {
  const laid = station.loads.flatMap((load): Laid[] => {
    const { halfBoom, halfElement } = halvesOf(load);
    if (load.low < hinge || (halfBoom === 0 && halfElement === 0)) return [];
    return [
      { name: load.name, along: load.low - hinge, halfBoom, halfElement, ...(load.turns ? {} : { fixed: true }) },
    ];
  });
  return handling(hinge, laid);
}

/**
 * The working of raising, at its worst angle.
 *
 * @param model the tower [-]
 * @param trace the working [-]
 * @returns nothing [-]
 * @source derived
 */
export function explainRaising(model: TowerModel, trace: Trace): void {
  const { hingeHeight } = model.inquiry.station.tower;
  const gear = gearOf(model);
  if (hingeHeight === undefined || !gear || weightNeeds(model).length > 0) return;
  raisingThrough(bodiesOf(model, hingeHeight), gear, TRAVEL, trace);
}
