/** An id for one more in a list that is told apart by ids of its own: the first number after those there are. */
export function nextIdIn(list: readonly { readonly id: string }[]): string {
  const used = new Set(list.map(({ id }) => id));
  let next = list.length + 1;
  while (used.has(String(next))) next += 1;
  return String(next);
}
