/**
 * What of a hypothesis is there, as bits: FIRST its first fault, SECOND its second, OURS one of our own making. 0: all of it
 * was mended. Tables over hypotheses and masks hold them side by side: [hypothesis × PRESENCES + mask].
 */
export type PresenceMask = number;

export const FIRST = 1;
export const SECOND = 2;
export const OURS = 4;

/** How many masks there are. */
export const PRESENCES = 8;

/** Where a hypothesis with a mask stands in such a table. */
export const placeOf = (hypothesis: number, mask: PresenceMask): number => hypothesis * PRESENCES + mask;
/** The hypothesis of a place in such a table. */
export const hypothesisOf = (place: number): number => Math.floor(place / PRESENCES);
/** The mask of a place in such a table. */
export const maskOfPlace = (place: number): PresenceMask => place % PRESENCES;
