import type { JobSheet } from '../../../core/contract/screens.ts';
import { useWords } from '../../kit/text/words.tsx';
import { BenchTools } from '../deeds/BenchTools';
import { GoOnKeys } from '../deeds/GoOnKeys.tsx';
import { AwayList } from './AwayList.tsx';
import { FitList } from './FitList.tsx';
import { MissingList } from './MissingList.tsx';
import { ProofList } from './ProofList.tsx';
import { PutAwayList } from './PutAwayList.tsx';
import { TaskForm } from './TaskForm.tsx';
import { UnderWay } from './UnderWay.tsx';
import './FittingBench.css';

export type FittingBenchProps = { readonly sheet: JobSheet; readonly tray: string; readonly keptDays: number };

/** Fitting, proving and closing up as plain lists: what goes in, what is put away, what is proved, what is still missing. */
export function FittingBench({ sheet, tray, keptDays }: FittingBenchProps) {
  const { t } = useWords();
  const { stage } = sheet.job;
  return (
    <section className="bench-fitting" aria-label={t('bench.work')}>
      <BenchTools sheet={sheet} only={['census', 'plugs', 'note', 'leave']} />
      <UnderWay sheet={sheet} tray={tray} />
      {stage === 'proving' && <ProofList sheet={sheet} tray={tray} />}
      <FitList sheet={sheet} />
      <PutAwayList sheet={sheet} keptDays={keptDays} />
      <AwayList sheet={sheet} tray={tray} />
      <TaskForm sheet={sheet} tray={tray} />
      <MissingList sheet={sheet} />
      <GoOnKeys sheet={sheet} />
    </section>
  );
}
