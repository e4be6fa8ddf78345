import { describe, expect, it } from 'vitest';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { standardModel } from '../loading/standardModel.ts';
import type { TracingCase } from '../types.ts';
import { offerStep } from './offerStep.ts';

// What comes before any plan: common practice, no source.

const model = standardModel();

type Came = {
  readonly told: readonly string[];
  readonly changed?: readonly string[];
  readonly often?: string;
  readonly seen?: readonly string[];
};

/** A machine told like this, and what was done to it so far: "step:outcome". */
function bench({ told, changed = [], often = 'every-time', seen = [] }: Came, ...done: readonly string[]): TracingCase {
  const given = { symptoms: told, changed, often: [often], onlyWhen: [], rate: null };
  return done.reduce<TracingCase>(
    (tracing, line) => {
      const [id = '', outcome = ''] = line.split(':');
      return afterDoing(model, tracing, id, outcome);
    },
    { ...aTracingCase({ told: given }), seen },
  );
}

const next = (tracing: TracingCase): string | undefined => offerStep(model, tracing, { method: 'rollout' }).next?.step;

describe('before any plan', () => {
  it('a machine that runs is started first, and nobody opens it for that', () => {
    expect(next(bench({ told: ['slow'] }))).toBe('watch-start');
    expect(next(bench({ told: ['net-dead'] }))).toBe('watch-start');
  });

  it('one that was dropped is looked into before it is started', () => {
    expect(next(bench({ told: ['slow'], changed: ['dropped'] }))).toBe('look-inside');
  });

  it('one that smelt is looked into, although it runs', () => {
    expect(next(bench({ told: ['smell', 'slow'] }))).toBe('look-inside');
  });

  it('what runs is asked itself before it is loaded or opened: its own log, or its disk', () => {
    expect(next(bench({ told: ['freezes'], often: 'daily-several' }, 'watch-start:not-shown'))).toBe('log-read');
    expect(next(bench({ told: ['slow'], seen: ['slow'] }, 'watch-start:software'))).toBe('drive-health');
  });

  it('what fails only under load is loaded one part at a time before hands go in', () => {
    const games = bench({ told: ['error-in-use'], often: 'daily-several', seen: ['error-in-use'] });
    const loaded: TracingCase = { ...games, told: { ...games.told, onlyWhen: ['load'] } };
    const asked = ['watch-start:fails-in-use', 'log-read:nothing', 'live-start:same-trouble'].reduce(
      (tracing, line) => {
        const [id = '', outcome = ''] = line.split(':');
        return afterDoing(model, tracing, id, outcome);
      },
      loaded,
    );
    expect(['load-card', 'load-cpu']).toContain(next(asked));
  });

  it('a disk that warns is not worked by a first start', () => {
    expect(next(bench({ told: ['drive-warning'] }))).not.toBe('watch-start');
  });

  it('the rear switch comes before the panel, our own screen before the look inside', () => {
    expect(next(bench({ told: ['no-reaction'] }))).toBe('look-mains');
    expect(next(bench({ told: ['no-signal'] }))).toBe('look-picture');
  });

  it('what the eyes found loose is put right before it is started', () => {
    expect(next(bench({ told: ['dark-runs'] }, 'look-inside:plug-off'))).toBe('press-plugs');
    expect(next(bench({ told: ['dark-runs'] }, 'look-inside:card-loose'))).toBe('card-seat');
    expect(next(bench({ told: ['dark-runs'] }, 'look-inside:clean'))).toBe('watch-start');
  });
});

describe('what does less comes before what does more', () => {
  it('the output chosen before a system of ours', () => {
    expect(next(bench({ told: ['sound-dead'], seen: ['sound-dead'] }, 'watch-start:ports'))).toBe('output-choose');
  });

  it('the plug meter before a supply is unplugged', () => {
    const looked = ['look-mains:fine', 'look-inside:clean', 'watch-start:no-reaction'];
    expect(next(bench({ told: ['no-reaction'], seen: ['no-reaction'] }, ...looked))).toBe('wall-watts');
  });
});

describe('a part was added', () => {
  const dark = { told: ['dark-runs'], changed: ['new-part'], seen: ['no-lock-light'] };
  const started = ['look-inside:clean', 'watch-start:no-post'] as const;

  it('which one is asked, then it is tried as it was before', () => {
    expect(next(bench(dark, ...started))).toBe('ask-part');
    // New memory may only be learning its times: that takes no hand.
    expect(next(bench(dark, ...started, 'ask-part:dimm'))).toBe('wait-train');
    expect(next(bench(dark, ...started, 'ask-part:dimm', 'wait-train:same'))).toBe('as-before');
  });

  it('a new supply is not tried out again: its leads are looked at', () => {
    const supply = bench(dark, ...started, 'ask-part:supply');
    expect(next({ ...supply, machine: { ...supply.machine, newPart: 'supply' } })).not.toBe('as-before');
  });
});
