import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useNavigate, useSearchParams } from 'react-router';
import phone from '../../../assets/words/en/phone.json';
import type { JobId } from '../../../core/ids.ts';
import type { ShopSettings } from '../../../core/job/shop.ts';
import { Frame } from '../../Frame.tsx';
import { sentence } from '../../jobs/sentence.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { TagText } from '../../kit/mark/TagText.tsx';
import { Pane } from '../../kit/shell/Pane.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { jobRead } from '../../link/reads.ts';
import { wordsOfError } from '../../link/refusalWords.ts';
import { JobPapers } from './JobPapers.tsx';
import { JobSheetRows } from './JobSheetRows.tsx';
import { ownerName } from './sheetOf.ts';

/** One job at the counter: its sheet from the owner's word to hand-over, and its papers beside it. */
export function JobAtCounter({ job, settings }: { readonly job: JobId; readonly settings: ShopSettings }) {
  const words = useWords();
  const { t } = words;
  const go = useNavigate();
  const [params, setParams] = useSearchParams();
  const [paper, setPaper] = useState<string | null>(params.get('paper'));
  const read = useQuery(jobRead(job));
  const sheet = read.data;
  if (!sheet) {
    return (
      <Frame here="counter" open={<h1>{t('app.rooms.counter')}</h1>}>
        {read.isError ? (
          <Problem {...wordsOfError(read.error)} />
        ) : (
          <p role="status" className="counter-waits">
            {t('app.waiting')}
          </p>
        )}
      </Frame>
    );
  }
  return (
    <Frame
      here="counter"
      unreadable={sheet.unreadable}
      open={
        <>
          <TagText tag={sheet.job.tag} />
          <h1>{ownerName(sheet) || t('counter.erased')}</h1>
        </>
      }
      foot={
        <>
          <p className="counter-phone">
            <span className="k-muted k-small">{t('counter.job.phone')}</span>
            <b>{sentence(sheet.phone, phone, words)}</b>
          </p>
          <div className="counter-foot-keys">
            <Key large onPress={() => void go(`/bench/${job}`)}>
              {t('counter.job.to-bench')}
            </Key>
          </div>
        </>
      }
    >
      <div className="counter-room">
        <Pane on="sheet" line="right" label={t('counter.pane.sheet')} padded={false} scrolls>
          <JobSheetRows sheet={sheet} settings={settings} />
        </Pane>
        <Pane on="soft" label={t('counter.pane.papers')} scrolls>
          <JobPapers
            sheet={sheet}
            chosen={paper}
            onChoose={setPaper}
            toPrint={params.get('print')}
            onPrinted={() => setParams({}, { replace: true })}
          />
        </Pane>
      </div>
    </Frame>
  );
}
