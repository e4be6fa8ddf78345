import { describe, expect, it } from 'vitest';
import { aJobAt, judith } from '../../../tests/builders/jobAt.ts';
import { type Consents, noConsents } from '../../approval/consent.ts';
import type { Signature } from '../../approval/signature.ts';
import type { PartAnswer } from '../../custody/ownersWord.ts';
import type { PartId } from '../../ids.ts';
import { personal } from '../../journal/personal.ts';
import { epochMs } from '../../time.ts';
import type { Job } from '../job.ts';
import { answerForPart, wordForPart } from './partAnswer.ts';

const [board, drive] = ['board' as PartId, 'drive' as PartId];
const signature: Signature = {
  name: personal('signature', judith.id, 'Judith'),
  drawn: null,
  typed: true,
  contentHash: 'a'.repeat(64),
  at: epochMs(0),
};
const sheet = (answers: Consents['answers'], own: Consents['own'] = {}): Consents => ({
  ...noConsents,
  answers,
  signature,
  own,
});
/** An answer given for one part; another option stood beside it. */
const answered = (part: PartId, answer: PartAnswer, more: object = {}) => ({
  options: [
    { id: 'it', says: '', agrees: { dead: { part, answer } } },
    { id: 'else', says: '', agrees: { dead: { part, answer: 'scrap' } } },
  ],
  answer: { options: ['it'] },
  withdrawn: false,
  ...more,
});
const job = (consents: Consents, ...questions: readonly object[]): Job =>
  aJobAt('tracing', { consents, questions: questions as unknown as Job['questions'] });

describe('what becomes of a part of theirs', () => {
  it('is what the sheet says of dead parts, until they answer for that part', () => {
    expect(answerForPart(job(sheet({ dead: 'keep' })), board, false)).toBe('keep');
    expect(answerForPart(job(sheet({ dead: 'keep' }), answered(board, 'send')), board, false)).toBe('send');
    expect(answerForPart(job(sheet({ dead: 'keep' }), answered(drive, 'send')), board, false)).toBe('keep');
  });

  it('is the last answer that stands', () => {
    const [first, second] = [answered(board, 'send'), answered(board, 'back')];
    expect(answerForPart(job(sheet({}), first, second), board, false)).toBe('back');
    expect(answerForPart(job(sheet({}), first, { ...second, withdrawn: true }), board, false)).toBe('send');
    expect(answerForPart(job(sheet({}), { ...first, answer: null }), board, false)).toBe('back');
  });

  it('is the answer given last, not the one to what was asked last', () => {
    const crossed = job(
      sheet({}),
      answered(board, 'back', { id: 'asked-first' }),
      answered(board, 'scrap', { id: 'asked-last' }),
    );
    const came = (first: number, last: number) => ({
      ...crossed,
      came: { ...crossed.came, answered: { 'asked-first': first, 'asked-last': last } },
    });
    expect(answerForPart(came(7, 6), board, false)).toBe('back');
    expect(answerForPart(came(6, 7), board, false)).toBe('scrap');
  });

  it('that holds data never follows what was said of dead parts: it is sent by a signature of its own, else it comes back', () => {
    expect(answerForPart(job(sheet({ dead: 'keep' })), drive, true)).toBe('back');
    expect(answerForPart(job(sheet({ 'data-parts': 'send' })), drive, true)).toBe('back');
    expect(answerForPart(job(sheet({ 'data-parts': 'send' }, { 'data-parts': signature })), drive, true)).toBe('send');
    expect(answerForPart(job(sheet({}), answered(drive, 'scrap')), drive, true)).toBe('scrap');
  });

  it('is destroyed by a yes of its own alone', () => {
    expect(wordForPart(job(sheet({ destroy: 'yes' })), drive, true).destroy).toBe(false);
    expect(wordForPart(job(sheet({ destroy: 'yes' }, { destroy: signature })), drive, true)).toEqual({
      answer: 'back',
      destroy: true,
      outAndBack: false,
    });
  });
});
