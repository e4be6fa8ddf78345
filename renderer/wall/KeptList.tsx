import { useQuery } from '@tanstack/react-query';
import type { KeptRow } from '../../core/contract/screens.ts';
import { Key } from '../kit/keys/Key.tsx';
import { Problem } from '../kit/keys/Problem.tsx';
import { useWords } from '../kit/words.tsx';
import { useDoes } from '../link/does.ts';
import { keptRead } from '../link/reads.ts';

/** Dead parts we keep by the owner's leave, the first day first, and what may be done with each now. */
export function KeptList() {
  const { t } = useWords();
  const kept = useQuery(keptRead()).data ?? [];
  if (kept.length === 0) return null;
  return (
    <section className="k-out">
      <h2>{t('wall.kept')}</h2>
      <ul className="wall-list">
        {kept.map((one) => (
          <KeptItem key={one.part} kept={one} />
        ))}
      </ul>
    </section>
  );
}

function KeptItem({ kept }: { readonly kept: KeptRow }) {
  const { t, dayMonth } = useWords();
  const { does, problem } = useDoes();
  const end = (as: 'recycled' | 'given-back') => void does('endKeeping', { job: kept.job, part: kept.part, as });
  return (
    <li>
      <b>{kept.name}</b>, {t('wall.for', { called: kept.called })}
      <br />
      {t(kept.due ? 'wall.kept-due' : 'wall.kept-until', { day: dayMonth(kept.until), shelf: kept.shelf })}
      {kept.may.includes('destroy-by-own-word') && <br />}
      {kept.may.includes('destroy-by-own-word') && t('wall.kept-data')}
      {kept.may.includes('recycle') && (
        <Key wide onPress={() => end('recycled')}>
          {t('wall.recycle')}
        </Key>
      )}
      <Key wide onPress={() => end('given-back')}>
        {t('wall.give-back')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </li>
  );
}
