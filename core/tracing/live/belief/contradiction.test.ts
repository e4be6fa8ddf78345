import { describe, expect, it } from 'vitest';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { standardModel } from '../loading/standardModel.ts';
import type { TracingCase } from '../types.ts';
import { contradictionOf } from './contradiction.ts';
import { posteriorOf } from './posterior.ts';

const model = standardModel();
const told = { symptoms: ['no-reaction'], changed: [], often: [], onlyWhen: [], rate: null };
const log = (...done: readonly (readonly [string, string])[]) =>
  done.reduce(
    (tracing, [step, outcome]) => afterDoing(model, tracing, step, outcome),
    aTracingCase({ told, seen: ['no-reaction'] }),
  );
const said = (tracing: TracingCase) => contradictionOf(model, tracing, posteriorOf(model, tracing));

/** The supply is dead on the tester and its rails are off, and yet it starts the machine and works on the rig. */
const ODD = log(
  ['meas-standby', 'within'],
  ['supply-alone', 'dead'],
  ['supply-beside', 'same'],
  ['wall-watts', 'standby-only'],
  ['pins-start', 'works'],
  ['rig-supply', 'works-there'],
  ['meas-rails', 'outside'],
);
const without = (tracing: TracingCase, entry: string) => ({
  ...tracing,
  log: tracing.log.map((one) => (one.entry === entry ? { ...one, struck: true } : one)),
});

describe('a log that contradicts itself', () => {
  it('is rarer than one in a thousand by what explains it best, and names the entry that does not fit', () => {
    const found = said(ODD);
    // (m + 1) ÷ (n + 1): a simulation is never quite sure.
    expect(found?.tail).toBeGreaterThanOrEqual(1 / 4001);
    expect(found?.tail).toBeLessThanOrEqual(1 / 1000);
    expect(found?.entries).toContain('e2');
    expect(new Set(found?.entries).size).toBe(2);
  });

  it('does not any more once the entry that does not fit is struck', () => {
    expect(said(without(ODD, 'e2'))).toBeNull();
  });

  it('is judged the same each time it is looked at', () => {
    expect(said(ODD)).toEqual(said(ODD));
  });
});

describe('a log that does not', () => {
  it.each([
    ['nothing was done yet', log()],
    ['one thing was found, however rare', log(['supply-alone', 'dead'])],
    ['all of it speaks of one fault', log(['meas-standby', 'no-standby'], ['supply-alone', 'dead'])],
    ['it found nothing', log(['meas-standby', 'within'], ['wall-watts', 'standby-only'])],
  ])('%s', (_what, tracing) => {
    expect(said(tracing)).toBeNull();
  });
});
