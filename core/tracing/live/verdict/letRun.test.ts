import { expect, it } from 'vitest';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { standardModel } from '../loading/standardModel.ts';
import { offerStep } from '../offer/offerStep.ts';
import type { TracingCase } from '../types.ts';

// What runs is left alone: common practice, no source.

const model = standardModel();
const told = {
  symptoms: ['error-in-use'],
  changed: ['sys-update'],
  often: ['daily-several'],
  onlyWhen: [],
  rate: null,
};

const doing = (...lines: readonly string[]): TracingCase =>
  [
    'look-inside:clean',
    'watch-start:fails-in-use',
    'log-read:driver',
    'drive-health:clean',
    ...lines,
  ].reduce<TracingCase>(
    (tracing, line) => {
      const [id = '', outcome = ''] = line.split(':');
      return afterDoing(model, tracing, id, outcome);
    },
    { ...aTracingCase({ told }), seen: ['error-in-use'] },
  );

const onOffer = (tracing: TracingCase): readonly string[] => {
  const { next, others } = offerStep(model, tracing, { method: 'rollout' });
  return [next, ...others].flatMap((view) => view?.step ?? []);
};

it('an update that was taken back and runs is watched: no driver is set up anew on top of it', () => {
  expect(onOffer(doing('undo-update:works'))).not.toContain('driver-anew');
});

it('where it failed again, the driver is the next thing', () => {
  expect(onOffer(doing('undo-update:same'))).toContain('driver-anew');
});
