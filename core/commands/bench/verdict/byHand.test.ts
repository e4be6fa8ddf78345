import { describe, expect, it } from 'vitest';
import { fewSteps } from '../../../../tests/builders/desk.ts';
import { aJobAt, askingOf, judith, viewOf } from '../../../../tests/builders/jobAt.ts';
import type { TracingDoor } from '../../../bench/tracingDoor.ts';
import { applyJob } from '../../../job/applyJob.ts';
import type { JobVerdict } from '../../../job/entries.ts';
import { personal } from '../../../journal/personal.ts';
import { epochMs } from '../../../time.ts';
import { judge } from './judge.ts';
import { leaveSo } from './leaveSo.ts';
import { nameFault } from './nameFault.ts';
import { thinkItIs } from './thinkItIs.ts';

const job = aJobAt('tracing');
const slotFault: Partial<TracingDoor> = { fault: () => ({ part: 'board', oneOf: 'slot' }) };
const asking = (door: Partial<TracingDoor> = {}) => ({ ...askingOf(), tracing: { ...fewSteps, ...door } });
const why = 'The same model came in twice with just this.';

describe('a fault named by hand', () => {
  const naming = (door: Partial<TracingDoor> = {}, more: object = {}) => {
    const input = nameFault.input.parse({ job: job.id, fault: 'dimm-slot', part: null, why, ...more });
    const decision = nameFault.decide({ ...viewOf(job), job }, input, asking(door));
    return decision.ok ? decision.entries : decision.refusal;
  };

  it('is written with its reason, whatever the log shows, and folds with who named it', () => {
    const entries = naming();
    if ('refused' in entries) throw new Error(entries.refused);
    const [entry] = entries;
    expect(entry).toMatchObject({
      kind: 'judged',
      body: { is: 'named', fault: 'dimm-slot', byHand: { why: personal('record', judith.id, why) } },
    });
    const after = applyJob(job, { ...entry, at: epochMs(5), by: 'bram' } as Parameters<typeof applyJob>[1]);
    expect(after).toMatchObject({ judgedBy: 'bram', verdict: { is: 'named' } });
  });

  it('is refused without a reason, and for a fault or a part that is not there', () => {
    expect(nameFault.input.safeParse({ job: job.id, fault: 'dimm-slot', part: null, why: ' ' }).success).toBe(false);
    expect(naming({ fault: () => null })).toEqual({ refused: 'no-such-fault', fault: 'dimm-slot' });
    expect(naming({}, { part: 'nobody-knows' })).toEqual({ refused: 'no-such-part', part: 'nobody-knows' });
  });

  it('waits for what safety asks for first', () => {
    const copy = { gate: 'g', steps: [{ step: 'drive-image', why: null }] };
    expect(naming({ owed: () => [copy] })).toEqual({ refused: 'owed-before-verdict', steps: ['drive-image'] });
  });

  it('of one of several says which, or leaves it open', () => {
    expect(naming(slotFault)).toEqual({ refused: 'which-one', of: 'slot', fault: 'dimm-slot' });
    expect(naming(slotFault, { which: 'B2' })).toMatchObject([{ body: { which: { of: 'slot', id: 'B2' } } }]);
    expect(naming(slotFault, { which: null })).toMatchObject([{ body: { which: { of: 'slot', id: null } } }]);
  });
});

it('a verdict by the log names only what the log names', () => {
  const verdict = { is: 'named' as const, fault: 'dimm-slot', part: null };
  const judged = (shows: ReturnType<TracingDoor['verdict']>, which?: string | null) => {
    const input = judge.input.parse({ job: job.id, verdict: { ...verdict, ...(which !== undefined && { which }) } });
    const decision = judge.decide({ ...viewOf(job), job }, input, asking({ ...slotFault, verdict: () => shows }));
    return decision.ok ? decision.entries.map(({ body }) => body) : decision.refusal;
  };
  const named = {
    verdict: 'named',
    part: 'board',
    fault: 'dimm-slot',
    p: 0.9,
    pFault: 0.9,
    also: [],
    evidence: [],
  } as const;
  expect(judged({ verdict: 'tracing' }, 'B2')).toEqual({
    refused: 'not-named-by-the-log',
    fault: 'dimm-slot',
    shows: 'tracing',
  });
  expect(judged({ ...named, confirmBy: [] })).toEqual({ refused: 'which-one', of: 'slot', fault: 'dimm-slot' });
  expect(judged({ ...named, confirmBy: [] }, 'B2')).toEqual([{ ...verdict, which: { of: 'slot', id: 'B2' } }]);
});

describe('one of several that is dead', () => {
  const leaving = (verdict: JobVerdict | null) => {
    const found = { ...job, verdict };
    const input = leaveSo.input.parse({ job: job.id, says: 'Runs on one module; agreed by telephone.' });
    const decision = leaveSo.decide({ ...viewOf(found), job: found }, input, asking());
    return decision.ok ? decision.entries.map(({ kind }) => kind) : decision.refusal;
  };

  it('may be left so, and what works is proved next', () => {
    const which = { of: 'slot', id: 'B2' } as const;
    expect(leaving({ is: 'named', fault: 'dimm-slot', part: null, which })).toEqual(['judged', 'stage-entered']);
  });

  it('is left so only once it was found', () => {
    expect(leaving(null)).toEqual({ refused: 'nothing-to-leave-so', verdict: null });
    expect(leaving({ is: 'named', fault: 'psu-dead', part: null })).toEqual({
      refused: 'nothing-to-leave-so',
      verdict: 'named',
    });
  });
});

describe('“I think it is …”', () => {
  const thinking = (fault: string | null, of = job, door: Partial<TracingDoor> = {}) => {
    const decision = thinkItIs.decide({ ...viewOf(of), job: of }, { job: job.id, fault }, asking(door));
    return decision.ok ? decision.entries.map(({ body }) => body) : decision.refusal;
  };

  it('is kept beside what was likeliest by the model then', () => {
    expect(thinking('psu-dead')).toEqual([{ fault: 'psu-dead', engine: { fault: 'dimm-dead', p: 0.5 } }]);
  });

  it('can be taken back once it was said, and names a fault that is known', () => {
    expect(thinking(null)).toEqual({ refused: 'nothing-thought-yet', job: job.id });
    const said = { fault: 'psu-dead', engine: null, at: epochMs(1), by: 'bram' };
    expect(thinking(null, { ...job, thoughts: [said] })).toMatchObject([{ fault: null }]);
    expect(thinking('gremlin', job, { fault: () => null })).toEqual({ refused: 'no-such-fault', fault: 'gremlin' });
  });
});
