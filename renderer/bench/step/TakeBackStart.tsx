import { useState } from 'react';
import type { JobId } from '../../../core/ids.ts';
import { Ask } from '../../kit/keys/Ask.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';

/** A step begun by mistake is taken back, with what its start moved in the records. */
export function TakeBackStart({
  job,
  run,
  tray,
}: {
  readonly job: JobId;
  readonly run: string;
  readonly tray: string;
}) {
  const { t } = useWords();
  const { execute, problem, busy } = useExecute();
  const [open, setOpen] = useState(false);
  const take = async () => {
    if (!busy && (await execute('takeBackStart', { job, run, tray, why: t('bench.by-mistake') }))) setOpen(false);
  };
  return (
    <>
      <Key kind="link" onPress={() => setOpen(true)}>
        {t('bench.take-back-start')}
      </Key>
      <Ask
        open={open}
        title={t('bench.take-back-start')}
        onClose={() => setOpen(false)}
        light
        keys={
          <>
            <Key onPress={() => setOpen(false)}>{t('bench.take-back-leave')}</Key>
            <Key onPress={() => void take()}>{t('bench.take-back-do')}</Key>
          </>
        }
      >
        <p>{t('bench.take-back-says')}</p>
        {problem && <Problem slim {...problem} />}
      </Ask>
    </>
  );
}
