import { useState } from 'react';
import type { JobId } from '../../../core/ids.ts';
import type { RefusalWords } from '../../../core/text/wordsFor.ts';
import { FileKey } from '../../kit/fields/FileKey.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { wordsOfError } from '../../link/refusalWords.ts';
import { service } from '../../link/service.ts';

/** What an owner wrote, as a file or a picture of it: kept sealed beside the answer. */
export function LetterKey({
  job,
  kept,
  onKept,
}: {
  readonly job: JobId;
  readonly kept: boolean;
  readonly onKept: (blob: string) => void;
}) {
  const { t } = useWords();
  const [name, setName] = useState('');
  const [problem, setProblem] = useState<RefusalWords | null>(null);
  const keep = async ([file]: readonly File[]) => {
    if (!file) return;
    try {
      const stored = await service.storeLetter({ job, file });
      setProblem(null);
      setName(file.name);
      onKept(stored.blob);
    } catch (error) {
      setProblem(wordsOfError(error));
    }
  };
  return (
    <>
      <div className="counter-fields">
        <FileKey label={t('counter.how.letter')} accept="*/*" onFiles={(files) => void keep(files)} />
        {kept && <span role="status">{t('counter.how.letter-kept', { name })}</span>}
      </div>
      {problem && <Problem slim {...problem} />}
    </>
  );
}
