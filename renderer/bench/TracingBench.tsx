import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import type { JobSheet, TracingSheet, WallSheet } from '../../core/contract/screens.ts';
import type { Currency } from '../../core/money/money.ts';
import { Notes } from '../jobs/Notes.tsx';
import { Problem } from '../kit/keys/Problem.tsx';
import { MarkLegend } from '../kit/mark/MarkLegend.tsx';
import { EstimateLine } from '../kit/plot/EstimateLine.tsx';
import { Pane } from '../kit/shell/Pane.tsx';
import { useWords } from '../kit/text/words.tsx';
import { tracingRead } from '../link/reads.ts';
import { wordsOfError } from '../link/refusalWords.ts';
import { symptomName } from '../terms/terms.ts';
import { ConsentsHere } from './ConsentsHere.tsx';
import { BenchTools } from './deeds/BenchTools';
import { GoOnKeys } from './deeds/GoOnKeys.tsx';
import { JudgeKeys } from './deeds/JudgeKeys.tsx';
import { LeaveSo } from './deeds/LeaveSo.tsx';
import { LeftCard } from './deeds/LeftCard.tsx';
import { OwnView } from './deeds/OwnView.tsx';
import { SettleKeys } from './deeds/SettleKeys.tsx';
import { UnderWay } from './fitting/UnderWay.tsx';
import { suspectKinds } from './ladderOf.ts';
import { JobStrip } from './log/JobStrip.tsx';
import { ToldSeen } from './next/ToldSeen.tsx';
import { Suspects } from './Suspects.tsx';
import { BackToWorked } from './step/BackToWorked.tsx';
import { StepPanel } from './step/StepPanel.tsx';
import { useBack } from './step/useBack.ts';
import { useStep } from './step/useStep.ts';

export type TracingBenchProps = {
  readonly sheet: JobSheet;
  readonly wall: WallSheet | undefined;
  readonly currency: Currency | undefined;
  readonly tray: string;
  readonly inside: (kinds: ReadonlySet<string>) => ReactNode;
};

/** The inside view, the ladder of suspects, the next step, the strip: from the first power-on to the verdict. */
export function TracingBench({ sheet, wall, currency, tray, inside }: TracingBenchProps) {
  const words = useWords();
  const { t, list } = words;
  const { job } = sheet;
  const quick = useQuery(tracingRead(job.id, 'ratio'));
  const ahead = useQuery({ ...tracingRead(job.id, 'rollout'), enabled: quick.isSuccess });
  const tracing: TracingSheet | undefined = ahead.data && !ahead.isFetching ? ahead.data : (quick.data ?? ahead.data);
  const run = useStep(sheet, tracing, tray);
  const back = useBack(sheet, tray);
  const backKey = back.worked
    ? { says: t('bench.back-to-worked'), onPress: back.show }
    : back.asItCame
      ? { says: t('bench.back-as-it-came'), onPress: back.show }
      : undefined;
  const told = list(job.told.symptoms.map(symptomName));
  const seen = job.seen ? list(job.seen.map(symptomName)) : null;
  const agree = tracing !== undefined && tracing.toldSeen.onlyTold.length + tracing.toldSeen.onlySeen.length === 0;
  const quote = job.told.ownWords.value;
  const raised = currency !== undefined && job.limitMinor !== job.firstLimitMinor;
  const running = run.running !== undefined;
  const stopped = tracing?.offer.stop?.stop === 'hand-over';
  return (
    <div className={running ? 'bench bench-running' : 'bench'}>
      <div className="bench-look">
        <ToldSeen
          told={told}
          {...(quote === null ? {} : { quote })}
          seen={seen}
          agree={agree}
          {...(raised && {
            after: t('bench.agreed-to', { amount: words.moneyShort({ minor: job.limitMinor, currency }) }),
          })}
        />
        <EstimateLine estimate={job.estimates.at(-1)} computing={sheet.computing} />
        <ConsentsHere job={job} />
        <BenchTools sheet={sheet} />
        <Notes job={job} />
        <LeftCard sheet={sheet} />
        <div className="bench-inside">{inside(tracing ? suspectKinds(tracing) : new Set())}</div>
        <div className="bench-legend">
          <MarkLegend />
        </div>
      </div>
      {!running && (
        <Pane on="sheet" line="left" padded={false}>
          {tracing && (
            <div className="bench-belief">
              <Suspects tracing={tracing} />
              <OwnView sheet={sheet} tracing={tracing} />
            </div>
          )}
        </Pane>
      )}
      <Pane on="sheet" padded={false} line={running ? 'left' : 'none'} label={t('bench.next')} scrolls>
        {quick.isError && <Problem {...wordsOfError(quick.error)} />}
        {quick.isPending && <p role="status">{t('app.waiting')}</p>}
        {back.problem && <Problem slim {...back.problem} />}
        {!running && (back.open || back.worse) && <BackToWorked sheet={sheet} back={back} />}
        <UnderWay sheet={sheet} tray={tray} />
        {tracing && <JudgeKeys sheet={sheet} tracing={tracing} />}
        <LeaveSo sheet={sheet} />
        {tracing && !stopped && <SettleKeys sheet={sheet} tracing={tracing} />}
        {tracing && (
          <StepPanel
            sheet={sheet}
            tracing={tracing}
            wall={wall}
            currency={currency}
            run={run}
            tray={tray}
            stands={ahead.data !== undefined && !ahead.isFetching}
            about={t('bench.about', { told, seen: seen ?? t('kit.told.not-yet') })}
            settle={stopped && <SettleKeys sheet={sheet} tracing={tracing} />}
            back={backKey}
          />
        )}
        {!running && <GoOnKeys sheet={sheet} />}
      </Pane>
      <div className="bench-strip">
        <JobStrip sheet={sheet} />
      </div>
    </div>
  );
}
