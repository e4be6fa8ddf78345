import { describe, expect, it } from 'vitest';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { standardModel } from '../loading/standardModel.ts';
import { knownStep } from '../model/special.ts';
import { offerStep } from '../offer/offerStep.ts';
import type { TracingCase } from '../types.ts';

const model = standardModel();

const locked = (given: Partial<TracingCase> = {}): TracingCase => {
  const told = { symptoms: ['asks-key'], changed: ['fw-update'], often: ['every-time'], onlyWhen: [], rate: null };
  const machine = { ...aTracingCase().machine, encrypted: 'yes', keyInHand: false } as const;
  return afterDoing(
    model,
    { ...aTracingCase({ told, machine, ...given }), seen: ['asks-key'] },
    'watch-start',
    'stops-starting',
  );
};
const nextOf = (tracing: TracingCase) => offerStep(model, tracing, { method: 'rollout' }).next?.step;
const whyNot = (tracing: TracingCase, step: string) =>
  offerStep(model, tracing, { method: 'ratio' }).notOffered.find((one) => one.step === step)?.why;

describe('a disk that asks for its key, none in hand', () => {
  it('has its owner asked first, not its case opened', () => {
    expect(nextOf(locked())).toBe('ask-key');
  });
  it('is unlocked with the key that they read out', () => {
    expect(nextOf(afterDoing(model, locked(), 'ask-key', 'key'))).toBe('key-enter');
  });
  it('keeps its settings while there is neither key nor signature', () => {
    const none = afterDoing(model, locked(), 'ask-key', 'no-key');
    expect(whyNot(none, 'setup-default')).toEqual({ is: 'word', need: 'key-or-risk' });
    expect(whyNot(none, 'key-enter')).toEqual({ is: 'machine', need: 'key-in-hand' });
    const signed = afterDoing(model, locked(), 'ask-key', 'risk-signed');
    expect(whyNot(signed, 'setup-default')?.is).not.toBe('word');
    expect(whyNot(signed, 'key-enter')).toEqual({ is: 'machine', need: 'key-in-hand' });
  });
  it('is asked about once, and never where nothing is encrypted', () => {
    expect(whyNot(afterDoing(model, locked(), 'ask-key', 'no-key'), 'ask-key')).toEqual({ is: 'done' });
    const plain = { ...aTracingCase().machine, encrypted: 'no' } as const;
    expect(whyNot(locked({ machine: plain }), 'ask-key')).toEqual({ is: 'machine', need: 'word-lacking' });
  });
});

describe('a word that only lacks asking for', () => {
  const agreed = aTracingCase().agreed.filter((one) => one !== 'open');
  const told = { symptoms: ['no-signal'], changed: ['moved'], often: ['every-time'], onlyWhen: [], rate: null };
  const shut = aTracingCase({ told, agreed });

  it('is asked for as soon as what it opens is worth more than what can be done without', () => {
    let tracing = shut;
    for (let step = 0; step < 8; step++) {
      const next = nextOf(tracing);
      if (next === 'ask-open') return;
      const known = knownStep(model, next ?? '');
      if (!known) break;
      const same = known.outcomes.find(({ meaning }) => meaning.means === 'same') ?? known.outcomes[known.normal];
      tracing = afterDoing(model, tracing, known.id, same?.id ?? '');
    }
    throw new Error('the owner was never asked');
  });
  it('counts from the yes on, and a no or a later leaves all as it was', () => {
    expect(whyNot(shut, 'card-seat')).toEqual({ is: 'word', need: 'open' });
    expect(whyNot(afterDoing(model, shut, 'ask-open', 'yes'), 'card-seat')).toBeUndefined();
    for (const answer of ['no', 'later'])
      expect(whyNot(afterDoing(model, shut, 'ask-open', answer), 'card-seat')).toEqual({ is: 'word', need: 'open' });
  });
});
