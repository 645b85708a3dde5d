/**
 * The lowest x in [low, high] at which a function first reaches a value, scanning upward so that an earlier crossing
 * is not missed where the function may fall for a while; then bisected.
 *
 * A crossing that is left again before the next step of the scan is missed.
 *
 * @param reaches whether the value is reached at x
 * @param low lower end, where it is not reached [-]
 * @param high upper end [-]
 * @param scans how many equal steps to scan [-]
 * @returns the lowest crossing to 1e-12 of the range, or undefined when there is none [-]
 * @example lowestReaching((x) => x * x >= 2, 0, 4, 16) // 1.41421356
 */
export function lowestReaching(
  reaches: (x: number) => boolean,
  low: number,
  high: number,
  scans: number,
): number | undefined {
  let below = low;
  for (let step = 1; step <= scans; step += 1) {
    const x = low + ((high - low) * step) / scans;
    if (reaches(x)) {
      let above = x;
      for (let halving = 0; halving < 60 && above - below > 1e-12 * high; halving += 1) {
        const middle = (below + above) / 2;
        if (reaches(middle)) above = middle;
        else below = middle;
      }
      return above;
    }
    below = x;
  }
  return undefined;
}
