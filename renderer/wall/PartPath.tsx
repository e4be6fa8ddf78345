import { useQuery } from '@tanstack/react-query';
import { placeFacts } from '../../core/custody/readouts/placeFacts.ts';
import type { PartId } from '../../core/ids.ts';
import { useWords } from '../kit/text/words.tsx';
import { pathRead } from '../link/reads.ts';

/** Every place a part has been in, the newest first: since when, for whom, put there by whom. */
export function PartPath({ part }: { readonly part: PartId }) {
  const { t, dayClock } = useWords();
  const path = useQuery(pathRead(part)).data ?? [];
  return (
    <details className="wall-path">
      <summary>{t('wall.path', { n: path.length })}</summary>
      <ol reversed>
        {path.toReversed().map(({ place, holder, since, called, by }) => {
          const { says, facts } = placeFacts(place, holder);
          return (
            <li key={since + says}>
              {t('wall.stay', { day: dayClock(since), place: t(`wall.is.${says}`, facts), by })}
              {called !== null && ` ${t('wall.for', { called })}`}
            </li>
          );
        })}
      </ol>
    </details>
  );
}
