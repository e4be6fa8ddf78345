import type { JobSheet } from '../../../core/contract/screens.ts';
import { isUnderWay, type MinutesBy, type Reading, type Work, type WorkKind } from '../../../core/job/work.ts';
import { epochMs, MINUTE_MS, minutes } from '../../../core/time.ts';
import { type Execute, useExecute } from '../../link/useExecute.ts';

const NOTHING_USED = { loaner: null, slots: [], parts: [] };

export type WorkEnd = {
  readonly handsOn: number;
  readonly minutesBy: MinutesBy;
  readonly waiting: number;
  readonly readings: readonly Reading[];
  readonly passed: boolean | null;
  readonly note: string | null;
};

export type WorkDeeds = Execute & {
  /** A piece of work under way that is no tracing step. */
  readonly under: Work | null;
  /** `ownWord`: why a gate is passed on the technician's own word; null keeps it. */
  readonly start: (kind: WorkKind, what: string, ownWord?: string | null) => Promise<boolean>;
  readonly end: (work: Work, ended: WorkEnd) => Promise<boolean>;
  /** A task that is done: started and ended in one, with the minutes said for it. */
  readonly log: (kind: WorkKind, what: string, handsOn: number, ownWord?: string | null) => Promise<boolean>;
};

/** Work with a clock that is no tracing step: fitting tasks, proofs, cleaning. */
export function useWork(sheet: JobSheet, tray: string): WorkDeeds {
  const doing = useExecute();
  const { job } = sheet;
  const saidOf = (ended: WorkEnd) => ({
    endedAt: epochMs(Date.now()),
    outcome: 'done',
    handsOn: minutes(ended.handsOn),
    minutesBy: ended.minutesBy,
    waiting: minutes(ended.waiting),
    readings: [...ended.readings],
    passed: ended.passed,
    note: ended.note,
    endsWith: null,
  });
  const where = { job: job.id, tray, use: NOTHING_USED };
  return {
    ...doing,
    under: job.work.findLast((one) => isUnderWay(one) && one.kind !== 'step') ?? null,
    start: async (kind, what, ownWord = null) =>
      (await doing.execute('startWork', {
        ...where,
        kind,
        what,
        startedAt: epochMs(Date.now()),
        ownWord,
      })) !== null,
    end: async (work, ended) =>
      (await doing.execute('finishWork', { ...where, run: work.run, ...saidOf(ended) })) !== null,
    log: async (kind, what, handsOn, ownWord = null) =>
      (await doing.execute('logWork', {
        ...where,
        kind,
        what,
        startedAt: epochMs(Date.now() - handsOn * MINUTE_MS),
        ownWord,
        ...saidOf({ handsOn, minutesBy: 'hand', waiting: 0, readings: [], passed: null, note: null }),
      })) !== null,
  };
}
