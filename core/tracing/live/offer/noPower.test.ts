import { describe, expect, it } from 'vitest';
import dangers from '../../../../assets/fault-model/dangers.json' with { type: 'json' };
import { changed, type Files, step } from '../../../../tests/builders/brokenModel.ts';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { suspectsOf } from '../belief/belief.ts';
import { posteriorOf } from '../belief/posterior.ts';
import { closedGates } from '../gates/gates.ts';
import { standardModel } from '../loading/standardModel.ts';
import type { TracingCase } from '../types.ts';
import { offerStep } from './offerStep.ts';

const model = standardModel();

/** A machine that goes on and off by itself, looked into, and what was done then: "step:outcome"; "!" after it: what came out stays out. */
function bench(...done: readonly string[]): TracingCase {
  const told = { symptoms: ['on-off'], changed: [], often: ['every-time'], onlyWhen: [], rate: null };
  return done.reduce<TracingCase>(
    (tracing, line) => {
      const [, id = '', outcome = '', stays] = /^([\w-]+):([\w-]+)(!?)$/.exec(line) ?? [];
      return afterDoing(model, tracing, id, outcome, { stays: stays === '!' });
    },
    { ...aTracingCase({ told }), seen: ['on-off'] },
  );
}

const offer = (tracing: TracingCase) => offerStep(model, tracing, { method: 'ratio' });
const offered = (tracing: TracingCase) => {
  const { next, others } = offer(tracing);
  return [next, ...others].flatMap((view) => view?.step ?? []);
};
const starts = (id: string) => model.steps.filter((step) => step.id === id && step.starts).map((step) => step.id);
const starting = (tracing: TracingCase) => offered(tracing).flatMap(starts);
/** The gates that hold a step back, as the bench hears of them when the step is started all the same. */
const gatesOf = (tracing: TracingCase, id: string) => {
  const known = model.steps.find((one) => one.id === id);
  const suspects = suspectsOf(model, posteriorOf(model, tracing, false));
  return known ? closedGates(model, tracing, known, suspects, null) : [];
};
const gateOf = (tracing: TracingCase, id: string) => {
  const [closed] = gatesOf(tracing, id);
  return closed ? { gate: closed.gate.id, first: closed.firstDo } : null;
};
const holding = (tracing: TracingCase, id: string) => gatesOf(tracing, id).map(({ gate }) => gate.id);

describe('after a short was measured', () => {
  const short = ['look-inside:clean', 'watch-start:cycles', 'meas-coils:short'] as const;

  it('nothing that starts the machine is offered, and where the short sits is measured next', () => {
    const { next, others } = offer(bench(...short));
    expect(next?.step).toBe('short-which');
    expect(others.flatMap((view) => starts(view.step))).toEqual([]);
    expect(gateOf(bench(...short), 'supply-beside')).toEqual({ gate: 'short-measured', first: ['short-which'] });
  });

  it('before it was measured the machine is started as ever', () => {
    expect(starting(bench('look-inside:clean', 'watch-start:cycles'))).not.toEqual([]);
  });

  it('gone with the card out: it starts without the card, and the card goes neither back nor into our rig', () => {
    const out = bench(...short, 'short-which:gone!');
    expect(gateOf(out, 'wall-watts')).toBeNull();
    const now = offered(out);
    for (const step of ['put-back', 'rig-card']) expect(now).not.toContain(step);
    expect(holding(out, 'rig-card')).toContain('shorted-card-again');
    expect(holding(bench(...short, 'short-which:gone'), 'wall-watts')).toContain('shorted-card');
  });

  it('still there: no start with this board, not even in our rig, and nothing of ours goes near it', () => {
    const still = bench(...short, 'short-which:still');
    expect(gateOf(still, 'wall-watts')).toEqual({ gate: 'short-measured', first: ['short-cleared'] });
    expect(holding(still, 'wall-watts')).toContain('shorted-board');
    for (const step of ['rig-board', 'board-loan']) expect(holding(still, step)).toContain('short-keeps-ours-out');
  });

  it('measured clear after mending it starts again; a short measured after that holds it again', () => {
    const mended = [...short, 'short-which:still', 'short-cleared:cleared'] as const;
    expect(gateOf(bench(...mended), 'wall-watts')).toBeNull();
    expect(gateOf(bench(...mended, 'meas-coils:short'), 'wall-watts')?.gate).toBe('short-measured');
  });

  it('measured once more and still there: no start', () => {
    const still = bench(...short, 'short-which:still', 'short-cleared:still');
    expect(holding(still, 'wall-watts')).toEqual(expect.arrayContaining(['short-measured', 'shorted-board']));
  });

  it('struck from the record it holds nothing', () => {
    const { log, ...tracing } = bench(...short);
    const struck = log.map((entry) => ({ ...entry, struck: entry.step === 'meas-coils' }));
    expect(starting({ ...tracing, log: struck })).not.toEqual([]);
  });

  it('the short is measured away only where one was measured', () => {
    const { notOffered } = offer(bench('look-inside:clean', 'watch-start:cycles', 'meas-coils:fine'));
    for (const step of ['short-which', 'short-cleared', 'supply-cleared'])
      expect(notOffered).toContainEqual({ step, why: { is: 'machine', need: 'gate-to-clear' } });
  });
});

describe('after the supply measured bad', () => {
  const bad = [
    'look-inside:clean',
    'watch-start:cycles',
    'strip-outside:same',
    'meas-coils:fine',
    'meas-rails:outside',
  ] as const;

  it('there is no further start on it, and nothing of ours goes on it', () => {
    const tracing = bench(...bad);
    for (const step of ['wall-watts', 'card-loan', 'dimm-loan', 'cpu-loan'])
      expect(holding(tracing, step)).toContain('supply-outside');
    const onIt = starting(tracing).filter((id) =>
      model.steps.some((step) => step.id === id && step.onRig === null && !step.takesOut.includes('supply')),
    );
    expect(onIt).toEqual([]);
  });

  it('our supply beside it may start the machine, and goes on doing so', () => {
    expect(gateOf(bench(...bad), 'supply-beside')).toBeNull();
    expect(gateOf(bench(...bad, 'supply-beside:same!'), 'drives-off')).toBeNull();
    expect(holding(bench(...bad, 'supply-beside:same'), 'drives-off')).toContain('supply-outside');
  });

  it('what holds on the small test load may still be outside in the machine: a few amperes are no load', () => {
    expect(holding(bench(...bad, 'supply-alone:holds'), 'drives-off')).toContain('supply-outside');
  });

  it('bad there too: only a mended or another supply that measures good starts it', () => {
    const twice = [...bad, 'supply-alone:outside'] as const;
    expect(holding(bench(...twice), 'drives-off')).toContain('supply-outside');
    expect(gateOf(bench(...twice, 'supply-cleared:within'), 'drives-off')).toBeNull();
    expect(holding(bench(...twice, 'supply-cleared:outside'), 'drives-off')).toContain('supply-outside');
  });
});

describe('what was seen', () => {
  it('wet inside: cleaned and dried before any start', () => {
    expect(starting(bench('look-inside:wet')).filter((step) => step !== 'wet-clean')).toEqual([]);
    expect(gateOf(bench('look-inside:wet', 'wet-clean:same'), 'wall-watts')).toBeNull();
  });

  it('burnt: said where, and measured for a short, before any start', () => {
    expect(gateOf(bench('look-inside:burnt'), 'watch-start')).toEqual({
      gate: 'burnt-until-where',
      first: ['burnt-where'],
    });
    expect(gateOf(bench('look-inside:burnt', 'burnt-where:board'), 'watch-start')).toEqual({
      gate: 'burnt-measured',
      first: ['meas-coils'],
    });
    expect(gateOf(bench('look-inside:burnt', 'burnt-where:board', 'meas-coils:fine'), 'watch-start')).toBeNull();
  });
});

describe('a gate that closes on a finding', () => {
  const at = dangers.gates.length;
  const GATE = {
    id: 'shorted',
    harm: 'machine',
    holds: 'starts',
    after: [{ step: 'meas-coils', outcomes: ['short'] }],
    until: [[{ step: 'short-which', outcomes: ['gone'] }], [{ step: 'short-cleared', outcomes: ['cleared'] }]],
    when: null,
    unless: [],
    source: 'common practice, no source',
  };
  const shorted = (change: object, also: (files: Files) => void = () => undefined) =>
    changed((files) => {
      files['dangers.json'].gates.push({ ...GATE, ...change });
      also(files);
    });

  it('is taken as it is', () => {
    expect(shorted({})).toBeNull();
  });

  it('is refused where that step or outcome is unknown', () => {
    expect(shorted({ after: [{ step: 'no-such', outcomes: ['short'] }] })).toMatchObject({
      file: 'dangers.json',
      field: `gates[${at}].after`,
      because: 'no step no-such',
    });
    expect(shorted({ after: [{ step: 'meas-coils', outcomes: ['fine-weather'] }] })).toMatchObject({
      field: `gates[${at}].after`,
      because: 'meas-coils has no outcome fine-weather',
    });
  });

  it('is refused where what opens it is held by another such gate for good', () => {
    const refusal = shorted({}, (files) => {
      files['dangers.json'].gates.push({
        ...GATE,
        id: 'shut',
        after: undefined,
        holds: ['short-which', 'short-cleared'],
      });
    });
    expect(refusal).toMatchObject({ file: 'dangers.json', field: expect.stringMatching(/^gates\[\d+\]\.holds$/) });
  });

  it('is refused where nothing that opens it is ever done on such a machine', () => {
    const refusal = shorted({}, (files) => {
      for (const id of ['short-which', 'short-cleared']) step(files, id).groups = ['no-reaction'];
    });
    expect(refusal).toMatchObject({ file: 'dangers.json', because: expect.stringContaining('nothing that opens') });
  });

  it('is refused on what can be in no circuit', () => {
    expect(shorted({ whileIn: ['weather'] })).toMatchObject({
      file: 'dangers.json',
      field: expect.stringContaining('whileIn'),
    });
  });
});
