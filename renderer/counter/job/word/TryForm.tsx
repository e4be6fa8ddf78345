import { useState } from 'react';
import type { Question } from '../../../../core/approval/question.ts';
import { nextTry, triesInVain } from '../../../../core/job/approval/nextTry.ts';
import { epochMs } from '../../../../core/time.ts';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { Problem } from '../../../kit/keys/Problem.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { useExecute } from '../../../link/useExecute.ts';
import { OneOf } from '../../fields/OneOf.tsx';
import { type OfJob, ownerPhone } from '../sheetOf.ts';

const HOW = ['phone', 'mail', 'message', 'letter'] as const;
const RESULT = ['no-answer', 'message-left', 'sent', 'reached'] as const;

/** A try to reach the owner, noted with when and how; after the last one no answer lets the question lapse. */
export function TryForm({ question, sheet, settings }: OfJob & { readonly question: Question }) {
  const { t, dayClock } = useWords();
  const { execute, problem } = useExecute();
  const [open, setOpen] = useState(false);
  const [how, setHow] = useState<(typeof HOW)[number] | null>('phone');
  const [result, setResult] = useState<(typeof RESULT)[number] | null>(null);
  const [number, setNumber] = useState(ownerPhone(sheet));
  const { triesBeforeHome } = settings.rules;
  const due = nextTry(question, triesBeforeHome);
  const note = async () => {
    if (!how || !result) return;
    const done = await execute('logTry', {
      job: sheet.job.id,
      question: question.id,
      at: epochMs(Date.now()),
      how,
      result,
      number: how === 'phone' && number.trim() !== '' ? number.trim() : null,
    });
    if (!done) return;
    setResult(null);
    setOpen(false);
  };
  return (
    <div className="counter-stack">
      <p>
        {due === null
          ? t('counter.word.last-try', { n: triesBeforeHome })
          : t('counter.word.next-try', { at: dayClock(due), n: triesInVain(question) + 1, of: triesBeforeHome })}
      </p>
      {open ? (
        <>
          <OneOf asks={t('counter.try.how-asks')} words="try.how" ids={HOW} chosen={how} onChoose={setHow} />
          {how === 'phone' && (
            <TextField
              label={t('counter.try.number')}
              labelled="above"
              type="tel"
              value={number}
              onChange={setNumber}
              chars={16}
            />
          )}
          <OneOf
            asks={t('counter.try.result-asks')}
            words="try.result"
            ids={RESULT}
            chosen={result}
            onChoose={setResult}
          />
          <Key onPress={() => void note()} {...(how && result ? {} : { whyNot: t('counter.try.open') })}>
            {t('counter.try.note')}
          </Key>
        </>
      ) : (
        <div className="counter-fields">
          <Key onPress={() => setOpen(true)}>{t('counter.try.new')}</Key>
          <Key kind="quiet" onPress={() => void execute('lapse', { job: sheet.job.id, question: question.id })}>
            {t('counter.word.lapse')}
          </Key>
        </div>
      )}
      {problem && <Problem slim {...problem} />}
    </div>
  );
}
