import { describe, expect, it } from 'vitest';
import { aJobAt, askingOf, judith, viewOf } from '../../tests/builders/jobAt.ts';
import { noConsents } from '../approval/consent.ts';
import { startWork } from '../commands/bench/work/startWork.ts';
import type { View } from '../entries/view.ts';
import type { JobId } from '../ids.ts';
import type { Job } from '../job/job.ts';
import { personal } from '../journal/personal.ts';
import { epochMs, minutes } from '../time.ts';
import { liveTracing } from '../tracing/live/liveTracing.ts';
import { standardModel } from '../tracing/live/loading/standardModel.ts';
import { tracingDoorFor } from './tracingDoorFor.ts';

/* What holds a proof as it holds a step: common practice, no source. */
const tracing = tracingDoorFor(liveTracing, standardModel());

const signature = {
  name: personal('contact', judith.id, 'Judith Amberley'),
  drawn: null,
  typed: true,
  at: epochMs(0),
  contentHash: 'a'.repeat(64),
};

type Bench = { readonly told: readonly string[]; readonly log?: readonly string[]; readonly stage?: Job['stage'] };

function bench({ told, log = [], stage = 'proving' }: Bench): View & { readonly job: Job } {
  const plain = aJobAt(stage, { consents: { ...noConsents, answers: { open: 'yes', copy: 'yes' }, signature } });
  const done = log.map((line, at): Job['work'][number] => {
    const [what = '', outcome = ''] = line.split(':');
    return {
      run: `r${at}`,
      kind: 'step',
      what,
      by: 'bram',
      startedAt: epochMs(at),
      turns: [],
      endedAt: epochMs(at),
      outcome,
      handsOn: minutes(1),
      waiting: minutes(0),
      readings: [],
      passed: null,
      note: null,
      loaners: [],
      took: [],
      leftOut: [],
      struck: null,
    };
  });
  const before = plain.before && { ...plain.before, encryption: 'no' as const };
  const job = { ...plain, before, told: { ...plain.told, symptoms: [...told], changed: [] }, work: done };
  return { ...viewOf(job), job };
}

/** Pressing start at a proof, by the command's own door. */
function pressing(what: string, on: Bench, ownWord: string | null = null, kind: 'proof' | 'cleaning' = 'proof') {
  const use = { loaner: null, slots: [], parts: [] };
  const input = { job: 'j' as JobId, kind, what, startedAt: epochMs(5000), tray: '1', use, ownWord };
  const decision = startWork.decide(bench(on), input, { ...askingOf(), tracing });
  return decision.ok ? 'begun' : decision.refusal.refused;
}

describe('a proof is held by what it does, as a step is', () => {
  it('it banged and nobody looked inside: no mains, but on the technician’s own word', () => {
    expect(pressing('card-load', { told: ['smoke-bang'] })).toBe('gate-not-passed');
    expect(pressing('first-start', { told: ['smell'] })).toBe('gate-not-passed');
    expect(pressing('card-load', { told: ['smell'] }, 'looked inside at the counter')).toBe('begun');
    expect(pressing('card-load', { told: ['smell'], log: ['look-inside:clean'] })).toBe('begun');
  });
  it('a fan stands: it is started, and not loaded', () => {
    const log = ['look-inside:clean', 'fan-look:fan-still'];
    expect(pressing('processor-load', { told: ['hot'], log })).toBe('gate-not-passed');
    expect(pressing('first-start', { told: ['hot'], log })).toBe('begun');
  });
  it('a short was measured: no first start before it measured gone', () => {
    const log = ['look-inside:clean', 'meas-coils:short', 'short-which:still'];
    expect(pressing('first-start', { told: ['twitch-off'], log })).toBe('gate-not-passed');
    expect(pressing('first-start', { told: ['twitch-off'], log: [...log, 'short-cleared:cleared'] })).toBe('begun');
  });
  it('a ransom is asked for: nobody starts its system to prove anything, whatever they say', () => {
    expect(pressing('cold-starts', { told: ['ransom'] })).toBe('gate-for-nobody');
    expect(pressing('cold-starts', { told: ['ransom'] }, 'I am sure')).toBe('gate-for-nobody');
  });
  it('cleaning gives it no power, and is begun', () => {
    expect(pressing('filters-and-blades', { told: ['smell'] }, null, 'cleaning')).toBe('begun');
  });
  it('a proof that nobody has written down is taken to do all that proofs do', () => {
    expect(pressing('some-proof', { told: ['smoke-bang'] })).toBe('gate-not-passed');
  });
});
