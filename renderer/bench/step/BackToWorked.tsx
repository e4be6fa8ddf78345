import type { JobSheet } from '../../../core/contract/screens.ts';
import { isThere } from '../../../core/job/triedArrangements.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { workName } from '../../terms/terms.ts';
import { placeWords } from '../inside/insideOf.ts';
import type { Back } from './useBack.ts';

/** It got worse, or the way back was asked for: when it last worked, and exactly the moves that lead back to it. */
export function BackToWorked({ sheet, back }: { readonly sheet: JobSheet; readonly back: Back }) {
  const words = useWords();
  const { t, list, dayClock } = words;
  const { worked, worse } = back;
  if (!worked)
    return (
      <section className="bench-form bench-back" aria-label={t('bench.back-to-worked')}>
        <p>
          <b>{t('bench.back-never-worked')}</b>
        </p>
        {back.can && <Key onPress={() => void back.asItCame()}>{t('bench.back-as-it-came')}</Key>}
      </section>
    );
  const { tried, way } = worked;
  const work = sheet.job.work.find(({ run }) => run === tried.run);
  const nameOf = (id: string) => sheet.parts.find((part) => part.id === id)?.name ?? id;
  const there = isThere(way);
  return (
    <section className="bench-form bench-back" aria-label={t('bench.back-to-worked')}>
      <p>
        <b>
          {t(worse ? 'bench.back-got-worse' : 'bench.back-it-works', {
            at: dayClock(tried.at),
            step: work ? workName(work) : '',
          })}
        </b>
      </p>
      {there ? (
        <p>{t('bench.back-there')}</p>
      ) : (
        <>
          <p className="k-small">{t('bench.back-caution')}</p>
          <ol className="bench-plain" aria-label={t('bench.back-moves')}>
            {way.moves.map(({ part, from, to }) => (
              <li key={`${part}${from.at}${to.at}`}>
                {t('bench.back-move', { part: nameOf(part), from: placeWords(from, words), to: placeWords(to, words) })}
              </li>
            ))}
            {way.plugIn.length > 0 && <li>{t('bench.back-plug-in', { slots: list(way.plugIn) })}</li>}
            {way.unplug.length > 0 && <li>{t('bench.back-unplug', { slots: list(way.unplug) })}</li>}
          </ol>
          <Key onPress={() => void back.toWorked()}>{t('bench.back-do')}</Key>
        </>
      )}
    </section>
  );
}
