import { describe, expect, it } from 'vitest';
import { judith } from '../../tests/builders/jobAt.ts';
import type { QuestionId } from '../ids.ts';
import { personal } from '../journal/personal.ts';
import { epochMs } from '../time.ts';
import {
  type Agrees,
  chosenOf,
  isOpen,
  limitAfter,
  limitByAnswers,
  movesLimit,
  type Question,
  type QuestionOption,
} from './question.ts';

const option = (id: string, agrees: Partial<Agrees> = {}): QuestionOption => ({
  id,
  says: id,
  agrees: { limitMinor: null, items: [], accepts: false, data: null, dead: null, goesTo: 'back', ...agrees },
});
const held = (words: string) => personal('record', judith.id, words);

/** A question with these options, asked at noon; answered with some of them at a moment, or not. */
function asked(options: readonly QuestionOption[], chosen: readonly string[] | null, at = 1): Question {
  return {
    id: `q${at}` as QuestionId,
    kind: 'spend',
    says: 'May we?',
    options,
    askedAt: epochMs(0),
    validUntil: epochMs(100),
    cameFrom: 'tracing',
    offer: null,
    tries: [],
    answer: chosen && {
      options: chosen,
      name: held('Judith'),
      how: { by: 'writing', at: epochMs(at), file: null, words: held('Yes.') },
      heardBy: 'mina',
      at: epochMs(at),
    },
    lapsed: false,
    withdrawn: false,
  };
}

describe('the limit after a yes', () => {
  it('stays where nothing was named', () => {
    expect(limitAfter(12_000, [])).toBe(12_000);
    expect(limitAfter(12_000, [option('go-on')])).toBe(12_000);
  });

  it('is the one that was named, lower ones too; of several the last', () => {
    expect(limitAfter(12_000, [option('more', { limitMinor: 20_000 })])).toBe(20_000);
    expect(limitAfter(12_000, [option('less', { limitMinor: 0 })])).toBe(0);
    expect(limitAfter(12_000, [option('more', { limitMinor: 20_000 }), option('go-on')])).toBe(20_000);
    expect(limitAfter(12_000, [option('a', { limitMinor: 20_000 }), option('b', { limitMinor: 15_000 })])).toBe(15_000);
  });

  it('is raised by all that was agreed to in part, on top of what holds or was named', () => {
    const [board, fan] = [option('board', { raisesMinor: 8000 }), option('fan', { raisesMinor: 1500 })];
    expect(limitAfter(12_000, [board])).toBe(20_000);
    expect(limitAfter(12_000, [board, fan])).toBe(21_500);
    expect(limitAfter(12_000, [board, option('named', { limitMinor: 5000 })])).toBe(13_000);
  });

  it('moves with an option that names or raises one, and with no other', () => {
    expect(movesLimit(option('named', { limitMinor: 0 }))).toBe(true);
    expect(movesLimit(option('raised', { raisesMinor: 1 }))).toBe(true);
    expect(movesLimit(option('raised by nothing', { raisesMinor: 0 }))).toBe(false);
    expect(movesLimit(option('neither'))).toBe(false);
  });
});

describe('the limit by all answers', () => {
  const to = (limitMinor: number) => option('yes', { limitMinor });
  const by = (raisesMinor: number) => option('yes', { raisesMinor });

  it('goes on from answer to answer as they stand in a row, whatever the clock said at each', () => {
    const [raised, named] = [asked([by(5000)], ['yes'], 1), asked([to(20_000)], ['yes'], 2)];
    expect(limitByAnswers(12_000, [raised, named])).toBe(20_000);
    expect(limitByAnswers(12_000, [named, raised])).toBe(25_000);
  });

  it('is the one said at the counter while nothing was chosen, or what was given was taken back', () => {
    expect(limitByAnswers(12_000, [])).toBe(12_000);
    expect(limitByAnswers(12_000, [asked([to(20_000)], null), asked([to(20_000), option('no')], ['no'])])).toBe(12_000);
    expect(limitByAnswers(12_000, [{ ...asked([to(20_000)], ['yes']), withdrawn: true }])).toBe(12_000);
  });
});

describe('a question', () => {
  it('has those options chosen that the answer names; none before it is answered', () => {
    const options = [option('board'), option('fan'), option('neither')];
    expect(chosenOf(asked(options, ['fan', 'board'])).map(({ id }) => id)).toEqual(['board', 'fan']);
    expect(chosenOf(asked(options, null))).toEqual([]);
  });

  it('waits for its answer until it has one, lapsed, or was taken back', () => {
    const waiting = asked([option('yes')], null);
    expect(isOpen(waiting)).toBe(true);
    expect(isOpen(asked([option('yes')], []))).toBe(false);
    expect(isOpen({ ...waiting, lapsed: true })).toBe(false);
    expect(isOpen({ ...waiting, withdrawn: true })).toBe(false);
  });
});
