import { drawLogNormal, logNormalOf } from '../figures/logNormal.ts';
import { medianInterval } from '../figures/medianInterval.ts';
import { type Prng, prng } from '../figures/prng.ts';
import { quantileOfSorted } from '../figures/quantile.ts';
import { addAt, at } from '../figures/rows.ts';
import { knownFault } from '../tracing/live/model/special.ts';
import { verdictAfter } from '../tracing/live/verdict/verdictAfter.ts';
import { driversOf, type Spread } from './drivers.ts';
import type { Traced, Traces } from './traced.ts';
import { openTraces } from './traces.ts';
import type { EstimateCancelled, EstimateRequest, LabourEstimate, WorkTask } from './types.ts';

/** All runs, one value of each run in each list. */
type Runs = Spread & {
  readonly faults: (string | null)[];
  readonly minutes: Float64Array;
  readonly parts: (string | null)[];
  /** Price of the part that the fault is mended by; 0 where it takes none, or none with a price. */
  readonly partMinor: Float64Array;
  /** 1 where the fault is mended by that part. */
  readonly needed: Uint8Array;
  handedOver: number;
};

/** Paths between two looks at whether something newer was asked: a run as the Bench works may take seconds. */
const LOOK_EVERY = { ratio: 64, 'one-step': 64, 'two-step': 1 } as const;

/**
 * What a job will likely take: many runs of the policy asked for over the present belief, each with its own true fault,
 * outcomes and task times, then fitting, proving and cleaning. Decisions are shared between runs with the same history.
 * Deterministic for a seed. `kept`: what an earlier run of the same case decided; decisions change no figure.
 */
export function estimate(request: EstimateRequest, kept?: Traces | null): LabourEstimate | EstimateCancelled {
  const { paths, seed } = request;
  const random = prng(seed);
  const tracing = kept === undefined ? openTraces(request.model, request.case, request.policy) : kept;
  const settled = tracing ? null : settledFault(request);
  const runs = emptyRuns(request);
  for (let n = 0; n < paths; n++) {
    if (n % LOOK_EVERY[request.policy] === 0 && request.cancelled?.())
      return { refused: 'estimate-cancelled', paths: n };
    const traced = tracing ? tracing.run(request.stepTimes, random) : { minutes: 0, fault: settled, ended: true };
    addRun(request, runs, n, traced, random);
  }
  return summed(request, runs, tracing ? request.policy : 'none');
}

const emptyRuns = ({ work, paths }: EstimateRequest): Runs => ({
  minutes: new Float64Array(paths),
  tracing: new Float64Array(paths),
  work: new Map(work.map((task) => [task.id, new Float64Array(paths)])),
  faults: [],
  parts: [],
  partMinor: new Float64Array(paths),
  needed: new Uint8Array(paths),
  handedOver: 0,
});

/** Writes down one run: what was traced, the work that follows, and the part that it takes. */
function addRun({ model, rates, work }: EstimateRequest, runs: Runs, n: number, traced: Traced, random: Prng): void {
  const fault = traced.fault === null ? undefined : knownFault(model, traced.fault);
  const part = fault?.part ?? null;
  let after = 0;
  if (traced.ended) {
    for (const task of work) {
      const minutes = taskMinutes(task, random);
      const column = runs.work.get(task.id);
      if (column) addAt(column, n, minutes);
      after += minutes;
    }
    after += fault?.mendMinutes ?? 0;
    if (part !== null && fault?.mendedBy === 'part') {
      runs.needed[n] = 1;
      runs.partMinor[n] = rates.parts[part] ?? 0;
    }
  } else runs.handedOver += 1;
  runs.minutes[n] = traced.minutes + after;
  runs.tracing[n] = traced.minutes;
  runs.faults.push(traced.fault);
  runs.parts.push(part);
}

/** A log-normal task time: low and high are its 5th and 95th percentile, likely its median. */
export function taskMinutes(task: WorkTask, random: Prng): number {
  const needed = task.chance >= 1 || random.next() < task.chance;
  const minutes = drawLogNormal(logNormalOf(task.minutes), random);
  return needed ? minutes : 0;
}

function settledFault({ model, case: tracing }: EstimateRequest): string | null {
  if (!tracing) return null;
  const verdict = verdictAfter(model, tracing);
  return verdict.verdict === 'confirmed' || verdict.verdict === 'cured' ? verdict.fault : null;
}

/** Minutes as they are printed. */
const tenth = (minutes: number): number => Math.round(minutes * 10) / 10;

function summed({ rates, seed, paths }: EstimateRequest, runs: Runs, policy: LabourEstimate['policy']): LabourEstimate {
  const labour = (minutes: number) => rates.spentMinor + (rates.fixed ? 0 : Math.round(minutes * rates.perMinuteMinor));
  const toCome = runs.minutes.toSorted();
  // More minutes never cost less: what is sorted by minutes is sorted by price.
  const price = toCome.map(labour);
  const withParts = runs.minutes.map((minutes, n) => labour(minutes) + at(runs.partMinor, n)).sort();
  const rounded = (plus: number) => {
    const quantile = (p: number) => tenth(plus + quantileOfSorted(toCome, p));
    return { p10: quantile(0.1), p50: quantile(0.5), p90: quantile(0.9) };
  };
  const whole = (sorted: Float64Array) => ({
    p50: Math.round(quantileOfSorted(sorted, 0.5)),
    p90: Math.round(quantileOfSorted(sorted, 0.9)),
  });
  const { limitMinor } = rates;
  const between = medianInterval([...toCome]);
  return {
    handsOn: rounded(rates.spentMinutes),
    toCome: rounded(0),
    price: whole(price),
    withParts: whole(withParts),
    passesLimit: limitMinor === null ? null : withParts.filter((one) => one > limitMinor).length / paths,
    handOver: runs.handedOver / paths,
    likeliestPart: likeliestPart(runs),
    partChances: partChances(runs),
    drivers: driversOf(runs),
    medianBetween: between && {
      low: tenth(rates.spentMinutes + between.low),
      high: tenth(rates.spentMinutes + between.high),
    },
    seed,
    paths,
    policy,
    firstFigure: policy === 'ratio',
  };
}

function likeliestPart({ parts, partMinor }: Runs): string | null {
  const counts = countsOf(parts, (n) => at(partMinor, n) > 0);
  return [...counts].toSorted((a, b) => b[1] - a[1])[0]?.[0] ?? null;
}

function partChances({ parts, needed }: Runs): LabourEstimate['partChances'] {
  const counts = countsOf(parts, (n) => needed[n] === 1);
  return Object.fromEntries([...counts].map(([part, count]) => [part, count / parts.length]));
}

/** How often each part stands in a run that counts. */
function countsOf(parts: Runs['parts'], counts: (n: number) => boolean): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  parts.forEach((part, n) => {
    if (part !== null && counts(n)) found.set(part, (found.get(part) ?? 0) + 1);
  });
  return found;
}
