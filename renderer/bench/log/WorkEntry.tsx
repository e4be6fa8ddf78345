import { useState } from 'react';
import type { JobId } from '../../../core/ids.ts';
import type { Work } from '../../../core/job/work.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Ask } from '../../kit/keys/Ask.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { cameNames } from '../../terms/terms.ts';

export type WorkEntryProps = {
  readonly job: JobId;
  readonly work: Work;
  readonly name: string;
  readonly onClose: () => void;
};

/** One piece of the log: what came of it, its minutes, its readings. Struck out it stays to be read and counts for nothing. */
export function WorkEntry({ job, work, name, onClose }: WorkEntryProps) {
  const words = useWords();
  const { t } = words;
  const { execute, problem } = useExecute();
  const [why, setWhy] = useState('');
  const strike = async () => {
    if (await execute('strikeWork', { job, run: work.run, why: why.trim() })) onClose();
  };
  return (
    <Ask
      open
      title={name}
      onClose={onClose}
      keys={
        <>
          <Key onPress={onClose}>{t('kit.close')}</Key>
          {!work.struck && (
            <Key onPress={() => void strike()} {...(why.trim() ? {} : { whyNot: t('bench.strike-needs') })}>
              {t('bench.strike')}
            </Key>
          )}
        </>
      }
    >
      <p>
        {words.dayClock(work.startedAt)},{' '}
        {t('kit.step.minutes', { hands: Math.round(work.handsOn), waiting: Math.round(work.waiting) })}
      </p>
      {work.outcome !== null && <p>{words.list(cameNames(work))}</p>}
      {work.note?.value && <p>{work.note.value}</p>}
      {work.readings.map((reading) => (
        <p key={`${reading.what}${reading.value}`}>{`${reading.what}: ${reading.value} ${reading.limit ?? ''}`}</p>
      ))}
      {work.struck ? (
        <p>{t('bench.struck', { why: work.struck.why })}</p>
      ) : (
        <TextField label={t('bench.strike-why')} labelled="above" value={why} onChange={setWhy} />
      )}
      {problem && <Problem slim {...problem} />}
    </Ask>
  );
}
