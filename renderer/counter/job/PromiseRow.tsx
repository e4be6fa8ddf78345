import { useState } from 'react';
import { HOW_TOLD, type HowTold } from '../../../core/job/howTold.ts';
import { LATE_FROM } from '../../../core/job/promise/turns.ts';
import { isAtTheDoor } from '../../../core/stage.ts';
import { epochMs, MINUTE_MS } from '../../../core/time.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useNow } from '../../kit/useNow.ts';
import { useExecute } from '../../link/useExecute.ts';
import { OneOf } from '../fields/OneOf.tsx';
import { JobRow } from './JobRow.tsx';
import type { OfJob } from './sheetOf.ts';

/** The day that was promised, whether it holds as the queue stands, what the owner was told, and telling them another. */
export function PromiseRow({ sheet }: OfJob) {
  const { t, dayClock } = useWords();
  const now = useNow(MINUTE_MS);
  const { job, outlook } = sheet;
  if (isAtTheDoor(job.stage) || job.stage === 'gone-home') return null;
  const { promised } = job;
  const late = promised !== null && promised.at < now;
  const willBeLate = (outlook?.lateChance ?? 0) > LATE_FROM;
  const told = job.promisesTold.at(-1);
  const open = late || willBeLate || promised === null || !promised.told;
  return (
    <JobRow id="promise" state={open ? 'open' : 'known'}>
      <p>
        {promised ? t('counter.promised.for', { at: dayClock(promised.at) }) : t('counter.promised.nothing')}{' '}
        {(late || willBeLate) && <b>{t(late ? 'counter.promised.late' : 'counter.promised.will-be-late')}</b>}
      </p>
      <p className="k-muted k-small">
        {outlook?.day == null
          ? t('counter.promised.no-day')
          : t('counter.promised.likely', { day: dayClock(outlook.day) })}{' '}
        {told
          ? t('counter.promised.told', { at: dayClock(told.at), how: t(`counter.promised.how.${told.how}`) })
          : t(promised?.told ? 'counter.promised.told-then' : 'counter.promised.not-told')}
      </p>
      {open && <Telling sheet={sheet} />}
    </JobRow>
  );
}

/** Writes down that the owner was told, of the day promised while it holds, else of the day that is likely now. */
function Telling({ sheet }: Pick<OfJob, 'sheet'>) {
  const { t, dayClock } = useWords();
  const { execute, problem } = useExecute();
  const now = useNow(MINUTE_MS);
  const [how, setHow] = useState<HowTold | null>(null);
  const { job, outlook } = sheet;
  const holds = job.promised !== null && job.promised.at >= now && (outlook?.lateChance ?? 0) <= LATE_FROM;
  const day = holds ? (job.promised?.at ?? null) : (outlook?.day ?? null);
  if (day === null) return null;
  const tell = async () => {
    if (how === null) return;
    const p90 = epochMs(Math.max(day, outlook?.p90 ?? day));
    if (await execute('tellPromise', { job: job.id, at: day, p90, how })) setHow(null);
  };
  return (
    <div className="counter-block counter-stack">
      <p>{t('counter.promised.tell', { day: dayClock(day) })}</p>
      <OneOf asks={t('counter.promised.how-asks')} words="promised.how" ids={HOW_TOLD} chosen={how} onChoose={setHow} />
      <Key onPress={() => void tell()} {...(how === null ? { whyNot: t('counter.promised.how-open') } : {})}>
        {t('counter.promised.write')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </div>
  );
}
