import type { AnyDraft } from '../../entries/draft.ts';
import { applyToView, type View } from '../../entries/view.ts';
import type { Job } from '../../job/job.ts';
import type { Asking } from './asking.ts';
import type { Decision } from './decision.ts';
import { refuse } from './decision.ts';

type JobView = View & { readonly job: Job };

/**
 * Several decisions about a job as one, each made on what those before it wrote: the entries of all of them, or the
 * first refusal and nothing.
 */
export function inTurn(
  view: JobView,
  { at, by }: Pick<Asking, 'at' | 'by'>,
  decide: readonly ((now: JobView) => Decision)[],
): Decision {
  const entries: AnyDraft[] = [];
  let now: View = view;
  for (const one of decide) {
    const { job } = now;
    if (!job) return refuse('no-such-job', { job: view.job.id });
    const decision = one({ ...now, job });
    if (!decision.ok) return decision;
    entries.push(...decision.entries);
    now = decision.entries.reduce((before, entry) => applyToView(before, entry, { at, by }), now);
  }
  return { ok: true, entries };
}
