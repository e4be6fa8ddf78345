import { useState } from 'react';
import { Key } from '../kit/keys/Key.tsx';
import { Problem } from '../kit/keys/Problem.tsx';
import { useWords } from '../kit/text/words.tsx';
import { hereAgain } from '../link/here.ts';
import { useExecute } from '../link/useExecute.ts';
import { useWhoIsHere } from '../whoIsHere.tsx';
import { SetPin } from './SetPin.tsx';
import './people.css';

/** Nobody has a PIN yet: asked on every screen until there is one, or the shop says that it works without. Nothing waits for it. */
export function PinsAsked() {
  const { t } = useWords();
  const { staff, here } = useWhoIsHere();
  const { execute, problem } = useExecute();
  const [setting, setSetting] = useState(false);
  const without = async () => {
    if (await execute('workWithoutPins', {})) await hereAgain();
  };
  return (
    <section className="people-asked" aria-label={t('people.set.title')}>
      <p>
        {t(here.people.length === 1 ? 'people.asked.alone' : 'people.asked.several')} {t('people.asked.without-means')}
      </p>
      <Key onPress={() => setSetting(true)}>{t('people.asked.set')}</Key>
      <Key kind="quiet" onPress={() => void without()}>
        {t('people.asked.without')}
      </Key>
      {problem && <Problem slim {...problem} />}
      {setting && <SetPin person={staff} onDone={() => setSetting(false)} />}
    </section>
  );
}
