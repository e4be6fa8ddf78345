import { CIRCUITS, type Circuit } from '../types.ts';

/** The bit set of some circuits. */
export function maskOf(circuits: readonly Circuit[]): number {
  return circuits.reduce((mask, circuit) => mask | (1 << CIRCUITS.indexOf(circuit)), 0);
}

/** The circuits of a bit set. */
export function circuitsOf(mask: number): readonly Circuit[] {
  return CIRCUITS.filter((_, at) => (mask & (1 << at)) !== 0);
}
