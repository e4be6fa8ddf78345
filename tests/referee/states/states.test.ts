import { describe, expect, it } from 'vitest';
import { prng } from '../../../core/figures/prng.ts';
import { zTold } from '../../../core/tracing/cases/form/caseLine.ts';
import { standardModel } from '../../../core/tracing/live/loading/standardModel.ts';
import { SENTENCES } from '../judge.ts';
import { drawFrom, drawMachine } from './drawMachine.ts';
import { planned } from './planned.ts';
import { play } from './play.ts';
import { begun, type Progress, tallyLines, together, zProgress } from './tally.ts';
import { walk } from './walk.ts';

const model = standardModel();

const played = (seed: number, states: number) => {
  const progress = begun(seed);
  play(model, progress, states, walk);
  return progress;
};

describe('the referee’s walk over many states', () => {
  it('draws the same machines and logs for the same seed, and others for another', () => {
    expect(played(7, 60)).toEqual(played(7, 60));
    expect(played(8, 60)).not.toEqual(played(7, 60));
  });

  it('goes on from what was kept as if it had never stopped', () => {
    const cut = zProgress.parse(JSON.parse(JSON.stringify(played(3, 30))));
    play(model, cut, 60, walk);
    expect(cut).toEqual(played(3, 60));
  });

  it('finds in two shares what it finds in one', () => {
    const shared = (at: number) => {
      const progress = begun(4, { at, of: 2 });
      while (progress.machines < 3) play(model, progress, progress.states + 1, walk);
      return progress;
    };
    const alone = begun(4);
    while (alone.machines < 6) play(model, alone, alone.states + 1, walk);
    const both = together([shared(0), shared(1)]);
    const counts = ({ rules }: Progress) =>
      Object.fromEntries(Object.entries(rules).map(([rule, { count, steps }]) => [rule, { count, steps }]));
    expect(counts(both)).toEqual(counts(alone));
    expect([both.machines, both.states, both.breaches]).toEqual([alone.machines, alone.states, alone.breaches]);
  });

  it('judges a machine before anything was done, then after each entry more', () => {
    const draw = drawFrom(prng(5));
    const logs = [...walk(model, drawMachine(draw, 'one'), draw)].map(({ log }) => log);
    expect(logs[0]).toEqual([]);
    expect(logs.length).toBeGreaterThan(2);
    logs.slice(1).forEach((log, at) => {
      expect(log.slice(0, -1)).toEqual(logs[at]);
    });
  });

  it('plays a machine as the planner proposes, to an end', () => {
    const draw = drawFrom(prng(2));
    const line = { ...drawMachine(draw, 'one'), told: zTold.parse({ symptoms: ['no-signal'] }), before: [] };
    const logs = [...planned(model, line, draw)].map(({ log }) => log.length);
    expect(logs).toEqual(logs.map((_, at) => at));
    expect(logs.length).toBeGreaterThan(1);
  });

  it('draws what forbids something often enough', () => {
    const draw = drawFrom(prng(11));
    const told = Array.from({ length: 400 }, (_, at) => drawMachine(draw, `${at}`).told.symptoms).flat();
    for (const term of ['smoke-bang', 'leak', 'drive-clicks', 'ransom', 'asks-key']) {
      expect(told.filter((one) => one === term).length, term).toBeGreaterThan(3);
    }
  });

  it('says in its last line how much was looked at, and names only sentences of the referee', () => {
    const progress = played(1, 60);
    const names = new Set(SENTENCES.map(({ rule }) => rule));
    expect(Object.keys(progress.rules).filter((rule) => !names.has(rule))).toEqual([]);
    expect(tallyLines(progress).at(-1)).toBe(
      `${progress.states} states of ${progress.machines} machines (seed 1): ${progress.breaches} breaches, ${progress.statesBreached} states with one`,
    );
  });
});
