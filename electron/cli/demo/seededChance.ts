import type { Chance } from '../../service/openTools.ts';

/** Ids and tags that are the same at each telling. The generator is a 32-bit linear congruential one: nothing here is secret. */
export function seededChance(seed: number): Chance {
  let state = seed >>> 0;
  const next = () => {
    // Numerical Recipes' constants for a modulus of 2^32.
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state;
  };
  return {
    newId: () => `d${next().toString(36)}${next().toString(36)}`,
    randomInt: (below) => Math.floor((next() / 2 ** 32) * below),
  };
}
