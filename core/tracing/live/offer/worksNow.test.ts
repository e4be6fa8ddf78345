import { expect, test } from 'vitest';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { standardModel } from '../loading/standardModel.ts';
import type { Method, TracingCase } from '../types.ts';
import { verdictAfter } from '../verdict/verdictAfter.ts';
import { offerStep } from './offerStep.ts';

const model = standardModel();
const ratio = { method: 'ratio' as Method };

function machine(told: string, often: string, seen: string): TracingCase {
  const says = { symptoms: [told], changed: [], often: [often], onlyWhen: [], rate: null };
  return { ...afterDoing(model, aTracingCase({ told: says }), 'look-inside', 'clean'), seen: [seen] };
}

const doing = (start: TracingCase, steps: readonly (readonly [step: string, outcome: string, stays?: boolean])[]) =>
  steps.reduce(
    (tracing, [step, outcome, stays = false]) => afterDoing(model, tracing, step, outcome, { stays }),
    start,
  );

test('where nothing was taken out, nothing is put back', () => {
  const fine = doing(machine('shuts-off', 'daily-several', 'fine-here'), [['watch-start', 'not-shown']]);
  const { next, others, notOffered } = offerStep(model, fine, ratio);
  expect([next, ...others].map((one) => one?.step)).not.toContain('put-back');
  expect(notOffered).toContainEqual({ step: 'put-back', why: { is: 'machine', need: 'named-part' } });
});

test('a machine that works again after handling is tried once more before it is handed over', () => {
  const dark = machine('no-reaction', 'every-time', 'no-reaction');
  const works = doing(dark, [
    ['watch-start', 'no-reaction'],
    ['look-mains', 'fine'],
    ['supply-alone', 'holds'],
    ['pins-start', 'same'],
    ['meas-coils', 'fine'],
    ['supply-beside', 'works', true],
    ['put-back', 'works'],
  ]);
  expect(offerStep(model, works, ratio).stop?.stop).not.toBe('hand-over');
});

test('with our cord and outlet it works and with nothing of the machine changed: what was wrong stands outside', () => {
  // On the owner's own cord so far: what the bench itself supplied would hardly be at fault.
  const dark = { ...machine('no-reaction', 'every-time', 'no-reaction'), seen: [] };
  const works = doing(dark, [
    ['wall-watts', 'nothing'],
    ['look-mains', 'fine'],
    ['supply-alone', 'holds'],
    ['pins-start', 'works', true],
    ['meas-standby', 'within'],
    ['drain-start', 'works'],
  ]);
  expect(verdictAfter(model, works)).toMatchObject({ verdict: 'cured', by: 'outside', fault: 'mains-off' });
});

test('what fails only now and then is tried to be made to fail before it is handed over', () => {
  let shutsOff = doing(machine('shuts-off', 'daily-several', 'shuts-off'), [
    ['watch-start', 'fails-in-use'],
    ['log-read', 'driver'],
    ['rig-card', 'works-there'],
    ['rig-dimms', 'works-there'],
  ]);
  for (let steps = 0; steps < 40; steps++) {
    const { next } = offerStep(model, shutsOff, ratio);
    const step = model.steps.find(({ id }) => id === next?.step);
    if (!step) break;
    shutsOff = afterDoing(model, shutsOff, step.id, step.outcomes[step.normal]?.id ?? '');
  }
  const kinds = shutsOff.log.map((entry) => model.steps.find(({ id }) => id === entry.step)?.kind);
  expect(kinds).toContain('load');
});
