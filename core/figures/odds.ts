/** Nothing is certain to the last: a chance of 1 would have no odds. */
const LEAST_DOUBT = 1e-12;

/** The odds of a chance from 0 to 1: it against what is left, p / (1 − p); no higher than 10¹². */
export const odds = (p: number): number => p / Math.max(LEAST_DOUBT, 1 - p);
