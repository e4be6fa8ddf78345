import { z } from 'zod';
import { thingKindShape } from '../custody/part.ts';
import { partIdShape } from '../ids.ts';
import type { Personal } from '../journal/personal.ts';
import type { Shaped } from '../shape.ts';
import { type EpochMs, epochMsShape, type Minutes, minutes, minutesShape } from '../time.ts';

/** What hands and hours went into. `own-proof` is the shop's own: never on the owner's bill. */
export const WORK_KINDS = ['step', 'fitting', 'proof', 'cleaning', 'handling', 'own-proof'] as const;
export type WorkKind = (typeof WORK_KINDS)[number];

/** Whose the minutes of a piece of work are that is ended: its clock's, or typed by hand. */
export const MINUTES_BY = ['clock', 'hand'] as const;
export type MinutesBy = (typeof MINUTES_BY)[number];

/** A reading with its limit and where the limit comes from. */
export const readingShape = z.strictObject({
  what: z.string(),
  value: z.string(),
  limit: z.string().nullable(),
  source: z.string().nullable(),
  within: z.boolean().nullable(),
});
export type Reading = Shaped<typeof readingShape>;

/** What time goes into while a piece of work runs; `paused` while the same person's hands are on another machine. */
const PHASES = ['hands-on', 'waiting', 'paused'] as const;
export type Phase = (typeof PHASES)[number];
export const turnShape = z.strictObject({
  to: z.enum(PHASES),
  at: epochMsShape,
  /**
   * Nobody turned it: the screen was locked (whether hands stayed on it is asked afterwards), or the owner took back a word
   * that it needs.
   */
  because: z.enum(['screen-locked', 'consent-missing']).optional(),
});
export type Turn = Shaped<typeof turnShape>;

/** A shop part used in a step, with the standing it had then: a part that is exposed proves nothing. */
export const usedLoanerShape = z.strictObject({
  id: partIdShape,
  kind: thingKindShape,
  standing: z.enum(['trial-grade', 'known-good', 'exposed', 'unproved']),
});
export type UsedLoaner = Shaped<typeof usedLoanerShape>;

/** The clock was forgotten: what it ran, cut to what is believed, unless somebody said the minutes. */
export const forgottenShape = z.strictObject({ because: z.enum(['closing-time', 'too-long']), ran: minutesShape });
/** The owner's parts that came out for it, and from which slot. */
export const tookShape = z.array(z.strictObject({ part: partIdShape, slot: z.string() }));

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
  /** What else was found, of a step that looks at several places in one go. */
  readonly also?: readonly string[] | undefined;
  readonly handsOn: Minutes;
  /** Of those, the minutes beyond the owner's word: the shop's own, never charged. */
  readonly unbilled?: Minutes | undefined;
  readonly waiting: Minutes;
  /** The clock was forgotten: what it ran, cut to what is believed, unless somebody said the minutes. */
  readonly forgotten?: Shaped<typeof forgottenShape> | undefined;
  readonly readings: readonly Reading[];
  readonly passed: boolean | null;
  readonly note: Personal<string> | null;
  /** Why a gate was passed for it on the technician's own word. */
  readonly ownWord?: Personal<string> | undefined;
  readonly loaners: readonly UsedLoaner[];
  /** The owner's parts that came out for it, and from which slot. */
  readonly took: Shaped<typeof tookShape>;
  /** What stays out, or replaced by ours, after a step: circuits of the fault model. */
  readonly leftOut: readonly string[];
  /** Slots whose parts were unplugged when it began. */
  readonly unplugged?: readonly string[] | undefined;
  readonly struck: { readonly why: string; readonly at: EpochMs } | null;
};

/** A piece of work by its kind and its times: how long things take is learnt from it. */
export type TimedWork = Pick<
  Work,
  | 'kind'
  | 'what'
  | 'by'
  | 'startedAt'
  | 'endedAt'
  | 'handsOn'
  | 'unbilled'
  | 'waiting'
  | 'forgotten'
  | 'passed'
  | 'struck'
>;

/** A piece of work without its note, its readings and what it was done with. */
export const timedWork = (work: Work): TimedWork => {
  const { kind, what, by, startedAt, endedAt, handsOn, unbilled, waiting, forgotten, passed, struck } = work;
  return { kind, what, by, startedAt, endedAt, handsOn, unbilled, waiting, forgotten, passed, struck };
};

/** A piece of work as it begins: nothing came of it yet. */
export const newWork = (begun: Pick<Work, 'run' | 'kind' | 'what' | 'by' | 'startedAt'>): Work => ({
  ...begun,
  turns: [],
  endedAt: null,
  outcome: null,
  handsOn: minutes(0),
  waiting: minutes(0),
  readings: [],
  passed: null,
  note: null,
  loaners: [],
  took: [],
  leftOut: [],
  struck: null,
});

/** Is it still being done? */
export const isUnderWay = ({ endedAt, struck }: Pick<Work, 'endedAt' | 'struck'>): boolean =>
  endedAt === null && !struck;

/** Was it done, and does it count? */
export const isDone = ({ endedAt, struck }: Pick<Work, 'endedAt' | 'struck'>): boolean => endedAt !== null && !struck;

/** Is it on the owner's bill: hands-on minutes of everything but our own proofs and what was struck out. */
export const isCharged = (work: Pick<Work, 'kind' | 'struck'>): boolean => work.kind !== 'own-proof' && !work.struck;

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
