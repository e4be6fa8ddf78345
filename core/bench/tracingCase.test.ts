import { describe, expect, it } from 'vitest';
import { aJobAt, viewOf } from '../../tests/builders/jobAt.ts';
import { applyJob } from '../job/applyJob.ts';
import type { Job } from '../job/job.ts';
import { withWorkDone } from '../job/money/withinWord.ts';
import type { Currency } from '../money/money.ts';
import { epochMs, minutes } from '../time.ts';
import { tracingCase } from './tracingCase.ts';
import type { JobView } from './tracingDoor.ts';

const view = { ...viewOf(aJobAt('tracing')), job: aJobAt('tracing') } as JobView;
/** A Tuesday in winter, when the invented shop closes at six. */
const at = (time: string) => tracingCase(view, undefined, epochMs(Date.parse(`2026-03-10T${time}:00Z`))).untilClosing;

it('knows how long the shop is still open, in quarters of an hour', () => {
  expect(at('17:35')).toBe(15);
  expect(at('17:31')).toBe(15);
  expect(at('15:00')).toBe(180);
});

it('makes nothing of the hour when somebody stayed on purpose, or where it was not asked', () => {
  expect(at('20:00')).toBeNull();
  expect(tracingCase(view).untilClosing).toBeNull();
});

describe('what is spent', () => {
  const spent = (feeCredited: boolean, over: Partial<Job> = {}) => {
    const job = aJobAt('tracing', {
      terms: { currency: 'GBP' as Currency, tax: { permille: 0, inside: true }, feeCredited, feeCoversMinutes: 0 },
      ...over,
    });
    return tracingCase({ ...view, job }).money.spentMinor;
  };

  it('has the finding fee in it from the beginning where that comes on top, and once only', () => {
    expect(spent(true)).toBe(0);
    expect(spent(false)).toBe(3000);
    const looked = withWorkDone(aJobAt('tracing'), { run: 'r', kind: 'step', what: 'look' }, minutes(10)).work;
    expect(spent(false, { work: looked })).toBe(3000 + 10 * 75);
    expect(spent(true, { work: looked })).toBe(10 * 75);
  });
});

it('takes over what the machine is worth, told at the counter or later', () => {
  const worth = (worthMinor: number | null) =>
    tracingCase({ ...view, job: aJobAt('tracing', { worthMinor }) }).money.worthMinor;
  expect([worth(30_000), worth(null), tracingCase(view).money.worthMinor]).toEqual([30_000, null, null]);
  const later = applyJob(view.job, {
    stream: 'job:j',
    kind: 'worth-told',
    body: { worthMinor: 9_000 },
    at: epochMs(1),
    by: 'bram',
  });
  expect(later && tracingCase({ ...view, job: later }).money.worthMinor).toBe(9_000);
});

it('takes over what the owner’s own parts are known to be worth, the dearest of a kind; a price of nothing is none', () => {
  const inside = { A1: ['dimm', 4_000], A2: ['dimm', 9_000], CPU: ['processor', 0], GPU: ['card', undefined] } as const;
  const parts = Object.entries(inside).map(([id, [kind, valueMinor]]) => {
    const standing = { is: 'unproved', why: 'theirs' };
    const part = { id, kind, belongs: { to: 'owner' }, place: { at: 'slot' }, standing, attributes: { valueMinor } };
    return [id, part] as const;
  });
  const machine = { ...view.machine, atTakingIn: Object.fromEntries(parts.map(([id]) => [id, id])) };
  const seen = tracingCase({ ...view, machine, parts: new Map(parts) } as never);
  expect(seen.machine.valuesMinor).toEqual({ dimm: 9_000 });
});

it('knows the days to the promised one by the shop’s calendar, and what a day costs there', () => {
  const promised = { at: epochMs(Date.parse('2026-03-12T09:00:00Z')), p90: epochMs(0), told: true };
  const late = (at: string, over: Partial<Job>) =>
    tracingCase({ ...view, job: aJobAt('tracing', over) }, undefined, epochMs(Date.parse(at))).delay;
  expect(late('2026-03-10T17:30:00Z', { promised })).toEqual({ dayMinutes: 30, daysLeft: 2 });
  expect(late('2026-03-12T17:30:00Z', { promised }).daysLeft).toBe(0);
  expect(late('2026-03-13T08:00:00Z', { promised }).daysLeft).toBe(-1);
  expect(late('2026-03-13T08:00:00Z', {}).daysLeft).toBeNull();
});
