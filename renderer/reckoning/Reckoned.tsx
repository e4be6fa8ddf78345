import type { ReckoningSheet } from '../../core/contract/reckoningSheet.ts';
import { Pane } from '../kit/shell/Pane.tsx';
import { useWords } from '../kit/text/words.tsx';
import { Estimates } from './Estimates.tsx';
import { Losses } from './Losses.tsx';
import { Priors } from './Priors.tsx';
import './Reckoned.css';
import { TaskTimes } from './TaskTimes.tsx';

/** The reckoning itself: the verdict on estimates beside what own jobs moved. */
export function Reckoned({ sheet }: { readonly sheet: ReckoningSheet }) {
  const { t } = useWords();
  return (
    <div className="reckoning">
      <Pane on="sheet" line="right" label={t('reckoning.estimates')}>
        <Estimates sheet={sheet} />
      </Pane>
      <Pane>
        <TaskTimes sheet={sheet} />
        <Priors sheet={sheet} />
        <Losses sheet={sheet} />
      </Pane>
    </div>
  );
}
