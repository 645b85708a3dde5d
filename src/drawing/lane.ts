/** A label's wish: the middle it belongs to and the height it takes. */
export interface Wish {
  readonly anchor: number;
  readonly height: number;
}

/**
 * Middles of labels in a lane: in the order of their anchors, none over another, moved as little as may be (adjacent ones
 * that would overlap are pooled). The wishes must come in the order of their anchors and fit into the lane.
 */
export function placed(wishes: readonly Wish[], top: number, foot: number): readonly number[] {
  const offsets: number[] = [];
  let sum = 0;
  wishes.forEach((wish, index) => {
    const before = wishes[index - 1];
    sum += before ? (before.height + wish.height) / 2 : wish.height / 2;
    offsets.push(sum);
  });
  const total = wishes.reduce((all, wish) => all + wish.height, 0);
  const pools: { mean: number; count: number }[] = [];
  wishes.forEach((wish, index) => {
    let pool = { mean: wish.anchor - (offsets[index] as number), count: 1 };
    for (let last = pools.at(-1); last && last.mean > pool.mean; last = pools.at(-1)) {
      const count = last.count + pool.count;
      pool = { mean: (last.mean * last.count + pool.mean * pool.count) / count, count };
      pools.pop();
    }
    pools.push(pool);
  });
  const starts = pools.flatMap(({ mean, count }) => Array.from({ length: count }, () => mean));
  return starts.map((start, index) => {
    const kept = Math.min(Math.max(start, top), Math.max(top, foot - total));
    return kept + (offsets[index] as number);
  });
}
