import { belief } from '../../../../core/tracing/live/belief/belief.ts';
import { posteriorOf } from '../../../../core/tracing/live/belief/posterior.ts';
import { standardModel } from '../../../../core/tracing/live/loading/standardModel.ts';
import { offerStep } from '../../../../core/tracing/live/offer/offerStep.ts';
import { openTracing } from '../../../../core/tracing/live/openTracing.ts';
import type { FaultModel, TracingCase } from '../../../../core/tracing/live/types.ts';
import { afterDoing, aTracingCase } from '../../../builders/tracingCase.ts';
import { atMost, type Figure, quantile, type Row, shown } from '../row.ts';
import { tracedBenches } from './tracedBenches.ts';

/** A machine that cycles and stays dark, as its log grows; loaners from the tenth step on. */
const LOG: readonly (readonly [string, string, ('dimm' | 'processor')?])[] = [
  ['look-inside', 'clean'],
  ['watch-start', 'no-post'],
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

function dark(model: FaultModel): readonly TracingCase[] {
  const told = {
    symptoms: ['dark-runs', 'no-signal'],
    changed: ['moved'],
    often: ['every-time'],
    onlyWhen: [],
    rate: null,
  };
  let tracing = aTracingCase({ told, seen: ['cycles-then-dark', 'no-lock-light'] });
  return LOG.map(([step, outcome, kind]) => {
    const loaners = kind ? [{ id: kind, kind, standing: 'known-good' as const }] : [];
    tracing = afterDoing(model, tracing, step, outcome, { loaners });
    return tracing;
  });
}

type Work = (model: FaultModel, tracing: TracingCase) => unknown;

/**
 * Processor time of each piece of work, the first round left out while the code is still being compiled. Each bench of
 * each round has a model object of its own, so that nothing is known from another; `before` lays out what one wants known.
 */
function times(
  rounds: number,
  benches: readonly (readonly TracingCase[])[],
  work: Work,
  before: Work = () => null,
): readonly number[] {
  const taken: number[] = [];
  const delivered = standardModel();
  for (let round = 0; round <= rounds; round++) {
    for (const cases of benches) {
      const model = openTracing(delivered);
      for (const tracing of cases) {
        before(model, tracing);
        const started = process.cpuUsage();
        work(model, tracing);
        const { user, system } = process.cpuUsage(started);
        if (round > 0) taken.push((user + system) / 1000);
      }
    }
  }
  return taken;
}

const unlogged = (tracing: TracingCase): TracingCase => ({ ...tracing, log: [] });

export const liveSpeedRow: Row = {
  name: 'full model: time to answer',
  measure: ({ short }) => {
    const model = standardModel();
    const benches = [dark(model), ...tracedBenches(model, short ? 3 : 1)];
    const whole = benches.flat().map((tracing) => [tracing]);
    const rounds = short ? 1 : 5;
    const figures: Figure[] = [shown('bench states', String(whole.length))];
    for (const [name, pairs, bar] of [
      ['one fault', false, 1],
      ['pairs', true, 5],
    ] as const) {
      const posterior: Work = (own, tracing) => posteriorOf(own, tracing, pairs);
      const started: Work = (own, tracing) => posteriorOf(own, unlogged(tracing), pairs);
      const step = times(rounds, benches, posterior, started);
      const opened = times(rounds, whole, posterior, started);
      figures.push(
        atMost(`belief after one more step, ${name}: median`, quantile(step, 0.5), bar, ' ms', 2),
        shown(`belief after one more step, ${name}: p95`, `${quantile(step, 0.95).toFixed(2)} ms`),
        atMost(`belief of a log opened whole, ${name}: median`, quantile(opened, 0.5), bar, ' ms', 2),
        shown(`belief of a log opened whole, ${name}: p95`, `${quantile(opened, 0.95).toFixed(2)} ms`),
      );
    }
    const asShown = times(rounds, benches, (own, tracing) => belief(own, tracing));
    figures.push(shown('belief as shown, with contradiction: median', `${quantile(asShown, 0.5).toFixed(2)} ms`));
    const interim = times(rounds, benches, (own, tracing) => offerStep(own, tracing, { method: 'ratio' }));
    figures.push(
      atMost('interim offer with all its reasons: median', quantile(interim, 0.5), 5, ' ms', 1),
      shown('interim offer with all its reasons: p95', `${quantile(interim, 0.95).toFixed(1)} ms`),
    );
    for (const [name, pairs, bar] of [
      ['one fault', false, 100],
      ['pairs', true, 250],
    ] as const) {
      const next = times(rounds, benches, (own, tracing) => offerStep(own, tracing, { method: 'rollout', pairs }));
      figures.push(
        atMost(`next step, ${name}: p95`, quantile(next, 0.95), bar, ' ms', 0),
        shown(`next step, ${name}: median`, `${quantile(next, 0.5).toFixed(0)} ms`),
      );
    }
    return { figures };
  },
};
