import { describe, expect, it } from 'vitest';
import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import { aJobAt, askingOf, viewOf } from '../../tests/builders/jobAt.ts';
import type { Agrees, OfferedPart, Question } from '../approval/question.ts';
import { noteEstimate } from '../commands/promise/noteEstimate.ts';
import { offerTotals } from '../issuing/lines/estimates.ts';
import type { Making } from '../issuing/making.ts';
import { personal } from '../journal/personal.ts';
import { epochMs, minutes } from '../time.ts';
import { applyJob } from './applyJob.ts';
import { mayCopy } from './approval/ownersYes.ts';
import { newestAnswered, recordOf } from './approval/wordOnRecord.ts';
import type { JobBodies } from './entries.ts';
import type { Estimate } from './estimate.ts';
import type { Job } from './job.ts';

const NOW = Date.UTC(2026, 10, 30, 10);
const MINUTE = 60_000;
/** The clock at each entry, in order: as it should be, ten years ahead at first, and ten years back at first. */
const CLOCKS = {
  'a clock that is right': (nth: number) => NOW + nth * MINUTE,
  'a clock that was ahead, and was put right': (nth: number) => NOW + nth * MINUTE + (nth < 4 ? 3.2e11 : 0),
  'a clock that was behind, and was put right': (nth: number) => NOW + nth * MINUTE - (nth < 4 ? 3.2e11 : 0),
  'a clock that was put back later': (nth: number) => NOW + nth * MINUTE - (nth < 4 ? 0 : 3.2e11),
};

/** A job to which things happen one after the other, by a clock. */
function story(clock: (nth: number) => number) {
  let job: Job = aJobAt('tracing');
  let nth = 0;
  const happens = <Kind extends keyof JobBodies>(
    kind: Kind,
    say: (at: ReturnType<typeof epochMs>) => JobBodies[Kind],
  ) => {
    const at = epochMs(clock(++nth));
    job = applyJob(job, { stream: `job:${job.id}`, kind, body: say(at), at, by: 'bram' } as never) ?? job;
  };
  return { happens, job: () => job };
}

const figure = (moment: Estimate['moment'], p50: number, more: Partial<Estimate> = {}): Estimate => ({
  moment,
  handsOn: { p10: minutes(20), p50: minutes(50), p90: minutes(160) },
  price: { p50, p90: 2 * p50 },
  withPart: null,
  passesLimit: 0.9,
  drivers: [],
  seed: 7,
  paths: 1000,
  policy: 'one-step',
  ...more,
});
const agrees = (data: Agrees['data'] = null): Agrees => ({
  limitMinor: null,
  items: [],
  accepts: false,
  data,
  dead: null,
  goesTo: 'back',
});
const offer = { priceMinor: 900, extras: [] } as unknown as OfferedPart;
const put =
  (id: string, kind: Question['kind'], more: Partial<Question> = {}) =>
  (at: ReturnType<typeof epochMs>): Question => ({
    id: id as Question['id'],
    kind,
    says: 'May we?',
    options: [{ id: 'so', says: 'So.', agrees: agrees() }],
    askedAt: at,
    validUntil: epochMs(at + 1000 * MINUTE),
    cameFrom: 'tracing',
    offer: null,
    tries: [],
    answer: null,
    lapsed: false,
    withdrawn: false,
    ...more,
  });
const said =
  (question: string) =>
  (at: ReturnType<typeof epochMs>): JobBodies['answered'] => ({
    question: question as Question['id'],
    answer: {
      options: ['so'],
      name: personal('record', 'judith', 'Judith Amberley'),
      how: { by: 'writing', at, file: null, words: personal('record', 'judith', 'So.') },
      heardBy: 'bram',
      at,
    },
  });
const noted = (job: Job, of: Estimate) => {
  const decision = noteEstimate.decide(viewOf(job), { job: job.id, ...of } as never, askingOf(50));
  return decision.ok
    ? decision.entries.flatMap((one) => (one.kind === 'stage-entered' ? one.body.stage : []))
    : decision;
};

describe.each(Object.entries(CLOCKS))('by %s', (_which, clock) => {
  it('an answer after the first figure of what was seen is the owner’s word on cost, one before it is none', () => {
    const { happens, job } = story(clock);
    happens('question-put', put('q1', 'spend'));
    happens('answered', said('q1'));
    happens('estimated', () => figure('seen', 4000));
    expect(noted(job(), figure('step', 4000))).toEqual(['owners-word-needed']);
    happens('question-put', put('q2', 'spend'));
    happens('answered', said('q2'));
    expect(noted(job(), figure('step', 4000))).toEqual([]);
  });

  it('a stop of which the owner was not asked is lifted by a figure that fits; one they were asked of stays', () => {
    const { happens, job } = story(clock);
    happens('question-put', put('q1', 'data-first'));
    happens('estimated', () => figure('step', 4000, { policy: 'ratio' }));
    happens('stage-entered', () => ({ stage: 'owners-word-needed', why: 'no-longer-fits' }));
    expect(noted(job(), figure('step', 4000, { passesLimit: 0.1 }))).toEqual(['tracing']);
    happens('question-put', put('q2', 'changed-finding'));
    expect(noted(job(), figure('step', 4000, { passesLimit: 0.1 }))).toEqual([]);
  });

  it('the newest answer about their data holds', () => {
    const { happens, job } = story(clock);
    const about = (data: Agrees['data']) => ({ options: [{ id: 'so', says: 'So.', agrees: agrees(data) }] });
    happens('question-put', put('q2', 'data-first', about('leave')));
    happens('question-put', put('q1', 'data-first', about('copy')));
    happens('answered', said('q1'));
    happens('answered', said('q2'));
    expect(mayCopy(job())).toBe(false);
    happens('answered', said('q1'));
    expect(mayCopy(job())).toBe(true);
  });

  it('the last word on record is the one given last that stands, with the record that came out with it', () => {
    const { happens, job } = story(clock);
    const record = (number: string) => () => ({ kind: 'owners-word-record', number, supersedes: null });
    happens('question-put', put('q1', 'spend'));
    happens('question-put', put('q2', 'spend'));
    happens('answered', said('q2'));
    happens('paper-named', record('OWR-1'));
    happens('answered', said('q1'));
    happens('paper-named', () => ({ kind: 'estimate', number: 'E-1', supersedes: null }));
    happens('paper-named', record('OWR-2'));
    const recorded = () => {
      const question = newestAnswered(job());
      return question && [question.id, recordOf(job(), question)?.number];
    };
    expect(recorded()).toEqual(['q1', 'OWR-2']);
    happens('word-withdrawn', () => ({ question: 'q1' as Question['id'] }));
    expect(recorded()).toEqual(['q2', 'OWR-1']);
    happens('word-withdrawn', () => ({ question: 'q2' as Question['id'] }));
    expect(recorded()).toBeNull();
  });

  it('an offer is told with the work as it was reckoned when it was put, not later', () => {
    const { happens, job } = story(clock);
    happens('estimated', () => figure('seen', 4000));
    happens('estimated', () => figure('step', 5000));
    happens('question-put', put('q1', 'offer', { offer }));
    happens('estimated', () => figure('step', 9000));
    const view = viewOf(job());
    const totals = offerTotals({ job: job(), view, settings: shopOf.settings } as unknown as Making);
    expect(totals?.p50).toMatchObject({ minor: 5900 });
  });
});
