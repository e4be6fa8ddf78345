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
/**
 * Known only once it is carried out, and no term of what is signed: where the sealed bytes of a photograph came to lie
 * (what it is of is bound), and the digest of a report (its text is bound).
 */
const OF_KEEPING: readonly string[] = ['blob', 'digest'];

/** What an input says, at every depth, without the signatures in it and without what only keeping it makes known. */
export const withoutSignatures = (input: unknown): unknown =>
  through(input, (field) => (OF_SIGNATURE.includes(field) || OF_KEEPING.includes(field) ? 'left-out' : 'walked'));
