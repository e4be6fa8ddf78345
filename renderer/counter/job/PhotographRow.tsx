import { useState } from 'react';
import type { RefusalWords } from '../../../core/text/wordsFor.ts';
import { FileKey } from '../../kit/fields/FileKey.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { wordsOfError } from '../../link/refusalWords.ts';
import { service } from '../../link/service.ts';
import { useExecute } from '../../link/useExecute.ts';
import { Photograph } from '../fields/Photograph.tsx';
import { plainPicture } from '../fields/plainPicture.ts';
import { JobRow } from './JobRow.tsx';
import type { OfJob } from './sheetOf.ts';

/** Photographs for the record of this job; kept only with the owner's yes. */
export function PhotographRow({ sheet }: Pick<OfJob, 'sheet'>) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [of, setOf] = useState('');
  const [refused, setRefused] = useState<RefusalWords | null>(null);
  const { job } = sheet;
  const named = of.trim() || t(job.photographs.length === 0 ? 'counter.photo.front' : 'counter.photo.back');
  const add = async (files: readonly File[]) => {
    const photographs: { of: string; blob: string }[] = [];
    try {
      for (const file of files) {
        const stored = await service.storePhotograph({ job: job.id, file: await plainPicture(file) });
        photographs.push({ of: named, blob: stored.blob });
      }
    } catch (error) {
      return setRefused(wordsOfError(error));
    }
    setRefused(null);
    if (!(await execute('addPhotographs', { job: job.id, photographs }))) return;
    setOf('');
  };
  const said = refused ?? problem;
  return (
    <JobRow id="photographs" state={job.photographs.length > 0 ? 'known' : 'open'}>
      {job.photographs.length > 0 && (
        <ul className="counter-photos">
          {job.photographs.map((photo) => (
            <li key={photo.blob}>
              <Photograph blob={photo.blob} of={photo.of} />
              <span className="k-small">{photo.of}</span>
            </li>
          ))}
        </ul>
      )}
      {job.stage !== 'gone-home' && (
        <div className="counter-fields">
          <TextField
            label={t('counter.photo.of')}
            labelled="above"
            value={of}
            onChange={setOf}
            hint={named}
            chars={24}
          />
          <FileKey label={t('counter.photo.add')} accept="image/*" several onFiles={(files) => void add(files)} />
        </div>
      )}
      {said && <Problem slim {...said} />}
    </JobRow>
  );
}
