import { useState } from 'react';
import type { BeforeFirstScrew } from '../../../core/job/told.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords, type Words } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { ReportField, type TakenReport } from '../fields/ReportField.tsx';
import { reportSaid } from '../fields/reportInput.ts';
import { BeforeFields } from '../taking-in/BeforeRows.tsx';
import { type BeforeSheet, freshBefore } from '../taking-in/sheet.ts';
import { beforeInput } from '../taking-in/takeInInput.ts';
import { JobRow } from './JobRow.tsx';
import type { OfJob } from './sheetOf.ts';

const asSheet = (before: BeforeFirstScrew | null): BeforeSheet =>
  before
    ? {
        ...before,
        keyPlace: before.keyPlace?.value ?? '',
        bought: before.bought ?? '',
        from: before.from ?? '',
      }
    : freshBefore;

/** What was or is still asked before the first screw, and the machine's own report; both can be told later. */
export function BeforeRow({ sheet }: Pick<OfJob, 'sheet'>) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const { job, machine } = sheet;
  const [written, setWritten] = useState<BeforeSheet | null>(null);
  const [report, setReport] = useState<TakenReport | null>(null);
  const [reading, setReading] = useState(false);
  const keep = async () => {
    if (written && (await execute('addBeforeFirstScrew', { job: job.id, ...beforeInput(written) }))) setWritten(null);
  };
  const keepReport = async () => {
    if (!report || !(await execute('readReport', { job: job.id, ...reportSaid(report) }))) return;
    setReport(null);
    setReading(false);
  };
  return (
    <JobRow id="before" state={job.before ? 'known' : 'open'}>
      <p>{job.before ? saysBefore(job.before, t) : t('counter.before.not-asked')}</p>
      {written ? (
        <div className="counter-stack counter-block">
          <BeforeFields before={written} onChange={setWritten} />
          <Key onPress={() => void keep()}>{t('counter.before.write')}</Key>
        </div>
      ) : (
        <Key kind="link" onPress={() => setWritten(asSheet(job.before))}>
          {t(job.before ? 'counter.before.change' : 'counter.before.ask')}
        </Key>
      )}
      <p>
        {machine.report
          ? t('counter.report.kept', { board: machine.report.board.name ?? '?' })
          : t('counter.report.none-yet')}
      </p>
      {reading ? (
        <div className="counter-stack counter-block">
          <ReportField report={report} onChange={setReport} />
          <Key onPress={() => void keepReport()} {...(report ? {} : { whyNot: t('counter.report.hint') })}>
            {t('counter.report.keep')}
          </Key>
        </div>
      ) : (
        <Key kind="link" onPress={() => setReading(true)}>
          {t('counter.report.read-one')}
        </Key>
      )}
      {problem && <Problem slim {...problem} />}
    </JobRow>
  );
}

const saysBefore = (before: BeforeFirstScrew, t: Words['t']): string =>
  [
    `${t('counter.before.encryption')} ${t(`counter.encryption.${before.encryption}`)}`,
    before.keyInHand ? t('counter.before.key-in-hand') : '',
    `${t('counter.before.backup')}: ${t(`counter.backup.${before.backup}`)}`,
    `${t('counter.before.warranty')}: ${t(`counter.warranty.${before.makersWarranty}`)}`,
    `${t('counter.before.seals')}: ${t(`counter.seals.${before.seals}`)}`,
  ]
    .filter((part) => part !== '')
    .join(' · ');
