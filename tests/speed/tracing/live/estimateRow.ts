import work from '../../../../assets/labour/work.json' with { type: 'json' };
import { differenceInterval } from '../../../../core/figures/differenceInterval.ts';
import { estimate } from '../../../../core/labour/estimate.ts';
import { catalogueOf } from '../../../../core/labour/tasks/catalogue.ts';
import { learnTimes } from '../../../../core/labour/tasks/learnTimes.ts';
import { stepTimesOf } from '../../../../core/labour/tasks/stepTimes.ts';
import { openTraces } from '../../../../core/labour/traces.ts';
import type { EstimatePolicy, LabourEstimate, WorkTask } from '../../../../core/labour/types.ts';
import { standardModel } from '../../../../core/tracing/live/loading/standardModel.ts';
import { aTracingCase } from '../../../builders/tracingCase.ts';
import { atMost, type Figure, type Row, shown } from '../row.ts';

const SEEN = ['no-lock-light', 'no-reaction', 'crashes'];

/** One estimate from the belief on, with its processor time; `again`: the same once more with what was decided kept. */
function timed(seen: string, policy: EstimatePolicy, paths: number) {
  const model = standardModel();
  const tracing = aTracingCase({ seen: [seen] });
  const rates = { perMinuteMinor: 75, spentMinor: 0, spentMinutes: 0, limitMinor: 12_000, parts: {} };
  const asked = {
    model,
    case: tracing,
    work: work.work as unknown as readonly WorkTask[],
    stepTimes: stepTimesOf(learnTimes(catalogueOf(model), []), null),
    rates,
    seed: 1,
    paths,
    policy,
  };
  const before = process.cpuUsage();
  const kept = openTraces(model, tracing, policy);
  const figures = estimate(asked, kept) as LabourEstimate;
  const once = process.cpuUsage(before);
  const then = process.cpuUsage();
  estimate(asked, kept);
  const again = process.cpuUsage(then);
  const ms = ({ user, system }: NodeJS.CpuUsage) => (user + system) / 1000;
  return { figures, ms: ms(once), again: ms(again), histories: kept?.histories() ?? 0 };
}

const says = ({ handsOn, medianBetween: between }: LabourEstimate): string =>
  `${handsOn.p10} / ${handsOn.p50} / ${handsOn.p90} min, median between ${between?.low} and ${between?.high}`;

const bounded = ({ handsOn: { p50 }, medianBetween }: LabourEstimate) => ({
  figure: p50,
  between: medianBetween ?? { low: p50, high: p50 },
});

export const estimateRow: Row = {
  name: 'estimates: time to answer and error of the simulation',
  measure: ({ short }) => {
    for (const policy of ['ratio', 'one-step'] as const) timed('no-picture', policy, 500);
    const figures: Figure[] = [];
    for (const seen of SEEN) {
      const ratio = timed(seen, 'ratio', 10_000);
      const one = timed(seen, 'one-step', 10_000);
      figures.push(
        atMost(`${seen}: first figure (ratio), 10,000 runs`, ratio.ms, 250, ' ms', 0),
        atMost(`${seen}: one step ahead, 10,000 runs`, one.ms, 3000, ' ms', 0),
        shown(
          `${seen}: one step ahead again, decisions kept`,
          `${one.again.toFixed(0)} ms, ${one.histories} histories`,
        ),
        shown(`${seen}: ratio`, says(ratio.figures)),
        shown(`${seen}: one step`, says(one.figures)),
      );
      if (short) continue;
      const two = timed(seen, 'two-step', 1000);
      const apart = differenceInterval(bounded(two.figures), bounded(one.figures));
      figures.push(
        atMost(`${seen}: two steps ahead, 1,000 runs`, two.ms / 1000, 60, ' s', 1),
        shown(`${seen}: two steps`, says(two.figures)),
        shown(
          `${seen}: two steps against one, median`,
          `between ${apart.low.toFixed(1)} and ${apart.high.toFixed(1)} min`,
        ),
      );
    }
    return { figures };
  },
};
