import type { ThingKind } from '../../../custody/part.ts';
import type { Caution } from '../cautions.ts';
import type { StateId, StepId } from '../ids.ts';
import type { OpeningDeed } from '../safety/openings.ts';

export const SWITCHES = [
  'wide-cooler',
  'card-covers',
  'closed-liquid',
  'open-loop',
  'glass',
  'small-case',
  'own-make-supply',
  'soldered-memory',
  'soldered-processor',
  'outside-supply',
  'own-battery',
  'drive-array',
  'aged',
  'code-none',
  'code-lights',
  'code-digits',
  'code-speaker',
] as const;

/** Asked once at the first look; each moves minutes or nesting of the assembly states, or says what can be wrong, or how the board speaks. */
export type Switch = (typeof SWITCHES)[number];

export type SwitchEffect = {
  readonly id: Switch;
  /** Minutes added to, or put in place of, a state's [opening, closing]. */
  readonly add: { readonly [state: StateId]: readonly [number, number] };
  readonly set: { readonly [state: StateId]: readonly [number, number] };
  readonly within: { readonly [state: StateId]: StateId };
  /** Steps that need a further state open. */
  readonly withinSteps: { readonly [state: StateId]: readonly StepId[] };
  readonly times: number;
  /** States that may not be opened; kinds of ours that do not fit. */
  readonly refuses: readonly StateId[];
  readonly noLoaner: readonly ThingKind[];
  readonly cautions: { readonly [state: StateId]: readonly Caution[] };
};

export type AssemblyState = {
  readonly id: StateId;
  readonly opening: number;
  readonly closing: number;
  /** The state it lies within: opened only while that is open; null when it is outermost. */
  readonly within: StateId | null;
  /** Chance that opening and closing leaves a fault of our own. */
  readonly ours: number;
  /** What opening it does that can hurt; null: nothing that a rule of safety speaks of. */
  readonly deed: OpeningDeed | null;
};
