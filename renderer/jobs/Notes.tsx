import type { Job } from '../../core/job/job.ts';
import { useWords } from '../kit/text/words.tsx';

/** What was noted, the newest first and in sight; the rest one press away. */
export function Notes({ job }: { readonly job: Pick<Job, 'notes'> }) {
  const { t, dayClock } = useWords();
  const [newest, ...older] = [...job.notes].reverse();
  if (!newest) return null;
  const line = ({ says, foundByTheWay, at }: Job['notes'][number]) => (
    <>
      <span className="k-muted">{dayClock(at)}</span> {says ?? t('counter.erased')}
      {foundByTheWay && <span className="k-muted"> ({t('bench.by-the-way')})</span>}
    </>
  );
  return (
    <section className="bench-notes k-small" aria-label={t('bench.notes')}>
      <p>{line(newest)}</p>
      {older.length > 0 && (
        <details>
          <summary>{t('bench.notes-more', { n: older.length })}</summary>
          <ul>
            {older.map((note, i) => (
              <li key={`${note.at}${i}`}>{line(note)}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
