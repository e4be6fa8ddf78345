import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { SYMPTOM_IDS, symptomName } from '../../terms/terms.ts';

/** What the bench sees, in the terms of what was told. */
export function SeenForm({ sheet, onDone }: { readonly sheet: JobSheet; readonly onDone: () => void }) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const { job } = sheet;
  const [seen, setSeen] = useState<readonly string[]>(job.seen ?? job.told.symptoms);
  const [word, setWord] = useState('');
  const first = new Set([...job.told.symptoms, ...seen]);
  const shown = [...first, ...SYMPTOM_IDS.filter((id) => !first.has(id))].filter(
    (id) => seen.includes(id) || symptomName(id).toLowerCase().includes(word.trim().toLowerCase()),
  );
  const write = async () => {
    if (await execute('recordSeen', { job: job.id, symptoms: [...seen] })) onDone();
  };
  return (
    <form
      className="bench-form"
      aria-label={t('bench.seen')}
      onSubmit={(event) => {
        event.preventDefault();
        void write();
      }}
    >
      <TextField label={t('bench.find-symptom')} labelled="above" value={word} onChange={setWord} />
      <ChoiceKeys
        label={t('bench.seen')}
        choices={shown.map((id) => ({ id, says: symptomName(id) }))}
        chosen={seen}
        onChoose={setSeen}
      />
      <Key submit {...(seen.length > 0 ? {} : { whyNot: t('bench.seen-needs') })}>
        {t('bench.seen-write')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </form>
  );
}
