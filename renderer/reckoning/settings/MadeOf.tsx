import { useState } from 'react';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import './MadeOf.css';

type Notice = { readonly name: string; readonly version: string; readonly licence: string; readonly text: string };

/** The packages by others that the program is made of, with what their licences ask to be handed on. */
export function MadeOf() {
  const { t } = useWords();
  const [notices, setNotices] = useState<readonly Notice[] | null>(null);
  const [failed, setFailed] = useState(false);
  const show = async () => {
    try {
      // The build writes it beside the page.
      const answer = await fetch('/notices.json');
      setFailed(!answer.ok);
      if (answer.ok) setNotices(await answer.json());
    } catch {
      setFailed(true);
    }
  };
  return (
    <section className="promise-settings" aria-label={t('reckoning.made-of.title')}>
      <h2>{t('reckoning.made-of.title')}</h2>
      <p>{t('reckoning.made-of.says')}</p>
      {!notices && <Key onPress={() => void show()}>{t('reckoning.made-of.show')}</Key>}
      {failed && <p role="alert">{t('reckoning.made-of.failed')}</p>}
      {notices && <p role="status">{t('reckoning.made-of.shown', { n: notices.length })}</p>}
      {notices?.map(({ name, version, licence, text }) => (
        <details key={`${name} ${version}`}>
          <summary>
            {name} {version} · {licence}
          </summary>
          <pre className="made-of-text">{text}</pre>
        </details>
      ))}
    </section>
  );
}
