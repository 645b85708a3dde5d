import { nth, type Trace, under } from '../../foundation/index.ts';
import { METHOD_BY_ID } from '../../methods/index.ts';
import {
  allWeightsNotGiven,
  appurtenanceMasses,
  drawnOut,
  type Handling,
  handling,
  type Laid,
  leastWindHeld,
  type Raising,
  type RaisingGear,
  raisingThrough,
  sliceForces,
  stationsAt,
  type TiltingBody,
  type TiltingWind,
  type Tower,
  type WindForce,
  type WindHeld,
  windHeldAt,
} from '../../structure/index.ts';
import { inActualWind } from '../holds-to.ts';
import { nestedInput } from '../lowered-input.ts';
import type { TowerInWind, TowerModel } from '../model.ts';
import { halvesOf } from '../reach.ts';
import { once, towerModel } from '../tower-model.ts';
import { type Check, type JudgedBy, judged, openCheck, settled } from './check.ts';
import type { CheckKind } from './check-kind.ts';
import { ratedGear } from './gear-rating.ts';
import { explainLying, type LyingWind, lyingTower, SLOW } from './lying-check.ts';

/** Raising and lowering of a hinged tower. */
export interface RaisingAnswer {
  readonly raising?: Raising;
  /** The least actual gust that brings the gear to its working load on the way, and the tower's angle then. */
  readonly gust?: GustOnTheWay;
  /** The same just off the ground and half-way up, where the gear holds the tower in calm. */
  readonly gustsAt?: readonly GustOnTheWay[];
  /** The actual gust across the lying tower that, with its own weight, brings it to what its ratings prove. */
  readonly lyingWind?: LyingWind;
  /** The lying tower's antennas and the ground. */
  readonly handling?: Handling;
  /** The tower telescopes and tilts with its top this high [m]. */
  readonly nestedTop?: number;
}

export interface GustOnTheWay {
  /** [m/s] */
  readonly gust: number;
  /** Of the tower, 0 flat [rad]. */
  readonly angle: number;
}

/** A telescoping tower is raised and lies nested; where nobody tells how it nests, it is looked at drawn out, which asks more. */
interface Tilted {
  readonly model: TowerModel;
  /** Pointers to what would tell how it nests. */
  readonly asks: readonly string[];
}

interface RaisingResult {
  /** None where the tower has no hinge. */
  readonly raising: readonly Check[];
  readonly lying: readonly Check[];
  readonly answer?: RaisingAnswer;
}

/** The pull of the gear of a hinged tower through the whole travel against its working load. */
export const raisingKind: CheckKind<'raising'> = {
  kind: 'raising',
  part: 'raising-gear',
  assess: ({ model }) => once(model, raisingResult).raising,
  explain: ({ model }, _, trace) => {
    under(trace, 'raising', () => explainRaising(once(model, tilted).model, trace));
  },
  loadedBy: 'gear',
  ownRemedies: ['counterpoise'],
  room: undefined,
};

/** The bending of the lying tower by its own weight against what its ratings prove. Its working is a part of raising. */
export const lyingKind: CheckKind<'lying'> = {
  kind: 'lying',
  part: 'tower-lowered',
  assess: ({ model }) => once(model, raisingResult).lying,
  explain: undefined,
  loadedBy: 'weight',
  room: undefined,
};

/**
 * The statics of raising a hinged tower.
 *
 * ΣW·x/r
 *
 * @returns pulls, gusts and reaches on the way; undefined where the tower has no hinge
 * @source derived
 */
export function raisingAnswer(model: TowerModel): RaisingAnswer | undefined {
  return once(model, raisingResult).answer;
}

/** From flat to upright. */
const TRAVEL = { from: 0, to: Math.PI / 2 } as const;
/** Just off the ground, and half-way up. */
const LOOKED_AT = [0, Math.PI / 4] as const;

/**
 * The tower as it tilts.
 *
 * @source common-practice
 */
function tilted(standing: TowerModel): Tilted {
  const { tower } = standing.input.station;
  if (!tower.telescopes) return { model: standing, asks: [] };
  const nested = nestedInput(standing.input);
  if (nested) return { model: towerModel(nested.input), asks: [] };
  const asks = [
    ...(tower.nestedTop === undefined ? ['/tower/nested'] : []),
    ...(tower.sectionsGiven ? [] : ['/tower/sections']),
  ];
  return { model: standing, asks };
}

function raisingResult(standing: TowerModel): RaisingResult {
  const { hingeHeight } = standing.input.station.tower;
  if (hingeHeight === undefined) return { raising: [], lying: [] };
  const { model, asks } = once(standing, tilted);
  const laid = handlingOf(model, hingeHeight);
  const of = { id: 'raising', kind: 'raising', at: '/tower/hinge' } as const;
  const gear = gearOf(model);
  const needs = [...(gear ? [] : ['/tower/hinge/raisedBy']), ...allWeightsNotGiven(model.input.station)];
  if (!gear || needs.length > 0) {
    return { raising: [openCheck(of, 'missing', needs)], lying: [], answer: { handling: laid } };
  }
  const bodies = bodiesOf(model, hingeHeight);
  const raising = raisingThrough(bodies, gear, TRAVEL);
  const lying = lyingTower(model, hingeHeight, bodies, gear);
  const answer = {
    raising,
    handling: laid,
    ...windOnTheWay(model, inOnePlace(bodies), gear, hingeHeight),
    ...(lying.wind ? { lyingWind: lying.wind } : {}),
    ...(model === standing ? {} : { nestedTop: model.input.station.tower.top }),
  };
  const { worst, workingLoad, ratio } = raising;
  // Somewhere on the way the gear has no hold on the tower, whatever its strength.
  if ((raising.unbounded || !worst) && asks.length > 0) {
    return { raising: [openCheck(of, 'missing', asks)], lying: [], answer };
  }
  if (raising.unbounded || !worst) return { raising: [openCheck(of, 'no-hold')], lying: [], answer };
  if (workingLoad === undefined || ratio === undefined) {
    return { raising: [openCheck(of, 'missing', ['/tower/hinge/raisedBy/workingLoad'])], lying: lying.checks, answer };
  }
  const result = settled({ ratio, of: 'pull', demand: Math.abs(worst.force), capacity: workingLoad });
  const { margin } = model.input.wanted;
  const byNesting = asks.length === 0 ? {} : { favourable: 0, because: 'missing', asks };
  const checks = [judged(of, result, { margin, ...byNesting } as JudgedBy)];
  return { raising: checks, lying: lying.checks.map((each) => openFor(each, asks)), answer };
}

/** Open drawn out, it also waits for what would tell how the tower nests. */
function openFor(check: Check, asks: readonly string[]): Check {
  return check.verdict !== 'open' || asks.length === 0 ? check : { ...check, because: 'missing', needs: asks };
}

/** The plan's gear; its working load from the gear itself, else from a rating of gear. */
function gearOf({ input }: TowerModel): RaisingGear | undefined {
  const { raisedBy } = input.station.tower;
  if (!raisedBy || raisedBy.workingLoad !== undefined) return raisedBy;
  return { ...raisedBy, ...ratedGear(input.ratings) };
}

/** Everything that tilts, its own weight spread evenly; nested, that of each section over its length. */
function bodiesOf({ input: { station } }: TowerModel, hinge: number): readonly TiltingBody[] {
  const { tower } = station;
  // Lines that hang slack weigh as much as drawn out.
  const full = tower.drops === undefined ? station : (stationsAt(station, drawnOut(tower).top)[0]?.station ?? station);
  const drawn = appurtenanceMasses(full);
  const bodies: TiltingBody[] = [];
  const add = (mass: number, low: number, high: number) => {
    // What is below the hinge stays down.
    const from = Math.max(low, hinge);
    if (high < hinge || mass === 0) return;
    const share = high > low ? (high - from) / (high - low) : 1;
    bodies.push({ mass: mass * share, low: from - hinge, high: high - hinge, offset: 0 });
  };
  if (tower.drops === undefined) add(tower.weight ?? 0, tower.foot, tower.top);
  else {
    const masses = sectionMasses(tower);
    tower.sections.forEach(({ low, high }, number) => {
      add(nth(masses, number), low, high);
    });
  }
  appurtenanceMasses(station).forEach(({ low, high, counterpoise }, number) => {
    const { mass } = nth(drawn, number);
    if (!counterpoise) add(mass, low, high);
    else if (mass > 0) bodies.push({ mass, low: low - hinge, high: high - hinge, offset: 0 });
  });
  return bodies;
}

/**
 * What each section weighs: as told, and what is left of the whole by length, since a lower one is the heavier for its length.
 *
 * W_k + (W − ΣW)·l_k/Σl over those not told, else over all
 *
 * @source common-practice
 */
function sectionMasses({ sections, weight = 0 }: Tower): readonly number[] {
  const told = sections.reduce((sum, section) => sum + (section.weight ?? 0), 0);
  const shares = sections.every((section) => section.weight !== undefined)
    ? sections.map(({ low, high }) => high - low)
    : sections.map((section) => (section.weight === undefined ? section.high - section.low : 0));
  const whole = shares.reduce((sum, share) => sum + share, 0);
  const rest = Math.max(0, weight - told);
  return sections.map((section, number) => (section.weight ?? 0) + (rest * nth(shares, number)) / whole);
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

/**
 * Gusts that bring the gear to its working load on the way: the upright tower's wind, level and square to the tilted one, each
 * piece broadside or endwise.
 */
function windOnTheWay(
  model: TowerModel,
  bodies: readonly TiltingBody[],
  gear: RaisingGear,
  hinge: number,
): Pick<RaisingAnswer, 'gust' | 'gustsAt'> {
  // What the wind does to the tower itself is a part of it.
  if (!model.bareTowerKnown) return {};
  const winds = inActualWind(model).map(
    (blowing): TiltingWind => ({ speed: SLOW, forces: forcesAbove(blowing, hinge) }),
  );
  const least = (at: (wind: TiltingWind) => WindHeld | undefined): GustOnTheWay | undefined => {
    const held = winds.map(at);
    let lowest: GustOnTheWay | undefined;
    for (const each of held) {
      if (each?.reaches === undefined) continue;
      const gust = METHOD_BY_ID[model.input.method].actualGust(each.reaches);
      if (!lowest || gust < lowest.gust) lowest = { gust, angle: each.angle };
    }
    return lowest;
  };
  const gust = least((wind) => leastWindHeld(bodies, gear, TRAVEL, wind));
  const gustsAt = LOOKED_AT.flatMap((angle) => least((wind) => windHeldAt(bodies, gear, angle, wind)) ?? []);
  return { ...(gust ? { gust } : {}), ...(gustsAt.length > 0 ? { gustsAt } : {}) };
}

/** Square to the tower they have the same moment at every angle, so that one force stands for all. */
function forcesAbove({ appurtenances, bareTower }: TowerInWind, hinge: number): readonly WindForce[] {
  let force = 0;
  let moment = 0;
  for (const cut of [appurtenances, bareTower]) {
    if (!cut) continue;
    const { front, side } = sliceForces(cut, SLOW, 'unfavourable', false);
    cut.slices.forEach(({ z }, index) => {
      if (z <= hinge) return;
      const here = Math.max(nth(front, index), nth(side, index));
      force += here;
      moment += here * (z - hinge);
    });
  }
  return force === 0 ? [] : [{ force, along: moment / force, acts: 'square' }];
}

function handlingOf({ input: { station } }: TowerModel, hinge: number): Handling {
  const laid = station.loads.flatMap((load): Laid[] => {
    const { halfBoom, halfElement } = halvesOf(load);
    if (load.low < hinge || (halfBoom === 0 && halfElement === 0)) return [];
    return [
      { name: load.name, along: load.low - hinge, halfBoom, halfElement, ...(load.turns ? {} : { fixed: true }) },
    ];
  });
  return handling(hinge, laid);
}

/** At its worst angle. */
function explainRaising(model: TowerModel, trace: Trace): void {
  const { hingeHeight } = model.input.station.tower;
  const gear = gearOf(model);
  if (hingeHeight === undefined || !gear || allWeightsNotGiven(model.input.station).length > 0) return;
  const bodies = bodiesOf(model, hingeHeight);
  raisingThrough(bodies, gear, TRAVEL, trace);
  under(trace, 'lowered flat', () => explainLying(model, hingeHeight, bodies, gear, trace));
}
