import { describe, expect, it } from 'vitest';
import { aJobAt } from '../../../tests/builders/jobAt.ts';
import { catalogueOf } from '../../labour/tasks/catalogue.ts';
import { epochMs, minutes } from '../../time.ts';
import { standardModel } from '../../tracing/live/loading/standardModel.ts';
import type { Job } from '../job.ts';
import { newWork, type Work } from '../work.ts';
import { timesOfJob } from './timesOfJob.ts';

const model = standardModel();
const by = { model, catalogue: catalogueOf(model) };
const MINUTE = 60_000;

let runs = 0;
/** A piece of work that a clock timed, so it ends between two whole minutes. */
const work = (what: string, handsOn: number, more: Partial<Work> = {}): Work => ({
  ...newWork({ run: `r${++runs}`, kind: 'step', what, by: 'bram', startedAt: epochMs(0) }),
  endedAt: epochMs(handsOn * MINUTE + 7_000),
  outcome: 'same',
  handsOn: minutes(handsOn),
  ...more,
});
const confirmed = { is: 'confirmed', fault: 'psu-dead', part: 'p', way: 'both-ways', evidence: [], readings: [] };
const closed = (works: readonly Work[], more: Partial<Job> = {}) =>
  timesOfJob(by, aJobAt('gone-home', { work: works, verdict: confirmed as unknown as Job['verdict'], ...more }), []);

describe('what a closed job says of how long things take', () => {
  it('frees a step of the opening that came with it, and counts it once', () => {
    const opens = model.states.find((state) => state.within === null && state.opening > 0);
    const { seen } = closed([work('look-inside', 8), work('press-plugs', 6)]);
    expect(opens).toBeDefined();
    expect(seen.map((one) => one.task)).toEqual(['look-inside', 'press-plugs']);
    // Opened with the first step, so the second took no opening.
    expect(seen[0]?.handsOn).toBeLessThan(8);
    expect(seen[1]?.handsOn).toBe(6);
  });

  it('takes what a clock showed, and leaves out the offered minutes logged as they stood', () => {
    const offered = { endedAt: epochMs(2 * MINUTE), handsOn: minutes(2) };
    const { seen, leftOut } = closed([work('look-picture', 2, offered), work('look-picture', 2), work('no-step', 3)]);
    expect(seen).toHaveLength(1);
    expect(leftOut).toMatchObject({ untouched: 1, unknown: 1 });
  });

  it('takes what a clock shows as no minute for a part of one: nothing has no logarithm', () => {
    const { seen } = closed([work('look-picture', 0, { endedAt: epochMs(9_000) })]);
    expect(seen[0]?.handsOn).toBe(0.25);
  });

  it('takes work agreed by name as one whole, and not as the cleaning after a repair', () => {
    const { seen } = closed([work('clean', 14, { kind: 'cleaning' }), work('clean', 9, { kind: 'cleaning' })], {
      tasks: [{ id: 'clean', fixedMinor: null }],
    });
    expect(seen).toEqual([{ task: 'agreed:clean', by: 'bram', handsOn: 23, waiting: null }]);
  });

  it('counts for work agreed by name just what was done of it: no step, no other task, nothing struck or still open', () => {
    const cleaning = { kind: 'cleaning' } as const;
    const { seen } = closed(
      [
        work('clean', 14, cleaning),
        work('clean', 3),
        work('new-cell', 5, cleaning),
        work('clean', 7, { ...cleaning, struck: { why: 'wrong machine', at: epochMs(0) } }),
        work('clean', 11, { ...cleaning, endedAt: null }),
      ],
      { tasks: [{ id: 'clean', fixedMinor: null }] },
    );
    expect(seen.filter(({ task }) => task === 'agreed:clean')).toEqual([
      { task: 'agreed:clean', by: 'bram', handsOn: 14, waiting: null },
    ]);
  });

  it('keeps apart what a step waited, and says nothing of waiting where it did not', () => {
    const { seen } = closed([work('look-picture', 3, { waiting: minutes(30) }), work('look-picture', 3)]);
    expect(seen.map(({ waiting }) => waiting)).toEqual([30, null]);
  });

  it('leaves out what was struck, and shows that it did', () => {
    const struck = { why: 'wrong machine', at: epochMs(0) };
    expect(closed([work('look-picture', 9, { struck })])).toMatchObject({ seen: [], leftOut: { struck: 1 } });
  });

  it('leaves out a forgotten clock, and the fitting of a job in which one was', () => {
    const forgotten = { because: 'closing-time', ran: minutes(900) } as const;
    const fitting = work('fit-part', 20, { kind: 'fitting', forgotten });
    const { seen, leftOut } = closed([work('look-picture', 120, { forgotten }), fitting]);
    expect(seen).toEqual([]);
    expect(leftOut.forgotten).toBe(2);
  });

  it('adds the fitting of a job up, freed of the mending of its fault', () => {
    const fitting = { kind: 'fitting' } as const;
    const { seen } = closed([work('fit-part', 20, fitting), work('cabling-and-panel', 38, fitting)]);
    // A dead supply takes 20 minutes to change and the rest 9: twice as long in all is twice as long for the rest.
    expect(seen).toEqual([{ task: 'fit-and-reassemble', by: 'bram', handsOn: 18, waiting: null }]);
  });

  it('learns nothing of fitting from a job that went home as it came, or that several had a hand in who took how long', () => {
    const fitting = { kind: 'fitting' } as const;
    expect(closed([work('fit-part', 20, fitting)], { verdict: null })).toMatchObject({
      seen: [],
      leftOut: { otherWork: 1 },
    });
    const two = closed([work('fit-part', 20, fitting), work('cabling-and-panel', 9, { ...fitting, by: 'mina' })]);
    expect(two.seen[0]?.by).toBeNull();
  });
});
