import { type FormEvent, useState } from 'react';
import type { OfTheShop } from '../../core/contract/hereSheet.ts';
import type { StaffId } from '../../core/ids.ts';
import { TextField } from '../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../kit/keys/ChoiceKeys.tsx';
import { Key } from '../kit/keys/Key.tsx';
import { Problem, type ProblemWords } from '../kit/keys/Problem.tsx';
import { useWords } from '../kit/text/words.tsx';
import { wordsOfError } from '../link/refusalWords.ts';
import { service } from '../link/service.ts';
import { PinField } from './PinField.tsx';
import { WordsShown } from './WordsShown.tsx';

export type WayBackProps = {
  readonly people: readonly OfTheShop[];
  readonly onIn: (who: StaffId) => Promise<void>;
  readonly onBack: () => void;
};

/** A keeper who forgot their PIN: the recovery words let them set another, and are used up. */
export function WayBack({ people, onIn, onBack }: WayBackProps) {
  const { t } = useWords();
  const keepers = people.filter(({ roles }) => roles.includes('keeper'));
  const [who, setWho] = useState(keepers[0]?.id ?? null);
  const [typed, setTyped] = useState('');
  const [pin, setPin] = useState('');
  const [problem, setProblem] = useState<ProblemWords | null>(null);
  const [fresh, setFresh] = useState<readonly string[] | null>(null);
  const goBack = async (event: FormEvent) => {
    event.preventDefault();
    if (who === null) return;
    try {
      setFresh((await service.recover({ who, words: typed, pin })).words);
      setProblem(null);
    } catch (error) {
      setProblem(wordsOfError(error));
    }
  };
  return (
    <main className="who-is-here">
      <h1>{t('people.way-back')}</h1>
      <p>{t('people.way-back-says')}</p>
      <ChoiceKeys
        label={t('people.who')}
        mode="one"
        choices={keepers.map(({ id, name }) => ({ id, says: name }))}
        chosen={who === null ? [] : [who]}
        onChoose={([id]) => setWho(keepers.find((one) => one.id === id)?.id ?? null)}
      />
      <form onSubmit={(event) => void goBack(event)}>
        <TextField
          label={t('people.twelve-words')}
          labelled="above"
          lines={3}
          value={typed}
          onChange={setTyped}
          autoFocus
        />
        <PinField label={t('people.new-pin')} value={pin} onChange={setPin} says={t('people.pin-says')} />
        <Key kind="filled" large submit>
          {t('people.set-new-pin')}
        </Key>
      </form>
      {problem && <Problem {...problem} />}
      <Key kind="link" onPress={onBack}>
        {t('people.stay')}
      </Key>
      {fresh && who !== null && <WordsShown words={fresh} onDone={() => void onIn(who)} />}
    </main>
  );
}
