import { clopperPearson } from '../../../../core/figures/interval.ts';
import { prng } from '../../../../core/figures/prng.ts';
import { estimate } from '../../../../core/labour/estimate.ts';
import type { LabourEstimate } from '../../../../core/labour/types.ts';
import { standardModel } from '../../../../core/tracing/live/loading/standardModel.ts';
import type { TracingCase } from '../../../../core/tracing/live/types.ts';
import { aTracingCase } from '../../../builders/tracingCase.ts';
import { SimulatedMachine } from '../live/simulatedMachine.ts';
import { type Figure, type Row, shown } from '../row.ts';
import { benchByTheEngine, minutesToMended } from './tracedBench.ts';

const SYMPTOMS = ['dark-runs', 'no-lock-light', 'no-reaction'];
const SAID = [0.1, 0.5, 0.9] as const;

/**
 * Estimates of the finding held against simulated machines that a bench traces by the engine's own rules, step by step.
 * Runs through the plan end where the plan sees the tracing end, a bench goes on until the log confirms it: how far the
 * two differ is shown. Runs as the Bench goes must hold: what was said lies within the 95 % interval of what came.
 */
export const coverageRow: Row = {
  name: 'coverage: estimates against simulated machines',
  measure: ({ short, machines = short ? 20 : 300 }) => {
    const model = standardModel();
    const figures = SYMPTOMS.flatMap((symptom) => {
      const start = aTracingCase({ seen: [symptom] });
      const bench = benchByTheEngine(model);
      const took = Array.from({ length: machines }, (_, n) =>
        minutesToMended(
          model,
          start,
          new SimulatedMachine(model, start, prng(1000 + n), { pairs: true }),
          bench,
          prng(5000 + n),
        ),
      );
      return POLICIES.flatMap((policy) => against(symptom, policy, saidOf(start, policy), took));
    });
    return { figures };
  },
};

const POLICIES = ['ratio', 'two-step'] as const;

function against(
  symptom: string,
  policy: (typeof POLICIES)[number],
  { p10, p50, p90 }: LabourEstimate['toCome'],
  took: readonly number[],
): readonly Figure[] {
  return [p10, p50, p90].map((limit, at) => {
    const said = SAID[at] as number;
    const within = took.filter((one) => one <= limit).length;
    const { low, high } = clopperPearson(within, took.length);
    const in100 = (share: number) => (100 * share).toFixed(0);
    const what = `${symptom}, ${policy}: within what was said for ${100 * said} in 100 (${limit} min)`;
    const figure = `${in100(within / took.length)} in 100 (${in100(low)} to ${in100(high)})`;
    if (policy === 'ratio') return shown(what, figure);
    return { what, figure, bar: `holds ${100 * said}`, met: low <= said && said <= high };
  });
}

function saidOf(start: TracingCase, policy: (typeof POLICIES)[number]): LabourEstimate['toCome'] {
  const figures = estimate({
    model: standardModel(),
    case: start,
    work: [],
    stepTimes: {},
    rates: { perMinuteMinor: 75, spentMinor: 0, spentMinutes: 0, limitMinor: null, parts: {} },
    seed: 5,
    paths: policy === 'ratio' ? 10_000 : 1000,
    policy,
  });
  if ('refused' in figures) throw new Error(figures.refused);
  return figures.toCome;
}
