import { type FormEvent, useState } from 'react';
import { Key } from '../kit/keys/Key.tsx';
import { Problem, type ProblemWords } from '../kit/keys/Problem.tsx';
import { useWords } from '../kit/text/words.tsx';
import { wordsOfError } from '../link/refusalWords.ts';
import { service } from '../link/service.ts';
import { PinField } from './PinField.tsx';
import { WordsShown } from './WordsShown.tsx';

/** Recovery words anew, by a keeper's own PIN; those before open nothing any more. */
export function NewWords() {
  const { t } = useWords();
  const [own, setOwn] = useState('');
  const [words, setWords] = useState<readonly string[] | null>(null);
  const [problem, setProblem] = useState<ProblemWords | null>(null);
  const make = async (event: FormEvent) => {
    event.preventDefault();
    try {
      setWords((await service.makeRecoveryWords({ own })).words);
      setProblem(null);
    } catch (error) {
      setProblem(wordsOfError(error));
    }
    setOwn('');
  };
  return (
    <>
      <form className="people-row" onSubmit={(event) => void make(event)}>
        <PinField label={t('people.set.own')} value={own} onChange={setOwn} />
        <Key submit>{t('people.set.words')}</Key>
      </form>
      {problem && <Problem slim {...problem} />}
      {words && <WordsShown words={words} onDone={() => setWords(null)} />}
    </>
  );
}
