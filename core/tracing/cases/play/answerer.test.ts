import { describe, expect, it } from 'vitest';
import { aBenchCase } from '../../../../tests/builders/benchCase.ts';
import { standardModel } from '../../live/loading/standardModel.ts';
import { toTracing } from '../bench/toTracing.ts';
import { Answerer } from './answerer.ts';

const model = standardModel();

/** What the case's machine shows when these steps are done to it in this order. */
function shown(given: object, ...steps: readonly string[]) {
  const bench = aBenchCase(given);
  const machine = new Answerer(model, bench);
  let before = bench.before;
  const outcomes = steps.map((step) => {
    const now = toTracing(model, { ...bench, before });
    if ('is' in now) throw new Error(now.at);
    const outcome = machine.does(now.tracing, step);
    before = [...before, `${step}:${outcome}`];
    return outcome;
  });
  return { outcomes, mended: machine.mended };
}

describe('a case’s machine on the bench', () => {
  it('gives its own answers in the order asked, the last one again and again', () => {
    const answers = { 'card-loan': ['same', 'works'] };
    expect(shown({ answers }, 'card-loan', 'card-loan', 'card-loan').outcomes).toEqual(['same', 'works', 'works']);
  });

  it('works with a sound part of ours in place of the bad one, and fails again with its own', () => {
    expect(shown({}, 'supply-beside', 'put-back')).toEqual({ outcomes: ['works', 'fails-again'], mended: false });
  });

  it('is not helped by one of ours that is dead', () => {
    const wall = { dead: ['S05'] };
    expect(shown({ wall }, 'supply-beside').outcomes).toEqual(['same']);
  });

  it('is sound from the step on that mends it, unless an answer says otherwise', () => {
    const answers = { mended: ['press-plugs'], afterwards: { 'wall-watts': 'high' } };
    expect(shown({ answers }, 'wall-watts', 'press-plugs', 'meas-standby', 'wall-watts')).toEqual({
      outcomes: ['nothing', 'works', 'within', 'high'],
      mended: true,
    });
  });

  it('needs all of what mends it only together, the last one done as the mend', () => {
    const answers = { mended: [['cool-loan', 'wet-clean']], 'cool-loan': 'same', 'wet-clean': 'same' };
    expect(shown({ answers }, 'wet-clean')).toMatchObject({ mended: false });
    expect(shown({ answers }, 'wet-clean', 'cool-loan')).toMatchObject({ mended: true });
  });

  it('is mended by what the model says mends its fault where the case says nothing', () => {
    const loose = { truth: { faults: ['dimm-seat'] }, answers: {} };
    expect(shown(loose, 'dimm-press')).toEqual({ outcomes: ['works'], mended: true });
    expect(shown(loose, 'drain-start')).toEqual({ outcomes: ['same'], mended: false });
  });

  it('shows what its first start is said to show, under the name it has now', () => {
    expect(shown({}, 'watch-start').outcomes).toEqual(['no-reaction']);
  });

  it('stays as it is under a fault that the model has nothing like', () => {
    const strange = { truth: { faults: [{ new: 'gnawed by a marten' }] }, answers: {} };
    expect(shown(strange, 'card-loan', 'put-back', 'meas-rails').outcomes).toEqual(['same', 'fails-again', 'within']);
  });
});
