/**
 * The pinball loss of one said quantile: how far it was from what came, weighed so that the true quantile of share `p`
 * loses least (Koenker & Bassett, Econometrica 46, 1978). In the unit of what was said; 0 for a figure that was met.
 */
export const pinball = (said: number, came: number, p: number): number =>
  came >= said ? p * (came - said) : (1 - p) * (said - came);
