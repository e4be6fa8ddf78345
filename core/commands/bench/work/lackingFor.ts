import type { ConsentId } from '../../../approval/consent.ts';
import type { View } from '../../../entries/view.ts';
import { mayNotOpen } from '../../../job/bench/mayNotOpen.ts';
import type { Job } from '../../../job/job.ts';
import type { Work } from '../../../job/work.ts';
import type { Asking } from '../../kernel/asking.ts';

/** The owner's words that a piece of work needs and does not have now; putting back what is theirs needs none. */
export function lackingFor(
  view: View & { readonly job: Job },
  { kind, what }: Pick<Work, 'kind' | 'what'>,
  { tracing }: Asking,
): readonly string[] {
  if (kind === 'step') return tracing.rules(what) ? tracing.lacking(view, what) : [];
  if (kind === 'handling' || kind === 'own-proof') return [];
  const opening: readonly ConsentId[] = ['open'];
  return mayNotOpen(view.job) ? opening : [];
}
