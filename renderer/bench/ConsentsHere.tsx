import { agreed, type ConsentId } from '../../core/approval/consent.ts';
import type { Job } from '../../core/job/job.ts';
import { useWords } from '../kit/text/words.tsx';

/** The owner's words that hands at the bench go by: opening, its own system, data, filming. */
const AT_THE_BENCH = [
  'open',
  'own-parts-in',
  'start-own',
  'read',
  'write',
  'film',
] as const satisfies readonly ConsentId[];
type AtTheBench = (typeof AT_THE_BENCH)[number];

/** What the owner allows here, always in sight; what was taken back is said at once, and stays. */
export function ConsentsHere({ job }: { readonly job: Job }) {
  const { t, list, dayClock } = useWords();
  const { consents } = job;
  if (!consents.signature) return null;
  const named = (ids: readonly AtTheBench[]) => list(ids.map((id) => t(`bench.consents.${id}`)));
  const takenBack = AT_THE_BENCH.filter((id) => consents.withdrawn.includes(id));
  const yes = AT_THE_BENCH.filter((id) => agreed(consents, id));
  const no = AT_THE_BENCH.filter((id) => !yes.includes(id) && !takenBack.includes(id));
  const since = Math.max(...takenBack.map((id) => consents.withdrawnAt?.[id] ?? 0));
  return (
    <section className="bench-consents" aria-label={t('bench.consents.title')}>
      {takenBack.length > 0 && (
        <p role="alert" className="bench-taken-back">
          <b>{t('bench.consents.taken-back', { what: named(takenBack), at: since > 0 ? dayClock(since) : '' })}</b>
        </p>
      )}
      <p className="k-small">
        {yes.length > 0 && t('bench.consents.yes', { what: named(yes) })}{' '}
        {no.length > 0 && <span className="k-muted">{t('bench.consents.no', { what: named(no) })}</span>}
      </p>
    </section>
  );
}
