/** What becomes of a field on the way through an input: its value is walked through too, left out, or replaced. */
type Becomes = 'walked' | 'left-out' | { readonly put: unknown };

/** An input with each field as `becomes` says, at every depth. */
function through(value: unknown, becomes: (field: string, value: unknown) => Becomes): unknown {
  if (Array.isArray(value)) return value.map((one) => through(one, becomes));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).flatMap(([field, one]: [string, unknown]) => {
      const now = becomes(field, one);
      if (now === 'left-out') return [];
      return [[field, now === 'walked' ? through(one, becomes) : now.put]];
    }),
  );
}

/** Every content hash that an input names, wherever its signatures stand in it; null where one names none yet. */
export function contentHashesIn(input: unknown): readonly (string | null)[] {
  const found: (string | null)[] = [];
  through(input, (field, value) => {
    if (field === 'contentHash' && (value === null || typeof value === 'string')) found.push(value);
    return field === 'drawn' ? 'left-out' : 'walked';
  });
  return found;
}

/** Does an input still have to name the content of something that is signed? */
export const toBeSigned = (input: unknown): boolean => contentHashesIn(input).includes(null);

/**
 * A command's input with the hash of what was shown wherever something in it is signed: an input that names no content
 * yet (`contentHash: null`) as it is after its previewed content was read and signed.
 */
export const signShown = (input: unknown, contentHash: string): unknown =>
  through(input, (field, value) => (field === 'contentHash' && value === null ? { put: contentHash } : 'walked'));

/** The signature itself: the stroke of the pen and the content it stands under. */
const OF_SIGNATURE: readonly string[] = ['drawn', 'contentHash'];

/** The names of the photographs in an input: each under which its sealed bytes are kept. */
export function photographsIn(input: unknown): readonly string[] {
  const found: string[] = [];
  through(input, (field, value) => {
    if (field === 'blob' && typeof value === 'string') found.push(value);
    return 'walked';
  });
  return found;
}

/** SHA-256 in hex of the picture itself, opened, by the name that its sealed bytes are kept under. */
export type Pictures = ReadonlyMap<string, string>;

/**
 * What an input says, at every depth, without the signatures in it. Photographs stand as their pictures: sealed anew, one
 * lies under another name and is the same; another one is not. One that cannot be opened stands as its name.
 */
export const withoutSignatures = (input: unknown, pictures: Pictures = new Map()): unknown =>
  through(input, (field, value) => {
    if (OF_SIGNATURE.includes(field)) return 'left-out';
    return field === 'blob' && typeof value === 'string' ? { put: pictures.get(value) ?? value } : 'walked';
  });
