import { useState } from 'react';
import { DayField } from '../../kit/fields/DateField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { wordsOfError } from '../../link/refusalWords.ts';
import { saveFile } from '../../link/saveFile.ts';
import { service } from '../../link/service.ts';

/** The bills of some days as a file for bookkeeping, with what kind of table it is. */
export function Books() {
  const { t } = useWords();
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const [problem, setProblem] = useState<ReturnType<typeof wordsOfError> | null>(null);
  const save = async () => {
    try {
      saveFile(await service.bookkeeping({ from: from || null, to: to || null }), 'bills.csv');
      setProblem(null);
    } catch (error) {
      setProblem(wordsOfError(error));
    }
  };
  const turned = from !== '' && to !== '' && to < from;
  return (
    <section className="promise-settings" aria-label={t('reckoning.books.title')}>
      <h2>{t('reckoning.books.title')}</h2>
      <p>{t('reckoning.books.says')}</p>
      <div className="promise-settings-row">
        <DayField label={t('reckoning.books.from')} value={from} onChange={setFrom} />
        <DayField label={t('reckoning.books.to')} value={to} onChange={setTo} />
        <Key onPress={() => void save()} {...(turned ? { whyNot: t('reckoning.books.turned') } : {})}>
          {t('reckoning.books.save')}
        </Key>
      </div>
      <p className="k-muted k-small">{t('reckoning.books.dialect')}</p>
      {problem && <Problem slim {...problem} />}
    </section>
  );
}
