import { useState } from 'react';
import { USUAL_DAY_MINUTES } from '../../../core/job/promise/delay.ts';
import { USUAL_PROMISES } from '../../../core/job/promise/turns.ts';
import type { PromiseRules, ShopSettings } from '../../../core/job/shop.ts';
import { NumberField } from '../../kit/fields/NumberField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { ClosingDays } from './ClosingDays.tsx';
import { WeekHours, weekFrom, weekTexts } from './WeekHours.tsx';
import './PromiseSettings.css';

const CHANCES = [0.5, 0.7, 0.8, 0.9, 0.95] as const;
const POINTS = ['low', 'likely', 'high'] as const;

/** By what the shop promises a day: its hours, the days it is shut, how sure it wants to be, how long parts take. */
export function PromiseSettings({ settings }: { readonly settings: ShopSettings }) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const kept = settings.promises ?? USUAL_PROMISES;
  const [hours, setHours] = useState(() => weekTexts(settings.open));
  const [percentile, setPercentile] = useState(kept.percentile);
  const [closed, setClosed] = useState(kept.closed);
  const [lead, setLead] = useState<Readonly<Record<keyof PromiseRules['leadDays'], number | null>>>(kept.leadDays);
  const [dayMinutes, setDayMinutes] = useState<number | null>(kept.dayMinutes ?? USUAL_DAY_MINUTES);
  const [saved, setSaved] = useState(false);
  const open = weekFrom(hours);
  const { low, likely, high } = lead;
  const leadDays = low !== null && likely !== null && high !== null && low <= likely && likely <= high;
  const whyNot =
    open === null ? t('reckoning.settings.hours-wrong') : leadDays ? null : t('reckoning.settings.lead-wrong');
  const save = async () => {
    if (open === null || low === null || likely === null || high === null) return;
    const promises = {
      percentile,
      closed,
      leadDays: { low, likely, high },
      ...(dayMinutes !== null && { dayMinutes }),
    };
    setSaved((await execute('changeShop', { settings: { ...settings, open, promises } })) !== null);
  };
  return (
    <form
      className="promise-settings"
      aria-label={t('reckoning.settings.title')}
      onChange={() => setSaved(false)}
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <h2>{t('reckoning.settings.hours')}</h2>
      <p className="k-muted">{t('reckoning.settings.hours-says')}</p>
      <WeekHours texts={hours} onChange={setHours} />
      <ClosingDays closed={closed} onChange={setClosed} />
      <h2>{t('reckoning.settings.promise')}</h2>
      <p className="k-muted" aria-hidden="true">
        {t('reckoning.settings.percentile')}
      </p>
      <ChoiceKeys
        label={t('reckoning.settings.percentile')}
        mode="one"
        choices={CHANCES.map((chance) => ({
          id: String(chance),
          says: t('reckoning.settings.in-100', { n: Math.round(chance * 100) }),
        }))}
        chosen={[String(percentile)]}
        onChoose={([next]) => next && setPercentile(Number(next))}
      />
      <h2>{t('reckoning.settings.lead')}</h2>
      <div className="promise-settings-row">
        {POINTS.map((point) => (
          <NumberField
            key={point}
            label={t(`reckoning.settings.lead-${point}`)}
            labelled="above"
            unit={t('reckoning.settings.days')}
            least={0.05}
            most={365}
            digits={1}
            value={lead[point]}
            onChange={(value) => setLead({ ...lead, [point]: value })}
          />
        ))}
      </div>
      <h2>{t('reckoning.settings.day')}</h2>
      <p className="k-muted">{t('reckoning.settings.day-says')}</p>
      <div className="promise-settings-row">
        <NumberField
          label={t('reckoning.settings.day-costs')}
          labelled="above"
          unit={t('reckoning.settings.minutes')}
          least={0}
          most={1440}
          value={dayMinutes}
          onChange={setDayMinutes}
        />
      </div>
      <Key submit {...(whyNot === null ? {} : { whyNot })}>
        {t('reckoning.settings.keep')}
      </Key>
      {saved && <p role="status">{t('reckoning.settings.kept')}</p>}
      {problem && <Problem slim {...problem} />}
    </form>
  );
}
