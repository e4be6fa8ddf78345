import { useState } from 'react';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';

/** A gate passed on the technician's own word, with the reason; it stays in the record. */
export function OwnWord({ onStart }: { readonly onStart: (says: string) => void }) {
  const { t } = useWords();
  const [says, setSays] = useState('');
  return (
    <form
      className="bench-form"
      aria-label={t('bench.own-word')}
      onSubmit={(event) => {
        event.preventDefault();
        if (says.trim()) onStart(says.trim());
      }}
    >
      <TextField label={t('bench.own-word-why')} labelled="above" value={says} onChange={setSays} />
      <Key submit {...(says.trim() ? {} : { whyNot: t('bench.own-word-needs') })}>
        {t('bench.own-word')}
      </Key>
    </form>
  );
}
