import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aJobAt, askingOf, viewOf } from '../../tests/builders/jobAt.ts';
import { turnWork } from '../commands/bench/work/turnWork.ts';
import { isOf } from '../entries/subjects.ts';
import { epochMs } from '../time.ts';
import { applyJob } from './applyJob.ts';
import type { Job } from './job.ts';
import { isCharged, isDone, isUnderWay, newWork, type Phase, phaseOf, splitOf, type Work } from './work.ts';

const MINUTE = 60_000;
const memoryPass = newWork({ run: 'r', kind: 'step', what: 'dimm-reseat', by: 'bram', startedAt: epochMs(0) });

/** The job after hands were turned, told as the journal tells it. */
function turned(job: Job, to: Phase, atMinute: number): Job {
  const input = turnWork.input.parse({ job: 'j', run: 'r', to, at: atMinute * MINUTE });
  const decision = turnWork.decide(viewOf(job), input, askingOf(atMinute * MINUTE));
  if (!decision.ok) throw new Error(JSON.stringify(decision.refusal));
  const written = { at: epochMs(atMinute * MINUTE), by: 'bram', seq: 1 };
  return decision.entries.reduce(
    (now, draft) => (isOf('job', draft) ? applyJob(now, { ...draft, ...written }) : null) ?? now,
    job,
  );
}
const workOf = (job: Job): Work => job.work[0] ?? memoryPass;

describe('the clock of a piece of work', () => {
  it('counts four minutes of hands, ten of waiting, and one more of hands', () => {
    const waits = turned(aJobAt('tracing', { work: [memoryPass] }), 'waiting', 4);
    expect(phaseOf(workOf(waits))).toEqual({ to: 'waiting', at: 4 * MINUTE });
    expect(splitOf(workOf(waits), 9 * MINUTE)).toEqual({ handsOn: 4 * MINUTE, waiting: 5 * MINUTE });
    const back = turned(waits, 'hands-on', 14);
    expect(splitOf(workOf(back), 15 * MINUTE)).toEqual({ handsOn: 5 * MINUTE, waiting: 10 * MINUTE });
  });

  it('is turned once, though two windows show the key', () => {
    const waits = turned(aJobAt('tracing', { work: [memoryPass] }), 'waiting', 4);
    const again = turnWork.input.parse({ job: 'j', run: 'r', to: 'waiting', at: 6 * MINUTE });
    expect(turnWork.decide(viewOf(waits), again, askingOf(6 * MINUTE))).toMatchObject({
      refusal: { refused: 'nothing-to-write' },
    });
    expect(workOf(waits).turns).toHaveLength(1);
  });

  it('is not turned before it was turned last, nor when it has ended', () => {
    const waits = turned(aJobAt('tracing', { work: [memoryPass] }), 'waiting', 4);
    const ask = (job: Job, at: number) =>
      turnWork.decide(
        viewOf(job),
        turnWork.input.parse({ job: 'j', run: 'r', to: 'hands-on', at }),
        askingOf(6 * MINUTE),
      );
    expect(ask(waits, 3 * MINUTE)).toMatchObject({ ok: false, refusal: { refused: 'clock-set-back' } });
    const ended = aJobAt('tracing', { work: [{ ...memoryPass, endedAt: epochMs(5 * MINUTE) }] });
    expect(ask(ended, 6 * MINUTE)).toMatchObject({ ok: false, refusal: { refused: 'no-such-work' } });
  });

  it('counts nothing for a clock that was set back', () => {
    const turns = [{ to: 'waiting' as const, at: epochMs(-4 * MINUTE) }];
    expect(splitOf({ startedAt: epochMs(0), turns }, 3 * MINUTE)).toEqual({ handsOn: 0, waiting: 7 * MINUTE });
    expect(splitOf({ startedAt: epochMs(0), turns: [] }, -1)).toEqual({ handsOn: 0, waiting: 0 });
  });

  it('loses and invents no time, however often hands go off and on', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 90 }), { maxLength: 12 }), (pauses) => {
        let at = 0;
        const turns = pauses.map((pause, i) => {
          at += pause;
          return { to: i % 2 === 0 ? ('waiting' as const) : ('hands-on' as const), at: epochMs(at) };
        });
        const { handsOn, waiting } = splitOf({ startedAt: epochMs(0), turns }, at + 7);
        expect(handsOn + waiting).toBe(at + 7);
      }),
    );
  });
});

describe('a piece of work', () => {
  const struck = { why: 'wrong machine', at: epochMs(0) };
  const ended = { ...memoryPass, endedAt: epochMs(MINUTE) };
  it('is under way until it ends, done from then on, and neither once it was struck out', () => {
    expect([isUnderWay(memoryPass), isDone(memoryPass)]).toEqual([true, false]);
    expect([isUnderWay(ended), isDone(ended)]).toEqual([false, true]);
    expect([isUnderWay({ ...memoryPass, struck }), isDone({ ...ended, struck })]).toEqual([false, false]);
  });
  it('is on the bill, but for our own proofs and what was struck out', () => {
    expect(isCharged(ended)).toBe(true);
    expect(isCharged({ ...ended, kind: 'own-proof' })).toBe(false);
    expect(isCharged({ ...ended, struck })).toBe(false);
  });
});

it('reads a step that was logged when its outcome had another id', () => {
  const finished = { ...memoryPass, what: 'watch-start', endedAt: epochMs(MINUTE), outcome: 'np' };
  const entry = {
    stream: 'job:j',
    kind: 'work-finished',
    v: 1,
    body: finished,
    at: epochMs(MINUTE),
    by: 'bram',
    seq: 1,
  };
  const job = applyJob(aJobAt('tracing'), entry as unknown as Parameters<typeof applyJob>[1]);
  expect(job && workOf(job)).toMatchObject({ what: 'watch-start', outcome: 'no-post' });
});
