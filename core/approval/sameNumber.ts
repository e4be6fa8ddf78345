/**
 * Digits from the end that tell one telephone apart from another, whatever stands before them: a country's code, a 0, or both
 * left out. The shortest subscriber numbers with their area in use have as many (ITU-T E.164 leaves the split to each
 * country; common practice, no source).
 */
const TELLING = 8;

const telling = (number: string): string => number.replace(/\D/g, '').slice(-TELLING);

/** Are these the same telephone, as people write its number? */
export const isSameNumber = (one: string, other: string): boolean =>
  telling(one) !== '' && telling(one) === telling(other);
