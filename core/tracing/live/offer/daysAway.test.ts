import { describe, expect, it } from 'vitest';
import { changed, step } from '../../../../tests/builders/brokenModel.ts';
import { afterDoing, aTracingCase, WALL } from '../../../../tests/builders/tracingCase.ts';
import { standardModel } from '../model/standardModel.ts';
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
    'watch-start:np',
    'strip-outside:same',
    'meas-rails:within',
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

const offer = (tracing: TracingCase) => offerStep(model, tracing, { method: 'ratio' });
const offered = (tracing: TracingCase) => {
  const { next, others } = offer(tracing);
  return [next, ...others].flatMap((view) => view?.step ?? []);
};
const why = (tracing: TracingCase, id: string) => offer(tracing).notOffered.find((one) => one.step === id)?.why;

describe('a part ordered to try', () => {
  it('is proposed where none of ours would do, and says that the owner’s word is needed', () => {
    const { proposals } = offer(dark(noBoard));
    const order = proposals.find((one) => one.step === 'board-order');
    expect(order).toMatchObject({ need: 'order-to-try' });
    expect(order?.waiting).toBeGreaterThan(24 * 60);
    expect(offered(dark(noBoard))).not.toContain('board-order');
    expect(why(dark(noBoard), 'board-order')).toEqual({ is: 'word', need: 'order-to-try' });
  });

  it('is not while one of ours is on the wall', () => {
    expect(offer(dark()).proposals.map((one) => one.step)).not.toContain('board-order');
    expect(why(dark(), 'board-order')).toEqual({ is: 'own-first', kind: 'board' });
  });

  it('can be done once the owner said yes; the days of waiting count', () => {
    const agreed = dark(noBoard, 'order-to-try');
    expect(why(agreed, 'board-order')).toBeUndefined();
    expect(offer(agreed).proposals.map((one) => one.step)).not.toContain('board-order');
    const order = offer(dark(noBoard)).proposals.find((one) => one.step === 'board-order');
    const loan = model.steps.find((one) => one.id === 'board-loan');
    expect(order?.cost).toBeGreaterThan((loan?.handsOn ?? 0) + 60);
  });
});

describe('a part sent out', () => {
  it('is proposed with its week of waiting, and is begun by the owner’s word only', () => {
    expect(offer(dark()).proposals).toContainEqual(
      expect.objectContaining({ step: 'board-send', need: 'send-out', waiting: 7 * 24 * 60 }),
    );
    expect(why(dark(), 'board-send')).toEqual({ is: 'word', need: 'send-out' });
    expect(why(dark(WALL, 'send-out'), 'board-send')).toBeUndefined();
  });

  it('is not proposed where what it is about is not suspected', () => {
    const steps = offer(dark()).proposals.map((one) => one.step);
    expect(steps).not.toContain('card-send');
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
