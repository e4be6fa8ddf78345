/**
 * A command's input with the hash of what was shown wherever something in it is signed: an input that names no content
 * yet (`contentHash: null`) as it is after its previewed content was read and signed.
 */
export function signShown(input: unknown, contentHash: string): unknown {
  if (Array.isArray(input)) return input.map((one) => signShown(one, contentHash));
  if (typeof input !== 'object' || input === null) return input;
  return Object.fromEntries(
    Object.entries(input).map(([field, value]) => [
      field,
      field === 'contentHash' && value === null ? contentHash : signShown(value, contentHash),
    ]),
  );
}

/** Does an input still have to name the content of something that is signed? */
export function toBeSigned(input: unknown): boolean {
  if (typeof input !== 'object' || input === null) return false;
  return Object.entries(input).some(
    ([field, value]) => (field === 'contentHash' && value === null) || toBeSigned(value),
  );
}
