import { type Exchange, repair } from './exchange.ts';
import { NEVER } from './solve.ts';

/**
 * One fault, one sure repair each, minutes and weights as in a single-machine schedule: the expected minutes times the
 * sum of the weights are the weighted sum of completion times (Kadane & Simon 1977; Smith 1956, Naval Research
 * Logistics Quarterly 3, for the scheduling form).
 */
export function schedule(jobs: readonly { id: string; length: number; weight: number }[]): Exchange {
  return {
    faults: jobs.map(({ id, weight }) => ({ id, weight })),
    steps: jobs.map(({ id, length }) => repair(id, length, { [id]: 1 })),
    waitingWeight: 1,
    handOver: NEVER,
  };
}

const chainWeights = [6, 18, 12, 8, 8, 17, 18];
const lengths = [3, 6, 6, 5, 4, 8, 10];
const before = [null, 1, 2, 3, null, 5, 6];
export const chainJobs = chainWeights.map((weight, at) => ({ id: `${at + 1}`, length: lengths[at] as number, weight }));

// Doing a job's work is opening a state that lies within its predecessor's; looking whether it helped costs nothing.
/** Pinedo, Scheduling: Theory, Algorithms and Systems, section 3.1, 1|chains|Σ wC: the chains 1-2-3-4 and 5-6-7. */
export const chains: Exchange = {
  faults: chainJobs.map(({ id, weight }) => ({ id, weight })),
  assembly: chainJobs.map(({ id, length }, at) => ({
    id: `after ${id}`,
    opening: length,
    closing: 0,
    within: before[at] === null ? null : `after ${before[at]}`,
  })),
  steps: chainJobs.map(({ id }) => repair(id, 0, { [id]: 1 }, { open: [`after ${id}`] })),
  waitingWeight: 1,
  handOver: NEVER,
};

/**
 * The oil wildcatter (Raiffa, Decision Analysis, 1968; restated by Shenoy, Operations Research 40 (1992), section 1),
 * every payoff (thousands) taken from 200 so that it is a cost: drilling -70, 50, 200; not drilling 0; the test 10.
 */
export function wildcatter(testCost: number): Exchange {
  const rows = { dry: [0.1, 0.3, 0.6], wet: [0.3, 0.4, 0.3], soaking: [0.5, 0.4, 0.1] };
  return {
    faults: [
      { id: 'dry', weight: 0.5 },
      { id: 'wet', weight: 0.3 },
      { id: 'soaking', weight: 0.2 },
    ],
    steps: [
      {
        id: 'drill',
        minutes: 0,
        outcomes: ['drilled'],
        cures: ['drilled'],
        chance: { '*': [1] },
        harm: { dry: 270, wet: 150 },
      },
      { id: 'test', minutes: testCost, outcomes: ['closed', 'open', 'none'], chance: rows },
    ],
    waitingWeight: 1,
    handOver: 200,
  };
}
