import type { Offer } from '../../../core/tracing/live/types.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/words.tsx';
import { otherInWords } from './stepWords.ts';

export type StoppedProps = {
  readonly offer: Offer;
  readonly onTake: (step: string) => void;
  readonly onSomethingElse: () => void;
};

/** No step is advised: why, what it would still take, and what can be done all the same. */
export function Stopped({ offer, onTake, onSomethingElse }: StoppedProps) {
  const words = useWords();
  const { t } = words;
  const { stop } = offer;
  return (
    <section className="bench-form" aria-label={t('bench.no-step')}>
      <h2>{t(stop ? `bench.stop.${stop.stop}` : 'bench.no-step')}</h2>
      {stop?.stop === 'hand-over' && (
        <p>{t(`bench.stop.${stop.because}`, { minutes: words.minutes(Math.round(stop.expectedMinutes)) })}</p>
      )}
      <ul className="bench-list">
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
