import { clopperPearson } from '../../../../core/figures/interval.ts';
import { estimate } from '../../../../core/labour/estimate.ts';
import { prng } from '../../../../core/labour/prng.ts';
import type { LabourEstimate } from '../../../../core/labour/types.ts';
import { standardModel } from '../../../../core/tracing/live/model/standardModel.ts';
import { verdictAfter } from '../../../../core/tracing/live/offer/verdictAfter.ts';
import type { TracingCase } from '../../../../core/tracing/live/types.ts';
import { aTracingCase } from '../../../builders/tracingCase.ts';
import { oncePerHistory } from '../live/history.ts';
import { offered } from '../live/policies.ts';
import { HANDED_OVER, runMachine } from '../live/runMachine.ts';
import { SimulatedMachine } from '../live/simulatedMachine.ts';
import { type Row, shown } from '../row.ts';

const SYMPTOMS = ['dark-runs', 'no-lock-light', 'no-reaction'];
const SAID = [0.1, 0.5, 0.9] as const;

/**
 * Estimates of the finding held against simulated machines that a bench traces by the engine's own rules, step by step.
 * The runs of an estimate end where the plan sees the tracing end; a bench goes on until the log confirms it. How far
 * the two differ is shown here, and no bar is set.
 */
export const coverageRow: Row = {
  name: 'coverage: estimates against simulated machines',
  measure: ({ short, machines = short ? 20 : 300 }) => {
    const model = standardModel();
    const ratio = oncePerHistory(offered(model, 'ratio'));
    const verdict = oncePerHistory((tracing: TracingCase) => verdictAfter(model, tracing));
    const bench = { policy: ratio, confirm: ratio, verdict };
    const figures = SYMPTOMS.flatMap((symptom) => {
      const start = aTracingCase({ seen: [symptom] });
      const took = Array.from({ length: machines }, (_, n) => {
        const machine = new SimulatedMachine(model, start, prng(1000 + n));
        const run = runMachine(model, start, machine, bench);
        const mended = run.verdict === 'confirmed' || run.verdict === 'cured';
        const handedOver = run.verdict === 'tracing';
        return (
          run.minutes - (handedOver ? HANDED_OVER : 0) + (mended ? (model.faults[machine.fault]?.mendMinutes ?? 0) : 0)
        );
      });
      const { p10, p50, p90 } = saidOf(start);
      return [p10, p50, p90].map((limit, at) => {
        const within = took.filter((one) => one <= limit).length;
        const { low, high } = clopperPearson(within, machines);
        const in100 = (share: number) => (100 * share).toFixed(0);
        return shown(
          `${symptom}: within what was said for ${100 * (SAID[at] as number)} in 100 (${limit} min)`,
          `${in100(within / machines)} in 100 (${in100(low)} to ${in100(high)})`,
        );
      });
    });
    return { figures };
  },
};

function saidOf(start: TracingCase): LabourEstimate['toCome'] {
  const figures = estimate({
    model: standardModel(),
    case: start,
    work: [],
    stepTimes: {},
    rates: { perMinuteMinor: 75, spentMinor: 0, spentMinutes: 0, limitMinor: null, parts: {} },
    seed: 5,
    paths: 10_000,
    policy: 'ratio',
  });
  if ('refused' in figures) throw new Error(figures.refused);
  return figures.toCome;
}
