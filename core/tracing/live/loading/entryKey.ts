/** What an entry of a list in a model's files is known by; null when it has no name of its own. */
export function keyOfEntry(one: unknown): string | null {
  if (typeof one !== 'object' || one === null) return null;
  const fields: { readonly [field: string]: unknown } = { ...one };
  const { id, family, phase, code } = fields;
  if (typeof id === 'string') return id;
  if (typeof family !== 'string' || typeof code !== 'string') return null;
  return [family, phase, code].filter((part) => typeof part === 'string').join(' ');
}
