/**
 * Running sums of things that share one unknown wind heading: each with a broadside value N (wind along its heading),
 * an endwise value T (wind across it) and a heading ψ; value(θ) = N·cos²(θ−ψ) + T·sin²(θ−ψ).
 */
export interface HeadingSum {
  /** ½Σ(N+T) */
  mean: number;
  /** ½Σ(N−T)·cos 2ψ */
  cosine: number;
  /** ½Σ(N−T)·sin 2ψ */
  sine: number;
}

/**
 * An empty sum.
 *
 * @example emptyHeadingSum().mean // 0
 */
export function emptyHeadingSum(): HeadingSum {
  return { mean: 0, cosine: 0, sine: 0 };
}

/**
 * Adds one thing to a sum.
 *
 * value(θ) = N·cos²(θ−ψ) + T·sin²(θ−ψ)
 *
 * @param sum the sum, changed in place
 * @param broadside N, its value for a wind along its heading [-]
 * @param endwise T, its value for a wind across it [-]
 * @param heading ψ [rad]
 * @example addToHeadingSum({ mean: 0, cosine: 0, sine: 0 }, 2, 1, 0).mean // 1.5
 * @source hoerner-1965
 */
export function addToHeadingSum(sum: HeadingSum, broadside: number, endwise: number, heading: number): HeadingSum {
  const half = (broadside - endwise) / 2;
  sum.mean += (broadside + endwise) / 2;
  sum.cosine += half * Math.cos(2 * heading);
  sum.sine += half * Math.sin(2 * heading);
  return sum;
}

/**
 * The largest value of a sum over all wind headings, in closed form.
 *
 * max = ½Σ(N+T) + ½|Σ(N−T)·e^{2iψ}|
 *
 * @returns the largest value [-]
 * @example worstOfHeadings({ mean: 1.5, cosine: 0.3, sine: 0.4 }) // 2
 * @source derived
 */
export function worstOfHeadings(sum: HeadingSum): number {
  return sum.mean + Math.hypot(sum.cosine, sum.sine);
}

/**
 * The wind heading at which a sum is largest; the opposite one is as bad.
 *
 * θ = ½·arg Σ(N−T)·e^{2iψ}
 *
 * @returns the heading [rad], 0 up to π
 * @example worstHeading({ mean: 1, cosine: -1, sine: 0 }) // 1.5707963
 * @source derived
 */
export function worstHeading(sum: HeadingSum): number {
  const angle = Math.atan2(sum.sine, sum.cosine) / 2;
  return angle < 0 ? angle + Math.PI : angle;
}

/**
 * The value of a sum at one wind heading.
 *
 * ½Σ(N+T) + ½Σ(N−T)·cos 2(θ−ψ)
 *
 * @param theta wind heading [rad]
 * @returns the value [-]
 * @example valueAtHeading({ mean: 1.5, cosine: 0.5, sine: 0 }, 0) // 2
 * @source hoerner-1965
 */
export function valueAtHeading(sum: HeadingSum, theta: number): number {
  return sum.mean + sum.cosine * Math.cos(2 * theta) + sum.sine * Math.sin(2 * theta);
}
