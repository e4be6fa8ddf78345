import type { PartId } from '../../ids.ts';
import type { EpochMs } from '../../time.ts';
import type { Job } from '../job.ts';
import type { Order } from '../orders/order.ts';
import type { Mishap } from './mishaps.ts';

/** What a loss is counted under; a part the supplier did not take back is one too. */
export type LossCause = Mishap | 'known' | 'unknown' | 'supplier-refused';

/** One loss of the shop's own, in minor units; never on the owner's bill. */
export type Loss = {
  readonly at: EpochMs;
  readonly cause: LossCause;
  readonly part: PartId | null;
  readonly minor: number;
};

/** What is read of a job for what it cost the shop itself. */
export type CostFacts = {
  readonly incidents: readonly Pick<
    Job['incidents'][number],
    'happenedAt' | 'at' | 'how' | 'cause' | 'part' | 'costMinor'
  >[];
  readonly orders: readonly Pick<Order, 'settled' | 'part'>[];
};

/** What is read of a job for its costs, and nothing more. */
export const costFacts = (job: CostFacts): CostFacts => ({
  incidents: job.incidents.map(({ happenedAt, at, how, cause, part, costMinor }) => ({
    ...(happenedAt !== undefined && { happenedAt }),
    at,
    ...(how !== undefined && { how }),
    cause,
    part,
    costMinor,
  })),
  orders: job.orders.map(({ settled, part }) => ({ settled, part })),
});

/** What a job cost the shop itself: incidents at our hands, and parts that went back and were not paid back. */
export function lossesOf(job: CostFacts): readonly Loss[] {
  const incidents = job.incidents.map(({ happenedAt, at, how, cause, part, costMinor }) => ({
    at: happenedAt ?? at,
    cause: how ?? cause,
    part,
    minor: costMinor,
  }));
  const refused = job.orders.flatMap(({ settled, part }) =>
    settled?.as === 'refused'
      ? [{ at: settled.at, cause: 'supplier-refused' as const, part, minor: settled.minor }]
      : [],
  );
  return [...incidents, ...refused];
}
