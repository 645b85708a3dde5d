import {
  cite,
  defineFormula,
  evaluate,
  listVariable,
  Refusal,
  type Trace,
  under,
  variable,
} from '../foundation/index.ts';
import {
  deadAngle,
  type HeldRow,
  type RaisingGear,
  type RaisingRow,
  type RaisingState,
  raisingAt,
  refuseImpossibleGear,
  rowAt,
  sameButHalfTurns,
  staticsForSearch,
  type TiltingBody,
  type TiltingWeights,
  tiltingWeights,
} from './raising-gear.ts';

/** From one angle up to another [rad]. */
export interface Travel {
  readonly from: number;
  readonly to: number;
}

/** A piece of the travel in which the gear does one thing all along. */
export interface TravelPiece extends Travel {
  readonly state: RaisingState;
}

/** A tower through its whole travel. */
export interface Raising {
  /** Every 5°, both ends, the worst, the balance and the dead point, upwards. */
  readonly rows: readonly RaisingRow[];
  /** What the gear does, piece by piece. */
  readonly pieces: readonly TravelPiece[];
  /** Largest force, pull or push; absent where it has no bound or the gear nowhere holds. */
  readonly worst?: HeldRow;
  /** Largest reaction of the hinge; absent as the worst is. */
  readonly worstHinge?: HeldRow;
  /** Near a dead point the force grows without bound. */
  readonly unbounded: boolean;
  /** Angle in the travel at which the weights change sides [rad]; past it the gear holds back or nothing does. */
  readonly balance?: number;
  /** Angle in the travel at which the gear has no arm [rad]. */
  readonly deadPoint?: number;
  /**
   * Where a line goes slack and the tower moves on by itself: the largest moment that a second line, a stop or people must
   * hold then, and on the way down overcome [N·m].
   */
  readonly holdBack?: { readonly angle: number; readonly moment: number };
  /** Length of the gear at the ends of the travel, and its least and largest between [m]. */
  readonly lengths: { readonly from: number; readonly to: number; readonly least: number; readonly largest: number };
  /** How much the centre of gravity rises [m], and the work that takes [N·m]; less is less where nothing holds. */
  readonly rise: number;
  readonly work: number;
  /** Working load of the gear [N], the ratio of it; absent where not given, the ratio also where there is no worst. */
  readonly workingLoad?: number;
  readonly ratio?: number;
}

/** Share of a breaking strength that is worked with. @source common-practice */
export const BREAKING_TO_WORKING = 5;

/** Rows of the table [rad]. */
const TABLE_STEP = Math.PI / 36;
/** Steps of the search [rad]; between them the force is smooth. */
const SEARCH_STEP = Math.PI / 720;
/** How near to its ends a piece is searched [rad]. */
const INSET = 1e-7;

export const workingLoadOfBreaking = defineFormula({
  id: 'working-load-of-breaking-strength',
  title: 'Working load of line or gear of which only the breaking strength is known',
  symbol: 'P_w',
  unit: 'force',
  expression: 'B / 5',
  variables: [variable('B', 'breaking strength', 'force', 0, 1e6)],
  cite: cite('common-practice', 'a fifth of the breaking strength', 'common-practice'),
  of: (breaking: number) => breaking / BREAKING_TO_WORKING,
});

export const ratioOfGear = defineFormula({
  id: 'use-of-raising-gear',
  title: 'Ratio of the raising gear',
  symbol: 'u',
  unit: 'one',
  expression: 'abs(F) / P_w',
  variables: [
    variable('F', 'force of the gear', 'force', -1e5, 1e5),
    variable('P_w', 'its working load', 'force', 10, 1e6),
  ],
  cite: cite('derived', 'demand over capacity', 'derived'),
  of: (force: number, load: number) => Math.abs(force) / load,
});

/**
 * Working load of the gear: as given, or a fifth of its breaking strength.
 *
 * P_w = B/5
 *
 * @returns the working load [N]; undefined where neither is given
 * @example workingLoadOf({ kind: 'line', anchor: [0, 3], attach: [4, 0], breakingLoad: 20000 }) // 4000
 * @source common-practice
 */
export function workingLoadOf(
  gear: Pick<RaisingGear, 'workingLoad' | 'breakingLoad'>,
  trace?: Trace,
): number | undefined {
  if (gear.workingLoad !== undefined) return gear.workingLoad;
  return gear.breakingLoad === undefined ? undefined : evaluate(trace, workingLoadOfBreaking, [gear.breakingLoad]);
}

/**
 * A tower through its travel: what the gear must do at every angle, its worst, where it balances, where nothing holds it.
 *
 * F = ΣW·x/r; worst by steps of ¼° and golden section
 *
 * @param travel from where to where, at most half a turn [rad]
 * @param trace the working of the worst angle, or nothing
 * @throws Refusal as `raisingAt`, or where the travel is none
 * @example raisingThrough([{ mass: 100, low: 5, high: 5, offset: 0 }], { kind: 'line', anchor: [0, 3], attach: [4, 0] }, { from: 0, to: 1.5 }).worst.force // 2043.05
 * @source derived
 */
export function raisingThrough(
  bodies: readonly TiltingBody[],
  gear: RaisingGear,
  travel: Travel,
  trace?: Trace,
): Raising {
  refuseImpossibleGear(gear);
  refuseImpossibleTravel(travel);
  const weights = tiltingWeights(bodies);
  const at = (angle: number) => rowAt(weights, gear, angle);
  const search = staticsForSearch(weights, gear);
  const { balance, dead, deadPoint, pieces } = turningPoints(weights, gear, travel);
  const held = pieces.filter(({ state }) => holds(state));
  // Where the weights balance just at the dead point, moment and arm vanish together and the force stays bounded.
  const unbounded =
    weights.balance !== undefined &&
    !sameButHalfTurns(dead, weights.balance) &&
    held.some(({ from, to }) => deadPoint === from || deadPoint === to);
  const worstOf = (figure: (row: RaisingRow) => number, searched: (angle: number) => number) =>
    unbounded ? undefined : (largestOver(held, at, figure, searched) as HeldRow | undefined);
  const worst = worstOf(
    ({ force }) => Math.abs(force as number),
    (angle) => Math.abs(search(angle).force),
  );
  const worstHinge = worstOf(
    ({ hinge }) => hinge?.force as number,
    (angle) => search(angle).hinge,
  );
  const falling = pieces.filter(({ state }) => state === 'falls-on');
  const slack = largestOver(
    falling,
    at,
    ({ moment }) => Math.abs(moment),
    (angle) => Math.abs(search(angle).moment),
  );
  const workingLoad = workingLoadOf(gear, trace);
  if (worst && trace) under(trace, 'raising, worst angle', () => raisingAt(bodies, gear, worst.angle, trace));
  const ratio =
    worst && workingLoad !== undefined ? evaluate(trace, ratioOfGear, [worst.force, workingLoad]) : undefined;
  const rise = centreHeight(weights, travel.to) - centreHeight(weights, travel.from);
  return {
    rows: tableAngles(travel, [balance, deadPoint, worst?.angle]).map(at),
    pieces,
    ...(worst && { worst }),
    ...(worstHinge && { worstHinge }),
    unbounded,
    ...(balance !== undefined && { balance }),
    ...(deadPoint !== undefined && { deadPoint }),
    ...(slack && { holdBack: { angle: slack.angle, moment: Math.abs(slack.moment) } }),
    lengths: lengthsOver(travel, deadPoint, at),
    rise,
    work: weights.total * rise,
    ...(workingLoad !== undefined && { workingLoad }),
    ...(ratio !== undefined && { ratio }),
  };
}

function refuseImpossibleTravel({ from, to }: Travel): void {
  if (!(Number.isFinite(from) && Number.isFinite(to)) || to - from < 1e-6 || to - from > Math.PI + 1e-12) {
    throw new Refusal(
      'raising-travel',
      `The travel must lead upwards through at most half a turn: ${from} to ${to} rad.`,
    );
  }
}

const holds = (state: RaisingState) => state === 'pull' || state === 'push' || state === 'balanced';

/** The angle, or it and whole half turns, that lies in the travel. */
function within(angle: number | undefined, { from, to }: Travel): number | undefined {
  if (angle === undefined) return undefined;
  const turned = angle + Math.ceil((from - angle) / Math.PI - 1e-9) * Math.PI;
  if (turned > to + 1e-9) return undefined;
  return Math.min(to, Math.max(from, turned));
}

/** Where the weights balance and where the gear has no arm, and what the gear does before, between and after. */
function turningPoints(weights: TiltingWeights, gear: RaisingGear, travel: Travel) {
  const balance = within(weights.balance, travel);
  const dead = deadAngle(gear);
  const deadPoint = within(dead, travel);
  const cuts = distinct([travel.from, balance, deadPoint, travel.to]);
  const pieces = cuts.slice(1).map((to, index): TravelPiece => {
    const from = cuts[index] as number;
    return { from, to, state: rowAt(weights, gear, (from + to) / 2).state };
  });
  return { balance, dead, deadPoint, pieces };
}

function distinct(angles: readonly (number | undefined)[]): number[] {
  const rising = angles.filter((angle) => angle !== undefined).sort((a, b) => a - b);
  return rising.filter((angle, index) => index === 0 || angle - (rising[index - 1] as number) > 1e-9);
}

function tableAngles({ from, to }: Travel, special: readonly (number | undefined)[]): number[] {
  const first = Math.ceil(from / TABLE_STEP - 1e-9);
  const count = Math.max(0, Math.floor(to / TABLE_STEP + 1e-9) - first + 1);
  const steps = Array.from({ length: count }, (_, index) => (first + index) * TABLE_STEP);
  return distinct([...steps, from, to, ...special]).filter((angle) => angle >= from && angle <= to);
}

function largestOver(
  pieces: readonly Travel[],
  at: (angle: number) => RaisingRow,
  figure: (row: RaisingRow) => number,
  searched: (angle: number) => number,
): RaisingRow | undefined {
  let found: RaisingRow | undefined;
  for (const { from, to } of pieces) {
    const inset = Math.min(INSET, (to - from) / 4);
    const angle = largestAngle({ from: from + inset, to: to - inset }, searched);
    // The very end of the travel rather than just beside it, where the gear holds there too.
    for (const candidate of [angle, from, to]) {
      const row = at(candidate);
      if (!Number.isFinite(figure(row)) || (row.state === 'balanced' && candidate !== angle)) continue;
      if (!found || figure(row) > figure(found)) found = row;
    }
  }
  return found;
}

/** The angle of the largest value: by steps, then by golden section about the best of them. */
function largestAngle({ from, to }: Travel, value: (angle: number) => number): number {
  const count = Math.max(2, Math.ceil((to - from) / SEARCH_STEP));
  const step = (to - from) / count;
  let best = 0;
  let most = value(from);
  for (let index = 1; index <= count; index += 1) {
    const here = value(from + index * step);
    if (here > most) [best, most] = [index, here];
  }
  let low = from + Math.max(0, best - 1) * step;
  let high = from + Math.min(count, best + 1) * step;
  const ratio = (Math.sqrt(5) - 1) / 2;
  for (let round = 0; round < 60 && high - low > 1e-10; round += 1) {
    const left = high - ratio * (high - low);
    const right = low + ratio * (high - low);
    if (value(left) >= value(right)) high = right;
    else low = left;
  }
  const middle = (low + high) / 2;
  return value(middle) >= most ? middle : from + best * step;
}

/** The gear is longest or shortest at an end of the travel or in the dead point. */
function lengthsOver({ from, to }: Travel, deadPoint: number | undefined, at: (angle: number) => RaisingRow) {
  const ends = { from: at(from).length, to: at(to).length };
  const all = [ends.from, ends.to, ...(deadPoint === undefined ? [] : [at(deadPoint).length])];
  return { ...ends, least: Math.min(...all), largest: Math.max(...all) };
}

function centreHeight({ flat, upright, total }: TiltingWeights, angle: number): number {
  return total === 0 ? 0 : (flat * Math.sin(angle) + upright * Math.cos(angle)) / total;
}

/**
 * A force of the wind on what tilts, in the plane of tilting, at some wind speed: square to the tower, as it is at the
 * angle asked about; or level, as on the upright tower, which the tilted tower does not exceed unless it shows the wind more
 * area than upright.
 */
export interface WindForce {
  /** [N] */
  readonly force: number;
  /** Along the tower from the hinge [m]. */
  readonly along: number;
  readonly acts: 'square' | 'level';
}

/** Forces of a wind of one speed; at another they go with its square. */
export interface TiltingWind {
  /** [m/s] */
  readonly speed: number;
  readonly forces: readonly WindForce[];
}

/** What wind the gear bears at an angle. */
export interface WindHeld {
  readonly angle: number;
  /** Of the wind at its speed about the hinge, either way [N·m]. */
  readonly moment: number;
  /** `over-in-calm`: beyond its working load without wind; `no-moment`: this wind does not turn the tower. */
  readonly state: 'held' | 'over-in-calm' | 'not-held' | 'no-moment' | 'load-unknown';
  /** Speed at which, blowing with the weights, it brings the gear to its working load [m/s]. */
  readonly reaches?: number;
  /** Speed at which, blowing against the weights, it takes the load off the gear [m/s]: a line then goes slack. */
  readonly unloads?: number;
}

export const windMomentAboutHinge = defineFormula({
  id: 'moment-of-wind-about-hinge',
  title: 'Moment of the wind about the hinge of a tilting tower',
  symbol: 'M_1',
  unit: 'moment',
  expression: 'sum(F .* a)',
  variables: [
    listVariable('F', 'forces of the wind', 'force', 0, 1e4),
    listVariable('a', 'their arms', 'length', -30, 60),
  ],
  cite: cite('derived', 'moments about the hinge', 'derived'),
  of: (forces: readonly number[], arms: readonly number[]) =>
    forces.reduce((sum, force, index) => sum + force * (arms[index] as number), 0),
});

export const windToWorkingLoad = defineFormula({
  id: 'wind-to-working-load-of-gear',
  title: 'Wind that brings the raising gear to its working load',
  symbol: 'V',
  unit: 'speed',
  expression: 'V_1 * sqrt((P_w * r - M_h) / M_1)',
  variables: [
    variable('V_1', 'speed the forces are given for', 'speed', 1, 100),
    variable('P_w', 'working load of the gear', 'force', 1e4, 1e6),
    variable('r', 'its arm about the hinge', 'length', 1, 60),
    variable('M_h', 'moment of the weights, without sign', 'moment', 0, 1e4),
    variable('M_1', 'moment of the wind at that speed', 'moment', 0.1, 1e6),
  ],
  cite: cite('derived', 'moments about the hinge; forces of the wind go with the square of its speed', 'derived'),
  of: (speed: number, load: number, arm: number, weights: number, wind: number) =>
    speed * Math.sqrt((load * arm - weights) / wind),
});

export const windThatUnloads = defineFormula({
  id: 'wind-that-unloads-gear',
  title: 'Wind that carries the tilted tower, so that the raising gear is without load',
  symbol: 'V',
  unit: 'speed',
  expression: 'V_1 * sqrt(M_h / M_1)',
  variables: [
    variable('V_1', 'speed the forces are given for', 'speed', 1, 100),
    variable('M_h', 'moment of the weights, without sign', 'moment', 0, 1e6),
    variable('M_1', 'moment of the wind at that speed', 'moment', 0.1, 1e6),
  ],
  cite: cite('derived', 'moments about the hinge; forces of the wind go with the square of its speed', 'derived'),
  of: (speed: number, weights: number, wind: number) => speed * Math.sqrt(weights / wind),
});

/**
 * What wind the gear bears beside the weights with the tower down or half-way. Wind across the plane of tilting loads the
 * hinge alone and is not in it.
 *
 * V = V_1·√((P_w·|r| − |ΣW·x|)/M_1); slack at V_1·√(|ΣW·x|/M_1)
 *
 * @param angle of the tower [rad]
 * @returns the speeds; none where the gear does not hold or its working load is not known [m/s]
 * @throws Refusal as `raisingAt`, or where the wind's speed is not above 0 or a force is none
 * @example windHeldAt([{ mass: 100, low: 5, high: 5, offset: 0 }], { kind: 'line', anchor: [0, 3], attach: [4, 0], workingLoad: 4000 }, 0, { speed: 1, forces: [{ force: 1, along: 5, acts: 'square' }] }).reaches // 30.6486
 * @source derived
 */
export function windHeldAt(
  bodies: readonly TiltingBody[],
  gear: RaisingGear,
  angle: number,
  wind: TiltingWind,
  trace?: Trace,
): WindHeld {
  refuseImpossibleWind(wind);
  const row = raisingAt(bodies, gear, angle, trace);
  const moment = Math.abs(evaluate(trace, windMomentAboutHinge, forcesAndArms(wind, angle)));
  if (row.force === undefined) return { angle, moment, state: 'not-held' };
  if (moment <= leastTurning(wind)) return { angle, moment, state: 'no-moment' };
  const weights = Math.abs(row.moment);
  const unloads = evaluate(trace, windThatUnloads, [wind.speed, weights, moment]);
  const load = workingLoadOf(gear, trace);
  if (load === undefined) return { angle, moment, state: 'load-unknown', unloads };
  const arm = Math.abs(row.arm);
  if (load * arm < weights) return { angle, moment, state: 'over-in-calm', unloads };
  const reaches = evaluate(trace, windToWorkingLoad, [wind.speed, load, arm, weights, moment]);
  return { angle, moment, state: 'held', reaches, unloads };
}

function forcesAndArms({ forces }: TiltingWind, angle: number): [number[], number[]] {
  const sine = Math.sin(angle);
  return [forces.map(({ force }) => force), forces.map(({ along, acts }) => (acts === 'level' ? along * sine : along))];
}

/** A moment of the wind up to this is none [N·m]. */
function leastTurning({ forces }: TiltingWind): number {
  return 1e-9 * forces.reduce((sum, { force, along }) => sum + Math.abs(force * along), 0);
}

function refuseImpossibleWind({ speed, forces }: TiltingWind): void {
  const fine = forces.every(({ force, along }) => Number.isFinite(along) && Number.isFinite(force) && force >= 0);
  if (!(speed > 0 && Number.isFinite(speed)) || !fine) {
    throw new Refusal(
      'tilting-wind',
      `Wind on the tilting tower needs a speed above 0 and forces of 0 or more: ${speed} m/s.`,
    );
  }
}

/**
 * The angle at which the gear bears the least wind, searched as the worst force is.
 *
 * least of V_1·√((P_w·|r| − |ΣW·x|)/M_1) over the travel
 *
 * @param travel from where to where [rad]
 * @returns what it bears there; undefined where it nowhere holds a wind that turns the tower, or its working load is not known
 * @throws Refusal as `raisingThrough` and `windHeldAt`
 * @example leastWindHeld([{ mass: 100, low: 5, high: 5, offset: 0 }], { kind: 'line', anchor: [0, 3], attach: [4, 0], workingLoad: 4000 }, { from: 0, to: 1.2 }, { speed: 1, forces: [{ force: 1, along: 5, acts: 'square' }] }).angle // 0
 * @source derived
 */
export function leastWindHeld(
  bodies: readonly TiltingBody[],
  gear: RaisingGear,
  travel: Travel,
  wind: TiltingWind,
): WindHeld | undefined {
  const load = workingLoadOf(gear);
  if (load === undefined) return undefined;
  refuseImpossibleGear(gear);
  refuseImpossibleTravel(travel);
  refuseImpossibleWind(wind);
  const weights = tiltingWeights(bodies);
  const search = staticsForSearch(weights, gear);
  const none = leastTurning(wind);
  const turningAt = (angle: number) => Math.abs(windMomentAboutHinge.of(...forcesAndArms(wind, angle)));
  const always = wind.forces.every(({ acts }) => acts === 'square') ? turningAt(0) : undefined;
  // What `windHeldAt` says where the gear holds: least where calm is too much already, most where no wind turns the tower.
  const searched = (angle: number) => {
    const { moment, arm } = search(angle);
    const turning = always ?? turningAt(angle);
    if (turning <= none) return Number.MAX_VALUE;
    const [calm, reach] = [Math.abs(moment), Math.abs(arm)];
    return load * reach < calm ? -1 : windToWorkingLoad.of(wind.speed, load, reach, calm, turning);
  };
  let least: WindHeld | undefined;
  const bearing = (held: WindHeld) => (held.state === 'over-in-calm' ? -1 : (held.reaches ?? Number.MAX_VALUE));
  for (const { from, to, state } of turningPoints(weights, gear, travel).pieces) {
    if (!holds(state)) continue;
    const inset = Math.min(INSET, (to - from) / 4);
    const inside = { from: from + inset, to: to - inset };
    const angle = largestAngle(inside, (each) => -searched(each));
    for (const candidate of [angle, from, to]) {
      const held = windHeldAt(bodies, gear, candidate, wind);
      if (held.state !== 'held' && held.state !== 'over-in-calm') continue;
      if (!least || bearing(held) < bearing(least)) least = held;
    }
  }
  return least;
}
