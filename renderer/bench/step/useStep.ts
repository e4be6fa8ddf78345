import { useQuery } from '@tanstack/react-query';
import type { EndsWith } from '../../../core/commands/bench/stepMoves.ts';
import type { JobSheet, TracingSheet, WallSheet } from '../../../core/contract/screens.ts';
import type { PartId } from '../../../core/ids.ts';
import { clockedWork, type Forgotten } from '../../../core/job/bench/clockedWork.ts';
import { phaseOf, type Reading, splitOf, type Work } from '../../../core/job/work.ts';
import { epochMs, minutes } from '../../../core/time.ts';
import type { StepView as Offered } from '../../../core/tracing/live/types.ts';
import { shopRead } from '../../link/reads.ts';
import { service } from '../../link/service.ts';
import { type Execute, useExecute } from '../../link/useExecute.ts';
import { hasNoLead } from '../inside/insideOf.ts';
import type { Running } from '../next/stepView.ts';

/** What the bench said of the parts and slots of the step before it starts. */
export type Chosen = {
  readonly slots: readonly string[];
  readonly parts: readonly PartId[];
  /** Which of ours; null takes the one on offer. */
  readonly loaner: string | null;
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
};
export const UNCLAIMED: Claim = { handsOn: null, waiting: null, endsWith: null, note: '', readings: [] };

/** Whole minutes by the clock; a forgotten one is cut to what is believed. */
export type Clocked = { readonly handsOn: number; readonly waiting: number; readonly forgotten: Forgotten | null };

const MINUTE = 60_000;

export type StepRun = Execute & {
  readonly work: Work | null;
  readonly running: Running | undefined;
  readonly start: (step: string, chosen: Chosen, loaner: string | null, ownWord: string | null) => Promise<boolean>;
  readonly finish: (outcome: string, claim: Claim, chosen: Chosen) => Promise<boolean>;
  /** Logs a step that was done without its clock, with the minutes claimed for it. */
  readonly log: (
    step: string,
    outcome: string,
    claim: Claim,
    chosen: Chosen,
    loaner: string | null,
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
  const work = job.work.findLast((one) => one.endedAt === null && !one.struck && one.kind === 'step') ?? null;
  const planned = work ? (tracing?.handling[work.what]?.waiting ?? 0) : 0;
  const start = async (
    step: string,
    chosen: Chosen,
    loaner: string | null,
    ownWord: string | null,
    startedAt: number,
  ) => {
    const done = await doing.execute('startWork', {
      job: job.id,
      kind: 'step',
      what: step,
      startedAt: epochMs(startedAt),
      tray,
      use: useOf(loaner, chosen),
      ownWord,
    });
    const off = done ? unplugsOf(sheet, tracing?.handling[step]?.handling.unplugs ?? [], tray) : null;
    return done !== null && (off === null || (await doing.execute('unplug', off)) !== null);
  };
  const end = async (run: string, outcome: string, claim: Claim, chosen: Chosen, loaner: string | null, now: number) =>
    (await doing.execute('finishWork', {
      job: job.id,
      run,
      endedAt: epochMs(now),
      outcome,
      // The clock's own, whatever it ran: what of it is believed, the service says.
      handsOn: minutes(claim.handsOn ?? (work ? Math.round(splitOf(work, now).handsOn / MINUTE) : 0)),
      said: claim.handsOn !== null,
      waiting: minutes(claim.waiting ?? clocked(now).waiting),
      readings: [...claim.readings],
      passed: null,
      note: claim.note.trim() === '' ? null : claim.note.trim(),
      endsWith: claim.endsWith,
      use: useOf(loaner, chosen),
      tray,
    })) !== null;
  const clocked = (now: number) => {
    if (!work) return { handsOn: 0, waiting: 0, forgotten: null };
    const split = splitOf(work, now);
    const { handsOn, forgotten } = clockedWork(work, epochMs(now), settings);
    const ran = Math.round(split.handsOn / MINUTE);
    return {
      handsOn: Math.round(handsOn),
      waiting: Math.max(0, Math.round((split.handsOn + split.waiting) / MINUTE) - ran),
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
    start: (step, chosen, loaner, ownWord) => start(step, chosen, loaner, ownWord, Date.now()),
    finish: async (outcome, claim, chosen) =>
      work !== null && end(work.run, outcome, claim, chosen, work.loaners[0]?.id ?? null, Date.now()),
    log: async (step, outcome, claim, chosen, loaner) => {
      const now = Date.now();
      const startedAt = now - ((claim.handsOn ?? 0) + (claim.waiting ?? 0)) * MINUTE;
      if (!(await start(step, chosen, loaner, null, startedAt))) return false;
      const fresh = await service.job({ job: job.id });
      const run = fresh.job.work.findLast((one) => one.endedAt === null && one.what === step)?.run;
      return run !== undefined && end(run, outcome, claim, chosen, loaner, now);
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

const useOf = (loaner: string | null, chosen: Chosen) => ({
  loaner: loaner as PartId | null,
  slots: [...chosen.slots],
  parts: [...chosen.parts],
});

/** What a step unplugs: leads come off in place, a drive without a lead comes out to the tray. Null when nothing is on. */
function unplugsOf({ job, machine, parts }: JobSheet, kinds: readonly string[], tray: string) {
  const off = machine.slots.filter((slot) => {
    const part = parts.find((one) => one.id === machine.inside[slot.id]);
    return part !== undefined && kinds.includes(part.kind) && !machine.unplugged.includes(slot.id);
  });
  if (off.length === 0) return null;
  const out = off.filter(hasNoLead).flatMap((slot) => {
    const part = machine.inside[slot.id];
    return part ? [{ part, tray }] : [];
  });
  return { job: job.id, slots: off.map((slot) => slot.id), out };
}

/** The loaner a step would borrow: the first of its kinds that the wall has as a part. */
export const loanerFor = (step: Offered | undefined, wall: WallSheet | undefined): string | null =>
  step?.borrows.find(({ loaner }) => loaner !== null && wall?.parts.some((part) => part.id === loaner))?.loaner ?? null;
