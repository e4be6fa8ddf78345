import type { Tag } from '../../../core/custody/part.ts';
import type { IconName } from '../../kit/icons.tsx';
import type { SilhouetteName } from '../../kit/mark/silhouettes.ts';

export type CautionShown = {
  readonly icon: IconName;
  /** What must not go wrong, set in bold. */
  readonly lead?: string;
  readonly text: string;
  /** Can hurt people, parts or data: always in sight. */
  readonly harmful?: boolean;
};
export type OutcomeShown = {
  readonly id: string;
  readonly says: string;
  /** Chance of it, 0..1; out of sight while the step runs. */
  readonly chance?: number;
};
/** A place that a look goes over: its name, what is said where nothing is found, what can be found. */
export type LookedAt = {
  readonly id: string;
  readonly name: string;
  readonly fine: string;
  readonly findings: readonly OutcomeShown[];
};
export type Borrow = {
  readonly tag: Tag | null;
  readonly what: string;
  /** Where it lies: "Wall, second row, bin 3". */
  readonly place: string;
  /** Free, or who has it and since when. */
  readonly standing: string;
  readonly shape: SilhouetteName;
};
export type OtherStep = {
  readonly id: string;
  readonly heading: string;
  readonly handsOn: number;
  readonly waiting: number;
  readonly reason: string;
};
export type StepShown = {
  readonly id: string;
  readonly heading: string;
  /** Minutes. */
  readonly handsOn: number;
  readonly waiting: number;
  /** Minutes it is expected to save over the next best. */
  readonly saves?: number;
  /** At most three lines. */
  readonly why: string;
  /** One sentence of it, for while hands are in the case and for the far view. */
  readonly reason?: string;
  readonly borrow?: Borrow;
  readonly cautions: readonly CautionShown[];
  readonly outcomes: readonly OutcomeShown[];
  /** Of a look at several places at once: these instead, and of the outcomes only those that are found at none. */
  readonly look?: { readonly places: readonly LookedAt[]; readonly nothing: string };
};
/**
 * A step under way. Hands-on counts up from what was counted before; waiting counts down, or up where nobody says for
 * how long (`seconds` null). Moments in ms, lengths in seconds.
 */
export type Running =
  | { readonly phase: 'hands-on'; readonly since: number; readonly before: number }
  | { readonly phase: 'waiting'; readonly since: number; readonly seconds: number | null };

/** Seconds shown on the clock, and whether a wait is over (then they count what is over). */
export function clockOf(running: Running, now: number): { readonly seconds: number; readonly over: boolean } {
  const gone = Math.max(0, (now - running.since) / 1000);
  if (running.phase === 'hands-on') return { seconds: running.before + gone, over: false };
  if (running.seconds === null) return { seconds: gone, over: false };
  const left = running.seconds - gone;
  return { seconds: Math.abs(left), over: left <= 0 };
}
