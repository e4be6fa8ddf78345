/**
 * Chances of a table of comparisons, each raised so that with probability 1 − level no true equality among them all is
 * called a difference where only those at or below the level count: Holm's step-down, S. Holm, A simple sequentially
 * rejective multiple test procedure, Scand. J. Statist. 6 (1979) 65–70. In the order given.
 * @param chances Two-sided p-values, each between 0 and 1.
 */
export function holm(chances: readonly number[]): readonly number[] {
  const order = chances.map((_, at) => at).toSorted((a, b) => (chances[a] ?? 0) - (chances[b] ?? 0));
  const raised = [...chances];
  let highest = 0;
  for (const [rank, at] of order.entries()) {
    highest = Math.max(highest, Math.min(1, (chances[at] ?? 0) * (chances.length - rank)));
    raised[at] = highest;
  }
  return raised;
}
