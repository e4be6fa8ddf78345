export type WantedMiddle = { readonly at: number; readonly size: number };

/**
 * Sets things along a line as near as possible to where each wants its middle, without overlap, in the order given,
 * between `low` and `high`. Answers the middles.
 *
 * Least-squares shift under ordering: isotonic regression by pooling adjacent violators (Ayer et al., Annals of
 * Mathematical Statistics 26, 1955). What does not fit at all is pressed together evenly.
 */
export function spread(wanted: readonly WantedMiddle[], low: number, high: number): readonly number[] {
  if (wanted.length === 0) return [];
  const total = wanted.reduce((sum, one) => sum + one.size, 0);
  const squeeze = total > high - low ? (high - low) / total : 1;
  const offsets: number[] = [];
  let along = 0;
  for (const one of wanted) {
    offsets.push(along + (one.size * squeeze) / 2);
    along += one.size * squeeze;
  }
  const pools: { sum: number; count: number }[] = [];
  for (const [i, one] of wanted.entries()) {
    pools.push({ sum: one.at - (offsets[i] ?? 0), count: 1 });
    for (;;) {
      const last = pools.at(-1);
      const before = pools.at(-2);
      if (!last || !before || before.sum / before.count <= last.sum / last.count) break;
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
    }
  }
  const starts = pools.flatMap((pool) => new Array<number>(pool.count).fill(pool.sum / pool.count));
  return starts.map((start, i) => Math.min(Math.max(start, low), Math.max(low, high - along)) + (offsets[i] ?? 0));
}
