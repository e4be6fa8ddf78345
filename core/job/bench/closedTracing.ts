import { readGroups } from '../../tracing/live/readGroups.ts';
import type { ClosedTracing } from '../../tracing/live/shop/closedTracing.ts';
import type { FaultModel } from '../../tracing/live/types.ts';
import type { JobVerdict } from '../entries.ts';
import type { ClosedFacts } from './closedFacts.ts';

const ENDED = {
  confirmed: 'confirmed',
  cured: 'cured',
  named: 'named',
  'given-up': 'handed-over',
  'not-reproduced': 'not-reproduced',
} as const satisfies { readonly [is in JobVerdict['is']]: ClosedTracing['ended'] };

/** What a job that has gone home says for learning; null when no fault was traced in it. Seen counts before told. */
export function closedTracing(
  model: FaultModel,
  job: Pick<ClosedFacts, 'verdict' | 'struckVerdicts' | 'seen' | 'told' | 'cameBackAs'>,
): ClosedTracing | null {
  const verdict = job.verdict ?? job.struckVerdicts.at(-1) ?? null;
  if (!verdict) return null;
  return {
    groups: readGroups(model, job.seen ?? job.told.symptoms),
    fault: 'fault' in verdict ? verdict.fault : null,
    ended: ENDED[verdict.is],
    cameBack: job.cameBackAs?.same === 'same-fault',
  };
}
