import { isOpen, type Question } from '../../../../core/approval/question.ts';
import { useWords } from '../../../kit/text/words.tsx';
import { JobRow } from '../JobRow.tsx';
import type { OfJob } from '../sheetOf.ts';
import { AnsweredQuestion } from './AnsweredQuestion.tsx';
import { AnswerForm } from './AnswerForm.tsx';
import { TryForm } from './TryForm.tsx';

/** Every question put to the owner, newest first: what it allows, how it was tried, how it was answered. */
export function WordRow({ sheet, settings }: OfJob) {
  const { t } = useWords();
  const questions = [...sheet.job.questions].reverse();
  return (
    <JobRow id="word" state={questions.some(isOpen) ? 'open' : 'known'}>
      {questions.length === 0 && <p className="k-muted">{t('counter.word.none')}</p>}
      {questions.map((question) => (
        <article
          key={question.id}
          className="counter-block counter-stack"
          aria-label={t(`counter.word.kinds.${question.kind}`)}
        >
          <QuestionPut question={question} settings={settings} />
          {isOpen(question) ? (
            <>
              <TryForm question={question} sheet={sheet} settings={settings} />
              <AnswerForm question={question} sheet={sheet} settings={settings} />
            </>
          ) : (
            <AnsweredQuestion question={question} sheet={sheet} settings={settings} />
          )}
        </article>
      ))}
    </JobRow>
  );
}

function QuestionPut({ question, settings }: { readonly question: Question } & Pick<OfJob, 'settings'>) {
  const { t, dayClock, moneyShort } = useWords();
  const money = (minor: number) => moneyShort({ minor, currency: settings.currency });
  return (
    <>
      <p>
        <b>{t(`counter.word.kinds.${question.kind}`)}</b>{' '}
        <span className="k-muted k-small">
          {t('counter.word.asked', { at: dayClock(question.askedAt), until: dayClock(question.validUntil) })}
        </span>
      </p>
      <p>{question.says}</p>
      <ul className="counter-options">
        {question.options.map(({ id, says, agrees }) => (
          <li key={id}>
            {says}
            {agrees.limitMinor !== null && (
              <span className="k-muted"> {t('counter.word.new-limit', { limit: money(agrees.limitMinor) })}</span>
            )}
            {agrees.raisesMinor !== undefined && agrees.raisesMinor > 0 && (
              <span className="k-muted"> {t('counter.word.raises', { amount: money(agrees.raisesMinor) })}</span>
            )}
            {agrees.items
              .filter((item) => item.what !== says)
              .map((item) => (
                <span key={item.what} className="k-muted">
                  {' '}
                  {item.what} {money(item.priceMinor)}
                </span>
              ))}
          </li>
        ))}
      </ul>
      {question.tries.length > 0 && (
        <p className="k-small">
          {t('counter.word.tries', { n: question.tries.length })}{' '}
          {question.tries
            .map(
              (one) =>
                `${dayClock(one.at)} ${t(`counter.try.how.${one.how}`)}, ${t(`counter.try.result.${one.result}`)}`,
            )
            .join(' · ')}
        </p>
      )}
    </>
  );
}
