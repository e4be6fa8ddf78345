import stages from '../../../assets/words/en/stages.json';
import { isAtTheDoor, type Stage } from '../../../core/stage.ts';
import { EstimateLine } from '../../kit/plot/EstimateLine.tsx';
import { Contained } from '../../kit/shell/Contained.tsx';
import { WrittenSheet } from '../../kit/shell/WrittenSheet';
import { useWords } from '../../kit/text/words.tsx';
import { RowFailed } from '../../RowFailed.tsx';
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
import { RecordRow } from './record/RecordRow.tsx';
import type { OfJob } from './sheetOf.ts';
import { TakenInRow } from './TakenInRow.tsx';
import { AskRow } from './word/AskRow.tsx';
import { WordRow } from './word/WordRow.tsx';

const always = () => true;
const notEnded = (stage: Stage) => stage !== 'gone-home';

/** Its rows, in order, and at which stages each is there. */
const ROWS = [
  { Line: PromiseRow, shown: always },
  { Line: GoingHome, shown: isAtTheDoor },
  { Line: WordRow, shown: always },
  { Line: AskRow, shown: notEnded },
  { Line: ChargesRow, shown: always },
  { Line: OrderRow, shown: always },
  { Line: ConsentsRow, shown: always },
  { Line: RecordRow, shown: always },
  { Line: TakenInRow, shown: always },
  { Line: BeforeRow, shown: notEnded },
  { Line: PhotographRow, shown: always },
  { Line: IncidentRow, shown: always },
  { Line: AfterwardsRows, shown: always },
];

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
      {ROWS.map(({ Line, shown }) =>
        shown(job.stage) ? (
          <Contained key={Line.name} of={sheet} fallback={(again) => <RowFailed onAgain={again} />}>
            <Line sheet={sheet} settings={settings} />
          </Contained>
        ) : null,
      )}
    </WrittenSheet>
  );
}
