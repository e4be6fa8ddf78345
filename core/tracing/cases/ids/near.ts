import { nth } from '../../../figures/rows.ts';

/** Edits by which one word becomes another: letters added, dropped or changed (Levenshtein 1966). */
function edits(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, letters) => letters);
  for (let i = 1; i <= from.length; i++) {
    const next = [i];
    for (let j = 1; j <= to.length; j++) {
      const changed = nth(row, j - 1) + (from[i - 1] === to[j - 1] ? 0 : 1);
      next.push(Math.min(changed, nth(row, j) + 1, nth(next, j - 1) + 1));
    }
    row = next;
  }
  return nth(row, to.length);
}

const MOST_NAMED = 3;

/** The known ids that an unknown one may have meant, the nearest first, at most three; none when none is near. */
export function near(id: string, known: readonly string[]): readonly string[] {
  const far = Math.max(2, Math.floor(id.length / 2));
  return known
    .map((one) => ({ one, away: edits(id, one) }))
    .filter(({ away }) => away <= far)
    .toSorted((a, b) => a.away - b.away)
    .slice(0, MOST_NAMED)
    .map(({ one }) => one);
}
