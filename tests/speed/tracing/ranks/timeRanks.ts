import { type Prng, prng } from '../../../../core/figures/prng.ts';
import type { Task } from '../../../../core/labour/tasks/catalogue.ts';
import { learnTimes, type OwnTime } from '../../../../core/labour/tasks/learnTimes.ts';
import type { Believed } from '../../../../core/labour/tasks/normalInverseGamma.ts';
import { drawMinutes, statedBelief } from '../../../../core/labour/tasks/taskTime.ts';
import { type RankTest, rankTest } from './rankTest.ts';

const STATED = { low: 4, likely: 10, high: 30, skewed: false };
const TASK: Task = { id: 'a-task', of: 'step', handsOn: STATED, waiting: null, source: 'invented' };
const DRAWS = 19;

/**
 * Simulation-based calibration (Talts, Betancourt, Simpson, Vehtari & Gelman 2018, arXiv 1804.06788) of own times: a
 * task's true middle and spread are drawn from what is stated, then some own times of it, and the rank of the truth
 * among draws from what those leave likely is uniform when learning is right. `middle`: of the true middle; `next`: of
 * the time of the next such task, drawn as estimates draw it.
 */
export function timeRanks(seed: number, tasks: number): { readonly middle: RankTest; readonly next: RankTest } {
  const random = prng(seed);
  const [middle, next] = [counts(), counts()];
  for (let n = 0; n < tasks; n++) {
    const truth = drawBelieved(statedBelief(STATED), random);
    const took = () => Math.exp(truth.mu + truth.sigma * random.nextNormal());
    const seen = Array.from({ length: 1 + (n % 12) }, () => ({
      task: TASK.id,
      by: null,
      handsOn: took(),
      waiting: null,
    }));
    const own = learnTimes([TASK], seen)[0]?.own.handsOn as OwnTime;
    rank(middle, truth.mu, () => drawBelieved(own.believed, random).mu);
    rank(next, took(), () => drawMinutes(own.time, random));
  }
  const even = Array.from({ length: DRAWS + 1 }, () => 1 / (DRAWS + 1));
  return { middle: rankTest(middle, even), next: rankTest(next, even) };
}

const counts = (): number[] => new Array<number>(DRAWS + 1).fill(0);

function rank(into: number[], truth: number, draw: () => number): void {
  const below = Array.from({ length: DRAWS }, draw).filter((one) => one < truth).length;
  into[below] = (into[below] as number) + 1;
}

function drawBelieved({ mean, weight, shape, rate }: Believed, random: Prng) {
  const sigma = Math.sqrt(rate / drawGamma(shape, random));
  return { mu: mean + (sigma / Math.sqrt(weight)) * random.nextNormal(), sigma };
}

/** A gamma of that shape and scale 1, for shapes from 1 on (Marsaglia & Tsang, ACM Transactions on Mathematical Software 26, 2000). */
function drawGamma(shape: number, random: Prng): number {
  const d = shape - 1 / 3;
  for (;;) {
    const x = random.nextNormal();
    const v = (1 + x / Math.sqrt(9 * d)) ** 3;
    if (v > 0 && Math.log(1 - random.next()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}
