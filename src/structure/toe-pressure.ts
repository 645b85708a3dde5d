import { cite, defineFormula, evaluate, Refusal, type Trace, variable } from '../foundation/index.ts';

/** The underside of a block: a rectangle, its sides along two axes [m]. */
export interface Underside {
  readonly length: number;
  readonly width: number;
}

/** What the soil under a stiff rectangle carries; it can press and cannot pull. */
export type ToePressure =
  /** The load stands outside the rectangle: nothing holds it. */
  | { readonly contact: 'tips' }
  | {
      readonly contact: 'full' | 'part';
      /** Largest pressure, at the edge or corner leaned on [Pa]. */
      readonly pressure: number;
      /** Share of the underside that is pressed. */
      readonly contactShare: number;
      /**
       * Where part of the underside lifts: how far from the corner leaned on the pressure falls to nothing, along the
       * length and along the width [m]; a side along which it does not fall is absent.
       */
      readonly fadeLength?: number;
      readonly fadeWidth?: number;
    };

const load = variable('P', 'weight on the soil, block included', 'force', 100, 1e6);
const length = variable('L', 'side along which the load is off the middle', 'length', 0.3, 6);
const width = variable('W', 'side square to it', 'length', 0.3, 6);
const fadeLength = variable('a', 'from the corner to no pressure, along L', 'length', 0.2, 12);
const fadeWidth = variable('b', 'from the corner to no pressure, along W', 'length', 0.2, 12);

export const toePressureInsideKern = defineFormula({
  id: 'toe-pressure-inside-kern',
  title: 'Largest pressure under a block that is pressed all over',
  symbol: 'p_toe',
  unit: 'soil-pressure',
  expression: 'P / (L * W) * (1 + 6 * e_L / L + 6 * e_W / W)',
  variables: [
    load,
    length,
    width,
    variable('e_L', 'load off the middle along L', 'length', 0, 0.05),
    variable('e_W', 'load off the middle along W', 'length', 0, 0.05),
  ],
  cite: cite(
    'derived',
    'stiff rectangle on soil that gives evenly; while e_L/L + e_W/W is no more than 1/6',
    'derived',
  ),
  of: (P: number, L: number, W: number, e_L: number, e_W: number) =>
    (P / (L * W)) * (1 + (6 * e_L) / L + (6 * e_W) / W),
});

export const toePressureOutsideKern = defineFormula({
  id: 'toe-pressure-outside-kern',
  title: 'Largest pressure under a block of which one edge lifts',
  symbol: 'p_toe',
  unit: 'soil-pressure',
  expression: '2 * P / (3 * W * (L / 2 - e_L))',
  variables: [load, length, width, variable('e_L', 'load off the middle along L', 'length', 0.05, 0.14)],
  cite: cite('derived', 'a wedge of pressure whose middle lies under the load; from e_L = L/6 on', 'derived'),
  of: (P: number, L: number, W: number, e_L: number) => (2 * P) / (3 * W * (L / 2 - e_L)),
});

/** Parts of the pyramid of pressure over the corner that lie beyond the rectangle, as shares of its edges. */
function beyond(a: number, b: number, L: number, W: number): readonly [number, number, number] {
  return [Math.max(0, 1 - L / a), Math.max(0, 1 - W / b), Math.max(0, 1 - L / a - W / b)];
}

export const toePressureOfCorner = defineFormula({
  id: 'toe-pressure-of-corner',
  title: 'Largest pressure under a block that leans on a corner',
  symbol: 'p_toe',
  unit: 'soil-pressure',
  expression: '6 * P / (a * b * (1 - max(0, 1 - L / a)^3 - max(0, 1 - W / b)^3 + max(0, 1 - L / a - W / b)^3))',
  variables: [load, length, width, fadeLength, fadeWidth],
  cite: cite('derived', 'a pyramid of pressure over the corner less what lies beyond the rectangle', 'derived'),
  of: (P: number, L: number, W: number, a: number, b: number) => {
    const [k1, k2, k3] = beyond(a, b, L, W);
    return (6 * P) / (a * b * (1 - k1 ** 3 - k2 ** 3 + k3 ** 3));
  },
});

export const centreOfCornerPressure = defineFormula({
  id: 'centre-of-corner-pressure',
  title: 'How far from the middle the pressure of a block that leans on a corner acts; must be where the load is',
  symbol: 'e_L',
  unit: 'length',
  expression:
    'L / 2 - (a / 4 - max(0, 1 - L / a)^3 * (L + max(0, 1 - L / a) * a / 4) - max(0, 1 - W / b)^4 * a / 4 + max(0, 1 - L / a - W / b)^3 * (L + max(0, 1 - L / a - W / b) * a / 4)) / (1 - max(0, 1 - L / a)^3 - max(0, 1 - W / b)^3 + max(0, 1 - L / a - W / b)^3)',
  variables: [length, width, fadeLength, fadeWidth],
  cite: cite('derived', 'the middle of a pyramid is a quarter of its base from the corner', 'derived'),
  of: (L: number, W: number, a: number, b: number) => {
    const [k1, k2, k3] = beyond(a, b, L, W);
    const first = a / 4 - k1 ** 3 * (L + (k1 * a) / 4) - (k2 ** 4 * a) / 4 + k3 ** 3 * (L + (k3 * a) / 4);
    return L / 2 - first / (1 - k1 ** 3 - k2 ** 3 + k3 ** 3);
  },
});

/** A load this little off an axis, as a share of the side, stands on it: the pressure is the same to seven digits. */
const ON_AXIS = 1e-8;

/**
 * Largest pressure under a stiff rectangle on soil that presses and cannot pull, the load off the middle both ways.
 *
 * inside the kern P/(L·W)·(1 + 6·e_L/L + 6·e_W/W); outside along one side 2P/(3W(L/2 − e_L)); over a corner
 * 6P/(a·b·(1 − k₁³ − k₂³)) with a and b such that the pressure acts where the load is
 *
 * Where the pressed part is a triangle or a strip to two edges, a and b are closed forms; where only the far corner
 * lifts they are found by halving.
 *
 * @param under the rectangle [m]
 * @param load weight on it [N]
 * @param offLength load off the middle along the length, either way [m]
 * @param offWidth load off the middle along the width, either way [m]
 * @returns pressure [Pa], pressed share, and how far the pressure reaches [m]
 * @throws Refusal where a side or the load is not above zero
 * @example pressureUnder({ length: 2, width: 2 }, 40e3, 0.2, 0).contact // 'full'
 * @example pressureUnder({ length: 2, width: 2 }, 40e3, 0.6, 0).pressure // 33333.3
 * @example pressureUnder({ length: 2, width: 2 }, 40e3, 0.75, 0.75).pressure // 240000
 * @source derived
 */
export function pressureUnder(
  under: Underside,
  load: number,
  offLength: number,
  offWidth: number,
  trace?: Trace,
): ToePressure {
  const { length: L, width: W } = under;
  if (!(L > 0 && W > 0)) throw new Refusal('footing-size', 'A footing has a length and a width above zero.');
  if (!(load > 0)) throw new Refusal('footing-load', 'Without weight on it a footing has no pressure under it.');
  const e_L = Math.abs(offLength);
  const e_W = Math.abs(offWidth);
  if (e_L >= L / 2 || e_W >= W / 2) return { contact: 'tips' };
  if (e_L / L + e_W / W <= 1 / 6) {
    const pressure = evaluate(trace, toePressureInsideKern, [load, L, W, e_L, e_W]);
    return { contact: 'full', pressure, contactShare: 1 };
  }
  if (e_W <= ON_AXIS * W) {
    const pressure = evaluate(trace, toePressureOutsideKern, [load, L, W, e_L]);
    const fadeLength = 3 * (L / 2 - e_L);
    return { contact: 'part', pressure, contactShare: Math.min(1, fadeLength / L), fadeLength };
  }
  if (e_L <= ON_AXIS * L) {
    const pressure = evaluate(trace, toePressureOutsideKern, [load, W, L, e_W]);
    const fadeWidth = 3 * (W / 2 - e_W);
    return { contact: 'part', pressure, contactShare: Math.min(1, fadeWidth / W), fadeWidth };
  }
  const [u, v] = steepness(0.5 - e_L / L, 0.5 - e_W / W);
  const a = L / u;
  const b = W / v;
  const [k1, k2, k3] = beyond(a, b, L, W);
  const pressure = evaluate(trace, toePressureOfCorner, [load, L, W, a, b]);
  if (trace) {
    evaluate(trace, centreOfCornerPressure, [L, W, a, b], 'along the length: as far as the load is off the middle');
    evaluate(trace, centreOfCornerPressure, [W, L, b, a], 'along the width: as far as the load is off the middle');
  }
  const contactShare = (a * b * (1 - k1 ** 2 - k2 ** 2 + k3 ** 2)) / (2 * L * W);
  return { contact: 'part', pressure, contactShare: Math.min(1, contactShare), fadeLength: a, fadeWidth: b };
}

/**
 * How steeply the pressure falls along both sides of a unit square, 1 − u·x − v·y from the corner leaned on, when its
 * middle lies at (x, y), both between 0 and 1/2, and some of the square lifts.
 */
function steepness(x: number, y: number): readonly [number, number] {
  if (x <= 0.25 && y <= 0.25) return [1 / (4 * x), 1 / (4 * y)];
  if (x > 0.25) {
    const strip = ofStrip(x, y);
    if (strip[1] >= 1) return strip;
  }
  if (y > 0.25) {
    const [v, u] = ofStrip(y, x);
    if (u >= 1) return [u, v];
  }
  return ofFarCornerLifted(x, y);
}

/** Pressed along the whole of x, and along y as far as 1 − u·x says: triangles side by side. */
function ofStrip(x: number, y: number): readonly [number, number] {
  const linear = 2 / 3 - x;
  const rest = 0.5 - x;
  const u = (2 * rest) / (linear + Math.sqrt(linear ** 2 - 4 * (0.25 - x / 3) * rest));
  const v = (1 - 1.5 * u + u ** 2 - u ** 3 / 4) / (3 * y * (1 - u + u ** 2 / 3));
  return [u, v];
}

/**
 * The far corner alone lifts: the plane that stands under the load on what is pressed, then what that plane presses, and
 * again. The pressure falls to nothing at the edge of what is pressed, so a change of the edge is of second order: this is
 * Newton's way, and six turns are many.
 *
 * Pressed is the unit square less a triangle at its far corner, of legs l_x and l_y; of the plane 1 − u·x − v·y
 * u·(∫x² − x̄·∫x) + v·(∫xy − x̄·∫y) = ∫x − x̄·∫1, and the same along y.
 */
function ofFarCornerLifted(x: number, y: number): readonly [number, number] {
  let u = 0;
  let v = 0;
  let legX = 0;
  let legY = 0;
  for (let turn = 0; turn < 20; turn += 1) {
    const lifted = (legX * legY) / 2;
    const area = 1 - lifted;
    const firstX = 1 / 2 - lifted * (1 - legX / 3);
    const firstY = 1 / 2 - lifted * (1 - legY / 3);
    const secondX = 1 / 3 - lifted * (1 - (2 * legX) / 3 + legX ** 2 / 6);
    const secondY = 1 / 3 - lifted * (1 - (2 * legY) / 3 + legY ** 2 / 6);
    const mixed = 1 / 4 - lifted * (1 - (legX + legY) / 3 + (legX * legY) / 12);
    const a = secondX - x * firstX;
    const b = mixed - x * firstY;
    const c = firstX - x * area;
    const d = mixed - y * firstX;
    const e = secondY - y * firstY;
    const f = firstY - y * area;
    const determinant = a * e - b * d;
    const nextU = (c * e - b * f) / determinant;
    const nextV = (a * f - c * d) / determinant;
    const moved = Math.abs(nextU - u) + Math.abs(nextV - v);
    u = nextU;
    v = nextV;
    if (moved < 1e-8) break;
    legX = Math.max(0, u + v - 1) / u;
    legY = Math.max(0, u + v - 1) / v;
  }
  return [u, v];
}

/**
 * The moment under which the largest pressure, whatever the heading, comes to a limit.
 *
 * p(M) = p_all
 *
 * @param under the rectangle [m]
 * @param load weight on it [N]
 * @param limit what the soil may carry [Pa], more than the load alone presses
 * @returns the moment [N·m]; 0 where the load alone is too much
 * @throws Refusal where a side or the load is not above zero
 * @example momentToPressure({ length: 1, width: 1 }, 1000, 4508.7) // 300
 * @source derived
 */
export function momentToPressure(under: Underside, load: number, limit: number): number {
  const ratioWithoutWind = pressureUnder(under, load, 0, 0);
  if (ratioWithoutWind.contact === 'tips' || ratioWithoutWind.pressure >= limit) return 0;
  let heading = Math.atan2(under.length, under.width);
  let moment = (load * Math.min(under.length, under.width)) / 2;
  // From a heading to the moment, from the moment to the heading that then presses hardest: that one is flat, so few turns do.
  for (let turn = 0; turn < 60; turn += 1) {
    moment = momentAlong(under, load, limit, heading, moment);
    const worst = worstToePressure(under, load, moment);
    if (worst.contact !== 'tips' && worst.pressure <= limit * (1 + 1e-10)) return moment;
    heading = worst.heading;
  }
  return moment;
}

/** The moment along one heading that presses to a limit, or the most that is looked at, where that presses less. */
function momentAlong(under: Underside, load: number, limit: number, heading: number, most: number): number {
  const [cosine, sine] = [Math.cos(heading) / load, Math.sin(heading) / load];
  // Towards tipping the pressure grows without bound; its inverse falls to nothing, nearly in a line.
  return whereItFallsTo(
    1,
    (moment) => {
      const toe = pressureUnder(under, load, moment * cosine, moment * sine);
      return toe.contact === 'tips' ? 0 : limit / toe.pressure;
    },
    0,
    most,
  );
}

/** Where a falling function comes to a value, or the upper end where it does not: the chord, and halving. */
function whereItFallsTo(value: number, of: (at: number) => number, low: number, high: number): number {
  let [left, right] = [low, high];
  let [atLeft, atRight] = [of(left) - value, of(right) - value];
  let last = 0;
  if (!(atRight < 0)) return right;
  for (let turn = 0; turn < 100 && right - left > 1e-14 * high; turn += 1) {
    const chord = right - (atRight * (right - left)) / (atRight - atLeft);
    const middle = chord > left && chord < right ? chord : (left + right) / 2;
    const here = of(middle) - value;
    if (Math.abs(here) < 1e-13) return middle;
    if (here > 0) {
      left = middle;
      atLeft = here;
      if (last > 0) atRight /= 2;
    } else {
      right = middle;
      atRight = here;
      if (last < 0) atLeft /= 2;
    }
    last = here;
  }
  return (left + right) / 2;
}

/** Step of the scan over headings [rad]; the largest pressure changes slowly with the heading. */
const HEADING_STEP = Math.PI / 18;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** The heading, from the length towards the width, in which a moment presses hardest. */
export type WorstToe = ToePressure & {
  /** [rad], 0 along the length. */
  readonly heading: number;
};

/**
 * Largest pressure under a block whatever the heading of the moment.
 *
 * max over θ of p(M·cos θ/P, M·sin θ/P)
 *
 * On a square it is up to 1.353 times that along an axis, at a corner; a block close to tipping presses hardest some way
 * between axis and corner.
 *
 * @param under the rectangle [m]
 * @param load weight on it [N]
 * @param moment at its underside, alike from all sides [N·m]
 * @returns pressure [Pa], heading [rad], pressed share; tips where the moment is more than some heading can hold
 * @throws Refusal where a side or the load is not above zero
 * @example worstToePressure({ length: 1, width: 1 }, 1000, 300).pressure // 4508.7
 * @source derived
 */
export function worstToePressure(under: Underside, load: number, moment: number, trace?: Trace): WorstToe {
  const off = moment / load;
  const pressed = (heading: number, kept?: Trace) =>
    pressureUnder(under, load, off * Math.cos(heading), off * Math.sin(heading), kept);
  const size = (heading: number) => {
    const found = pressed(heading);
    return found.contact === 'tips' ? Number.POSITIVE_INFINITY : found.pressure;
  };
  const quarter = Math.PI / 2;
  if (off >= under.length / 2) return { ...pressed(0), heading: 0 };
  if (off >= under.width / 2) return { ...pressed(quarter), heading: quarter };
  // Where the whole underside stays pressed the corner leaned on is the one towards which both sides add up most.
  const corner = Math.atan2(under.length, under.width);
  if (off * Math.hypot(1 / under.length, 1 / under.width) <= 1 / 6)
    return { ...pressed(corner, trace), heading: corner };
  let best = 0;
  let most = size(0);
  for (let step = 1; step <= 9; step += 1) {
    const here = size(step * HEADING_STEP);
    if (here > most) [best, most] = [step * HEADING_STEP, here];
  }
  let low = Math.max(0, best - HEADING_STEP);
  let high = Math.min(quarter, best + HEADING_STEP);
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [atLeft, atRight] = [size(left), size(right)];
  // The pressure is flat there: a ten-thousandth of a radian is a hundred-millionth of it.
  while (high - low > 1e-4) {
    if (atLeft > atRight) {
      high = right;
      right = left;
      atRight = atLeft;
      left = high - GOLDEN * (high - low);
      atLeft = size(left);
    } else {
      low = left;
      left = right;
      atLeft = atRight;
      right = low + GOLDEN * (high - low);
      atRight = size(right);
    }
  }
  const heading = (low + high) / 2;
  return { ...pressed(heading, trace), heading };
}
