import { expect, it } from 'vitest';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { suspectsOf } from '../belief/belief.ts';
import { posteriorOf } from '../belief/posterior.ts';
import { standardModel } from '../loading/standardModel.ts';
import type { TracingCase } from '../types.ts';
import { blamed, inShort, remediesOf } from './inShort.ts';
import { offerStep } from './offerStep.ts';

// How a technician would say it on the telephone: common practice, no source.

const model = standardModel();
const told = { symptoms: ['dark-runs'], changed: [], often: ['every-time'], onlyWhen: [], rate: null };
const dark = ['look-inside:clean', 'watch-start:no-post', 'read-code:memory'].reduce<TracingCase>(
  (tracing, line) => {
    const [id = '', outcome = ''] = line.split(':');
    return afterDoing(model, tracing, id, outcome);
  },
  { ...aTracingCase({ told }), seen: ['no-lock-light'] },
);
const suspects = suspectsOf(model, posteriorOf(model, dark));

it('names what is likeliest with all its faults together, and the cheapest step that would end it there', () => {
  const offer = offerStep(model, dark, { method: 'rollout' });
  const { likeliest, proof } = inShort(offer, blamed(model, suspects));
  const ofPart = suspects.reduce(
    (sum, { fault, p }) =>
      model.faults.some((one) => one.id === fault && one.part === likeliest?.part) ? sum + p : sum,
    0,
  );
  expect(likeliest?.p).toBeCloseTo(Math.min(1, ofPart), 9);
  const views = [...(offer.next ? [offer.next] : []), ...offer.others];
  const ending = views.filter(({ outcomes }) => outcomes.some(({ ends, p }) => ends && p >= 0.02));
  expect(ending.map(({ step }) => step)).toContain(proof?.step);
});

it('a remedy with a dear part costs more than one by hand, and is told from one in twenty', () => {
  const remedies = remediesOf(model, suspects);
  const costOf = (part: string) => remedies.find((one) => one.part === part)?.minutes ?? 0;
  expect(remedies.every(({ p }) => p >= 0.05 && p <= 1)).toBe(true);
  expect(remedies.map(({ p }) => p)).toEqual(remedies.map(({ p }) => p).toSorted((a, b) => b - a));
  expect(costOf('dimm')).toBeGreaterThan(costOf('contact'));
});
