import { useNavigate } from 'react-router';
import type { SetApartJob } from '../../core/contract/screens.ts';
import { Key } from '../kit/keys/Key.tsx';
import { TagText } from '../kit/mark/TagText.tsx';
import { useWords } from '../kit/text/words.tsx';
import { unreadableFacts } from '../unreadable.ts';

/** Machines that are here and on no line, since entries of theirs cannot be read: each with its tag, and its own sheet. */
export function SetApartList({ jobs }: { readonly jobs: readonly SetApartJob[] }) {
  const words = useWords();
  const { t } = words;
  const go = useNavigate();
  if (jobs.length === 0) return null;
  return (
    <section className="day-apart" aria-label={t('day-line.set-apart')}>
      <h2>{t('day-line.set-apart')}</h2>
      <ul>
        {jobs.map(({ job, called, tag, unreadable }) => {
          const { how, facts } = unreadableFacts(unreadable, words);
          const name = called || t('day-line.set-apart-nameless');
          return (
            <li key={job}>
              {tag && <TagText tag={tag} />} <b>{name}</b> {t(`day-line.set-apart-why.${how}`, facts)}{' '}
              <Key label={t('day-line.set-apart-open', { called: name })} onPress={() => go(`/counter/${job}`)}>
                {t('day-line.set-apart-look')}
              </Key>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
