import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Work } from '../../../core/job/work.ts';
import { MINUTE_MS } from '../../../core/time.ts';
import { Strip, type StripEntry } from '../../kit/line/Strip.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useNow } from '../../kit/useNow.ts';
import { cameNames, workName } from '../../terms/terms.ts';
import { WorkEntry } from './WorkEntry.tsx';

/** The job's log to scale; a piece of it opens with its outcome, and can be struck out. */
export function JobStrip({ sheet }: { readonly sheet: JobSheet }) {
  const { t, number } = useWords();
  const now = useNow(30_000);
  const [open, setOpen] = useState<string | null>(null);
  const { job, charges } = sheet;
  const work = job.work.find((one) => one.run === open) ?? null;
  const waited = job.work.filter((one) => !one.struck).reduce((sum, one) => sum + one.waiting, 0);
  const closed = job.stage === 'gone-home';
  return (
    <>
      <Strip
        entries={job.work.map((one) => asEntry(one, now))}
        now={closed ? null : now}
        totals={t('bench.totals', { hands: number(Math.round(charges.handsOn)), waiting: number(Math.round(waited)) })}
        {...(open === null ? {} : { chosen: open })}
        onChoose={setOpen}
      />
      {work && <WorkEntry job={job.id} work={work} name={workName(work)} onClose={() => setOpen(null)} />}
    </>
  );
}

function asEntry(work: Work, now: number): StripEntry {
  const so = (now - work.startedAt) / MINUTE_MS;
  const note = [cameNames(work).join(', '), work.note?.value ?? ''].filter(Boolean).join(': ');
  return {
    id: work.run,
    at: work.startedAt,
    label: workName(work),
    handsOn: work.endedAt === null ? Math.max(1, so) : work.handsOn,
    waiting: work.endedAt === null ? 0 : work.waiting,
    ...(note !== '' && { note }),
    ...(work.struck && { struck: true }),
  };
}
