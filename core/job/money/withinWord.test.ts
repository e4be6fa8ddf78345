import { describe, expect, it } from 'vitest';
import { aJobAt } from '../../../tests/builders/jobAt.ts';
import type { QuestionId } from '../../ids.ts';
import { epochMs, minutes } from '../../time.ts';
import type { Job } from '../job.ts';
import { placed } from '../orders/order.ts';
import { committedMinor, limitRefusal, minutesBeyondWord, withWorkDone } from './withinWord.ts';

/** On the bench under a limit of 120.00, at 0.75 a minute, with a finding fee of 30.00: 160 minutes are its limit. */
const onTheBench = (says: Partial<Job> = {}): Job => aJobAt('fitting', says);
const fitting = { run: 'r1', kind: 'fitting', what: 'fit-memory' } as const;
const after = (job: Job, handsOn: number): Job => withWorkDone(job, fitting, minutes(handsOn));
const refused = (job: Job, handsOn: number) => limitRefusal(job, after(job, handsOn), fitting.what);

const ordered = (priceMinor: number, question: string | null = null) =>
  placed(
    {
      order: 'o1',
      what: 'board',
      supplier: 'Fennimore',
      priceMinor,
      due: null,
      question: question as QuestionId | null,
    },
    epochMs(0),
  );

describe('the owner’s limit', () => {
  it('is not passed by what comes to it to the penny', () => {
    expect(refused(onTheBench(), 160)).toBeNull();
  });

  it('refuses the first penny beyond, with what is spent, what it would come to and what asked', () => {
    expect(refused(onTheBench(), 160.02)).toEqual({
      refused: 'limit-would-be-passed',
      limitMinor: 12_000,
      spentMinor: 3000,
      withStepMinor: 12_002,
      step: 'fit-memory',
    });
  });

  it('holds nothing up that costs no more than before, although it was passed already', () => {
    const passed = after(onTheBench({ limitMinor: 5000 }), 100);
    expect(limitRefusal(passed, passed, 'fit-memory')).toBeNull();
    expect(limitRefusal(passed, after(passed, 90), 'fit-memory')).toBeNull();
    expect(limitRefusal(passed, after(passed, 101), 'fit-memory')).not.toBeNull();
  });

  it('that was raised by what is asked for is the one that counts', () => {
    const job = onTheBench();
    expect(limitRefusal(job, { ...after(job, 200), limitMinor: 15_000 }, 'fit-memory')).toBeNull();
  });

  it('is none where the job is free of charge', () => {
    expect(refused(onTheBench({ charging: 'free' }), 1000)).toBeNull();
  });
});

describe('the most the owner could be asked for', () => {
  it('is the finding fee while the work comes to less, and the work from then on', () => {
    expect(committedMinor(after(onTheBench(), 39))).toBe(3000);
    expect(committedMinor(after(onTheBench(), 41))).toBe(3075);
  });

  it('counts what was ordered for them without asking, not what they were asked about or what was called off', () => {
    expect(committedMinor(onTheBench({ orders: [ordered(4000)] }))).toBe(7000);
    expect(committedMinor(onTheBench({ orders: [ordered(4000, 'q1')] }))).toBe(3000);
    expect(committedMinor(onTheBench({ orders: [{ ...ordered(4000), agreedBy: 'q2' as QuestionId }] }))).toBe(3000);
    expect(committedMinor(onTheBench({ orders: [{ ...ordered(4000), cancelled: 'sold out' }] }))).toBe(3000);
  });

  it('leaves storage out, and nothing else that was booked', () => {
    const storage = { is: 'storage', days: 10, minor: 2000, taxPermille: null } as unknown as Job['booked'][number];
    const paste = { is: 'small-part', what: 'paste', priceMinor: 350 } as unknown as Job['booked'][number];
    const job = after(onTheBench(), 100);
    expect(committedMinor({ ...job, booked: [storage, paste] })).toBe(7500 + 350);
  });
});

describe('minutes beyond the owner’s word', () => {
  it('are none up to the limit, and all that came after it', () => {
    expect(minutesBeyondWord(onTheBench(), fitting, minutes(160))).toBe(0);
    expect(minutesBeyondWord(onTheBench(), fitting, minutes(170))).toBeCloseTo(10, 6);
  });

  it('are told to a hundredth, upwards: the covered ones never pass the limit', () => {
    const job = onTheBench({ limitMinor: 10_001 });
    const beyond = minutesBeyondWord(job, fitting, minutes(140));
    expect(beyond).toBeCloseTo(6.65, 6);
    expect(committedMinor(withWorkDone(job, fitting, minutes(140), beyond))).toBe(10_001);
  });

  it('are all of them where nothing is left', () => {
    const spent = withWorkDone(onTheBench(), { ...fitting, run: 'r0' }, minutes(160));
    expect(minutesBeyondWord(spent, fitting, minutes(12))).toBe(12);
  });
});

describe('work as if it had been done', () => {
  it('takes the place of what is under way by the same run, and else comes on top', () => {
    const begun = after(onTheBench(), 10);
    expect(after(begun, 30).work.map(({ handsOn }) => handsOn)).toEqual([30]);
    const beside = withWorkDone(begun, { ...fitting, run: 'r2' }, minutes(5));
    expect(beside.work.map(({ run, handsOn }) => [run, handsOn])).toEqual([
      ['r1', 10],
      ['r2', 5],
    ]);
  });
});
