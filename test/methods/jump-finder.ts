/** A place where a function goes from one value to another with nothing between. */
export interface Jump {
  readonly at: number;
  /** Its value just below the place, and just above. */
  readonly from: number;
  readonly to: number;
}

export interface Swept {
  readonly low: number;
  readonly high: number;
  /** The first points are spread evenly over the logarithm of the range. */
  readonly byRatio?: boolean;
}

/** First points; 251 is prime, so that they do not fall on the round numbers where standards change their rules. */
const POINTS = 251;
/** What is within this share of the largest value of a straight line is taken as smooth; a jump three times as high is seen. */
const SMOOTH = 1e-6;
/** Where an interval is cut; in its middle two jumps of one height, one on each side, would lie on the line. */
const CUT = 0.38;
/** Intervals are cut down to this share of the range; what still does not join there is a jump. */
const NARROWEST = 1e-12;

/**
 * Every jump of a function over a range: an interval with a point inside that does not lie on the line between its ends is
 * cut there, again and again; bends and steep places join sooner or later, jumps never do.
 */
export function jumpsOf(value: (x: number) => number, { low, high, byRatio }: Swept): Jump[] {
  const at = (x: number) => {
    const found = value(x);
    if (!Number.isFinite(found)) throw new Error(`no number but ${found} at ${x}`);
    return found;
  };
  const place = (share: number) => (byRatio ? low * (high / low) ** share : low + (high - low) * share);
  const xs = Array.from({ length: POINTS }, (_, index) => place(index / (POINTS - 1)));
  const values = xs.map(at);
  const smooth = SMOOTH * Math.max(...values.map(Math.abs));
  const jumps: Jump[] = [];
  const refine = (x0: number, y0: number, x1: number, y1: number): void => {
    const x = x0 + CUT * (x1 - x0);
    const y = at(x);
    if (Math.abs(y - y0 - CUT * (y1 - y0)) <= smooth) return;
    if (x1 - x0 <= NARROWEST * Math.max(Math.abs(x0), Math.abs(x1), byRatio ? 0 : high - low)) {
      jumps.push({ at: x, from: y0, to: y1 });
      return;
    }
    refine(x0, y0, x, y);
    refine(x, y, x1, y1);
  };
  for (let index = 1; index < POINTS; index += 1) {
    const [x0, x1] = [xs[index - 1] as number, xs[index] as number];
    refine(x0, values[index - 1] as number, x1, values[index] as number);
  }
  return jumps;
}
