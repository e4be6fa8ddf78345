/** Texts are looked at in runs of so many letters. */
const RUN = 8;
/** What is taken into a dictionary at once. */
const PIECE = 96;

type Best = { readonly at: number; readonly score: number };

/**
 * The pieces that most of these texts have in common, as one text; what helps most stands last, where it is reached by the
 * shortest distances. Each run of letters counts once a text, and only until a piece holds it. Source: Liao, Petri,
 * Moffat and Wirth, "Effective Construction of Relative Lempel-Ziv Dictionaries" (2016).
 * @param size At most so many letters; fewer where nothing more is met twice.
 */
export function dictionaryOf(texts: readonly string[], size: number): string {
  const counts = new Map<string, number>();
  for (const text of texts) for (const run of new Set(runsOf(text))) counts.set(run, (counts.get(run) ?? 0) + 1);
  const open = texts.map((text) => ({ text, best: bestOf(text, counts) }));
  const pieces: string[] = [];
  let room = size;
  while (room >= RUN) {
    const first = open.toSorted((a, b) => b.best.score - a.best.score)[0];
    if (!first || first.best.score <= 0) break;
    // What was taken since may have made it worth less.
    const now = bestOf(first.text, counts);
    const stale = now.score < first.best.score;
    first.best = now;
    if (stale) continue;
    const piece = first.text.slice(now.at, now.at + Math.min(PIECE, room));
    pieces.push(piece);
    room -= piece.length;
    for (const run of runsOf(piece)) counts.set(run, 0);
    first.best = bestOf(first.text, counts);
  }
  return pieces.toReversed().join('');
}

function* runsOf(text: string): Generator<string> {
  for (let at = 0; at + RUN <= text.length; at += 1) yield text.slice(at, at + RUN);
}

/** The piece of a text that holds most of what others have too. */
function bestOf(text: string, counts: ReadonlyMap<string, number>): Best {
  const shared = [...runsOf(text)].map((run) => {
    const count = counts.get(run) ?? 0;
    return count > 1 ? count : 0;
  });
  const wide = Math.min(PIECE - RUN + 1, shared.length);
  let score = 0;
  let best: Best = { at: 0, score: 0 };
  for (const [at, count] of shared.entries()) {
    score += count - (at >= wide ? (shared[at - wide] ?? 0) : 0);
    if (at >= wide - 1 && score > best.score) best = { at: at - wide + 1, score };
  }
  return best;
}
