import { type Estimate, firstOfMoments } from '../estimate.ts';
import { type CostFacts, costFacts } from '../home/lossesOf.ts';
import type { Job } from '../job.ts';
import type { Order } from '../orders/order.ts';
import { type TimedWork, timedWork } from '../work.ts';

/** What is learnt from a job that went home, and reckoned up over many: a small part of what its stream tells. */
export type ClosedFacts = Pick<Job, 'tasks' | 'seen' | 'verdict' | 'struckVerdicts' | 'cameBackAs' | 'thoughts'> &
  CostFacts & {
    readonly told: Pick<Job['told'], 'symptoms'>;
    readonly handover: Pick<NonNullable<Job['handover']>, 'asItCame'> | null;
    readonly work: readonly TimedWork[];
    readonly estimates: readonly Pick<Estimate, 'moment' | 'seed' | 'handsOn'>[];
    readonly orders: readonly Pick<Order, 'placedAt' | 'cameAt' | 'received'>[];
  };

/** What is learnt from a job: whatever reckons over closed jobs reads these facts alone. */
export function closedFacts(job: Job): ClosedFacts {
  const { tasks, seen, verdict, struckVerdicts, cameBackAs, thoughts } = job;
  const costs = costFacts(job);
  return {
    tasks,
    seen,
    verdict,
    struckVerdicts,
    cameBackAs,
    thoughts,
    told: { symptoms: job.told.symptoms },
    handover: job.handover && { asItCame: job.handover.asItCame },
    work: job.work.map(timedWork),
    estimates: firstOfMoments(job.estimates).map(({ moment, seed, handsOn }) => ({ moment, seed, handsOn })),
    incidents: costs.incidents,
    orders: job.orders.map(({ placedAt, cameAt, received, settled, part }) => ({
      placedAt,
      cameAt,
      received,
      settled,
      part,
    })),
  };
}
