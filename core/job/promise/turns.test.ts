import { describe, expect, it } from 'vitest';
import { anEstimate } from '../../../tests/builders/anEstimate.ts';
import { aJobAt, shopSettings } from '../../../tests/builders/jobAt.ts';
import { fromWall } from '../../calendar.ts';
import type { JobId, StaffId } from '../../ids.ts';
import { epochMs, HOUR_MS } from '../../time.ts';
import type { Job } from '../job.ts';
import type { ShopSettings } from '../shop.ts';
import { newWork, type Work } from '../work.ts';
import { NEW_JOB, outlooks } from './turns.ts';

/** One pair of hands, every day from nine to six; the shop's day is a Monday's noon. */
const open = [0, 1, 2, 3, 4, 5, 6].map((weekday) => ({ weekday, from: '09:00', to: '18:00' }));
const settings: ShopSettings = { ...shopSettings, open, benches: ['bench 1'] };
const staff = [{ id: 'bram' as StaffId, name: 'Bram', roles: ['bench' as const] }];
const now = fromWall('2026-10-05T12:00', settings.zone);
const job = (id: string, stage: Job['stage'], hours: number, more: Partial<Job> = {}): Job =>
  aJobAt(stage, {
    id: id as JobId,
    takenInAt: epochMs(1),
    estimates: [{ ...anEstimate(hours * 60), moment: 'seen', at: epochMs(0) } as unknown as Job['estimates'][number]],
    ...more,
  });
const seen = (jobs: readonly Job[], fresh: { p10: number; p50: number; p90: number } | null = null) =>
  outlooks(jobs, { settings, staff }, now, fresh);
const dayOf = (jobs: readonly Job[], id: string) => seen(jobs).get(id)?.day ?? Number.POSITIVE_INFINITY;
const promised = (hoursFromNow: number): Pick<Job, 'promised'> => ({
  promised: { at: epochMs(now + hoursFromNow * HOUR_MS), p90: epochMs(now), told: true },
});
const proof: Work = {
  ...newWork({ run: 'p', kind: 'proof', what: 'memory-pass', by: 'bram', startedAt: epochMs(0) }),
  endedAt: epochMs(1),
  passed: true,
};

describe('the turn of each job', () => {
  it('is by what was promised first, then as they came', () => {
    const [early, late] = [job('b', 'tracing', 20, promised(24)), job('a', 'tracing', 20, promised(48))];
    expect(dayOf([late, early], 'b')).toBeLessThan(dayOf([late, early], 'a'));
    const [came, after] = [job('b', 'tracing', 20), job('a', 'tracing', 20, { takenInAt: epochMs(2) })];
    expect(dayOf([after, came], 'b')).toBeLessThan(dayOf([after, came], 'a'));
    expect(dayOf([came, late], 'a')).toBeLessThan(dayOf([came, late], 'b'));
  });
  it('is none for what is ready or gone; a machine not taken in yet comes last', () => {
    const here = job('b', 'tracing', 20);
    const told = seen([here, job('r', 'ready', 5), job('g', 'gone-home', 5)], { p10: 30, p50: 60, p90: 120 });
    expect([...told.keys()]).toEqual(['b', NEW_JOB]);
    expect(told.get('b')?.lateChance).toBeNull();
  });
});

describe('what it still takes', () => {
  /** Surely late where it has to wait for that, surely in time where not: due in four hours, an hour's work. */
  const lateChance = (one: Job) => seen([{ ...one, ...promised(4) }]).get(one.id)?.lateChance ?? null;
  it('is a proof, until one held that stands; what goes home as it came needs none', () => {
    const due = (more: Partial<Job>, stage: Job['stage'] = 'proving') => lateChance(job('b', stage, 1, more)) ?? 0;
    const unproved = due({});
    expect(due({ work: [proof] })).toBeLessThan(unproved);
    expect(due({ work: [{ ...proof, struck: { why: 'wrong machine', at: epochMs(2) } }] })).toBe(unproved);
    for (const passed of [false, null]) expect(due({ work: [{ ...proof, passed }] })).toBe(unproved);
    expect(due({}, 'home-as-it-came')).toBeLessThan(unproved);
  });
  it('is waiting for a part, unless it is being fitted or proved already', () => {
    const estimates = [
      { ...anEstimate(60), mustOrder: 1, moment: 'seen', at: epochMs(0) } as unknown as Job['estimates'][number],
    ];
    const waits = (stage: Job['stage']) => lateChance(job('b', stage, 1, { estimates, work: [proof] })) ?? 0;
    expect(waits('tracing')).toBeGreaterThan(0.9);
    expect(waits('fitting')).toBeLessThan(0.5);
    expect(waits('proving')).toBeLessThan(0.5);
  });
});
