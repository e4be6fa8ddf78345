import { PartSwatch } from '../../../kit/mark/PartSwatch.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import type { OfJob } from '../sheetOf.ts';

/** Each of the owner's parts and what was sold or lent: where it is now, by mark and word. */
export function PartsAccounted({ sheet }: Pick<OfJob, 'sheet'>) {
  const { t } = useWords();
  const { machine, job } = sheet;
  const known = new Set([...machine.parts, ...job.parts]);
  const parts = sheet.parts.filter(
    (part) => known.has(part.id) && (part.belongs.to === 'owner' || part.place.at === 'slot'),
  );
  if (parts.length === 0) return <p className="k-muted">{t('counter.home.no-parts')}</p>;
  return (
    <ul className="counter-parts" aria-label={t('counter.home.parts')}>
      {parts.map((part) => (
        <li key={part.id}>
          <PartSwatch
            id={part.id}
            look={{
              is: 'part',
              whose: part.belongs.to,
              standing: part.standing.is === 'dead' ? 'dead' : part.standing.is === 'suspect' ? 'suspect' : 'plain',
              known: true,
            }}
          />
          <span>{part.name}</span>
          <span className="k-muted k-small">
            {part.place.at === 'slot' && part.place.machine === machine.id
              ? t('counter.home.inside', { slot: part.place.slot })
              : t(`counter.places.${part.place.at}`)}
          </span>
        </li>
      ))}
    </ul>
  );
}
