import type { Group } from '../groups.ts';
import type { FaultId, SymptomId } from '../ids.ts';
import type { Life } from './needs.ts';

/** Evidence told: a history or "only when" id and what it multiplies. */
export type Evidence = {
  readonly id: string;
  readonly multiplies: { readonly [fault: FaultId]: number };
  /** It asks for a look inside before power, also of a machine that ran before it. */
  readonly lookFirst: boolean;
  readonly source: string;
};

export type Often = {
  readonly id: string;
  /** What the answer says of a fault that comes and goes; null when it says nothing. */
  readonly rate: { readonly perStart: number; readonly perHour: number } | null;
  /** What it multiplies the chances of steady and of come-and-go by. */
  readonly steady: number;
  readonly comesAndGoes: number;
  /** What it makes likelier or less likely by itself. */
  readonly multiplies: { readonly [fault: FaultId]: number };
};

export type Confused = { readonly told: Group; readonly shows: Group; readonly weight: number };

export type SeenAs = { readonly seen: Group; readonly shows: Group; readonly weight: number };

export type Symptom = {
  readonly id: SymptomId;
  readonly groups: readonly Group[];
  readonly stop: boolean;
  readonly copyFirst: boolean;
  /** Says what is wanted, not what is wrong: its groups count only where nothing else was told. */
  readonly aside: boolean;
  /** How many times likelier the faults named are by this very term, and all others. */
  readonly multiplies: { readonly [fault: FaultId]: number };
  readonly others: number;
  /** How far a machine gets that shows this, where that is further than its group says; null: as the group. */
  readonly life: Life | null;
};
