import { useState } from 'react';
import type { ReckonedTime, ReckoningSheet } from '../../core/contract/reckoningSheet.ts';
import type { OwnLead } from '../../core/job/promise/leadTimes.ts';
import { taskIn } from '../../core/labour/tasks/agreedTask.ts';
import { Key } from '../kit/keys/Key.tsx';
import { useWords, type Words } from '../kit/text/words.tsx';
import { stepName, taskName } from '../terms/terms.ts';

/** As many as fit without scrolling past what else the room says. */
const FIRST = 8;

/** Minutes as stated beside what the shop's own times make of them, the most moved first. */
export function TaskTimes({ sheet }: { readonly sheet: ReckoningSheet }) {
  const words = useWords();
  const { t } = words;
  const [all, setAll] = useState(false);
  const { times, timesLeftOut } = sheet;
  const shown = all ? times : times.slice(0, FIRST);
  return (
    <section className="reckoning-part" aria-labelledby="reckoning-times">
      <h2 id="reckoning-times">{t('reckoning.times')}</h2>
      <p className="k-muted">{t(times.length === 0 ? 'reckoning.times-none' : 'reckoning.times-says')}</p>
      {times.length > 0 && (
        <table className="reckoning-table">
          <thead>
            <tr>
              {(['task', 'stated', 'now', 'own', 'verdict'] as const).map((head) => (
                <th scope="col" key={head}>
                  {t(`reckoning.${head}`)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {shown.map((time) => (
              <TimeRow key={`${time.task} ${time.which}`} time={time} words={words} />
            ))}
          </tbody>
        </table>
      )}
      {times.length > FIRST && (
        <Key kind="link" onPress={() => setAll(!all)}>
          {t(all ? 'reckoning.fewer' : 'reckoning.more', { n: times.length })}
        </Key>
      )}
      <p className="k-muted">{t('reckoning.times-left', timesLeftOut)}</p>
      {sheet.lead && <Lead lead={sheet.lead} words={words} />}
    </section>
  );
}

function nameOf({ of, task }: ReckonedTime, t: Words['t']): string {
  const { id, agreed } = taskIn(task);
  if (agreed) return t('reckoning.agreed', { task: taskName(id) });
  return of === 'step' ? stepName(id) : taskName(id);
}

function TimeRow({ time, words }: { readonly time: ReckonedTime; readonly words: Words }) {
  const { t, number } = words;
  const { stated, middle, interval, says } = time;
  const minutes = (value: number) => number(value, value < 10 ? 1 : 0);
  const range = (low: number, high: number) => t('reckoning.range', { low: minutes(low), high: minutes(high) });
  return (
    <tr>
      <th scope="row">
        {nameOf(time, t)}
        <span className="k-muted">{t(`reckoning.which.${time.which}`)}</span>
      </th>
      <td>
        {minutes(stated.likely)}
        <span className="k-muted">
          {range(stated.low, stated.high)}
          {stated.skewed && `, ${t('reckoning.skewed')}`}
        </span>
      </td>
      <td>
        {minutes(middle)}
        <span className="k-muted">{range(interval.low, interval.high)}</span>
      </td>
      <td>{number(time.times)}</td>
      <td className={says === 'too-few-to-say' ? 'k-muted' : 'reckoning-says'}>{t(`reckoning.says.${says}`)}</td>
    </tr>
  );
}

/** What parts take from ordering to having, beside what is stated. */
function Lead({ lead, words }: { readonly lead: OwnLead; readonly words: Words }) {
  const { t, number } = words;
  const { orders, stated, next, middle, interval, says } = lead;
  const days = (value: number) => number(value, 1);
  if (orders === 0) return <p>{t('reckoning.lead.none', { likely: days(stated.likely) })}</p>;
  return (
    <p>
      {t('reckoning.lead.says', {
        n: orders,
        middle: days(middle),
        low: days(interval.low),
        high: days(interval.high),
        likely: days(stated.likely),
        late: days(next.high),
      })}{' '}
      <b className={says === 'too-few-to-say' ? 'k-muted' : 'reckoning-says'}>{t(`reckoning.says.${says}`)}</b>
    </p>
  );
}
