import { describe, expect, it } from 'vitest';
import { aJobAt, judith, viewOf } from '../../tests/builders/jobAt.ts';
import { type ConsentId, noConsents } from '../approval/consent.ts';
import type { Question } from '../approval/question.ts';
import type { QuestionId } from '../ids.ts';
import { takenInFirst } from '../job/came.ts';
import type { Job } from '../job/job.ts';
import { newWork, type Work } from '../job/work.ts';
import { personal } from '../journal/personal.ts';
import { epochMs } from '../time.ts';
import { lackingWords } from '../tracing/live/gates/ownersWords.ts';
import { liveTracing } from '../tracing/live/liveTracing.ts';
import { standardModel } from '../tracing/live/loading/standardModel.ts';
import { tracingCase } from './tracingCase.ts';
import { tracingDoorFor } from './tracingDoorFor.ts';

const door = tracingDoorFor(liveTracing, standardModel());
const name = personal('contact', judith.id, 'Judith Amberley');
const signature = { name, drawn: null, typed: true, at: epochMs(0), contentHash: 'a'.repeat(64) };

/** Consents answered yes and signed, those that want it by a signature of their own. */
const consents = (...yes: ConsentId[]): Job['consents'] => ({
  ...noConsents,
  answers: Object.fromEntries(yes.map((id) => [id, 'yes' as const])),
  signature,
  own: Object.fromEntries(yes.map((id) => [id, signature])),
});
/** A step at which the owner was asked, and what they said. */
const asked = (what: string, outcome: string): Work => ({
  ...newWork({ run: what, kind: 'step', what, by: 'bram', startedAt: epochMs(0) }),
  endedAt: epochMs(1),
  outcome,
});
const lacking = (step: string, over: Partial<Job>) => {
  const job = aJobAt('tracing', over);
  return door.lacking({ ...viewOf(job), job }, step);
};

const agrees = { limitMinor: null, items: [], accepts: false, dead: null, goesTo: 'back' } as const;
/** The owner's answer to what becomes of their data. */
const answered = (data: 'copy' | 'leave', at: number): Question => ({
  id: `q${at}` as QuestionId,
  kind: 'data-first',
  says: 'And your data?',
  options: [{ id: 'so', says: 'So', agrees: { ...agrees, data } }],
  askedAt: epochMs(0),
  validUntil: epochMs(100),
  cameFrom: 'tracing',
  offer: null,
  tries: [],
  answer: { options: ['so'], name, how: { by: 'counter', signature }, heardBy: 'bram', at: epochMs(at) },
  lapsed: false,
  withdrawn: false,
});

it('a word that was said when the owner was asked at the bench is there', () => {
  expect(lacking('card-seat', { consents: consents() })).toEqual(['open']);
  expect(lacking('card-seat', { consents: consents(), work: [asked('ask-open', 'no')] })).toEqual(['open']);
  expect(lacking('card-seat', { consents: consents(), work: [asked('ask-open', 'yes')] })).toEqual([]);
  expect(lacking('card-seat', { consents: consents('open') })).toEqual([]);
});

it('what wants a signature of its own is promised by word of mouth, and not given', () => {
  const open = { consents: consents('open') };
  expect(lacking('leak-source', { ...open, work: [asked('ask-risk', 'yes')] })).toEqual(['risk']);
  expect(lacking('leak-source', { consents: consents('open', 'risk') })).toEqual([]);
  expect(lacking('setup-default', { work: [asked('ask-key', 'risk-signed')] })).toEqual(['key-or-risk']);
  expect(lacking('setup-default', { consents: consents('risk-key') })).toEqual([]);
  expect(lacking('setup-default', { work: [asked('ask-key', 'key')] })).toEqual([]);
});

describe('that they will sign', () => {
  const open = { consents: consents('open') };
  const said = [asked('ask-risk', 'yes')];
  /** What the tracing itself says keeps the step back: the Bench reads this, a start reads `lacking`. */
  const heldBy = (over: Partial<Job>) => {
    const job = aJobAt('tracing', over);
    const model = standardModel();
    const step = model.steps.find(({ id }) => id === 'leak-source');
    if (!step) throw new Error('no such step');
    return lackingWords(model, tracingCase({ ...viewOf(job), job }), step);
  };

  it('counts for the tracing as little as for a start, until it stands on the sheet', () => {
    expect(heldBy({ ...open, work: said })).toEqual(lacking('leak-source', { ...open, work: said }));
    expect(heldBy({ ...open, work: said })).toEqual(['risk']);
    const signed = { consents: consents('open', 'risk'), work: said };
    expect(heldBy(signed)).toEqual([]);
    expect(lacking('leak-source', signed)).toEqual([]);
  });
});

it('the newest answer about their data goes before the sheet', () => {
  const sheet = { consents: consents('copy') };
  expect(lacking('drive-image', sheet)).toEqual([]);
  expect(lacking('drive-image', { ...sheet, questions: [answered('leave', 1)] })).toEqual(['copy']);
  const came = { ...takenInFirst, answered: { q1: 5, q2: 6 } };
  expect(lacking('drive-image', { came, questions: [answered('copy', 2), answered('leave', 1)] })).toEqual([]);
});
