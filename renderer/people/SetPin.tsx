import { type FormEvent, useId, useState } from 'react';
import type { Staff } from '../../core/job/shop.ts';
import { Ask } from '../kit/keys/Ask.tsx';
import { Key } from '../kit/keys/Key.tsx';
import { Problem, type ProblemWords } from '../kit/keys/Problem.tsx';
import { useWords } from '../kit/text/words.tsx';
import { hereAgain } from '../link/here.ts';
import { wordsOfError } from '../link/refusalWords.ts';
import { service } from '../link/service.ts';
import { useWhoIsHere } from '../whoIsHere.tsx';
import { PinField } from './PinField.tsx';
import { WordsShown } from './WordsShown.tsx';

/** Sets somebody's PIN, by the PIN of whoever is here where PINs are used. The shop's first shows the recovery words. */
export function SetPin({
  person,
  onDone,
}: {
  readonly person: Pick<Staff, 'id' | 'name'>;
  readonly onDone: () => void;
}) {
  const { t } = useWords();
  const { here } = useWhoIsHere();
  const [own, setOwn] = useState('');
  const [pin, setPin] = useState('');
  const [problem, setProblem] = useState<ProblemWords | null>(null);
  const [words, setWords] = useState<readonly string[] | null>(null);
  const asksOwn = here.use === 'on';
  const form = useId();
  const done = async () => {
    await hereAgain();
    onDone();
  };
  const keep = async (event: FormEvent) => {
    event.preventDefault();
    try {
      const shown = await service.setPin({ who: person.id, pin, own: asksOwn ? own : null });
      if (shown) setWords(shown.words);
      else await done();
    } catch (error) {
      setProblem(wordsOfError(error));
    }
  };
  if (words) return <WordsShown words={words} onDone={() => void done()} />;
  return (
    <Ask
      open
      title={t('people.set.pin-of', { name: person.name })}
      onClose={onDone}
      keys={<Key onPress={onDone}>{t('people.stay')}</Key>}
    >
      <div className="people-set">
        <form id={form} onSubmit={(event) => void keep(event)}>
          {asksOwn && (
            <PinField
              label={t('people.set.own')}
              says={t('people.set.own-says')}
              value={own}
              onChange={setOwn}
              autoFocus
            />
          )}
          <PinField
            label={t('people.set.new', { name: person.name })}
            says={t('people.pin-says')}
            value={pin}
            onChange={setPin}
            autoFocus={!asksOwn}
          />
          <Key kind="filled" submit>
            {t('people.set.keep')}
          </Key>
        </form>
        {problem && <Problem slim {...problem} />}
      </div>
    </Ask>
  );
}
