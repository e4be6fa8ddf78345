import { Ask } from '../kit/keys/Ask.tsx';
import { Key } from '../kit/keys/Key.tsx';
import { useWords } from '../kit/text/words.tsx';
import './people.css';

/** Recovery words, this once: to be written down or printed, and locked away. */
export function WordsShown({ words, onDone }: { readonly words: readonly string[]; readonly onDone: () => void }) {
  const { t } = useWords();
  return (
    <Ask
      open
      title={t('people.words.title')}
      onClose={() => undefined}
      keys={<Key onPress={onDone}>{t('people.words.kept')}</Key>}
    >
      <p>{t('people.words.says')}</p>
      <ol className="people-words">
        {words.map((word) => (
          <li key={word}>{word}</li>
        ))}
      </ol>
    </Ask>
  );
}
