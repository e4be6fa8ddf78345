import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import { splitOf } from '../../../core/job/work.ts';
import { MINUTE_MS } from '../../../core/time.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useNow } from '../../kit/useNow.ts';
import { workName } from '../../terms/terms.ts';
import { MinutesField } from '../MinutesField.tsx';
import { LockedClock } from '../step/LockedClock.tsx';
import { useWork } from './useWork.ts';

/** A task whose clock runs, from this window or another: it is ended here with its minutes. */
export function UnderWay({ sheet, tray }: { readonly sheet: JobSheet; readonly tray: string }) {
  const { t } = useWords();
  const now = useNow(10_000);
  const work = useWork(sheet, tray);
  const [hands, setHands] = useState<number | null>(null);
  const { under } = work;
  if (!under || under.kind === 'proof') return null;
  const clock = Math.round(splitOf(under, now).handsOn / MINUTE_MS);
  const end = () =>
    work.end(under, {
      handsOn: hands ?? clock,
      minutesBy: hands === null ? 'clock' : 'hand',
      waiting: 0,
      readings: [],
      passed: null,
      note: null,
    });
  return (
    <section className="bench-left" aria-label={t('bench.under-way')}>
      <h2>{workName(under)}</h2>
      <LockedClock job={sheet.job.id} work={under} />
      <div className="bench-row">
        <MinutesField label={t('bench.hands-on')} value={hands ?? clock} onChange={setHands} />
        <Key onPress={() => void (work.busy || end())}>{t('bench.end-task', { task: workName(under) })}</Key>
      </div>
      {work.problem && <Problem slim {...work.problem} />}
    </section>
  );
}
