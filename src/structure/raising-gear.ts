import {
  cite,
  defineFormula,
  evaluate,
  GRAVITY,
  listVariable,
  Refusal,
  type Trace,
  variable,
} from '../foundation/index.ts';

/*
 * A tower on a hinge, in the plane in which it tilts. The hinge is the origin; x runs level to the side on which the tower
 * lies, y up; the angle is 0 flat and π/2 upright. A place on the tower is [along it from the hinge, square to it], the
 * latter towards the upper side of the lying tower, so that flat both frames are one.
 *
 * Friction in hinge, sheaves and screw, the weight of the gear and any jerk are left out: they are extra.
 */

/** Two distances [m]. */
export type Point = readonly [x: number, y: number];

/** Something that tilts with the tower: its weight evenly from low to high, or in one place where both are alike. */
export interface TiltingBody {
  /** [kg] */
  readonly mass: number;
  /** Along the tower from the hinge [m]; negative below it, as a counterweight. */
  readonly low: number;
  readonly high: number;
  /** Square to the tower [m]: upper side of the lying tower positive. */
  readonly offset: number;
}

export const RAISING_GEAR_KINDS = ['line', 'winch', 'screw', 'actuator'] as const;
export type RaisingGearKind = (typeof RAISING_GEAR_KINDS)[number];

/**
 * What raises the tower, between two points: lines and winches only pull, screws and actuators pull and push. Several
 * parts of line between the two points share the force, which is that of all of them.
 */
export interface RaisingGear {
  readonly kind: RaisingGearKind;
  /** Fixed end, from the hinge [m]: the foot of a screw, or where a line leaves a winch or a sheave. */
  readonly anchor: Point;
  /** Where the tower is held: along it from the hinge, and square to it [m]. */
  readonly attach: Point;
  /**
   * Tip of a raising pole that turns with the tower, as it is with the tower flat [m]. The pole stands in the hinge on a pin,
   * a stay of fixed length ties its tip to `attach`, so that the three are one stiff triangle; the line pulls at the tip.
   */
  readonly over?: Point;
  /** Working load [N]. */
  readonly workingLoad?: number;
  /** Breaking strength [N], where no working load is given. */
  readonly breakingLoad?: number;
}

/**
 * What the gear does at an angle. `falls-on`: past its balance the tower moves on by itself and the line goes slack.
 * `cannot-hold`: a line would have to push, or pull its pole over. `dead-point`: gear and hinge in one line, no arm.
 */
export const RAISING_STATES = ['pull', 'push', 'balanced', 'falls-on', 'cannot-hold', 'dead-point'] as const;
export type RaisingState = (typeof RAISING_STATES)[number];

/** Statics at one angle. */
export interface RaisingRow {
  /** [rad] */
  readonly angle: number;
  /** Of the weights about the hinge [N·m]: positive lowers the tower. */
  readonly moment: number;
  /** Of a pull of the gear about the hinge [m]: positive raises the tower. */
  readonly arm: number;
  /** Between the two ends of the gear [m]. */
  readonly length: number;
  readonly state: RaisingState;
  /** Of the gear [N]: positive pulls, negative pushes; absent where it does not hold. */
  readonly force?: number;
  /** On the tower at the hinge [N]: level, up, and together; absent with the force. */
  readonly hinge?: { readonly x: number; readonly y: number; readonly force: number };
  /** Of a raising pole [N]: pull in its stay, thrust along it. */
  readonly pole?: { readonly stay: number; readonly thrust: number };
}

/** A row at which the gear holds. */
export type HeldRow = RaisingRow & Required<Pick<RaisingRow, 'force' | 'hinge'>>;

/** How near to a balance or dead point counts as in it [rad]. */
const IN_IT = 1e-9;

/** A point of the tower, turned about the hinge by an angle of which both are known: searches ask for many points of one. */
const levelOf = (along: number, square: number, cosine: number, sine: number) => along * cosine - square * sine;
const heightOf = (along: number, square: number, cosine: number, sine: number) => along * sine + square * cosine;

const place = (symbol: string, meaning: string) => variable(symbol, meaning, 'length', -60, 60);
const tilt = variable('theta', 'angle of the tower, 0 flat', 'angle', 0, 3.1);
const pull = variable('F', 'force of the gear, a push negative', 'force', -1e5, 1e5);
const span = variable('L', 'length of the gear', 'length', 0.1, 100);

export const momentOfWeights = defineFormula({
  id: 'moment-of-weights-about-hinge',
  title: 'Moment of the weights about the hinge of a tilting tower',
  symbol: 'M_h',
  unit: 'moment',
  expression: 'sum(W .* (s * cos(theta) - e * sin(theta)))',
  variables: [
    listVariable('W', 'weights', 'force', 0, 1e5),
    listVariable('s', 'their distances along the tower from the hinge', 'length', -30, 60),
    listVariable('e', 'their distances square to it, to the upper side of the tower lowered flat', 'length', -3, 3),
    tilt,
  ],
  cite: cite('derived', 'weights times their level distances from the hinge', 'derived'),
  of: (weights: readonly number[], along: readonly number[], square: readonly number[], angle: number) => {
    const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
    return weights.reduce(
      (sum, weight, index) => sum + weight * levelOf(along[index] as number, square[index] as number, cosine, sine),
      0,
    );
  },
});

export const levelPlace = defineFormula({
  id: 'tilted-point-level',
  title: 'Level distance from the hinge of a point that tilts with the tower',
  symbol: 'x_e',
  unit: 'length',
  expression: 's * cos(theta) - e * sin(theta)',
  variables: [place('s', 'along the tower from the hinge'), place('e', 'square to it'), tilt],
  cite: cite('derived', 'rotation about the hinge', 'derived'),
  of: (along: number, square: number, angle: number) => levelOf(along, square, Math.cos(angle), Math.sin(angle)),
});

export const raisedPlace = defineFormula({
  id: 'tilted-point-height',
  title: 'Height above the hinge of a point that tilts with the tower',
  symbol: 'y_e',
  unit: 'length',
  expression: 's * sin(theta) + e * cos(theta)',
  variables: [place('s', 'along the tower from the hinge'), place('e', 'square to it'), tilt],
  cite: cite('derived', 'rotation about the hinge', 'derived'),
  of: (along: number, square: number, angle: number) => heightOf(along, square, Math.cos(angle), Math.sin(angle)),
});

const ends = [
  place('x_e', 'level place of its moving end'),
  place('y_e', 'height of its moving end'),
  place('x_a', 'level place of its anchor'),
  place('y_a', 'height of its anchor'),
] as const;

export const gearLength = defineFormula({
  id: 'length-of-raising-gear',
  title: 'Length of line, screw or actuator between its ends',
  symbol: 'L',
  unit: 'length',
  expression: 'sqrt((x_a - x_e)^2 + (y_a - y_e)^2)',
  variables: ends,
  cite: cite('derived', 'distance of two points', 'derived'),
  of: (xe: number, ye: number, xa: number, ya: number) => Math.sqrt((xa - xe) ** 2 + (ya - ye) ** 2),
});

export const gearArm = defineFormula({
  id: 'arm-of-raising-gear',
  title: 'Arm of the pull of line, screw or actuator about the hinge; positive raises',
  symbol: 'r',
  unit: 'length',
  expression: '(x_e * y_a - y_e * x_a) / L',
  variables: [...ends, span],
  cite: cite('derived', 'moment of a unit pull from the moving end towards the anchor', 'derived'),
  of: (xe: number, ye: number, xa: number, ya: number, length: number) => (xe * ya - ye * xa) / length,
});

export const gearForce = defineFormula({
  id: 'force-of-raising-gear',
  title: 'Force of line, screw or actuator that supports the tower at an angle; a push is negative',
  symbol: 'F',
  unit: 'force',
  expression: 'M_h / r',
  variables: [
    variable('M_h', 'moment of the weights about the hinge', 'moment', -1e6, 1e6),
    variable('r', 'arm of the gear', 'length', 0.01, 60),
  ],
  cite: cite('derived', 'moments about the hinge', 'derived'),
  of: (moment: number, arm: number) => moment / arm,
});

export const hingeLevel = defineFormula({
  id: 'hinge-reaction-level',
  title: 'Level force of the hinge on the tower',
  symbol: 'H_x',
  unit: 'force',
  expression: 'F * (x_e - x_a) / L',
  variables: [pull, ends[0], ends[2], span],
  cite: cite('derived', 'level forces on the tower add up to nothing', 'derived'),
  of: (force: number, xe: number, xa: number, length: number) => (force * (xe - xa)) / length,
});

export const hingeUp = defineFormula({
  id: 'hinge-reaction-up',
  title: 'Upward force of the hinge on the tower',
  symbol: 'H_y',
  unit: 'force',
  expression: 'W + F * (y_e - y_a) / L',
  variables: [variable('W', 'all that tilts', 'force', 0, 1e5), pull, ends[1], ends[3], span],
  cite: cite('derived', 'upright forces on the tower add up to nothing', 'derived'),
  of: (weight: number, force: number, ye: number, ya: number, length: number) => weight + (force * (ye - ya)) / length,
});

export const hingeReaction = defineFormula({
  id: 'hinge-reaction',
  title: 'Force in the hinge',
  symbol: 'H',
  unit: 'force',
  expression: 'sqrt(H_x^2 + H_y^2)',
  variables: [variable('H_x', 'level', 'force', -1e5, 1e5), variable('H_y', 'up', 'force', -1e5, 1e5)],
  cite: cite('derived', 'sum of two forces square to each other', 'derived'),
  of: (level: number, up: number) => Math.sqrt(level ** 2 + up ** 2),
});

export const stayPull = defineFormula({
  id: 'pull-in-stay-of-raising-pole',
  title: 'Pull in the stay from the tip of a raising pole to the tower',
  symbol: 'T',
  unit: 'force',
  expression: 'F * r / r_s',
  variables: [
    pull,
    variable('r', 'arm of the line about the hinge', 'length', -60, 60),
    variable('r_s', 'arm of the stay about the hinge', 'length', 0.01, 60),
  ],
  cite: cite('derived', 'moments about the base of the pole, a pin in the hinge', 'derived'),
  of: (force: number, arm: number, stayArm: number) => (force * arm) / stayArm,
});

export const poleThrust = defineFormula({
  id: 'thrust-of-raising-pole',
  title: 'Thrust along a raising pole',
  symbol: 'C',
  unit: 'force',
  expression: 'F * cos(beta) + T * cos(gamma)',
  variables: [
    pull,
    variable('beta', 'between pole and line at the tip', 'angle', 0, 3.1),
    variable('T', 'pull in the stay', 'force', 0, 1e5),
    variable('gamma', 'between pole and stay at the tip', 'angle', 0, 3.1),
  ],
  cite: cite('derived', 'forces along the pole at its tip', 'derived'),
  of: (force: number, toLine: number, stay: number, toStay: number) =>
    force * Math.cos(toLine) + stay * Math.cos(toStay),
});

const cross = ([x, y]: Point, [u, v]: Point) => x * v - y * u;
const less = ([x, y]: Point, [u, v]: Point): Point => [x - u, y - v];
const size = ([x, y]: Point) => Math.hypot(x, y);
const between = (one: Point, other: Point) =>
  Math.abs(Math.atan2(cross(one, other), one[0] * other[0] + one[1] * other[1]));

/** Weights as the formulas take them. */
export interface TiltingWeights {
  /** [N] */
  readonly weights: readonly number[];
  /** [m] */
  readonly along: readonly number[];
  readonly square: readonly number[];
  /** All together [N]. */
  readonly total: number;
  /** Of the weights about the hinge with the tower flat, and upright with its sign turned [N·m]. */
  readonly flat: number;
  readonly upright: number;
  /** Angle of balance, from −π to π [rad]; absent where they are in balance at every angle. */
  readonly balance?: number;
}

/**
 * The weights of what tilts, each at its middle.
 *
 * ΣW·x = cos θ·ΣW·s − sin θ·ΣW·e; in balance at tan θ_b = ΣW·s/ΣW·e, and half a turn on
 *
 * @throws Refusal where nothing tilts, or a mass or place is not a number, less than nothing, or upside down
 * @example tiltingWeights([{ mass: 100, low: 0, high: 10, offset: 0.1 }]).flat // 4903.3
 * @source derived
 */
export function tiltingWeights(bodies: readonly TiltingBody[]): TiltingWeights {
  if (bodies.length === 0) throw new Refusal('nothing-tilts', 'Nothing tilts. Give the weights above the hinge.');
  for (const { mass, low, high, offset } of bodies) {
    if (![mass, low, high, offset].every(Number.isFinite) || mass < 0 || high < low) {
      const says = `What tilts must have a mass of 0 or more from a low to a high place: ${mass} kg from ${low} m to ${high} m, ${offset} m off.`;
      throw new Refusal('tilting-body', says);
    }
  }
  const weights = bodies.map(({ mass }) => mass * GRAVITY);
  const along = bodies.map(({ low, high }) => (low + high) / 2);
  const square = bodies.map(({ offset }) => offset);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const sum = (places: readonly number[]) =>
    weights.reduce((so, weight, index) => so + weight * (places[index] as number), 0);
  const [flat, upright] = [sum(along), sum(square)];
  const largest = sum(along.map((each, index) => Math.abs(each) + Math.abs(square[index] as number)));
  const all = { weights, along, square, total, flat, upright };
  return Math.hypot(flat, upright) <= 1e-12 * largest ? all : { ...all, balance: Math.atan2(flat, upright) };
}

/**
 * The same weights gathered in their centre, for searches through many angles.
 *
 * s = ΣW·s/ΣW, e = ΣW·e/ΣW
 *
 * @returns one weight with the same moments
 * @example gathered(tiltingWeights([{ mass: 10, low: 2, high: 2, offset: 0 }, { mass: 30, low: 6, high: 6, offset: 0 }])).along[0] // 5
 * @source derived
 */
export function gathered(weights: TiltingWeights): TiltingWeights {
  const { total, flat, upright } = weights;
  if (total === 0 || weights.weights.length === 1) return weights;
  return { ...weights, weights: [total], along: [flat / total], square: [upright / total] };
}

/**
 * The end of the gear that moves with the tower, along it and square to it: the tip of a raising pole where there is one.
 *
 * @returns the place in the frame of the tower [m]
 * @example movingEnd({ kind: 'line', anchor: [-9, 0], attach: [8, 0], over: [0, 4] }) // [0, 4]
 */
export function movingEnd(gear: RaisingGear): Point {
  return gear.over ?? gear.attach;
}

/**
 * An angle at which gear and hinge lie in one line, so that the gear has no arm; so they do again half a turn on.
 *
 * θ_d = angle of the anchor − angle of the moving end with the tower flat
 *
 * @returns the angle, from −2π to 2π [rad]
 * @example deadAngle({ kind: 'line', anchor: [0, 3], attach: [6, 0] }) // 1.5708
 * @source derived
 */
export function deadAngle(gear: RaisingGear): number {
  const [x, y] = movingEnd(gear);
  return Math.atan2(gear.anchor[1], gear.anchor[0]) - Math.atan2(y, x);
}

/**
 * Refuses gear that cannot be meant.
 *
 * @throws Refusal where a number is none, an end lies in the hinge, a screw or actuator goes over a pole, the pole stands
 *   on the lower side of the tower, or a working load or breaking strength is not above 0
 * @example refuseImpossibleGear({ kind: 'screw', anchor: [2, -1], attach: [2, 0] }) // undefined
 */
export function refuseImpossibleGear(gear: RaisingGear): void {
  const { kind, anchor, attach, over, workingLoad, breakingLoad } = gear;
  for (const point of [anchor, attach, ...(over ? [over] : [])]) {
    if (!point.every(Number.isFinite) || size(point) === 0) {
      const says = `Both ends of the raising gear, and its pole's tip, must be away from the hinge: one is at ${point.join(', ')} m.`;
      throw new Refusal('raising-gear-in-hinge', says);
    }
  }
  if (over && (kind === 'screw' || kind === 'actuator')) {
    throw new Refusal(
      'raising-pole-without-line',
      `A raising pole is for a line or a winch, and the gear is a ${kind}.`,
    );
  }
  if (over && !(cross(attach, over) > 0)) {
    const says = `The raising pole's tip at ${over.join(', ')} m must be above the tower lowered flat, off the line from the hinge to where the stay is attached.`;
    throw new Refusal('raising-pole-below', says);
  }
  for (const load of [workingLoad, breakingLoad]) {
    if (load !== undefined && !(load > 0 && Number.isFinite(load))) {
      throw new Refusal('raising-load', `A working load or breaking strength must be above 0 N: ${load} N.`);
    }
  }
}

/**
 * Whether two angles are the same but for whole half turns.
 *
 * @param angle the one [rad]
 * @param other the other [rad]
 * @example sameButHalfTurns(1, 1 + Math.PI) // true
 */
export function sameButHalfTurns(angle: number, other: number): boolean {
  return Math.abs(Math.sin(angle - other)) < IN_IT;
}

/**
 * Statics of the tilting tower at one angle.
 *
 * F = ΣW·x/r, r = (x_e·y_a − y_e·x_a)/L; hinge: what is left of weights and gear
 *
 * @param angle of the tower, 0 flat and π/2 upright [rad]
 * @returns moment, arm, length, force and hinge reaction; no force where the gear does not hold
 * @throws Refusal as `tiltingWeights` and `refuseImpossibleGear` do
 * @example raisingAt([{ mass: 100, low: 5, high: 5, offset: 0 }], { kind: 'line', anchor: [0, 3], attach: [4, 0] }, 0).force // 2043.05
 * @source derived
 */
export function raisingAt(bodies: readonly TiltingBody[], gear: RaisingGear, angle: number, trace?: Trace): RaisingRow {
  refuseImpossibleGear(gear);
  return rowAt(tiltingWeights(bodies), gear, angle, trace);
}

/**
 * The same as `raisingAt`, of weights summed and gear looked over before.
 *
 * F = ΣW·x/r
 *
 * @param angle of the tower [rad]
 * @example rowAt(tiltingWeights([{ mass: 100, low: 5, high: 5, offset: 0 }]), { kind: 'line', anchor: [0, 3], attach: [4, 0] }, 0).arm // 2.4
 * @source derived
 */
export function rowAt(weights: TiltingWeights, gear: RaisingGear, angle: number, trace?: Trace): RaisingRow {
  const [along, square] = movingEnd(gear);
  const [xa, ya] = gear.anchor;
  const moment = evaluate(trace, momentOfWeights, [weights.weights, weights.along, weights.square, angle]);
  const xe = evaluate(trace, levelPlace, [along, square, angle]);
  const ye = evaluate(trace, raisedPlace, [along, square, angle]);
  const length = evaluate(trace, gearLength, [xe, ye, xa, ya]);
  if (sameButHalfTurns(angle, deadAngle(gear))) return { angle, moment, arm: 0, length, state: 'dead-point' };
  const arm = evaluate(trace, gearArm, [xe, ye, xa, ya, length]);
  const state = stateOf(weights, gear, angle, moment, arm);
  if (state === 'falls-on' || state === 'cannot-hold') return { angle, moment, arm, length, state };
  const force = state === 'balanced' ? 0 : evaluate(trace, gearForce, [moment, arm]);
  const x = evaluate(trace, hingeLevel, [force, xe, xa, length]);
  const y = evaluate(trace, hingeUp, [weights.total, force, ye, ya, length]);
  const hinge = { x, y, force: evaluate(trace, hingeReaction, [x, y]) };
  const row = { angle, moment, arm, length, state, force, hinge };
  return gear.over ? { ...row, pole: poleForces(gear, gear.over, angle, { arm, force }, trace) } : row;
}

/** What a search looks at, angle by angle. */
export interface SearchedStatics {
  /** Of the weights about the hinge [N·m]. */
  moment: number;
  /** Of the gear about it [m]. */
  arm: number;
  /** Of the gear [N], and in the hinge [N], as if the gear held here. */
  force: number;
  hinge: number;
}

/**
 * The figures of `rowAt` for a search through many angles at which the gear holds: what it finds is then asked of `rowAt`.
 * They come in one object, written anew for every angle.
 *
 * F = ΣW·x/r
 *
 * @returns the figures at an angle, good until the next is asked for
 * @example staticsForSearch(tiltingWeights([{ mass: 100, low: 5, high: 5, offset: 0 }]), { kind: 'line', anchor: [0, 3], attach: [4, 0] })(0).force // 2043.05
 * @source derived
 */
export function staticsForSearch(
  weights: TiltingWeights,
  gear: RaisingGear,
): (angle: number) => Readonly<SearchedStatics> {
  const found: SearchedStatics = { moment: 0, arm: 0, force: 0, hinge: 0 };
  const [along, square] = movingEnd(gear);
  const [xa, ya] = gear.anchor;
  const { total, balance } = weights;
  const centre = gathered(weights);
  const [centreAlong, centreSquare] = total === 0 ? [0, 0] : [centre.along[0] as number, centre.square[0] as number];
  return (angle) => {
    const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
    found.moment = total * levelOf(centreAlong, centreSquare, cosine, sine);
    const xe = levelOf(along, square, cosine, sine);
    const ye = heightOf(along, square, cosine, sine);
    const length = gearLength.of(xe, ye, xa, ya);
    found.arm = gearArm.of(xe, ye, xa, ya, length);
    found.force = balance === undefined ? 0 : gearForce.of(found.moment, found.arm);
    const level = hingeLevel.of(found.force, xe, xa, length);
    found.hinge = hingeReaction.of(level, hingeUp.of(total, found.force, ye, ya, length));
    return found;
  };
}

function stateOf(
  weights: TiltingWeights,
  { kind, over }: RaisingGear,
  angle: number,
  moment: number,
  arm: number,
): RaisingState {
  const { balance } = weights;
  if (balance === undefined || sameButHalfTurns(angle, balance)) return 'balanced';
  const holdsByPull = moment > 0 === arm > 0;
  if (kind === 'screw' || kind === 'actuator') return holdsByPull ? 'pull' : 'push';
  if (!holdsByPull) return moment > 0 ? 'cannot-hold' : 'falls-on';
  // Pulled from the other side the stay goes slack and the pole falls over.
  return over && arm < 0 ? 'cannot-hold' : 'pull';
}

function poleForces(
  gear: RaisingGear,
  tip: Point,
  angle: number,
  { arm, force }: { readonly arm: number; readonly force: number },
  trace: Trace | undefined,
) {
  const down: Point = [-tip[0], -tip[1]];
  const stayWay = less(gear.attach, tip);
  const stay = evaluate(trace, stayPull, [force, arm, stayArmOf(gear.attach, tip)]);
  // The anchor as the tilting tower sees it.
  const [xa, ya] = gear.anchor;
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  const lineWay = less([xa * cosine + ya * sine, ya * cosine - xa * sine], tip);
  const thrust = evaluate(trace, poleThrust, [force, between(down, lineWay), stay, between(down, stayWay)]);
  return { stay, thrust };
}

function stayArmOf(attach: Point, tip: Point): number {
  return cross(attach, tip) / size(less(tip, attach));
}

/**
 * The force with which the gear holds the tower where it is attached: of a line over a raising pole, that of the stay.
 *
 * @param row the statics at an angle, where the gear holds
 * @returns the force along the tower and square to it, towards the upper side [N]
 * @throws Refusal where the gear does not hold
 * @example holdingForce({ kind: 'line', anchor: [0, 3], attach: [4, 0] }, raisingAt([{ mass: 100, low: 5, high: 5, offset: 0 }], { kind: 'line', anchor: [0, 3], attach: [4, 0] }, 0))[1] // 1225.83
 */
export function holdingForce(gear: RaisingGear, row: RaisingRow): Point {
  if (row.force === undefined) {
    throw new Refusal('not-held', `The gear does not support the tower at ${row.angle} rad: ${row.state}.`);
  }
  const [cosine, sine] = [Math.cos(row.angle), Math.sin(row.angle)];
  const [xa, ya] = gear.anchor;
  const towards = gear.over ?? ([xa * cosine + ya * sine, ya * cosine - xa * sine] as const);
  const way = less(towards, gear.attach);
  const force = row.pole ? row.pole.stay : row.force;
  return [(force * way[0]) / size(way), (force * way[1]) / size(way)];
}
