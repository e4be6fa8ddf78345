import type { Machine } from '../custody/machine.ts';

/** An arrangement of parts that was tried at the bench, and what the machine did in it. */
export type TriedArrangement = {
  /** The step or proof that tried it. */
  readonly run: string;
  readonly did: 'works' | 'same' | 'worse';
  /** Slot id → the part that was in it. */
  readonly inside: Machine['inside'];
  readonly unplugged: readonly string[];
};
