import type { TracingSheet } from '../../../core/contract/screens.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/words.tsx';
import { needText, stepName } from '../terms/terms.ts';
import { otherInWords } from './stepWords.ts';

const MINUTES_OF_A_DAY = 1440;

export type StoppedProps = {
  readonly tracing: TracingSheet;
  readonly onTake: (step: string) => void;
  readonly onSomethingElse: () => void;
};

/** No step is advised: why, what it would still take, what can be done all the same, and what the owner could be asked. */
export function Stopped({ tracing: { offer, handling }, onTake, onSomethingElse }: StoppedProps) {
  const words = useWords();
  const { t } = words;
  const { stop } = offer;
  const findOut = stop?.stop === 'settled' && stop.verdict.verdict === 'cured' ? stop.verdict.findOut : undefined;
  const find = findOut === undefined ? undefined : handling[findOut];
  return (
    <section className="bench-form" aria-label={t('bench.no-step')}>
      <h2>{t(stop ? `bench.stop.${stop.stop}` : 'bench.no-step')}</h2>
      {stop?.stop === 'hand-over' && (
        <p>{t(`bench.stop.${stop.because}`, { minutes: words.minutes(Math.round(stop.expectedMinutes)) })}</p>
      )}
      {findOut !== undefined && find && (
        <div>
          <p>{t('bench.find-out', { step: stepName(findOut) })}</p>
          <p className="k-small k-muted">{t('kit.step.minutes', { hands: find.handsOn, waiting: find.waiting })}</p>
          <Key onPress={() => onTake(findOut)}>{t('bench.find-out-key')}</Key>
        </div>
      )}
      <ul className="bench-list">
        {offer.proposals.map((one) => (
          <li key={one.step}>
            <div>
              <b>{stepName(one.step)}</b>
              <div className="k-small k-muted">
                {t('bench.days-away', {
                  minutes: words.minutes(one.handsOn),
                  days: Math.ceil(one.waiting / MINUTES_OF_A_DAY),
                })}{' '}
                {t('bench.ask-first', { need: needText(one.need) })}
              </div>
            </div>
          </li>
        ))}
        {offer.others.map((one) => {
          const other = otherInWords(one, words);
          return (
            <li key={other.id}>
              <div>
                <b>{other.heading}</b>
                <div className="k-small k-muted">
                  {t('kit.step.minutes', { hands: other.handsOn, waiting: other.waiting })}. {other.reason}
                </div>
              </div>
              <Key label={t('kit.step.take', { what: other.heading })} onPress={() => onTake(other.id)}>
                {t('kit.step.take-short')}
              </Key>
            </li>
          );
        })}
      </ul>
      <Key onPress={onSomethingElse}>{t('kit.step.something-else')}</Key>
    </section>
  );
}
