import { describe, expect, it } from 'vitest';
import { changed, step } from '../../../../tests/builders/brokenModel.ts';
import { afterDoing, aTracingCase, WALL } from '../../../../tests/builders/tracingCase.ts';
import { standardModel } from '../loading/standardModel.ts';
import type { TracingCase } from '../types.ts';
import { offerStep } from './offerStep.ts';

const model = standardModel();
const noBoard = WALL.filter((one) => one.kind !== 'board');

/** A dark machine on which everything cheap was tried; what the wall holds and what the owner agreed to beside the usual. */
function dark(stock = WALL, ...word: readonly string[]): TracingCase {
  const { agreed } = aTracingCase();
  const told = { symptoms: ['no-lock-light'], changed: [], often: ['every-time'], onlyWhen: [], rate: null };
  const start: TracingCase = {
    ...aTracingCase({ told, stock, agreed: [...agreed, ...word] }),
    seen: ['no-lock-light'],
  };
  return [
    'look-inside:clean',
    'watch-start:no-post',
    'strip-outside:same',
    'meas-rails:within',
    'rails-again:within',
    'dimm-loan:same',
    'cmos-clear:same',
    'card-none:same',
    'drives-off:same',
    'meas-coils:fine',
    'cpu-look:fine',
  ].reduce((tracing, line) => {
    const [id = '', outcome = ''] = line.split(':');
    return afterDoing(model, tracing, id, outcome);
  }, start);
}

/** What is offered of a case, looked at once. */
const offer = (tracing: TracingCase) => {
  const { next, others, notOffered, proposals } = offerStep(model, tracing, { method: 'ratio' });
  return {
    offered: [next, ...others].flatMap((view) => view?.step ?? []),
    proposals,
    proposed: proposals.map((one) => one.step),
    why: (id: string) => notOffered.find((one) => one.step === id)?.why,
  };
};
const onTheWall = offer(dark());
const noneOfOurs = offer(dark(noBoard));
const agreed = offer(dark(noBoard, 'order-to-try', 'send-out'));

describe('a part ordered to try', () => {
  const order = noneOfOurs.proposals.find((one) => one.step === 'board-order');

  it('is proposed where none of ours would do, and says that the owner’s word is needed', () => {
    expect(order).toMatchObject({ need: 'order-to-try' });
    expect(order?.waiting).toBeGreaterThan(24 * 60);
    expect(noneOfOurs.offered).not.toContain('board-order');
    expect(noneOfOurs.why('board-order')).toEqual({ is: 'word', need: 'order-to-try' });
  });

  it('is asked for as a step where the answer counts from the log, and by a question of its own where it does not', () => {
    const bench = dark(noBoard);
    const asked = (outcome: string) => offer(afterDoing(model, bench, 'ask-order-to-try', outcome));
    expect(noneOfOurs.why('ask-order-to-try')).toBeUndefined();
    expect(asked('yes').why('board-order')).toBeUndefined();
    expect(asked('no').why('board-order')).toEqual({ is: 'word', need: 'order-to-try' });
    const sheet = offer({ ...bench, signatures: 'on-the-sheet' });
    expect(sheet.why('ask-order-to-try')).toEqual({ is: 'machine', need: 'word-lacking' });
    expect(sheet.proposed).toContain('board-order');
  });

  it('is not while one of ours is on the wall', () => {
    expect(onTheWall.proposed).not.toContain('board-order');
    expect(onTheWall.why('board-order')).toEqual({ is: 'own-first', kind: 'board' });
  });

  it('can be done once the owner said yes; the days of waiting count', () => {
    expect(agreed.why('board-order')).toBeUndefined();
    expect(agreed.proposed).not.toContain('board-order');
    const soon = offer({ ...dark(noBoard), delay: { dayMinutes: 30, daysLeft: 1 } });
    const promised = soon.proposals.find((one) => one.step === 'board-order');
    expect((promised?.cost ?? 0) - (order?.cost ?? 0)).toBeCloseTo(60, 9);
    const loan = model.steps.find((one) => one.id === 'board-loan');
    expect(order?.cost).toBeGreaterThan((loan?.handsOn ?? 0) + 60);
  });
});

describe('a part sent out', () => {
  it('is proposed with its week of waiting, and is begun by the owner’s word only', () => {
    expect(onTheWall.proposals).toContainEqual(
      expect.objectContaining({ step: 'board-send', need: 'send-out', waiting: 7 * 24 * 60 }),
    );
    expect(onTheWall.why('board-send')).toEqual({ is: 'word', need: 'send-out' });
    expect(agreed.why('board-send')).toBeUndefined();
  });

  it('is not proposed where what it is about is not suspected', () => {
    expect(onTheWall.proposed).not.toContain('card-send');
  });
});

describe('the model', () => {
  it('is refused with an order that does not say what is ordered, or takes no word', () => {
    const noPart = changed((files) => delete step(files, 'board-order').handling.orders);
    expect(noPart).toMatchObject({
      file: 'steps.json',
      field: expect.stringMatching(/board-order\.handling\.orders$/),
    });
    const noWord = changed((files) => {
      step(files, 'board-send').needs = ['open', 'risk'];
    });
    expect(noWord).toMatchObject({ file: 'steps.json', field: expect.stringMatching(/board-send\.needs$/) });
  });
});
