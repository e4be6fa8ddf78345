import { useQuery } from '@tanstack/react-query';
import { useNavigate } from 'react-router';
import { openDays } from '../../core/job/promise/openDays.ts';
import type { ShopSettings } from '../../core/job/shop.ts';
import { epochMs, HOUR_MS, MINUTE_MS } from '../../core/time.ts';
import { Key } from '../kit/keys/Key.tsx';
import { useWords } from '../kit/text/words.tsx';
import { useNow } from '../kit/useNow.ts';
import { nightRead } from '../link/reads.ts';
import { stepName } from '../terms/terms.ts';

/** So long before closing time one thinks of the night: common practice, no source. */
const BEFORE_MS = HOUR_MS;

/** Towards closing time: which machines could use the night, and for what. Long passes cost no hands. */
export function ForTheNight({ settings }: { readonly settings: ShopSettings }) {
  const { t, list, clock } = useWords();
  const go = useNavigate();
  const now = useNow(MINUTE_MS);
  const [today] = openDays(settings, epochMs(now), 1);
  const near = today !== undefined && now < today.closes && today.closes - now <= BEFORE_MS;
  const night = useQuery({ ...nightRead(), enabled: near });
  if (!near || !night.data || night.data.length === 0) return null;
  return (
    <section className="bench-choice" aria-label={t('bench.night.title')}>
      <h2>{t('bench.night.title')}</h2>
      <p className="k-muted">{t('bench.night.says', { at: clock(today.closes) })}</p>
      <ul className="bench-list">
        {night.data.map((row) => (
          <li key={row.job}>
            <div>
              <b>{row.called}</b>
              <div className="k-small k-muted">{list(row.work.map(stepName))}</div>
            </div>
            <Key label={t('bench.open-machine', { called: row.called })} onPress={() => go(`/bench/${row.job}`)}>
              {t('bench.open-it')}
            </Key>
          </li>
        ))}
      </ul>
    </section>
  );
}
