import type { JobEntry } from './entries.ts';

/**
 * Which of the things that a job has came first: the place of each in the job's own stream, from 1. Clocks do not say
 * that: one that was ahead once would put all that came after before it.
 */
export type CameOfWork = {
  /** Entries so far. */
  readonly entries: number;
  /** The last stage entered. */
  readonly stage: number;
  /** In step with the job's `estimates`. */
  readonly estimates: readonly number[];
  readonly put: { readonly [question: string]: number };
  readonly answered: { readonly [question: string]: number };
  /** Pieces of work as they ended last: by their run. */
  readonly finished: { readonly [run: string]: number };
  /** The one signature under the sheet; 0 while there is none. */
  readonly signed: number;
  /** In step with the job's `papers`. */
  readonly papers: readonly number[];
};

/** What came of a job that was just taken in: its first entry, with the stage it begins at. */
export const takenInFirst: CameOfWork = {
  entries: 1,
  stage: 1,
  estimates: [],
  put: {},
  answered: {},
  finished: {},
  signed: 0,
  papers: [],
};

/** The same after one more entry. */
export function cameAfter(came: CameOfWork, entry: JobEntry): CameOfWork {
  const entries = came.entries + 1;
  const next = { ...came, entries };
  switch (entry.kind) {
    case 'stage-entered':
      return { ...next, stage: entries };
    case 'estimated':
      return { ...next, estimates: [...came.estimates, entries] };
    case 'question-put':
      return { ...next, put: { ...came.put, [entry.body.id]: entries } };
    case 'answered':
      return { ...next, answered: { ...came.answered, [entry.body.question]: entries } };
    case 'work-finished':
      return { ...next, finished: { ...came.finished, [entry.body.run]: entries } };
    case 'sheet-signed':
      return { ...next, signed: entries };
    case 'paper-named':
      return { ...next, papers: [...came.papers, entries] };
    default:
      return next;
  }
}
