/**
 * What one more press of a place's digit comes to: nothing found, then each finding, then each two, and so on to all of
 * them, and nothing again. `here`: what can be found at the place; `found`: what is tapped now, there and elsewhere.
 */
export function nextFindings(here: readonly string[], found: readonly string[]): readonly string[] {
  const sets = subsetsOf(here);
  const now = here.filter((id) => found.includes(id)).join();
  const at = sets.findIndex((set) => set.join() === now);
  return sets[(at + 1) % sets.length] ?? [];
}

/** All of them, the smaller first, each in the order given. */
const subsetsOf = (ids: readonly string[]): readonly (readonly string[])[] =>
  Array.from({ length: 2 ** ids.length }, (_, set) => ids.filter((_id, at) => (set & (1 << at)) !== 0)).toSorted(
    (a, b) => a.length - b.length,
  );
