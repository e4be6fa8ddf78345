import { yearOf } from '../../../../core/calendar.ts';
import type { ReckonedTime, ReckoningSheet, YearsLoss } from '../../../../core/contract/reckoningSheet.ts';
import { closedTracing } from '../../../../core/job/bench/closedTracing.ts';
import { scoredThoughts } from '../../../../core/job/bench/scoredThoughts.ts';
import { ESTIMATE_MOMENTS } from '../../../../core/job/estimate.ts';
import { type CostFacts, lossesOf } from '../../../../core/job/home/lossesOf.ts';
import type { Job } from '../../../../core/job/job.ts';
import { type JobScores, type NotScored, scoredEstimates } from '../../../../core/job/promise/scoredEstimates.ts';
import type { Shop } from '../../../../core/job/shop.ts';
import { calibrationOf } from '../../../../core/labour/calibration/calibration.ts';
import { judgedTogether, type LearntTask, movedTime } from '../../../../core/labour/tasks/learnTimes.ts';
import { tallyJobs } from '../../../../core/tracing/live/shop/closedTracing.ts';
import { learnPriors } from '../../../../core/tracing/live/shop/learnPriors.ts';
import type { FaultModel } from '../../../../core/tracing/live/types.ts';
import { openJobs, type Reader } from '../../../../db/index.ts';
import { closedJobs } from '../closed/closedJobs.ts';
import { leadOf } from '../closed/leadTimes.ts';
import { ownTimes } from '../closed/ownTimes.ts';

/** Estimates against closed jobs, own times, priors and losses. `modelAsStated` is the shop's model before it learnt. */
export async function reckoning(read: Reader, modelAsStated: (shop: Shop) => FaultModel): Promise<ReckoningSheet> {
  const shop = await read.load('shop');
  const model = modelAsStated(shop);
  const closed = await closedJobs(read);
  const jobs = closed.map(({ job }) => job);
  const { learnt, leftOut } = ownTimes(model, closed);
  const tally = tallyJobs(
    model,
    jobs.flatMap((job) => closedTracing(model, job) ?? []),
  );
  return {
    currency: shop.settings?.currency ?? null,
    jobs: jobs.length,
    ...scores(jobs.map(scoredEstimates)),
    times: reckonedTimes(learnt),
    timesLeftOut: leftOut,
    priors: {
      moved: learnPriors(model, tally).moved,
      tally: { counted: tally.counted, excluded: tally.excluded },
      takenOver: shop.learnt?.counted ?? null,
    },
    thoughts: scoredThoughts(model, jobs),
    lead: shop.settings && leadOf(shop.settings, closed),
    losses: losses([...jobs, ...(await stillOpen(read))], shop.settings?.zone ?? 'UTC'),
  };
}

function scores(scored: readonly (JobScores | NotScored)[]): Pick<ReckoningSheet, 'calibration' | 'notScored'> {
  const all = scored.flatMap((one) => (typeof one === 'string' ? [] : one));
  const count = (why: NotScored) => scored.filter((one) => one === why).length;
  return {
    calibration: ESTIMATE_MOMENTS.map((moment) => ({
      moment,
      figures: calibrationOf(all.filter((one) => one.moment === moment)),
    })),
    notScored: {
      asItCame: count('asItCame'),
      nothingDone: count('nothingDone'),
      forgotten: count('forgotten'),
      noEstimate: count('noEstimate'),
    },
  };
}

function reckonedTimes(learnt: readonly LearntTask[]): readonly ReckonedTime[] {
  const far = ({ middle, stated }: ReckonedTime) => Math.abs(Math.log(middle / stated.likely));
  const times = learnt
    .flatMap((task) =>
      (['handsOn', 'waiting'] as const).flatMap((which): readonly ReckonedTime[] => {
        const own = task.own[which];
        if (!own || own.times === 0) return [];
        const { id, of, source } = task;
        return [{ task: id, of, which, source, stated: own.stated, times: own.times, ...movedTime(own) }];
      }),
    )
    .toSorted((a, b) => far(b) - far(a));
  return judgedTogether(times);
}

function losses(jobs: readonly CostFacts[], zone: string): readonly YearsLoss[] {
  const costly = jobs.flatMap(lossesOf).filter((one) => one.minor > 0);
  const byYear = Map.groupBy(costly, (one) => `${yearOf(one.at, zone)} ${one.cause}`);
  return [...byYear]
    .map(([key, of]) => ({
      year: Number(key.slice(0, 4)),
      cause: of[0]?.cause ?? 'unknown',
      incidents: of.length,
      minor: of.reduce((sum, one) => sum + one.minor, 0),
    }))
    .toSorted((a, b) => b.year - a.year || (a.cause < b.cause ? -1 : 1));
}

async function stillOpen(read: Reader): Promise<readonly Job[]> {
  const jobs: Job[] = [];
  for (const id of await openJobs(read)) {
    const job = await read.load('job', id);
    if (job) jobs.push(job);
  }
  return jobs;
}
