import { describe, expect, it } from 'vitest';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { suspectsOf } from '../belief/belief.ts';
import { posteriorOf } from '../belief/posterior.ts';
import { standardModel } from '../loading/standardModel.ts';
import { offerStep } from '../offer/offerStep.ts';
import type { TracingCase } from '../types.ts';
import { lastWord } from './lastWord.ts';

// How a job is closed when there is nothing left to try: common practice, no source.

const model = standardModel();

function bench(told: string, seen: string, only: readonly string[], ...done: readonly string[]): TracingCase {
  const given = { symptoms: [told], changed: [], often: ['every-time'], onlyWhen: only, rate: null };
  return done.reduce<TracingCase>(
    (tracing, line) => {
      const [id = '', outcome = ''] = line.split(':');
      return afterDoing(model, tracing, id, outcome);
    },
    { ...aTracingCase({ told: given }), seen: [seen] },
  );
}

function said(tracing: TracingCase) {
  const posterior = posteriorOf(model, tracing);
  return lastWord({ model, tracing, posterior, suspects: suspectsOf(model, posterior) });
}

describe('with nothing left to do', () => {
  it('nothing done is nothing known', () => {
    expect(said(bench('no-signal', 'fine-here', []))).toBeNull();
  });

  it('what works on our screen, and fails on theirs, lies outside the machine', () => {
    const theirs = bench(
      'no-signal',
      'fine-here',
      ['only-home'],
      'look-picture:fine',
      'look-inside:clean',
      'watch-start:not-shown',
      'own-things:fails',
      'strip-outside:works',
    );
    expect(said(theirs)).toMatchObject({ verdict: 'cured', by: 'outside' });
  });

  it('what never failed here was not seen to fail: that is said, with what may have stayed hidden', () => {
    const fine = bench('games-stutter', 'fine-here', [], 'watch-start:not-shown', 'load-card:quiet');
    const verdict = said(fine);
    expect(verdict).toMatchObject({ verdict: 'not-reproduced' });
    expect(verdict?.verdict === 'not-reproduced' && verdict.hiddenChance).toBeGreaterThan(0.02);
  });

  it('a disk whose key nobody has is named as that', () => {
    const locked = bench('asks-key', 'asks-key', [], 'watch-start:stops-starting', 'ask-key:no-key');
    const asked: TracingCase = { ...locked, machine: { ...locked.machine, encrypted: 'yes', keyInHand: false } };
    expect(said(asked)).toMatchObject({ verdict: 'named', part: 'software', fault: 'disk-locked' });
  });

  it('a part is not named while others are about as likely', () => {
    expect(said(bench('dark-runs', 'no-lock-light', [], 'look-inside:clean', 'watch-start:no-post'))).toBeNull();
  });
});

describe('what the owner did not give', () => {
  it('is why it is handed over', () => {
    const unsure = bench('settings-lost', 'settings-lost', [], 'watch-start:stops-starting', 'cell-measure:good');
    const refused: TracingCase = { ...unsure, agreed: [] };
    const asked = ['ask-open:no', 'ask-read:no', 'ask-start-own:no', 'ask-write:no', 'ask-key:no-key'].reduce(
      (tracing, line) => {
        const [id = '', outcome = ''] = line.split(':');
        return afterDoing(model, tracing, id, outcome);
      },
      refused,
    );
    const { next, stop } = offerStep(model, asked, { method: 'ratio' });
    expect([next?.step ?? null, stop?.stop]).not.toEqual([null, null]);
    if (stop?.stop === 'hand-over') expect(stop.because).toBe('declined');
  });
});
