import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Part } from '../../../core/custody/ledger.ts';
import type { Place } from '../../../core/custody/place.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { ArrivedKeys } from '../../parts/SendForm.tsx';
import { placeWords } from '../inside/insideOf.ts';

const AWAY: readonly Place['at'][] = ['transit', 'away', 'not-found'];

/** The owner's parts that are on their way, with somebody else, or not found. */
export function AwayList({ sheet, tray }: { readonly sheet: JobSheet; readonly tray: string }) {
  const { t } = useWords();
  const away = sheet.parts.filter((part) => part.belongs.to === 'owner' && AWAY.includes(part.place.at));
  if (away.length === 0) return null;
  return (
    <section className="bench-part" aria-label={t('bench.away')}>
      <h2>{t('bench.away')}</h2>
      <ul className="bench-list">
        {away.map((part) => (
          <AwayRow key={part.id} sheet={sheet} part={part} tray={tray} />
        ))}
      </ul>
    </section>
  );
}

type AwayRowProps = { readonly sheet: JobSheet; readonly part: Part; readonly tray: string };

function AwayRow({ sheet, part, tray }: AwayRowProps) {
  const words = useWords();
  const { t } = words;
  const { execute, problem } = useExecute();
  const { place } = part;
  const job = sheet.job.id;
  const move = (to: Place) =>
    void execute('movePart', { job, part: part.id, from: part.place, to, why: 'hand', says: null });
  return (
    <li className="bench-fit">
      <div>
        <b>{part.name}</b>
        <div className="k-small k-muted">{placeWords(place, words)}</div>
      </div>
      {place.at === 'transit' && <ArrivedKeys to={place.to} onArrived={move} />}
      <Key onPress={() => move({ at: 'tray', tray, job })}>{t('bench.is-here', { part: part.name, tray })}</Key>
      {problem && <Problem slim {...problem} />}
    </li>
  );
}
