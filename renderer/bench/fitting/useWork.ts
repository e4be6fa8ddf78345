import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Reading, Work, WorkKind } from '../../../core/job/work.ts';
import { epochMs, minutes } from '../../../core/time.ts';
import { service } from '../../link/service.ts';
import { type Execute, useExecute } from '../../link/useExecute.ts';

const MINUTE = 60_000;
const NOTHING_USED = { loaner: null, slots: [], parts: [] };

export type Ended = {
  readonly handsOn: number;
  /** The minutes are somebody's word, not the clock's. */
  readonly said: boolean;
  readonly waiting: number;
  readonly readings: readonly Reading[];
  readonly passed: boolean | null;
  readonly note: string | null;
};

export type WorkDeeds = Execute & {
  /** A piece of work under way that is no tracing step. */
  readonly under: Work | null;
  readonly start: (kind: WorkKind, what: string) => Promise<boolean>;
  readonly end: (work: Work, ended: Ended) => Promise<boolean>;
  /** A task that is done: started and ended in one, with the minutes said for it. */
  readonly log: (kind: WorkKind, what: string, handsOn: number) => Promise<boolean>;
};

/** Work with a clock that is no tracing step: fitting tasks, proofs, cleaning. */
export function useWork(sheet: JobSheet, tray: string): WorkDeeds {
  const doing = useExecute();
  const { job } = sheet;
  const begin = async (kind: WorkKind, what: string, at: number) =>
    (await doing.execute('startWork', {
      job: job.id,
      kind,
      what,
      startedAt: epochMs(at),
      tray,
      use: NOTHING_USED,
      ownWord: null,
    })) !== null;
  const finish = async (run: string, ended: Ended) =>
    (await doing.execute('finishWork', {
      job: job.id,
      run,
      endedAt: epochMs(Date.now()),
      outcome: 'done',
      handsOn: minutes(ended.handsOn),
      said: ended.said,
      waiting: minutes(ended.waiting),
      readings: [...ended.readings],
      passed: ended.passed,
      note: ended.note,
      endsWith: null,
      use: NOTHING_USED,
      tray,
    })) !== null;
  return {
    ...doing,
    under: job.work.findLast((one) => one.endedAt === null && !one.struck && one.kind !== 'step') ?? null,
    start: (kind, what) => begin(kind, what, Date.now()),
    end: (work, ended) => finish(work.run, ended),
    log: async (kind, what, handsOn) => {
      if (!(await begin(kind, what, Date.now() - handsOn * MINUTE))) return false;
      const fresh = await service.job({ job: job.id });
      const run = fresh.job.work.findLast((one) => one.endedAt === null && one.what === what)?.run;
      return (
        run !== undefined && finish(run, { handsOn, said: true, waiting: 0, readings: [], passed: null, note: null })
      );
    },
  };
}
