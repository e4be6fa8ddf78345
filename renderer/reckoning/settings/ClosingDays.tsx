import { useId, useState } from 'react';
import { DayField } from '../../kit/fields/DateField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';

/** Days on which the shop is shut whatever the weekday, `YYYY-MM-DD`: holidays, its own leave. */
export function ClosingDays({
  closed,
  onChange,
}: {
  readonly closed: readonly string[];
  readonly onChange: (closed: readonly string[]) => void;
}) {
  const id = useId();
  const { t, date: said } = useWords();
  const [date, setDate] = useState('');
  const add = () => {
    if (date === '') return;
    onChange([...new Set([...closed, date])].toSorted());
    setDate('');
  };
  return (
    <section aria-labelledby={`${id}-title`} className="promise-settings">
      <h2 id={`${id}-title`}>{t('reckoning.settings.closed')}</h2>
      {closed.length === 0 && <p className="k-muted">{t('reckoning.settings.closed-none')}</p>}
      <ul className="promise-settings-row">
        {closed.map((one) => (
          <li key={one}>
            {said(Date.parse(`${one}T12:00:00Z`))}{' '}
            <Key kind="link" onPress={() => onChange(closed.filter((other) => other !== one))}>
              {t('reckoning.settings.open-again', { day: one })}
            </Key>
          </li>
        ))}
      </ul>
      <div className="promise-settings-row">
        <DayField label={t('reckoning.settings.closed-day')} value={date} onChange={setDate} />
        <Key onPress={add} {...(date === '' ? { whyNot: t('reckoning.settings.closed-needs') } : {})}>
          {t('reckoning.settings.closed-add')}
        </Key>
      </div>
    </section>
  );
}
