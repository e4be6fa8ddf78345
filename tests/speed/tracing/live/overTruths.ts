import { incompleteBeta, inverse } from '../../../../core/figures/specialFunctions.ts';
import { mean } from '../row.ts';

/** A mean over truths with its 95 % interval (Student's t, one value per truth). */
export type OverTruths = { readonly middle: number; readonly half: number };

export function overTruths(values: readonly number[]): OverTruths {
  const middle = mean(values);
  const free = values.length - 1;
  if (free < 1) return { middle, half: Number.POSITIVE_INFINITY };
  const deviation = Math.sqrt(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / free);
  return { middle, half: (studentsT(free) * deviation) / Math.sqrt(values.length) };
}

/** The 97.5 % point of Student's t: P(|T| > t) is the incomplete beta of ν/(ν + t²), Abramowitz & Stegun 26.7.1. */
const studentsT = (free: number): number =>
  inverse((t) => 1 - incompleteBeta(free / (free + t * t), free / 2, 0.5), 0.95, 0, 1000);
