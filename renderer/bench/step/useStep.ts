import { useQuery } from '@tanstack/react-query';
import type { EndsWith } from '../../../core/commands/bench/work/stepMoves.ts';
import type { JobSheet, TracingSheet, WallSheet } from '../../../core/contract/screens.ts';
import type { PartId } from '../../../core/ids.ts';
import { clockedWork, type Forgotten } from '../../../core/job/bench/clockedWork.ts';
import { isUnderWay, phaseOf, type Reading, splitOf, type Work } from '../../../core/job/work.ts';
import { epochMs, MINUTE_MS, minutes } from '../../../core/time.ts';
import type { StepView as Offered } from '../../../core/tracing/live/types.ts';
import { shopRead } from '../../link/reads.ts';
import { type Execute, useExecute } from '../../link/useExecute.ts';
import type { Running } from '../next/stepView.ts';

/** What the bench said of the parts and slots of the step before it starts. */
export type Chosen = {
  readonly slots: readonly string[];
  readonly parts: readonly PartId[];
  /** Which of ours; null takes the one on offer. */
  readonly loaner: PartId | null;
};
export const NOTHING: Chosen = { slots: [], parts: [], loaner: null };

/** What is said of the step when it ends; `null` minutes are the clock's. */
export type Claim = {
  readonly handsOn: number | null;
  readonly waiting: number | null;
  readonly endsWith: EndsWith | null;
  readonly note: string;
  /** Readings typed with the step. */
  readonly readings: readonly Reading[];
  /** What else was found in the same look. */
  readonly also: readonly string[];
};
export const UNCLAIMED: Claim = { handsOn: null, waiting: null, endsWith: null, note: '', readings: [], also: [] };

/** Whole minutes by the clock; a forgotten one is cut to what is believed. */
export type Clocked = { readonly handsOn: number; readonly waiting: number; readonly forgotten: Forgotten | null };

export type StepRun = Execute & {
  readonly work: Work | null;
  readonly running: Running | undefined;
  readonly start: (step: string, chosen: Chosen, loaner: PartId | null, ownWord: string | null) => Promise<boolean>;
  readonly finish: (outcome: string, claim: Claim, chosen: Chosen) => Promise<boolean>;
  /** Logs a step that was done without its clock, with the minutes claimed for it. */
  readonly log: (
    step: string,
    outcome: string,
    claim: Claim,
    chosen: Chosen,
    loaner: PartId | null,
  ) => Promise<boolean>;
  /** Hands off while it waits, or back on: an entry, so both figures stand after the window is closed. */
  readonly turn: (to: Running['phase']) => void;
  /** Minutes by the clock so far, rounded. */
  readonly clocked: (now: number) => Clocked;
};

/** The step under way at this machine: its clock is made of entries, so it goes on when the window is closed. */
export function useStep(sheet: JobSheet, tracing: TracingSheet | undefined, tray: string): StepRun {
  const doing = useExecute();
  const settings = useQuery(shopRead()).data?.settings ?? null;
  const { job } = sheet;
  const work = job.work.findLast((one) => isUnderWay(one) && one.kind === 'step') ?? null;
  const planned = work ? (tracing?.handling[work.what]?.waiting ?? 0) : 0;
  const startOf = (what: string, startedAt: number, ownWord: string | null) =>
    ({ kind: 'step', what, startedAt: epochMs(startedAt), ownWord }) as const;
  const saidOf = (outcome: string, claim: Claim, now: number) => ({
    endedAt: epochMs(now),
    outcome,
    ...(claim.also.length > 0 && { also: [...claim.also] }),
    // The clock's own, whatever it ran: what of it is believed, the service says.
    handsOn: minutes(claim.handsOn ?? (work ? Math.round(splitOf(work, now).handsOn / MINUTE_MS) : 0)),
    minutesBy: claim.handsOn === null ? ('clock' as const) : ('hand' as const),
    waiting: minutes(claim.waiting ?? clocked(now).waiting),
    readings: [...claim.readings],
    passed: null,
    note: claim.note.trim() === '' ? null : claim.note.trim(),
    endsWith: claim.endsWith,
  });
  const where = (chosen: Chosen, loaner: PartId | null) => ({ job: job.id, tray, use: useOf(loaner, chosen) });
  const clocked = (now: number) => {
    if (!work) return { handsOn: 0, waiting: 0, forgotten: null };
    const split = splitOf(work, now);
    const { handsOn, forgotten } = clockedWork(work, epochMs(now), settings);
    const ran = Math.round(split.handsOn / MINUTE_MS);
    return {
      handsOn: Math.round(handsOn),
      waiting: Math.max(0, Math.round((split.handsOn + split.waiting) / MINUTE_MS) - ran),
      forgotten,
    };
  };
  return {
    ...doing,
    work,
    clocked,
    running: work ? runningOf(work, planned) : undefined,
    turn: (to) => {
      if (work) void doing.execute('turnWork', { job: job.id, run: work.run, to, at: epochMs(Date.now()) });
    },
    start: async (step, chosen, loaner, ownWord) =>
      (await doing.execute('startWork', { ...where(chosen, loaner), ...startOf(step, Date.now(), ownWord) })) !== null,
    finish: async (outcome, claim, chosen) =>
      work !== null &&
      (await doing.execute('finishWork', {
        ...where(chosen, work.loaners[0]?.id ?? null),
        run: work.run,
        ...saidOf(outcome, claim, Date.now()),
      })) !== null,
    log: async (step, outcome, claim, chosen, loaner) => {
      const now = Date.now();
      const startedAt = now - ((claim.handsOn ?? 0) + (claim.waiting ?? 0)) * MINUTE_MS;
      return (
        (await doing.execute('logWork', {
          ...where(chosen, loaner),
          ...startOf(step, startedAt, null),
          ...saidOf(outcome, claim, now),
        })) !== null
      );
    },
  };
}

/** Where the clock stands: hands-on counts on from what was counted before, a wait counts down from what is planned. */
function runningOf(work: Work, planned: number): Running {
  const { to, at: since } = phaseOf(work);
  return to === 'hands-on'
    ? { phase: to, since, before: splitOf(work, since).handsOn / 1000 }
    : { phase: 'waiting', since, seconds: to === 'waiting' && planned > 0 ? planned * 60 : null };
}

const useOf = (loaner: PartId | null, chosen: Chosen) => ({
  loaner: loaner,
  slots: [...chosen.slots],
  parts: [...chosen.parts],
});

/** The loaner a step would borrow: the first of its kinds that the wall has as a part. */
export const loanerOffered = (step: Offered | undefined, wall: WallSheet | undefined): PartId | null =>
  step?.borrows.flatMap(({ loaner }) => wall?.parts.find((part) => part.id === loaner) ?? []).at(0)?.id ?? null;
