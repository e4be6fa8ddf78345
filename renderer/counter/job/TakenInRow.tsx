import { useState } from 'react';
import { Notes } from '../../jobs/Notes.tsx';
import { NumberField } from '../../kit/fields/NumberField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { changedSays, symptomSays } from '../terms.ts';
import { JobRow } from './JobRow.tsx';
import type { OfJob } from './sheetOf.ts';
import { WorthLine } from './WorthLine.tsx';

/** What was told and what came along; what is found to have come along is added, and the receipt is issued anew. */
export function TakenInRow({ sheet, settings }: OfJob) {
  const { t } = useWords();
  const { job } = sheet;
  const things = job.cameAlong.map(({ thing, count }) => (count === 1 ? thing : `${count} × ${thing}`));
  return (
    <JobRow id="told" state="known">
      <p>“{job.told.ownWords.value ?? t('counter.erased')}”</p>
      <p className="k-muted k-small">
        {[...job.told.symptoms.map(symptomSays), ...job.told.changed.map((one) => changedSays(one.id))].join('; ')}
      </p>
      <p>
        {things.length === 0 ? t('counter.job.nothing-along') : t('counter.job.along', { things: things.join(', ') })}
      </p>
      <Notes job={job} />
      <WorthLine sheet={sheet} settings={settings} />
      {job.stage !== 'gone-home' && <FoundThing sheet={sheet} />}
    </JobRow>
  );
}

function FoundThing({ sheet }: Pick<OfJob, 'sheet'>) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [open, setOpen] = useState(false);
  const [thing, setThing] = useState('');
  const [where, setWhere] = useState('');
  const [count, setCount] = useState<number | null>(1);
  const add = async () => {
    if (!(await execute('addThing', { job: sheet.job.id, thing, where, count: count ?? 1 }))) return;
    setThing('');
    setWhere('');
    setOpen(false);
  };
  if (!open)
    return (
      <Key kind="link" onPress={() => setOpen(true)}>
        {t('counter.job.found-thing')}
      </Key>
    );
  return (
    <form
      className="counter-fields counter-block"
      aria-label={t('counter.job.found-thing')}
      onSubmit={(event) => {
        event.preventDefault();
        void add();
      }}
    >
      <TextField label={t('counter.job.thing')} labelled="above" value={thing} onChange={setThing} chars={22} />
      <TextField label={t('counter.job.where')} labelled="above" value={where} onChange={setWhere} chars={22} />
      <NumberField
        label={t('counter.job.how-many')}
        labelled="above"
        value={count}
        onChange={setCount}
        least={1}
        most={99}
        chars={3}
      />
      <Key submit {...(thing.trim() && where.trim() ? {} : { whyNot: t('counter.job.thing-and-where') })}>
        {t('counter.job.add-thing')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </form>
  );
}
