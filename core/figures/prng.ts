import { normalQuantile } from './normalQuantile.ts';

/** A stream of chance that is the same on every platform for the same seed. */
export type Prng = {
  /** 32 random bits as an unsigned whole number. */
  readonly nextUint32: () => number;
  /** Uniform in [0, 1), 32 bits fine. */
  readonly next: () => number;
  /** Standard normal, by inverting the distribution (one draw each). */
  readonly nextNormal: () => number;
};

/**
 * SplitMix32-seeded xoshiro128**: Blackman and Vigna, "Scrambled linear pseudorandom number generators" (ACM TOMS 2021);
 * the seed is spread over the state by the MurmurHash3 finaliser (Appleby), as those authors advise to use another generator.
 */
export function prng(seed: number): Prng {
  let mix = seed >>> 0;
  const spread = () => {
    mix = (mix + 0x9e3779b9) >>> 0;
    return finalise(mix);
  };
  return xoshiro128ss([spread(), spread(), spread(), spread()]);
}

/** MurmurHash3's 32-bit finaliser. */
export function finalise(value: number): number {
  let h = value >>> 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

const rotate = (x: number, by: number) => ((x << by) | (x >>> (32 - by))) >>> 0;

/** xoshiro128** from four words of state, not all zero. */
export function xoshiro128ss(state: readonly [number, number, number, number]): Prng {
  let a = state[0] >>> 0;
  let b = state[1] >>> 0;
  let c = state[2] >>> 0;
  let d = state[3] >>> 0;
  const nextUint32 = () => {
    const result = Math.imul(rotate(Math.imul(b, 5), 7), 9) >>> 0;
    const t = (b << 9) >>> 0;
    c = (c ^ a) >>> 0;
    d = (d ^ b) >>> 0;
    b = (b ^ c) >>> 0;
    a = (a ^ d) >>> 0;
    c = (c ^ t) >>> 0;
    d = rotate(d, 11);
    return result;
  };
  return {
    nextUint32,
    next: () => nextUint32() / 4_294_967_296,
    nextNormal: () => normalQuantile((nextUint32() + 0.5) / 4_294_967_296),
  };
}
