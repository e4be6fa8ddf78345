import { expect, test } from 'vitest';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { standardModel } from '../loading/standardModel.ts';
import { offerStep } from '../offer/offerStep.ts';
import { reasonFor } from '../offer/reasonFor.ts';
import type { TracingCase } from '../types.ts';
import { verdictAfter } from './verdictAfter.ts';

const model = standardModel();

/** A machine that shuts off several times a day, its inside looked at; what the bench saw at the first start. */
function shutsOff(seen = 'shuts-off', often = 'daily-several'): TracingCase {
  const told = { symptoms: ['shuts-off'], changed: [], often: [often], onlyWhen: [], rate: null };
  const looked = afterDoing(model, aTracingCase({ told }), 'look-inside', 'clean');
  return afterDoing(
    model,
    { ...looked, seen: [seen] },
    'watch-start',
    seen === 'shuts-off' ? 'fails-in-use' : 'not-shown',
  );
}

const doing = (start: TracingCase, ...log: readonly string[]): TracingCase =>
  log.reduce((tracing, one) => {
    const [step = '', outcome = ''] = one.split(':');
    return afterDoing(model, tracing, step, outcome);
  }, start);

const HOT_CARD = ['fan-look:all-turn', 'load-card:hot', 'card-paste:works'] as const;

test('a hot card that shut off now and then, given new paste, ends as mended by cleaning once its load stayed quiet', () => {
  const mended = doing(shutsOff(), ...HOT_CARD);
  expect(verdictAfter(model, mended).verdict).not.toBe('cured');
  const verdict = verdictAfter(model, doing(mended, 'load-long:quiet'));
  expect(verdict).toMatchObject({ verdict: 'cured', by: 'cleaning', fault: 'gpu-heat' });
});

test('the verdict says how often such a watch would have been quiet with the fault still there: exp(−rate × time)', () => {
  // Told: 0.5 per hour of use, a quarter of it under load, failing 4 times per load hour to 0.05 idle: so scaled, per load hour and start.
  const scale = 0.5 / (0.25 * 4 + 0.75 * 0.05);
  const away = (loadHours: number) => (1 - 0.03 * scale) * Math.exp(-4 * scale * loadHours);
  // Its own trial, 0.3 load hours: it works with 1 in 100 when it shows, 97.5 when not.
  const trial = (1 - away(0.3)) * 0.01 + away(0.3) * 0.975;
  // Three hours: found hot in 62 of 100 whether it shuts off or not; quiet 4 when it shows, else as a sound machine that is not hot.
  const watch = (1 - away(3)) * 0.04 + away(3) * ((1 - 0.62) / (1 - 0.02)) * 0.975;
  const verdict = verdictAfter(model, doing(shutsOff(), ...HOT_CARD, 'load-long:quiet'));
  if (verdict.verdict !== 'cured' || !verdict.watched) throw new Error(verdict.verdict);
  expect(verdict.watched.hours).toBeCloseTo(3.3, 9);
  expect(verdict.watched.hiddenChance).toBeCloseTo(trial * watch, 3);
});

test('told to fail only now and then in a month, hours of quiet prove nothing', () => {
  const quiet = doing(
    shutsOff('shuts-off', 'rarely'),
    'log-read:nothing',
    'profile-off:works',
    'load-long:quiet',
    'soak-idle:quiet',
  );
  expect(verdictAfter(model, quiet).verdict).not.toBe('cured');
});

test('never seen to fail here and nothing in its log: a quiet watch mends nothing', () => {
  const never = doing(
    shutsOff('fine-here'),
    'profile-off:works',
    'load-long:quiet',
    'load-long:quiet',
    'soak-idle:quiet',
  );
  expect(verdictAfter(model, never).verdict).not.toBe('cured');
});

test('it failed again in the watch: not mended', () => {
  const again = doing(shutsOff(), ...HOT_CARD, 'load-long:stops');
  expect(verdictAfter(model, again).verdict).not.toBe('cured');
  expect(verdictAfter(model, doing(again, 'load-card:quiet')).verdict).not.toBe('cured');
});

test('after the mending the plan goes on to the watch, and knows that it can end there', () => {
  const { next, others } = offerStep(model, doing(shutsOff(), ...HOT_CARD), { method: 'ratio' });
  expect(next?.step.startsWith('load-')).toBe(true);
  const watch = [next, ...others].find((one) => one?.step === 'load-long');
  expect(watch?.outcomes.some(({ outcome, ends }) => outcome === 'quiet' && ends)).toBe(true);
});

test('before the mending the plan counts on the watch after it, and says so', () => {
  const { next, others } = offerStep(model, doing(shutsOff(), ...HOT_CARD.slice(0, 2)), { method: 'ratio' });
  const paste = [next, ...others].find((one) => one?.step === 'card-paste');
  expect(paste?.facts).toContainEqual(expect.objectContaining({ fact: 'then-watch' }));
  // Its own chances are shown as they are: that the watch stays quiet is not counted into "works".
  expect(paste?.outcomes.reduce((sum, { p }) => sum + p, 0)).toBeCloseTo(1, 9);
});

test('a card found hot under load is found hot again, whether it shuts off or not', () => {
  const again = reasonFor(model, doing(shutsOff(), 'load-card:hot'), 'load-card');
  expect(again?.outcomes.find(({ outcome }) => outcome === 'hot')?.p).toBeGreaterThan(0.7);
});
