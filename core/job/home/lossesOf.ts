import type { PartId } from '../../ids.ts';
import type { EpochMs } from '../../time.ts';
import type { Job } from '../job.ts';
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

/** What a job cost the shop itself: incidents at our hands, and parts that went back and were not paid back. */
export function lossesOf(job: Job): readonly Loss[] {
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
