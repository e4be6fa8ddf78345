import { belief } from '../../../../core/tracing/live/belief/belief.ts';
import { posteriorOf } from '../../../../core/tracing/live/belief/posterior.ts';
import { standardModel } from '../../../../core/tracing/live/model/standardModel.ts';
import { offerStep } from '../../../../core/tracing/live/offer/offerStep.ts';
import type { FaultModel, TracingCase } from '../../../../core/tracing/live/types.ts';
import { afterDoing, aTracingCase } from '../../../builders/tracingCase.ts';
import { atMost, quantile, type Row, shown } from '../row.ts';

/** A machine that cycles and stays dark, as its log grows; loaners from the tenth step on. */
const LOG: readonly (readonly [string, string, ('dimm' | 'processor')?])[] = [
  ['look-inside', 'clean'],
  ['watch-start', 'np'],
  ['wall-watts', 'stuck'],
  ['blind-life', 'dead'],
  ['read-code', 'memory'],
  ['dimm-one', 'both-start'],
  ['meas-rails', 'within'],
  ['slot-each', 'one-channel-dead', 'dimm'],
  ['cool-even', 'same'],
  ['cpu-look', 'fine'],
  ['meas-coils', 'fine'],
  ['cpu-loan', 'same', 'processor'],
];

/** The growing log of one machine. What is told in words that the model does not know makes it a machine not seen before. */
function logsOf(model: FaultModel, name: string): readonly TracingCase[] {
  const told = {
    symptoms: ['dark-runs', 'no-signal'],
    changed: ['moved'],
    often: ['every-time'],
    onlyWhen: [name],
    rate: null,
  };
  let tracing = aTracingCase({ told, seen: ['cycles-then-dark', 'no-lock-light'] });
  return LOG.map(([step, outcome, kind]) => {
    const loaners = kind ? [{ id: kind, kind, standing: 'known-good' as const }] : [];
    tracing = afterDoing(model, tracing, step, outcome, { loaners });
    return tracing;
  });
}

/**
 * Processor time over the growing log of a new machine each round, so that nothing but the log of a step ago is known
 * already; the first round is left out while the code is still being compiled.
 */
function times(model: FaultModel, rounds: number, work: (tracing: TracingCase) => unknown): readonly number[] {
  const taken: number[] = [];
  for (let round = 0; round <= rounds; round++) {
    for (const tracing of logsOf(model, `round ${round} of ${work}`)) {
      const before = process.cpuUsage();
      work(tracing);
      const { user, system } = process.cpuUsage(before);
      if (round > 0) taken.push((user + system) / 1000);
    }
  }
  return taken;
}

export const liveSpeedRow: Row = {
  name: 'full model: time to answer',
  measure: ({ short }) => {
    const model = standardModel();
    const rounds = short ? 2 : 10;
    const single = times(model, rounds * 4, (tracing) => posteriorOf(model, tracing, false));
    const pairs = times(model, rounds * 4, (tracing) => posteriorOf(model, tracing, true));
    const whole = times(model, rounds, (tracing) => belief(model, tracing));
    const interim = times(model, rounds, (tracing) => offerStep(model, tracing, { method: 'ratio' }));
    const next = times(model, rounds, (tracing) => offerStep(model, tracing, { method: 'rollout' }));
    return {
      figures: [
        atMost('belief, one fault: median', quantile(single, 0.5), 1, ' ms', 2),
        atMost('belief, pairs: median', quantile(pairs, 0.5), 5, ' ms', 2),
        shown('belief as shown, with contradiction: median', `${quantile(whole, 0.5).toFixed(2)} ms`),
        atMost('interim offer with all its reasons: median', quantile(interim, 0.5), 5, ' ms', 1),
        atMost('next step: p95', quantile(next, 0.95), 100, ' ms', 0),
        shown('next step: median', `${quantile(next, 0.5).toFixed(0)} ms`),
      ],
    };
  },
};
