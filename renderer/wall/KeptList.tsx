import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { KeptRow } from '../../core/contract/screens.ts';
import { Key } from '../kit/keys/Key.tsx';
import { Problem } from '../kit/keys/Problem.tsx';
import { useWords } from '../kit/text/words.tsx';
import { keptRead } from '../link/reads.ts';
import { useExecute } from '../link/useExecute.ts';
import { DestroyForm } from '../parts/DestroyForm.tsx';

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
  const { execute, problem } = useExecute();
  const [destroying, setDestroying] = useState(false);
  const end = (as: 'recycled' | 'given-back') => void execute('endKeeping', { job: kept.job, part: kept.part, as });
  return (
    <li>
      <b>{kept.name}</b>, {t('wall.for', { called: kept.called })}
      <br />
      {t(kept.due ? 'wall.kept-due' : 'wall.kept-until', { day: dayMonth(kept.until), shelf: kept.shelf })}
      {kept.may.includes('destroy-by-own-word') && <br />}
      {kept.may.includes('destroy-by-own-word') && t('wall.kept-data')}
      {kept.may.includes('destroy-by-own-word') && (
        <Key wide onPress={() => setDestroying(!destroying)}>
          {t('wall.destroy.open')}
        </Key>
      )}
      {destroying && (
        <DestroyForm job={kept.job} part={{ id: kept.part, name: kept.name }} onDone={() => setDestroying(false)} />
      )}
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
