import type { Interval } from './interval.ts';

/** A figure with the limits between which it lies. */
export type Bounded = { readonly figure: number; readonly between: Interval };

/**
 * Where the difference of two figures lies that were found independently of each other, `one − other`, as sure as their
 * own limits are. With limits (l, u) of each: (d − √((x₁−l₁)² + (u₂−x₂)²), d + √((u₁−x₁)² + (x₂−l₂)²)); Zou and Donner,
 * Statistics in Medicine 27 (2008) 1693. No shape is assumed but that the limits of each hold.
 */
export function differenceInterval(one: Bounded, other: Bounded): Interval {
  const difference = one.figure - other.figure;
  const down = Math.hypot(one.figure - one.between.low, other.between.high - other.figure);
  const up = Math.hypot(one.between.high - one.figure, other.figure - other.between.low);
  return { low: difference - down, high: difference + up };
}
