import { describe, expect, it } from 'vitest';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { standardModel } from '../loading/standardModel.ts';
import { offerStep } from '../offer/offerStep.ts';
import { openTracing } from '../openTracing.ts';
import type { StopAnswer, TracingCase } from '../types.ts';
import { handOverOf, mendingCharged } from './handOver.ts';

const model = standardModel();
const told = { symptoms: ['no-lock-light'], changed: [], often: ['every-time'], onlyWhen: [], rate: null };
const dark: TracingCase = { ...aTracingCase({ told }), seen: ['no-lock-light'] };
const owed = (money: Partial<TracingCase['money']>, from = dark): TracingCase => ({
  ...from,
  money: { ...from.money, ...money },
});
const offer = (tracing: TracingCase, of = model) => offerStep(of, tracing, { method: 'rollout' });
type HandedOver = Extract<StopAnswer, { readonly stop: 'hand-over' }>;
const stopOf = (tracing: TracingCase, of = model) => offer(tracing, of).stop as HandedOver | null;

const unknown = offer(dark);

describe('a machine that is worth little to its owner', () => {
  const little = stopOf(owed({ worthMinor: 3_000 }));

  it('is not traced further although the limit allows it, and says that it is not worth it', () => {
    expect(unknown.next).not.toBeNull();
    expect(little).toMatchObject({ stop: 'hand-over', because: 'dearer-than-worth', handOverMinutes: 3_000 / 75 });
    expect(little?.expectedMinutes).toBeGreaterThan(3_000 / 75);
  });

  it('is not kept on the bench for a long trial either, where it fails only now and then', () => {
    const freezes = { ...dark, told: { ...told, symptoms: ['freezes'] }, seen: ['freezes'] };
    expect(stopOf(owed({ worthMinor: 3_000 }, freezes))?.because).toBe('dearer-than-worth');
    expect(offer(owed({ limitMinor: 3_000 }, freezes)).next).not.toBeNull();
  });

  it('is charged for mending what is found: a cheap mend is worth looking for where a dear one is not', () => {
    const fault = (id: string) => model.faults.filter((one) => one.id === id);
    const left = handOverOf(model, owed({ worthMinor: 6_000 }));
    expect(mendingCharged(model, left, fault('board-logic'))).toBe(6_000 / 75);
    expect(mendingCharged(model, left, fault('board-cell'))).toBeLessThan(20);
    expect(mendingCharged(model, handOverOf(model, dark), fault('board-logic'))).toBe(0);
  });
});

it('nothing changes where nobody knows what it is worth, or it is worth more than could be spent', () => {
  expect(offer(owed({ worthMinor: 30_000_000 }))).toEqual(unknown);
});

it('a limit that is the tighter one is named as the reason', () => {
  const tight: TracingCase = { ...owed({ limitMinor: 2_500, worthMinor: 6_000 }), signatures: 'on-the-sheet' };
  expect(stopOf(tight)).toMatchObject({ because: 'dearer-than-limit', handOverMinutes: 2_500 / 75 });
});

describe('a limit that would end it', () => {
  const tight = owed({ limitMinor: 2_500 });
  const answered = (outcome: string) => offer(afterDoing(model, tight, 'ask-limit', outcome));

  it('is asked about before it is handed over; a yes goes on, and a no or a later ends it', () => {
    expect(offer(tight)).toMatchObject({ next: { step: 'ask-limit' }, stop: null });
    const more = answered('yes').next?.step;
    expect(more).toBeDefined();
    expect(more).not.toBe('ask-limit');
    for (const said of ['no', 'later'])
      expect(answered(said)).toMatchObject({ next: null, stop: { stop: 'hand-over', because: 'dearer-than-limit' } });
  });

  it('is a question of its own where answers stand on the sheet, and nothing to ask where none was said', () => {
    const why = (tracing: TracingCase) => offer(tracing).notOffered.find(({ step }) => step === 'ask-limit')?.why;
    const lacksNone = { is: 'machine', need: 'word-lacking' };
    for (const signatures of ['on-the-sheet', 'as-said'] as const) {
      expect(offer({ ...tight, signatures })).toMatchObject({ next: null, stop: { because: 'dearer-than-limit' } });
      expect(why({ ...tight, signatures })).toEqual(lacksNone);
    }
    expect(why(owed({ limitMinor: null }))).toEqual(lacksNone);
  });
});

it('what is spent already is gone from the limit and from the worth', () => {
  const minutes = (money: Partial<TracingCase['money']>) => handOverOf(model, owed(money)).minutes;
  expect(minutes({ worthMinor: 6_000, spentMinor: 3_000 })).toBe(3_000 / 75);
  expect(minutes({ worthMinor: 6_000, spentMinor: 9_000 })).toBe(0);
  expect(minutes({ limitMinor: 12_000, spentMinor: 3_000 })).toBe(9_000 / 75);
});

it('what is told to be left of the limit is what is left, however little handing over counts in the plan', () => {
  const said = (money: Partial<TracingCase['money']>) => handOverOf(model, owed(money)).left;
  expect(said({ limitMinor: 4_000, spentMinor: 2_625 })).toBe(1_375 / 75);
  expect(said({ limitMinor: 4_000, spentMinor: 5_000 })).toBe(0);
  expect(handOverOf(model, owed({ limitMinor: 4_000, spentMinor: 2_625 })).minutes).toBe(30);
});

it('putting it together again is in what going on would take', () => {
  const open = afterDoing(model, dark, 'look-inside', 'clean');
  const left = offer(open).openStates;
  expect(left).not.toEqual([]);
  const slower = openTracing({
    ...model,
    states: model.states.map((state) => (state.id === left[0] ? { ...state, closing: state.closing + 10 } : state)),
  });
  const poor = owed({ worthMinor: 0 }, open);
  const takes = (of: typeof model) => stopOf(poor, of)?.expectedMinutes ?? Number.NaN;
  expect(takes(slower)).toBeGreaterThanOrEqual(takes(model) + 10 - 1e-6);
});
