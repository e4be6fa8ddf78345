/** Path of a pen stroke: through the middles between its points, so that it bends as a hand does; a tap is a dot. */
export function strokePath(stroke: readonly (readonly [x: number, y: number, ...rest: number[]])[]): string {
  const [first, ...others] = stroke;
  if (!first) return '';
  if (others.length === 0) return `M${first[0]} ${first[1]}h0.01`;
  let path = `M${first[0]} ${first[1]}`;
  let before = first;
  for (const next of others) {
    path += `Q${before[0]} ${before[1]} ${((before[0] + next[0]) / 2).toFixed(1)} ${((before[1] + next[1]) / 2).toFixed(1)}`;
    before = next;
  }
  return `${path}L${before[0]} ${before[1]}`;
}
