/** Where a value stands in an input: the fields down to it; places in lists are left out. */
export type FieldPath = readonly string[];

/** Every field in which two inputs differ, as deep as can be said, each once; the order is that of the first input. */
export function differing(before: unknown, now: unknown): readonly FieldPath[] {
  const found = new Map(pathsOf(before, now, []).map((path) => [path.join('.'), path]));
  return [...found.values()];
}

function pathsOf(before: unknown, now: unknown, at: FieldPath): readonly FieldPath[] {
  if (Object.is(before, now)) return [];
  if (Array.isArray(before) && Array.isArray(now))
    return before.length === now.length ? before.flatMap((one, index) => pathsOf(one, now[index], at)) : [at];
  if (!isFields(before) || !isFields(now)) return [at];
  const fields = new Set([...Object.keys(before), ...Object.keys(now)]);
  return [...fields].flatMap((field) => pathsOf(before[field], now[field], [...at, field]));
}

const isFields = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
