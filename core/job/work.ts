import type { ThingKind } from '../custody/part.ts';
import type { PartId } from '../ids.ts';
import type { Personal } from '../journal/personal.ts';
import type { EpochMs, Minutes } from '../time.ts';

/** What hands and hours went into. `own-proof` is the shop's own: never on the owner's bill. */
export type WorkKind = 'step' | 'fitting' | 'proof' | 'cleaning' | 'handling' | 'own-proof';

/** A reading with its limit and where the limit comes from. */
export type Reading = {
  readonly what: string;
  readonly value: string;
  readonly limit: string | null;
  readonly source: string | null;
  readonly within: boolean | null;
};

/** What time goes into while a piece of work runs; `paused` while the same person's hands are on another machine. */
export type Phase = 'hands-on' | 'waiting' | 'paused';
export type Turn = {
  readonly to: Phase;
  readonly at: EpochMs;
  /** Nobody turned it: the screen was locked. Whether hands stayed on it is asked afterwards. */
  readonly because?: 'screen-locked' | undefined;
};

/** A shop part used in a step, with the standing it had then: a part that is exposed proves nothing. */
export type UsedLoaner = {
  readonly id: PartId;
  readonly kind: ThingKind;
  readonly standing: 'trial-grade' | 'known-good' | 'exposed' | 'unproved';
};

/** One piece of work: a tracing step, a fitting task, a proof. Its claimed times are data of their own. */
export type Work = {
  readonly run: string;
  readonly kind: WorkKind;
  /** Step id, task id or proof id. */
  readonly what: string;
  readonly by: string;
  readonly startedAt: EpochMs;
  /** When hands went off it or came back, in order; it begins with hands on. */
  readonly turns: readonly Turn[];
  readonly endedAt: EpochMs | null;
  readonly outcome: string | null;
  readonly handsOn: Minutes;
  /** Of those, the minutes beyond the owner's word: the shop's own, never charged. */
  readonly unbilled?: Minutes | undefined;
  readonly waiting: Minutes;
  /** The clock was forgotten: what it ran, cut to what is believed, unless somebody said the minutes. */
  readonly forgotten?: { readonly because: 'closing-time' | 'too-long'; readonly ran: Minutes } | undefined;
  readonly readings: readonly Reading[];
  readonly passed: boolean | null;
  readonly note: Personal<string> | null;
  readonly loaners: readonly UsedLoaner[];
  /** The owner's parts that came out for it, and from which slot. */
  readonly took: readonly { readonly part: PartId; readonly slot: string }[];
  /** What stays out, or replaced by ours, after a step: circuits of the fault model. */
  readonly leftOut: readonly string[];
  readonly struck: { readonly why: string; readonly at: EpochMs } | null;
};

/** Is it on the owner's bill: hands-on minutes of everything but our own proofs and what was struck out. */
export const isCharged = (work: Work): boolean => work.kind !== 'own-proof' && !work.struck;

/** What a piece of work under way is in now, and since when. */
export const phaseOf = ({ startedAt, turns }: Pick<Work, 'startedAt' | 'turns'>): Turn =>
  turns.at(-1) ?? { to: 'hands-on', at: startedAt };

/**
 * How long hands were on a piece of work, and how long it waited, from its start to `now`; in milliseconds. A clock
 * that was set back counts nothing.
 */
export function splitOf(
  { startedAt, turns }: Pick<Work, 'startedAt' | 'turns'>,
  now: number,
): { readonly handsOn: number; readonly waiting: number } {
  const starts: readonly Turn[] = [{ to: 'hands-on', at: startedAt }, ...turns];
  const spent = (phase: Phase) =>
    starts.reduce((sum, { to, at }, i) => (to === phase ? sum + Math.max(0, (starts[i + 1]?.at ?? now) - at) : sum), 0);
  return { handsOn: spent('hands-on'), waiting: spent('waiting') };
}
