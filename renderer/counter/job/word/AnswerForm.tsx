import { useState } from 'react';
import type { Question } from '../../../../core/approval/question.ts';
import { ChoiceKeys } from '../../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { Problem } from '../../../kit/keys/Problem.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { useExecute } from '../../../link/useExecute.ts';
import { usePreview } from '../../../link/usePreview.ts';
import { ContentChanged } from '../../fields/ContentChanged.tsx';
import { freshHow, HowFields, howInput, howToSign } from '../../fields/HowFields.tsx';
import { answers, type OfJob, ownerPhone } from '../sheetOf.ts';
import { WhoMayAnswer } from './WhoMayAnswer.tsx';

/** The owner's word: which options, by whom, how. What it allows is what stands in the options and nothing more. */
export function AnswerForm({ question, sheet, settings }: OfJob & { readonly question: Question }) {
  const { t } = useWords();
  const { execute, problem, refusal, forget } = useExecute();
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [how, setHow] = useState(() => freshHow(answers(sheet), ownerPhone(sheet), settings.zone));
  const given = howInput(how, settings.zone);
  const answerAs = (as: typeof given) =>
    as && { job: sheet.job.id, question: question.id, options: [...chosen], name: how.name.trim(), how: as };
  const preview = usePreview('answer', chosen.length > 0 ? answerAs(howToSign(how)) : null);
  const several = question.several === true;
  const choose = (ids: readonly string[]) => {
    const now = several ? withoutContradiction(question, chosen, ids) : ids;
    setChosen(now);
    const says = question.options.filter((one) => now.includes(one.id)).map((one) => one.says);
    if (says.length > 0) setHow({ ...how, readBack: says.join('; ') });
  };
  const write = async () => {
    const answer = answerAs(given);
    if (answer) await execute('answer', answer);
  };
  const said = problem ?? preview.problem;
  return (
    <div className="counter-stack">
      <ChoiceKeys
        label={t('counter.word.answer')}
        mode={several ? 'several' : 'one'}
        choices={question.options.map(({ id, says }) => ({ id, says }))}
        chosen={chosen}
        onChoose={choose}
      />
      {chosen.length > 0 && (
        <>
          <WhoMayAnswer sheet={sheet} settings={settings} name={how.name} onName={(name) => setHow({ ...how, name })} />
          <HowFields how={how} job={sheet.job.id} preview={preview} onChange={setHow} />
          <Key kind="filled" onPress={() => void write()} {...(given ? {} : { whyNot: t('counter.how.open') })}>
            {t('counter.word.write')}
          </Key>
        </>
      )}
      {said && <Problem slim {...said} />}
      <ContentChanged
        refusal={refusal}
        signed={[how.mark?.under]}
        onClose={() => {
          forget();
          setHow({ ...how, mark: null });
        }}
      />
    </div>
  );
}

/** A yes to a thing takes back the no to all of them, and the other way round: the newest key counts. */
function withoutContradiction(
  { options }: Question,
  before: readonly string[],
  now: readonly string[],
): readonly string[] {
  const none = options.find(({ agrees }) => agrees.items.length === 0)?.id;
  if (none === undefined || !now.includes(none)) return now;
  return before.includes(none) ? now.filter((id) => id !== none) : [none];
}
