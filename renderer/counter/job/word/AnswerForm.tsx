import { useState } from 'react';
import type { Question } from '../../../../core/word/question.ts';
import { ChoiceKeys } from '../../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { Problem } from '../../../kit/keys/Problem.tsx';
import { useWords } from '../../../kit/words.tsx';
import { useDoes } from '../../../link/does.ts';
import { freshHow, HowFields, howInput } from '../../fields/HowFields.tsx';
import { answers, type OfJob, ownerPhone } from '../sheetOf.ts';

/** The owner's word: which option, by whom, how. What it allows is what stands in the option and nothing more. */
export function AnswerForm({ question, sheet, settings }: OfJob & { readonly question: Question }) {
  const { t } = useWords();
  const { does, problem } = useDoes();
  const [option, setOption] = useState<string | null>(null);
  const [how, setHow] = useState(() => freshHow(answers(sheet), ownerPhone(sheet), settings.zone));
  const given = howInput(how, settings.zone);
  const choose = (id: string | null) => {
    setOption(id);
    const says = question.options.find((one) => one.id === id)?.says;
    if (says !== undefined) setHow({ ...how, readBack: says });
  };
  const write = () =>
    option !== null &&
    given &&
    void does('answer', {
      job: sheet.job.id,
      question: question.id,
      options: [option],
      name: how.name.trim(),
      how: given,
    });
  return (
    <div className="counter-stack">
      <ChoiceKeys
        label={t('counter.word.answer')}
        mode="one"
        choices={question.options.map(({ id, says }) => ({ id, says }))}
        chosen={option === null ? [] : [option]}
        onChoose={([id]) => choose(id ?? null)}
      />
      {option !== null && (
        <>
          <HowFields how={how} onChange={setHow} />
          <Key kind="filled" onPress={write} {...(given ? {} : { whyNot: t('counter.how.open') })}>
            {t('counter.word.write')}
          </Key>
        </>
      )}
      {problem && <Problem slim {...problem} />}
    </div>
  );
}
