import type { Job } from '../job.ts';
import type { Work } from '../work.ts';

type Proof = Work & { readonly kind: 'proof' };
const proofs = (job: Pick<Job, 'work'>): readonly Proof[] =>
  job.work.filter((work): work is Proof => work.kind === 'proof' && !work.struck);

/**
 * The proofs (by their ids) that did not hold and have not held since, as they were written down: the machine is not ready
 * with one of them.
 */
export const notHeld = (job: Pick<Job, 'work'>): readonly string[] => {
  const done = proofs(job);
  const failed = done.filter(
    ({ what, passed }, nth) =>
      passed === false && !done.slice(nth + 1).some((later) => later.what === what && later.passed),
  );
  return [...new Set(failed.map(({ what }) => what))];
};

/** Whether anything was proved at all. */
export const isProved = (job: Pick<Job, 'work'>): boolean => proofs(job).some(({ passed }) => passed === true);
