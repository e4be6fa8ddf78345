import type { Harm } from '../../live/gate.ts';
import type { VerdictKind } from '../form/benchCase.ts';

export const PROTOCOL = 1;

export type Mend = 'reseating' | 'setting' | 'cleaning' | 'software' | 'part' | 'outside' | 'advice';
export type Because = 'no-step-left' | 'dearer-than-limit' | 'dearer-than-worth' | 'dearer-than-usual' | 'declined';

export type StepState = {
  readonly id: string;
  /**
   * Can be started now; once the technician answers for it; by nobody; only the owner's word is missing; or it makes no
   * sense on this machine now.
   */
  readonly state: 'offered' | 'own-word' | 'held' | 'no-consent' | 'not-here';
  /** The gates that hold it, the consents it lacks, or what keeps it from making sense. */
  readonly by: readonly string[];
};

export type ClosedGate = {
  readonly id: string;
  /** One inner list is enough, all of it is needed. */
  readonly opensBy: readonly (readonly string[])[];
  readonly harm: Harm;
};

export type SuspectPart = {
  readonly part: string;
  /** At least one of its faults was there when the machine came in, mended since or not. */
  readonly p: number;
  readonly faults: readonly { readonly id: string; readonly p: number }[];
};

export type AskAnswer = { readonly id: string; readonly for: readonly string[] };

export type Said = {
  readonly kind: VerdictKind;
  readonly part: string | null;
  readonly also: readonly { readonly part: string; readonly fault: string | null }[];
  readonly fault: string | null;
  readonly p: number;
  readonly pFault: number | null;
  readonly mend: Mend | null;
  /** False where several handlings were done at once and nobody knows which of them it was. */
  readonly apart: boolean;
  readonly because: Because | null;
};

/** The answer to one case line: the step proposed, or the end. Minutes are the engine's own. */
export type Answer = {
  readonly case: string;
  readonly protocol: typeof PROTOCOL;
  readonly step: string | null;
  readonly minutes: number;
  readonly waiting: number;
  /** Minutes to close all that stands open now, before `step`. */
  readonly closing: number;
  readonly outcomes: readonly { readonly id: string; readonly p: number; readonly normal: boolean }[];
  readonly uses: readonly string[];
  readonly reasons: readonly string[];
  readonly cautions: readonly string[];
  readonly gates: readonly ClosedGate[];
  readonly suspects: readonly SuspectPart[];
  readonly then: readonly string[];
  readonly steps: readonly StepState[];
  readonly asks: readonly AskAnswer[];
  readonly verdict: Said | null;
  readonly ignored?: readonly string[];
};
