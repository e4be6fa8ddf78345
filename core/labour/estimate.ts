import { quantile } from '../figures/quantile.ts';
import { verdictAfter } from '../tracing/live/offer/verdictAfter.ts';
import { driversOf, type Spread } from './drivers.ts';
import { type Prng, prng } from './prng.ts';
import type { Traces } from './traced.ts';
import { openTraces } from './traces.ts';
import type { EstimateCancelled, EstimateRequest, LabourEstimate, WorkTask } from './types.ts';

type Path = Spread & {
  readonly minutes: number;
  readonly part: string | null;
  readonly handedOver: boolean;
  readonly partMinor: number;
  /** The fault is mended by that part. */
  readonly needed: boolean;
};

/** Paths between two looks at whether something newer was asked: a run as the Bench works may take seconds. */
const LOOK_EVERY = { ratio: 64, 'one-step': 64, 'two-step': 1 } as const;

/**
 * What a job will likely take: many runs of the policy asked for over the present belief, each with its own true fault,
 * outcomes and task times, then fitting, proving and cleaning. Decisions are shared between runs with the same history.
 * Deterministic for a seed. `kept`: what an earlier run of the same case decided; decisions change no figure.
 */
export function estimate(request: EstimateRequest, kept?: Traces | null): LabourEstimate | EstimateCancelled {
  const { model, rates, paths, seed } = request;
  const random = prng(seed);
  const tracing = kept === undefined ? openTraces(model, request.case, request.policy) : kept;
  const settled = tracing ? null : settledFault(request);
  const done: Path[] = [];
  for (let n = 0; n < paths; n++) {
    if (n % LOOK_EVERY[request.policy] === 0 && request.cancelled?.())
      return { refused: 'estimate-cancelled', paths: n };
    const traced = tracing ? tracing.run(request.stepTimes, random) : { minutes: 0, fault: settled, ended: true };
    const fault = model.faults[model.faultIndex.get(traced.fault ?? '') ?? -1];
    const part = fault?.part ?? null;
    const needed = traced.ended && part !== null && fault?.mendedBy === 'part';
    const partMinor = needed ? (rates.parts[part] ?? 0) : 0;
    const work = traced.ended ? request.work.map((task) => [task.id, taskMinutes(task, random)] as const) : [];
    const after = work.reduce((sum, [, minutes]) => sum + minutes, 0) + (traced.ended ? (fault?.mendMinutes ?? 0) : 0);
    done.push({
      minutes: traced.minutes + after,
      tracing: traced.minutes,
      work,
      fault: traced.fault,
      part,
      handedOver: !traced.ended,
      partMinor,
      needed,
    });
  }
  return summed(request, done, tracing ? request.policy : 'none');
}

/** A log-normal task time: low and high are its 5th and 95th percentile, likely its median. */
export function taskMinutes(task: WorkTask, random: Prng): number {
  const { low, likely, high } = task.minutes;
  const needed = task.chance >= 1 || random.next() < task.chance;
  const sigma = (Math.log(high) - Math.log(low)) / 3.29;
  const minutes = likely * Math.exp(sigma * random.nextNormal());
  return needed ? minutes : 0;
}

function settledFault({ model, case: tracing }: EstimateRequest): string | null {
  if (!tracing) return null;
  const verdict = verdictAfter(model, tracing);
  return verdict.verdict === 'confirmed' || verdict.verdict === 'cured' ? verdict.fault : null;
}

function summed(
  { rates, seed, paths }: EstimateRequest,
  done: readonly Path[],
  policy: LabourEstimate['policy'],
): LabourEstimate {
  const toCome = done.map((path) => path.minutes).sort((a, b) => a - b);
  const labour = (path: Path) => (rates.fixed ? 0 : Math.round(path.minutes * rates.perMinuteMinor));
  const price = done.map((path) => rates.spentMinor + labour(path)).sort((a, b) => a - b);
  const withParts = done.map((path) => rates.spentMinor + labour(path) + path.partMinor).sort((a, b) => a - b);
  const band = (sorted: readonly number[], plus = 0) => ({
    p10: plus + at(sorted, 0.1),
    p50: plus + at(sorted, 0.5),
    p90: plus + at(sorted, 0.9),
  });
  const tenth = (value: number) => Math.round(value * 10) / 10;
  const rounded = ({ p10, p50, p90 }: ReturnType<typeof band>) => ({
    p10: tenth(p10),
    p50: tenth(p50),
    p90: tenth(p90),
  });
  const whole = (sorted: readonly number[]) => ({ p50: Math.round(at(sorted, 0.5)), p90: Math.round(at(sorted, 0.9)) });
  const { limitMinor } = rates;
  return {
    handsOn: rounded(band(toCome, rates.spentMinutes)),
    toCome: rounded(band(toCome)),
    price: whole(price),
    withParts: whole(withParts),
    passesLimit: limitMinor === null ? null : withParts.filter((one) => one > limitMinor).length / done.length,
    handOver: done.filter((path) => path.handedOver).length / done.length,
    likeliestPart: likeliestPart(done),
    partChances: partChances(done),
    drivers: driversOf(done),
    medianError: (1.2533 * deviation(toCome)) / Math.sqrt(done.length),
    seed,
    paths,
    policy,
    firstFigure: policy === 'ratio',
  };
}

const at = (sorted: readonly number[], p: number): number => quantile(sorted, p) ?? 0;

function likeliestPart(done: readonly Path[]): string | null {
  const counts = Map.groupBy(
    done.filter((path) => path.partMinor > 0 && path.part !== null),
    (path) => path.part as string,
  );
  return [...counts].toSorted((a, b) => b[1].length - a[1].length)[0]?.[0] ?? null;
}

function partChances(done: readonly Path[]): LabourEstimate['partChances'] {
  const counts = Map.groupBy(
    done.filter((path) => path.needed && path.part !== null),
    (path) => path.part as string,
  );
  return Object.fromEntries([...counts].map(([part, paths]) => [part, paths.length / done.length]));
}

function deviation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
}
