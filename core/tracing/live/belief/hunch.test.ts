import { expect, it } from 'vitest';
import { changed } from '../../../../tests/builders/brokenModel.ts';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { standardModel } from '../loading/standardModel.ts';
import type { TracingCase } from '../types.ts';
import { suspectsOf } from './belief.ts';
import { posteriorOf } from './posterior.ts';

/* A technician's hunch makes its fault three times likelier, once: common practice, no source. */
const model = standardModel();
const odds = (tracing: TracingCase, fault: string) => {
  const p = suspectsOf(model, posteriorOf(model, tracing, false)).find((one) => one.fault === fault)?.p ?? 0;
  return p / (1 - p);
};
const dark = aTracingCase();

it.each(['cpu-dead', 'dimm-seat', 'psu-good'])(
  'a hunch for %s triples its odds, before the log and after it',
  (fault) => {
    const looked = afterDoing(model, dark, 'look-inside', 'clean');
    for (const tracing of [dark, looked])
      expect(odds({ ...tracing, hunch: fault }, fault) / odds(tracing, fault)).toBeCloseTo(3, 6);
  },
);

it('a hunch is outweighed by what is measured', () => {
  const shown = afterDoing(model, { ...dark, hunch: 'psu-good' }, 'meas-rails', 'within');
  expect(odds(shown, 'psu-good')).toBeLessThan(odds(dark, 'psu-good'));
});

it('a model in which a hunch speaks against its fault is refused', () => {
  const against = changed((files) => {
    files['told.json'].hunch.times = 0.5;
  });
  expect(against).toMatchObject({ file: 'told.json' });
});
