import { useNavigate } from 'react-router';
import phone from '../../assets/words/en/phone.json';
import type { JobSheet } from '../../core/contract/screens.ts';
import { sentence } from '../jobs/sentence.ts';
import { Key } from '../kit/keys/Key.tsx';
import { useWords } from '../kit/text/words.tsx';
import { GoOnKeys } from './deeds/GoOnKeys.tsx';
import { AwayList } from './fitting/AwayList.tsx';

/** Nothing to do at the bench now: whose move it is, and the way there. */
export function WaitingBench({ sheet, tray }: { readonly sheet: JobSheet; readonly tray: string }) {
  const words = useWords();
  const { t } = words;
  const go = useNavigate();
  return (
    <section className="bench-form" aria-label={t('bench.next')}>
      <h2>{t(`bench.move.${sheet.band}`)}</h2>
      <p>{sentence(sheet.phone, phone, words)}</p>
      <Key kind="filled" large onPress={() => go(`/counter/${sheet.job.id}`)}>
        {t('bench.at-the-counter')}
      </Key>
      <AwayList sheet={sheet} tray={tray} />
      <GoOnKeys sheet={sheet} />
    </section>
  );
}
