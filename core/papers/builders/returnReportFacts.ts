import type { Money } from '../../money/money.ts';
import type { EpochMs, Minutes } from '../../time.ts';
import type { PartMark } from '../content.ts';
import type { ChargeFacts, CommonFacts, SignatureFacts } from '../facts.ts';
import type { ReadingFacts } from '../ruler.ts';

export type ReportedOutcome =
  | 'repaired'
  | 'known-work'
  | 'cured-by-reseating'
  | 'works-not-known-why'
  | 'not-reproduced'
  | 'as-it-came';

/** What is known of the cause. Only a confirmed part is said to have failed; a named one never is. */
export type VerdictFacts =
  | {
      readonly is: 'confirmed';
      readonly part: string;
      readonly how: 'both-ways' | 'second-rig' | 'own-evidence';
      readonly detail: readonly string[];
    }
  | { readonly is: 'named'; readonly part: string; readonly detail: readonly string[] }
  | { readonly is: 'not-known'; readonly detail: readonly string[] };

export type PartRowFacts = {
  readonly what: string;
  readonly tag?: string;
  readonly mark: Omit<PartMark, 'says'>;
  /** Whose, in words, and how it stands: `yours`, `ours`, `yours, failed`. The mark says no more. */
  readonly whose: string;
  readonly came: string;
  readonly goes: string;
};
export type ProofFacts = { readonly what: string; readonly result: string; readonly limit?: string };
export type StepFacts = {
  readonly at: EpochMs;
  readonly what: string;
  readonly outcome: string;
  readonly hands: Minutes;
  readonly wait: Minutes;
  readonly by?: string;
};

/** What the owner takes home with the machine, repaired or not. */
export type ReturnReportFacts = CommonFacts & {
  readonly outcome: ReportedOutcome;
  /** Said first, after the outcome, where it needs a sentence of its own (why it goes home as it came). */
  readonly because?: string;
  readonly told: string;
  readonly seen: readonly string[];
  /** What went wrong at the shop's hands; none of it is charged. */
  readonly incidents?: readonly string[];
  readonly verdict: VerdictFacts;
  readonly fitted?: { readonly what: string; readonly agreedHow: string };
  /** True when everything of the owner's lies where it lay; false when a slot was put right. */
  readonly allInPlace: boolean;
  readonly readings?: readonly ReadingFacts[];
  readonly parts: readonly PartRowFacts[];
  readonly proofs?: readonly ProofFacts[];
  readonly byTheWay?: readonly string[];
  readonly differences?: readonly string[];
  readonly excluded?: readonly { readonly what: string; readonly why: string }[];
  /** What the proving could not rule out, with its chance where the fault's rate is known. */
  readonly notExcluded?: readonly string[];
  readonly atFirstStart?: readonly string[];
  readonly advice?: readonly string[];
  readonly cost?: {
    readonly lines: readonly ChargeFacts[];
    readonly total: Money;
    readonly toldFrom?: Money;
    readonly toldTo?: Money;
  };
  readonly warranty?: readonly string[];
  readonly log: readonly StepFacts[];
  readonly collected?: SignatureFacts;
};
