import { expect, it } from 'vitest';
import { fewSteps } from '../../../tests/builders/desk.ts';
import { aJobAt, askingOf, judith, viewOf } from '../../../tests/builders/jobAt.ts';
import { noConsents } from '../../approval/consent.ts';
import type { JobId } from '../../ids.ts';
import { personal } from '../../journal/personal.ts';
import { epochMs } from '../../time.ts';
import type { Owed } from '../../tracing/live/types.ts';
import { judge } from './verdict/judge.ts';
import { nameFault } from './verdict/nameFault.ts';
import { decideStart } from './work/startWork.ts';

const signature = {
  name: personal('contact', judith.id, 'Judith Amberley'),
  drawn: null,
  typed: true,
  at: epochMs(0),
  contentHash: 'a'.repeat(64),
};
const job = aJobAt('tracing', { consents: { ...noConsents, answers: { open: 'yes' }, signature } });

/** Starting a step that a gate holds; `forSomebody`: the technician's own word may open it. */
function starting(forSomebody: boolean, ownWord: string | null) {
  const tracing = { ...fewSteps, gates: () => [{ gate: 'g', first: ['look-inside'], ownWord: forSomebody }] };
  const input = {
    job: 'j' as JobId,
    kind: 'step' as const,
    what: 'look',
    startedAt: epochMs(5000),
    tray: '1',
    use: { loaner: null, slots: [], parts: [] },
    ownWord,
  };
  const decision = decideStart({ ...viewOf(job), job }, input, { ...askingOf(), tracing });
  return decision.ok ? decision.entries.map(({ body }) => body) : decision.refusal.refused;
}

it('a gate is passed on the technician’s own word, and the reason is kept with the work', () => {
  expect(starting(true, null)).toBe('gate-not-passed');
  expect(starting(true, 'seen dry an hour ago')).toContainEqual(
    expect.objectContaining({ what: 'look', ownWord: personal('record', judith.id, 'seen dry an hour ago') }),
  );
});

it('where data or the owner’s word would be hurt, nobody’s own word opens it', () => {
  expect(starting(false, null)).toBe('gate-for-nobody');
  expect(starting(false, 'I am sure')).toBe('gate-for-nobody');
});

it('a verdict waits for what safety asks for first, and handing the machine over does not', () => {
  const copy = (why: Owed['steps'][number]['why']): Owed => ({ gate: 'g', steps: [{ step: 'drive-image', why }] });
  const judging = (owed: readonly Owed[], is: 'named' | 'given-up') => {
    const asking = { ...askingOf(), tracing: { ...fewSteps, owed: () => owed } };
    const about = { ...viewOf(job), job };
    const decision =
      is === 'named'
        ? nameFault.decide(about, { job: job.id, fault: 'drive-media', part: null, why: 'it clicks' }, asking)
        : judge.decide(about, { job: job.id, verdict: { is, left: ['the owner takes it as it is'] } }, asking);
    return decision.ok ? 'judged' : decision.refusal;
  };
  expect(judging([copy(null)], 'named')).toEqual({ refused: 'owed-before-verdict', steps: ['drive-image'] });
  expect(judging([], 'named')).toBe('judged');
  expect(judging([copy(null)], 'given-up')).toBe('judged');
  const noDrive = copy({ is: 'no-loaner', kind: 'drive', because: 'none' });
  expect(judging([noDrive], 'named')).toEqual({ refused: 'owed-cannot-be-done', owed: [noDrive] });
  expect(judging([noDrive], 'given-up')).toBe('judged');
});
