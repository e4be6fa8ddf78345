import type { Reading } from '../../../core/job/work.ts';
import { useWords } from '../../kit/text/words.tsx';

/** Readings with their limits and where each limit comes from; what is beyond its limit says so in words. */
export function ReadingLines({ readings, label }: { readonly readings: readonly Reading[]; readonly label?: string }) {
  const { t } = useWords();
  return (
    <ul className="k-small" aria-label={label}>
      {readings.map(({ what, value, limit, source, within }) => (
        <li key={`${what} ${value} ${limit}`}>
          {what}: <b>{value}</b>
          {within === false && <b> ({t('bench.proved.beyond-says')})</b>}
          <span className="k-muted">
            {[limit && `; ${t('bench.limit-says', { limit })}`, source && `; ${source}`].filter(Boolean).join('')}
          </span>
        </li>
      ))}
    </ul>
  );
}
