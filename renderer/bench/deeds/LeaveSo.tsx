import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';

/** One of several is dead and the machine does without it: it may stay so, as the owner was told, and the papers disclose it. */
export function LeaveSo({ sheet: { job } }: { readonly sheet: JobSheet }) {
  const { t } = useWords();
  const { execute, problem, busy } = useExecute();
  const [says, setSays] = useState('');
  const { verdict } = job;
  if ((verdict?.is !== 'named' && verdict?.is !== 'confirmed') || !verdict.which || verdict.leftSo) return null;
  return (
    <form
      className="bench-form"
      aria-label={t('bench.leave-so')}
      onSubmit={(event) => {
        event.preventDefault();
        if (!busy) void execute('leaveSo', { job: job.id, says: says.trim() });
      }}
    >
      <TextField label={t('bench.leave-so-says')} labelled="above" value={says} onChange={setSays} />
      <Key submit {...(says.trim() ? {} : { whyNot: t('bench.leave-so-needs') })}>
        {t('bench.leave-so')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </form>
  );
}
