import { useState } from 'react';
import { chosenOf, type Question } from '../../../../core/approval/question.ts';
import { Key } from '../../../kit/keys/Key.tsx';
import { Problem } from '../../../kit/keys/Problem.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { wordsOfError } from '../../../link/refusalWords.ts';
import { saveFile } from '../../../link/saveFile.ts';
import { service } from '../../../link/service.ts';
import { useExecute } from '../../../link/useExecute.ts';
import type { OfJob } from '../sheetOf.ts';

/** How a question ended: answered by whom and how, lapsed, or the word taken back. */
export function AnsweredQuestion({ question, sheet }: OfJob & { readonly question: Question }) {
  const { t, dayClock } = useWords();
  const { execute, problem } = useExecute();
  const { answer } = question;
  const lapsed = sheet.job.lapses[question.id];
  if (!answer)
    return (
      <p>
        {t('counter.word.lapsed')} {lapsed !== undefined && <span className="k-muted">{dayClock(lapsed)}</span>}
      </p>
    );
  const chosen = chosenOf(question).map((option) => option.says);
  return (
    <>
      <p>
        <b>{chosen.join('; ')}</b>{' '}
        <span className="k-muted">
          {t(`counter.word.by.${answer.how.by}`, {
            name: answer.name.value ?? t('counter.erased'),
            at: dayClock(answer.how.by === 'counter' ? answer.at : answer.how.at),
            number: answer.how.by === 'phone' ? (answer.how.number.value ?? t('counter.erased')) : '',
          })}
        </span>
      </p>
      {answer.how.by === 'writing' && answer.how.file !== null && <Letter blob={answer.how.file} />}
      {question.withdrawn ? (
        <p>{t('counter.word.withdrawn')}</p>
      ) : (
        sheet.job.stage !== 'gone-home' && (
          <Key kind="link" onPress={() => void execute('withdrawWord', { job: sheet.job.id, question: question.id })}>
            {t('counter.word.withdraw')}
          </Key>
        )
      )}
      {problem && <Problem slim {...problem} />}
    </>
  );
}

/** What they wrote, as it came, kept as a file. */
function Letter({ blob }: { readonly blob: string }) {
  const { t } = useWords();
  const [problem, setProblem] = useState<ReturnType<typeof wordsOfError> | null>(null);
  const save = async () => {
    try {
      const letter = await service.letter({ blob });
      saveFile(letter, letter.name);
    } catch (error) {
      setProblem(wordsOfError(error));
    }
  };
  return (
    <>
      <Key kind="link" onPress={() => void save()}>
        {t('counter.word.letter')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </>
  );
}
