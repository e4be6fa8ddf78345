import { describe, expect, it } from 'vitest';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { standardModel } from '../loading/standardModel.ts';
import type { TracingCase } from '../types.ts';
import { verdictAfter } from '../verdict/verdictAfter.ts';
import { offerStep } from './offerStep.ts';

// What an experienced technician would call silly or dangerous: common practice, no source.

const model = standardModel();

/** A machine told and seen like this, looked into, its first start watched, and what was done then: "step:outcome". */
function bench(told: string, seen: string, group: string, ...done: readonly string[]): TracingCase {
  const often = group === 'not-shown' ? 'daily-several' : 'every-time';
  const given = { symptoms: [told], changed: [], often: [often], onlyWhen: [], rate: null };
  return ['look-inside:clean', `watch-start:${group}`, ...done].reduce<TracingCase>(
    (tracing, line) => {
      const [id = '', outcome = ''] = line.split(':');
      return afterDoing(model, tracing, id, outcome);
    },
    { ...aTracingCase({ told: given }), seen: [seen] },
  );
}

const offered = (tracing: TracingCase) => {
  const { next, others } = offerStep(model, tracing, { method: 'ratio' });
  return [next, ...others].flatMap((view) => view?.step ?? []);
};
const gateOf = (tracing: TracingCase, step: string) => {
  const why = offerStep(model, tracing, { method: 'ratio' }).notOffered.find((one) => one.step === step)?.why;
  return why?.is === 'gate' ? why.gate : null;
};

describe('a machine that has not failed here yet', () => {
  const works = offered(bench('shuts-off', 'fine-here', 'not-shown'));

  it('is not taken apart: nothing comes out, nothing is swapped or set', () => {
    for (const step of ['card-loan', 'rig-card', 'rig-dimms', 'card-none', 'press-plugs', 'profile-off', 'cool-again'])
      expect(works).not.toContain(step);
  });

  it('has no suspect to put back', () => {
    expect(works).not.toContain('put-back');
  });

  it('is taken apart once it failed under load', () => {
    expect(
      offerStep(model, bench('shuts-off', 'fine-here', 'not-shown', 'load-both:stops'), { method: 'ratio' }).notOffered,
    ).not.toContainEqual({ step: 'rig-card', why: { is: 'machine', need: 'failed-here' } });
  });
});

describe('what does less comes first', () => {
  const step = (id: string) => model.steps.find((one) => one.id === id);

  it('the slots are looked at before modules move, and the whole census is not needed for it', () => {
    const stutters = (...done: readonly string[]) => bench('games-stutter', 'games-stutter', 'software', ...done);
    expect(gateOf(stutters(), 'dimm-right')).toBe('wrong-slot-seen');
    expect(gateOf(stutters('slots-look:as-manual'), 'dimm-right')).toBe('wrong-slot-seen');
    expect(offerStep(model, stutters('slots-look:wrong-slot'), { method: 'ratio' }).next?.step).toBe('dimm-right');
    expect(step('slots-look')?.handsOn).toBeLessThan(step('census')?.handsOn ?? 0);
  });

  it('where several drives hang on it, each is tried alone; of one there is nothing to tell apart', () => {
    const stuck = bench('stuck-logo', 'stuck-logo', 'stops-starting', 'strip-outside:same');
    const two = { ...stuck, machine: { ...stuck.machine, drives: 2 } };
    expect(offered(two)).toContain('drive-each');
    expect(offered(stuck)).not.toContain('drive-each');
    const other = verdictAfter(model, afterDoing(model, two, 'drive-each', 'another'));
    expect(other).toMatchObject({ part: 'drive' });
    expect(verdictAfter(model, afterDoing(model, two, 'drive-each', 'systems')).verdict).toBe('tracing');
  });

  it('a picture that was seen to be wrong needs no code of a board that shows none', () => {
    expect(offered(bench('flicker', 'flicker', 'no-picture'))).toContain('read-code');
    expect(offered(bench('flicker', 'flicker', 'picture-wrong'))).not.toContain('read-code');
  });

  it('what hung outside goes back without the panel', () => {
    const { next, others } = offerStep(model, bench('no-boot-device', 'no-boot-device', 'no-system'), {
      method: 'ratio',
    });
    expect([next, ...others].some((view) => view?.step === 'put-back')).toBe(false);
    const closed = ['watch-start:no-system', 'strip-outside:works'].reduce<TracingCase>(
      (tracing, line) => {
        const [id = '', outcome = ''] = line.split(':');
        return afterDoing(model, tracing, id, outcome, { stays: id === 'strip-outside' });
      },
      {
        ...aTracingCase({
          told: { symptoms: ['no-boot-device'], changed: [], often: ['every-time'], onlyWhen: [], rate: null },
        }),
        seen: ['no-boot-device'],
      },
    );
    const back = offerStep(model, closed, { method: 'ratio' });
    expect(back.next).toMatchObject({ step: 'put-back', moves: [] });
    const again = verdictAfter(model, afterDoing(model, closed, 'put-back', 'fails-again'));
    expect(again).toMatchObject({ verdict: 'cured', by: 'outside' });
  });
});

describe('a riser and a picture that comes and goes', () => {
  const told = { symptoms: ['flicker'], changed: [], often: ['daily-several'], onlyWhen: ['load'], rate: null };
  const plain = aTracingCase({ told });
  const start = { ...plain, seen: ['flicker'], machine: { ...plain.machine, riser: true } };
  const log = ['look-inside:clean', 'watch-start:picture-wrong', 'strip-outside:same'];
  const at = log.reduce<TracingCase>((tracing, line) => {
    const [id = '', outcome = ''] = line.split(':');
    return afterDoing(model, tracing, id, outcome);
  }, start);

  it('the card is watched straight in the board, and quiet for so long names the riser', () => {
    expect(offered(at)).toContain('riser-watched');
    const quiet = afterDoing(model, at, 'riser-watched', 'quiet', { stays: true });
    expect(verdictAfter(model, quiet)).toMatchObject({ verdict: 'named', part: 'riser' });
    expect(verdictAfter(model, afterDoing(model, at, 'riser-watched', 'fails')).verdict).toBe('tracing');
  });

  it('no machine without one is offered it', () => {
    expect(offered({ ...at, machine: { ...at.machine, riser: false } })).not.toContain('riser-watched');
  });
});

describe('the owner’s drive', () => {
  const stuck = (...done: readonly string[]) => bench('error-at-start', 'error-at-start', 'stops-starting', ...done);

  it('is written to only after its own health was read', () => {
    expect(gateOf(stuck(), 'mend-start')).toBe('read-before-system-written');
    expect(gateOf(stuck('drive-health:clean'), 'mend-start')).toBeNull();
  });

  it('is copied first when it is failing: not started, not read through, not written to', () => {
    const failing = stuck('drive-health:warning');
    for (const step of ['mend-start', 'drive-read', 'start-bare']) expect(gateOf(failing, step)).toMatch(/cop/);
    expect(gateOf(stuck('drive-health:warning', 'drive-image:partly'), 'drive-read')).toBeNull();
  });
});

it('what hangs outside comes off before anything inside comes out, where it could be that', () => {
  const dark = bench('stuck-loading', 'stuck-loading', 'stops-starting', 'meas-rails:within');
  expect(gateOf(dark, 'drive-loan')).toBe('outside-first');
  expect(gateOf(bench('stripes', 'stripes', 'picture-wrong'), 'card-none')).toBeNull();
});

it('new paste made it cool: nobody calls the cooler faulty', () => {
  const cool = bench(
    'loud-fan',
    'loud-fan',
    'heat-or-noise',
    'temp-watch:climbs-fast',
    'fan-look:all-turn',
    'look-inside:clean',
    'cool-even:same',
    'cool-again:works',
  );
  expect(verdictAfter(model, cool)).toMatchObject({ verdict: 'cured', by: 'cleaning', fault: 'cool-paste' });
});

it('a short is not measured away before anything was mended: that step is there, and never proposed', () => {
  const still = bench('restarts-itself', 'restarts-itself', 'cycles', 'meas-coils:short', 'short-which:still');
  expect(offered(still)).not.toContain('short-cleared');
  const { notOffered } = offerStep(model, still, { method: 'ratio' });
  expect(notOffered.map((one) => one.step)).not.toContain('short-cleared');
});

it('a long trial that a safety gate holds is never offered to make it fail: what opens the gate is', () => {
  const still = bench(
    'error-in-use',
    'fine-here',
    'fails-in-use',
    'drain-start:works',
    'log-read:nothing',
    'fan-look:pump-still',
    'setup-values:normal',
    'setup-values:normal',
    'drive-health:clean',
    'once-more:same',
    'meas-standby:within',
  );
  const { next, notOffered } = offerStep(model, still, { method: 'rollout' });
  expect(notOffered.find(({ step }) => step === 'load-long')?.why).toMatchObject({ is: 'gate' });
  expect(notOffered.map(({ step }) => step)).not.toContain(next?.step);
});
