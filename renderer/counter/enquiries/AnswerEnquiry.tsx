import { useState } from 'react';
import { fromWall } from '../../../core/calendar.ts';
import type { EnquirySheet } from '../../../core/contract/screens.ts';
import { MomentField } from '../../kit/fields/DateField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { OneOf } from '../fields/OneOf.tsx';

const ANSWERS = ['come-on', 'tell-more', 'no'] as const;

/** What we say to an enquiry: come on this day, tell us more, or a kind no. */
export function AnswerEnquiry({ enquiry }: { readonly enquiry: EnquirySheet }) {
  const { t, date, zone } = useWords();
  const { execute, problem } = useExecute();
  const [says, setSays] = useState<(typeof ANSWERS)[number] | null>(null);
  const [day, setDay] = useState('');
  const [text, setText] = useState('');
  const { answer } = enquiry;
  const send = async () => {
    if (says === null) return;
    const given =
      says === 'come-on'
        ? { says, day: fromWall(day, zone) }
        : says === 'tell-more'
          ? { says, what: text.trim() }
          : { says, why: text.trim() };
    if (await execute('answerEnquiry', { enquiry: enquiry.id, answer: given })) setSays(null);
  };
  const ready = says === 'come-on' ? day !== '' : text.trim() !== '';
  return (
    <div className="counter-stack">
      {answer && (
        <p>
          {t(`counter.asked.answers.${answer.says}`)}
          {answer.says === 'come-on' ? ` ${date(answer.day)}` : `: ${answer.says === 'no' ? answer.why : answer.what}`}
        </p>
      )}
      <OneOf asks={t('counter.asked.answer')} words="asked.answers" ids={ANSWERS} chosen={says} onChoose={setSays} />
      {says === 'come-on' && <MomentField label={t('counter.asked.day')} value={day} onChange={setDay} />}
      {(says === 'tell-more' || says === 'no') && (
        <TextField label={t(`counter.asked.text.${says}`)} labelled="above" value={text} onChange={setText} lines={2} />
      )}
      {says !== null && (
        <Key onPress={() => void send()} {...(ready ? {} : { whyNot: t('counter.asked.needs-words') })}>
          {t('counter.asked.send')}
        </Key>
      )}
      {problem && <Problem slim {...problem} />}
    </div>
  );
}
