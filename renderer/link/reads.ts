import { skipToken } from '@tanstack/react-query';
import type { JobId, MachineId, PartId } from '../../core/ids.ts';
import type { Shown } from '../../core/job/bench/offerStands.ts';
import { queries, queryOf, service } from './service.ts';

/** Everything of one job, of none until one is chosen; stale with any entry that touches it, its machine or a part. */
export const jobRead = (job: JobId | null) =>
  queryOf.job.queryOptions({
    input: job === null ? skipToken : { job },
    meta: { follows: { streams: [`job:${job}`, 'machine:', 'part:', 'owner:', 'paper:'] } },
  });

/** What the engine says of a job. The first answer is quick, the second looks two steps ahead. */
export const tracingRead = (job: JobId, method: 'ratio' | 'rollout') => ({
  ...tracingOptions(job, method),
  queryFn: ({ signal }: { readonly signal: AbortSignal }) =>
    service.tracing({ job, method, shown: shownOf(job) }, { signal }),
});

/** What would follow the step on offer, and what remedies would cost. */
export const planAheadRead = (job: JobId) =>
  queryOf.planAhead.queryOptions({
    input: { job },
    meta: { follows: { streams: [`job:${job}`, 'machine:', 'part:'], but: ['estimated', 'promised', 'promise-told'] } },
  });

/** As of when, and after which log, the step that stands on this screen was chosen; the quick answer leads. */
function shownOf(job: JobId): Shown | undefined {
  const quick = queries.getQueryData<Shown>(tracingOptions(job, 'ratio').queryKey);
  return quick && { asOf: quick.asOf, logged: quick.logged };
}

const tracingOptions = (job: JobId, method: 'ratio' | 'rollout') =>
  queryOf.tracing.queryOptions({
    input: { job, method },
    // How long it will take moves no belief: the step on screen stays while figures come in.
    meta: { follows: { streams: [`job:${job}`, 'machine:', 'part:'], but: ['estimated', 'promised', 'promise-told'] } },
  });

export const shopRead = () => queryOf.shop.queryOptions({ meta: { follows: { streams: ['shop'] } } });
export const dayLineRead = () =>
  queryOf.dayLine.queryOptions({ meta: { follows: { streams: ['job:', 'part:', 'shop'] } } });
export const wallRead = () =>
  queryOf.wall.queryOptions({ meta: { follows: { streams: ['part:', 'machine:', 'job:'] } } });
export const ordersRead = () => queryOf.orders.queryOptions({ meta: { follows: { streams: ['job:', 'part:'] } } });
export const nightRead = () =>
  queryOf.night.queryOptions({ meta: { follows: { streams: ['job:', 'part:', 'machine:'] } } });
export const keptRead = () => queryOf.kept.queryOptions({ meta: { follows: { streams: ['part:', 'job:'] } } });
/** The whole path of a part. */
export const pathRead = (part: PartId) =>
  queryOf.path.queryOptions({ input: { part }, meta: { follows: { streams: [`part:${part}`, 'job:', 'shop'] } } });
export const outRead = () => queryOf.out.queryOptions({ meta: { follows: { streams: ['part:', 'job:', 'shop'] } } });
export const thenAndNowRead = (machine: MachineId) =>
  queryOf.thenAndNow.queryOptions({ input: { machine }, meta: { follows: { streams: ['machine:', 'part:'] } } });
export const enquiriesRead = () => queryOf.enquiries.queryOptions({ meta: { follows: { streams: ['enquiry:'] } } });
export const reckoningRead = () =>
  queryOf.reckoning.queryOptions({
    meta: { follows: { kinds: ['handed-over', 'incident', 'priors-learnt', 'priors-reset', 'model-used'] } },
  });
