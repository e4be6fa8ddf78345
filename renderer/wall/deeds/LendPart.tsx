import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { fromWall } from '../../../core/calendar.ts';
import type { JobSheet } from '../../../core/contract/screens.ts';
import { takesKind } from '../../../core/custody/slot.ts';
import type { JobId } from '../../../core/ids.ts';
import { DayField } from '../../kit/fields/DateField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { dayLineRead, jobRead, shopRead } from '../../link/reads.ts';
import { useExecute } from '../../link/useExecute.ts';
import type { WallPart } from '../../terms/wallRows.ts';

const IN_HANDS = 'in hand/';

/** Slots of the job's machine that take such a part and are free, or hold it on trial already. */
const slotsFor = (part: WallPart, { machine }: JobSheet): readonly string[] =>
  machine.slots
    .filter(({ id, takes }) => takesKind(takes, part.kind) && (machine.inside[id] ?? part.id) === part.id)
    .map(({ id }) => id);

/** Lent to the owner of an open job, in hand or into the machine, with the day it comes back and the paper that says so. */
export function LendPart({ part }: { readonly part: WallPart }) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const jobs = useQuery(dayLineRead()).data?.points ?? [];
  const zone = useQuery(shopRead()).data?.settings?.zone ?? 'UTC';
  const [job, setJob] = useState<JobId | null>(null);
  const [to, setTo] = useState('');
  const [day, setDay] = useState('');
  const [slot, setSlot] = useState<string | null>(null);
  const sheet = useQuery(jobRead(job)).data;
  const places = sheet ? slotsFor(part, sheet) : [];
  const name = to || (jobs.find((one) => one.job === job)?.called ?? '');
  const ready = job !== null && day !== '' && name.trim() !== '';
  const lend = () =>
    job &&
    execute('lendPart', {
      job,
      part: part.id,
      slot: places.find((id) => id === slot) ?? null,
      returnBy: fromWall(`${day}T18:00`, zone),
      to: name.trim(),
    });
  return (
    <>
      <ChoiceKeys
        label={t('wall.lend.job')}
        labelled="above"
        mode="one"
        choices={jobs.map((one) => ({ id: one.job, says: one.called }))}
        chosen={job === null ? [] : [job]}
        onChoose={([id]) => setJob(jobs.find((one) => one.job === id)?.job ?? null)}
      />
      {places.length > 0 && (
        <ChoiceKeys
          label={t('wall.lend.where')}
          labelled="above"
          mode="one"
          choices={[
            { id: IN_HANDS, says: t('wall.lend.in-hands') },
            ...places.map((id) => ({ id, says: t('wall.lend.into', { slot: id }) })),
          ]}
          chosen={[places.find((id) => id === slot) ?? IN_HANDS]}
          onChoose={([id]) => setSlot(id ?? null)}
        />
      )}
      <TextField label={t('wall.lend.to')} labelled="above" value={name} onChange={setTo} />
      <DayField label={t('wall.lend.day')} value={day} onChange={setDay} />
      <Key wide onPress={() => void lend()} {...(ready ? {} : { whyNot: t('wall.lend.needs') })}>
        {t('wall.lend.do')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </>
  );
}
