import type { ReactNode } from 'react';
import { useNavigate } from 'react-router';
import type { JobSheet, TracingSheet } from '../../../core/contract/screens.ts';
import { daysOf } from '../../../core/job/promise/delay.ts';
import { minorDigits } from '../../../core/money/minorDigits.ts';
import type { Currency } from '../../../core/money/money.ts';
import type { StopAnswer } from '../../../core/tracing/live/types.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { owedWords } from '../../terms/owedWords.ts';
import { needText, stepName } from '../../terms/terms.ts';
import { otherInWords } from './stepWords.ts';

export type StoppedProps = {
  readonly sheet: JobSheet;
  readonly currency: Currency | undefined;
  readonly tracing: TracingSheet;
  readonly onTake: (step: string) => void;
  readonly onSomethingElse: () => void;
  /** What can be written down now that no step is advised. */
  readonly settle: ReactNode;
};

/** No step is advised: why, what it would still take, what can be done all the same, and what the owner could be asked. */
export function Stopped({
  sheet,
  currency,
  tracing: { offer, handling },
  onTake,
  onSomethingElse,
  settle,
}: StoppedProps) {
  const words = useWords();
  const { t } = words;
  const go = useNavigate();
  const ask = (about: string) => void go(`/counter/${sheet.job.id}?${about}`);
  const { stop } = offer;
  const findOut = stop?.stop === 'settled' && stop.verdict.verdict === 'cured' ? stop.verdict.findOut : undefined;
  const find = findOut === undefined ? undefined : handling[findOut];
  return (
    <section className="bench-form" aria-label={t('bench.no-step')}>
      <h2>{t(stop ? `bench.stop.${stop.stop}` : 'bench.no-step')}</h2>
      {stop?.stop === 'hand-over' && (
        <HandOverWhy
          stop={stop}
          sheet={sheet}
          currency={currency}
          onAsk={ask}
          more={offer.others.length + offer.proposals.length > 0}
        />
      )}
      {stop?.stop === 'owed' && (
        <ul>
          {stop.owed.map((one) => (
            <li key={one.gate}>{owedWords(one, words)}</li>
          ))}
        </ul>
      )}
      {settle}
      {findOut !== undefined && find && (
        <div className="bench-find">
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
                  days: daysOf(one.waiting),
                })}{' '}
                {t('bench.ask-first', { need: needText(one.need) })}
              </div>
            </div>
            <Key
              label={t('bench.ask-about', { step: stepName(one.step) })}
              onPress={() => ask(`ask=days-away&step=${one.step}`)}
            >
              {t('bench.ask-short')}
            </Key>
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

type HandedOver = Extract<StopAnswer, { readonly stop: 'hand-over' }>;

/** Why it is handed over, in the owner's money where their worth is what ends it, and the question that follows from it. */
function HandOverWhy({
  stop,
  sheet: { job, charges },
  currency,
  onAsk,
  more,
}: Pick<StoppedProps, 'sheet' | 'currency'> & {
  readonly stop: HandedOver;
  readonly onAsk: (about: string) => void;
  /** Something can be done all the same, or be asked for: it stands below. */
  readonly more: boolean;
}) {
  const { t, minutes, moneyShort } = useWords();
  const money = (minor: number) => (currency ? moneyShort({ minor, currency }) : '');
  // An expectation is said to whole units only.
  const unit = currency ? 10 ** minorDigits(currency) : 1;
  const likely = Math.round((charges.totalMinor + stop.expectedMinutes * job.perMinuteMinor) / unit) * unit;
  const about = ASKS[stop.because];
  return (
    <>
      <p>
        {t(`bench.stop.${stop.because === 'no-step-left' && more ? 'none-worth-it' : stop.because}`, {
          minutes: minutes(Math.round(stop.expectedMinutes)),
          left: minutes(Math.round(stop.handOverMinutes)),
          cost: money(likely),
          worth: money(job.worthMinor ?? 0),
        })}
      </p>
      {about && <Key onPress={() => onAsk(`ask=${about}`)}>{t(`bench.ask-${about}`)}</Key>}
    </>
  );
}

/** What the owner is asked after each of these; nothing where there is no more to be done. */
const ASKS: Readonly<Record<HandedOver['because'], 'not-worth' | 'go-on' | null>> = {
  'no-step-left': null,
  declined: null,
  'dearer-than-limit': 'go-on',
  'dearer-than-usual': null,
  'dearer-than-worth': 'not-worth',
};
