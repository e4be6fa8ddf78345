import type { JobSheet } from '../../../core/contract/screens.ts';
import { isThere, type ReturnMoves } from '../../../core/job/triedArrangements.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { workName } from '../../terms/terms.ts';
import { placeWords } from '../inside/insideOf.ts';
import type { Back } from './useBack.ts';

type BackProps = { readonly sheet: JobSheet; readonly back: Back };

/** It got worse, or the way back was asked for: when it last worked, and exactly the moves that lead back to it. */
export function BackToWorked({ sheet, back }: BackProps) {
  const { t, dayClock } = useWords();
  const { worked, worse } = back;
  if (!worked) return <BackAsItCame sheet={sheet} back={back} />;
  const { tried, way } = worked;
  const work = sheet.job.work.find(({ run }) => run === tried.run);
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
      {isThere(way) ? <p>{t('bench.back-there')}</p> : <Moves sheet={sheet} way={way} onDone={back.toWorked} />}
    </section>
  );
}

/** Where it never worked here, the way back leads to how it came; what hands cannot reach is said before it is pressed. */
function BackAsItCame({ sheet, back }: BackProps) {
  const { t } = useWords();
  return (
    <section className="bench-form bench-back" aria-label={t('bench.back-as-it-came')}>
      {back.worse && (
        <p>
          <b>{t('bench.back-never-worked')}</b>
        </p>
      )}
      {back.asItCame && <Moves sheet={sheet} way={back.asItCame} onDone={back.toHowItCame} />}
    </section>
  );
}

type MovesProps = { readonly sheet: JobSheet; readonly way: ReturnMoves; readonly onDone: () => Promise<void> };

function Moves({ sheet, way, onDone }: MovesProps) {
  const words = useWords();
  const { t, list } = words;
  const partOf = (id: string) => sheet.parts.find((part) => part.id === id);
  return (
    <>
      <p className="k-small">{t('bench.back-caution')}</p>
      <ol className="bench-plain" aria-label={t('bench.back-moves')}>
        {way.moves.map(({ part, from, to }) => (
          <li key={`${part}${from.at}${to.at}`}>
            {t('bench.back-move', {
              part: partOf(part)?.name ?? part,
              from: placeWords(from, words),
              to: placeWords(to, words),
            })}
          </li>
        ))}
        {way.plugIn.length > 0 && <li>{t('bench.back-plug-in', { slots: list(way.plugIn) })}</li>}
        {way.unplug.length > 0 && <li>{t('bench.back-unplug', { slots: list(way.unplug) })}</li>}
      </ol>
      {way.outOfReach.map((id) => {
        const part = partOf(id);
        return (
          part && <p key={id}>{t('bench.back-stays', { part: part.name, where: placeWords(part.place, words) })}</p>
        );
      })}
      <Key onPress={() => void onDone()}>{t('bench.back-do')}</Key>
    </>
  );
}
