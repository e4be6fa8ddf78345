import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { JobId } from '../../../core/ids.ts';
import { fromWall } from '../../../core/job/wallTime.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/words.tsx';
import { useDoes } from '../../link/does.ts';
import { dayLineRead, shopRead } from '../../link/reads.ts';
import type { WallPart } from '../wallRows.ts';
import { DayField } from './DayField.tsx';

/** Lent into the hands of the owner of an open job, with the day it comes back and the paper that says so. */
export function LendPart({ part }: { readonly part: WallPart }) {
  const { t } = useWords();
  const { does, problem } = useDoes();
  const jobs = useQuery(dayLineRead()).data?.points ?? [];
  const zone = useQuery(shopRead()).data?.settings?.zone ?? 'UTC';
  const [job, setJob] = useState<JobId | null>(null);
  const [to, setTo] = useState('');
  const [day, setDay] = useState('');
  const name = to || (jobs.find((one) => one.job === job)?.called ?? '');
  const ready = job !== null && day !== '' && name.trim() !== '';
  const lend = () =>
    job &&
    does('lendPart', { job, part: part.id, slot: null, returnBy: fromWall(`${day}T18:00`, zone), to: name.trim() });
  return (
    <>
      <p className="k-field-label" aria-hidden="true">
        {t('wall.lend.job')}
      </p>
      <ChoiceKeys
        label={t('wall.lend.job')}
        mode="one"
        choices={jobs.map((one) => ({ id: one.job, says: one.called }))}
        chosen={job === null ? [] : [job]}
        onChoose={([id]) => setJob(jobs.find((one) => one.job === id)?.job ?? null)}
      />
      <TextField label={t('wall.lend.to')} labelled="above" value={name} onChange={setTo} />
      <DayField label={t('wall.lend.day')} value={day} onChange={setDay} />
      <Key wide onPress={() => void lend()} {...(ready ? {} : { whyNot: t('wall.lend.needs') })}>
        {t('wall.lend.do')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </>
  );
}
