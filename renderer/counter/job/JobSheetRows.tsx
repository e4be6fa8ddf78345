import stages from '../../../assets/words/en/stages.json';
import { isAtTheDoor } from '../../../core/stage.ts';
import { EstimateLine } from '../../kit/plot/EstimateLine.tsx';
import { WrittenSheet } from '../../kit/shell/WrittenSheet';
import { useWords } from '../../kit/text/words.tsx';
import { AfterwardsRows } from './AfterwardsRows.tsx';
import { BeforeRow } from './BeforeRow.tsx';
import { ConsentsRow } from './consents/ConsentsRow.tsx';
import { GoingHome } from './home/GoingHome.tsx';
import { IncidentRow } from './IncidentRow.tsx';
import { JobRow } from './JobRow.tsx';
import { ChargesRow } from './money/ChargesRow.tsx';
import { OrderRow } from './OrderRow.tsx';
import { PhotographRow } from './PhotographRow.tsx';
import { PromiseRow } from './PromiseRow.tsx';
import type { OfJob } from './sheetOf.ts';
import { TakenInRow } from './TakenInRow.tsx';
import { AskRow } from './word/AskRow.tsx';
import { WordRow } from './word/WordRow.tsx';

/** The job's sheet, top to bottom: where it stands, the owner's word, what is still to be asked, the way home. */
export function JobSheetRows({ sheet, settings }: OfJob) {
  const { t, dayClock, moneyShort } = useWords();
  const { job, charges } = sheet;
  const since = job.stages.at(-1)?.at;
  const money = (minor: number) => moneyShort({ minor, currency: settings.currency });
  const ended = job.stage === 'gone-home';
  return (
    <WrittenSheet label={t('counter.job.sheet')}>
      <JobRow id="stage" state="known">
        <p>
          <b className="counter-lead">{stages[job.stage]}</b>{' '}
          {since !== undefined && <span className="k-muted">{t('counter.job.since', { at: dayClock(since) })}</span>}
        </p>
        <p>{sheet.machine.called}</p>
        <p className="k-muted k-small">
          {t('counter.job.spent', {
            n: Math.round(charges.handsOn),
            spent: money(charges.totalMinor),
            limit: money(job.limitMinor),
          })}
        </p>
        {!ended && <EstimateLine estimate={job.estimates.at(-1)} computing={sheet.computing} />}
      </JobRow>
      <PromiseRow sheet={sheet} settings={settings} />
      {isAtTheDoor(job.stage) && <GoingHome sheet={sheet} settings={settings} />}
      <WordRow sheet={sheet} settings={settings} />
      {!ended && <AskRow sheet={sheet} settings={settings} />}
      <ChargesRow sheet={sheet} settings={settings} />
      <OrderRow sheet={sheet} settings={settings} />
      <ConsentsRow sheet={sheet} settings={settings} />
      <TakenInRow sheet={sheet} settings={settings} />
      {!ended && <BeforeRow sheet={sheet} />}
      <PhotographRow sheet={sheet} />
      <IncidentRow sheet={sheet} settings={settings} />
      <AfterwardsRows sheet={sheet} settings={settings} />
    </WrittenSheet>
  );
}
