import { describe, expect, it } from 'vitest';
import { aJobAt } from '../../../tests/builders/jobAt.ts';
import type { Question } from '../../approval/question.ts';
import { DAY_MS, epochMs } from '../../time.ts';
import type { Job } from '../job.ts';
import { placed } from '../orders/order.ts';
import { phoneSentence } from './phoneSentence.ts';
import type { Outlook } from './turns.ts';

const NOW = epochMs(10 * DAY_MS);
const promisedOn = (day: number): Job['promised'] => ({
  at: epochMs(day * DAY_MS),
  p90: epochMs(day * DAY_MS),
  told: true,
});
const outlook = (lateChance: number, day: number | null = 14): Outlook => ({
  day: day === null ? null : epochMs(day * DAY_MS),
  p90: null,
  lateChance,
});
const says = (job: Job, seen: Outlook | null = null) => phoneSentence(job, seen, NOW).says;

describe('how is it?', () => {
  it('is answered by the stage, with the day that was promised', () => {
    const promised = promisedOn(12);
    expect(phoneSentence(aJobAt('proving', { promised }), null, NOW)).toEqual({
      says: 'phone-proving',
      facts: { promised: 12 * DAY_MS },
    });
    expect(phoneSentence(aJobAt('proving'), null, NOW).facts).toEqual({});
    expect(phoneSentence(aJobAt('proving', { deadline: epochMs(13 * DAY_MS) }), null, NOW).facts).toEqual({
      promised: 13 * DAY_MS,
    });
  });
  it('at tracing and fitting says whether it was found', () => {
    const verdict = { is: 'confirmed' } as Job['verdict'];
    expect([says(aJobAt('tracing')), says(aJobAt('tracing', { verdict }))]).toEqual(['phone-tracing', 'phone-found']);
    expect([says(aJobAt('fitting')), says(aJobAt('fitting', { verdict }))]).toEqual([
      'phone-fitting',
      'phone-failed-agreed',
    ]);
  });
});

describe('that it is late', () => {
  it('comes before the stage, with the likely day where there is one', () => {
    const late = aJobAt('tracing', { promised: promisedOn(9) });
    expect(phoneSentence(late, outlook(1), NOW)).toMatchObject({
      says: 'phone-is-late',
      facts: { likely: 14 * DAY_MS },
    });
    expect(says(late, outlook(1, null))).toBe('phone-is-late-open');
  });
  it('is said beforehand once it is more likely than not', () => {
    const job = aJobAt('tracing', { promised: promisedOn(12) });
    expect(says(job, outlook(0.5))).toBe('phone-tracing');
    expect(says(job, outlook(0.51))).toBe('phone-will-be-late');
    expect(says(job, outlook(0.51, null))).toBe('phone-will-be-late-open');
  });
  it('is not said while it is not ours to keep', () => {
    expect(says(aJobAt('ready', { promised: promisedOn(9) }), outlook(1))).toBe('phone-ready');
    expect(says(aJobAt('owners-word-needed', { promised: promisedOn(9) }), outlook(1))).toBe('phone-will-ask');
  });
  it('was told, where the promise that stands is a later one', () => {
    const told = (was: number | null, promised = 12) =>
      says(
        aJobAt('tracing', {
          promised: promisedOn(12),
          promisesTold: [
            {
              promised: epochMs(promised * DAY_MS),
              was: was === null ? null : epochMs(was * DAY_MS),
              how: 'phone',
              at: epochMs(0),
              by: 'mina',
            },
          ],
        }),
      );
    expect([told(11), told(13), told(null), told(11, 11)]).toEqual([
      'phone-told-later',
      'phone-tracing',
      'phone-tracing',
      'phone-tracing',
    ]);
  });
});

describe('what it waits for', () => {
  const question = (validUntil: number, more: object = {}) =>
    ({
      id: 'q',
      validUntil: epochMs(validUntil * DAY_MS),
      tries: [],
      answer: null,
      lapsed: false,
      withdrawn: false,
      ...more,
    }) as unknown as Question;
  const asked = (...questions: readonly Question[]) => says(aJobAt('owners-word-needed', { questions }));
  it('is the owner’s word while the question holds', () => {
    expect(asked(question(11))).toBe('phone-waits-for-word');
    expect(asked(question(9))).toBe('phone-will-ask');
    expect(asked(question(11, { lapsed: true }))).toBe('phone-will-ask');
  });
  it('is a part, with its day where the supplier named one', () => {
    const order = (due: number | null) =>
      placed(
        {
          order: 'o',
          what: 'board',
          supplier: 's',
          priceMinor: 1,
          due: due === null ? null : epochMs(due * DAY_MS),
          question: null,
        },
        epochMs(0),
      );
    const waits = (due: number | null) => says(aJobAt('part-on-the-way', { orders: [order(due)] }));
    expect([waits(12), waits(null)]).toEqual(['phone-part-due', 'phone-part-ordered']);
    const came = { ...order(12), received: 'ordered' as const };
    expect(says(aJobAt('part-on-the-way', { orders: [came] }))).toBe('phone-part-ordered');
  });
});
