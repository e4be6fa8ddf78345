import { useQuery } from '@tanstack/react-query';
import { useNavigate } from 'react-router';
import phone from '../../assets/words/en/phone.json';
import stages from '../../assets/words/en/stages.json';
import { AT_THE_BENCH, type Stage } from '../../core/stage.ts';
import { Frame } from '../Frame.tsx';
import { SetApartList } from '../jobs/SetApartList.tsx';
import { sentence } from '../jobs/sentence.ts';
import { Key } from '../kit/keys/Key.tsx';
import { TagText } from '../kit/mark/TagText.tsx';
import { useWords } from '../kit/text/words.tsx';
import { dayLineRead, shopRead } from '../link/reads.ts';
import { ForTheNight } from './ForTheNight.tsx';

const HERE: readonly Stage[] = [...AT_THE_BENCH, 'part-on-the-way', 'owners-word-needed'];

/** The machines at the bench, the next promised first. */
export function BenchChoice() {
  const words = useWords();
  const { t } = words;
  const go = useNavigate();
  const line = useQuery(dayLineRead());
  const settings = useQuery(shopRead()).data?.settings;
  const points = (line.data?.points ?? [])
    .filter((point) => HERE.includes(point.stage))
    .sort((a, b) => (a.promised ?? Number.POSITIVE_INFINITY) - (b.promised ?? Number.POSITIVE_INFINITY));
  const apart = line.data?.setApart ?? [];
  return (
    <Frame here="bench" touch="bench" open={<h1>{t('app.rooms.bench')}</h1>}>
      <section className="bench-choice" aria-label={t('bench.choose')}>
        <h2>{t('bench.choose')}</h2>
        {line.isPending && <p role="status">{t('app.waiting')}</p>}
        <SetApartList jobs={apart} />
        {line.data && points.length + apart.length === 0 && <p>{t('bench.none-here')}</p>}
        <ul className="bench-list">
          {points.map((point) => (
            <li key={point.job}>
              <div>
                {point.tag && <TagText tag={point.tag} />} <b>{point.called}</b>
                <div className="k-small k-muted">
                  {stages[point.stage]}
                  {point.promised !== null && `, ${t('bench.promised', { at: words.dayClock(point.promised) })}`}.{' '}
                  {sentence(point.phone, phone, words)}
                </div>
              </div>
              <Key label={t('bench.open-machine', { called: point.called })} onPress={() => go(`/bench/${point.job}`)}>
                {t('bench.open-it')}
              </Key>
            </li>
          ))}
        </ul>
      </section>
      {settings && <ForTheNight settings={settings} />}
    </Frame>
  );
}
