import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';

/** A note in the log; what was found by the way goes on the return report. */
export function NoteForm({ sheet, onDone }: { readonly sheet: JobSheet; readonly onDone: () => void }) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [says, setSays] = useState('');
  const [by, setBy] = useState<readonly string[]>([]);
  const write = async () => {
    if (await execute('note', { job: sheet.job.id, says: says.trim(), foundByTheWay: by.length > 0 })) onDone();
  };
  return (
    <form
      className="bench-form"
      aria-label={t('bench.note')}
      onSubmit={(event) => {
        event.preventDefault();
        void write();
      }}
    >
      {sheet.job.notes.map((note) => (
        <p key={note.at} className="k-small">
          {note.says}
        </p>
      ))}
      <TextField label={t('bench.note-says')} labelled="above" lines={3} value={says} onChange={setSays} />
      <ChoiceKeys
        label={t('bench.note-kind')}
        choices={[{ id: 'by', says: t('bench.by-the-way') }]}
        chosen={by}
        onChoose={setBy}
      />
      <Key submit {...(says.trim() ? {} : { whyNot: t('bench.note-needs') })}>
        {t('bench.note-write')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </form>
  );
}
