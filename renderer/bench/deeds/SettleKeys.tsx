import type { JobSheet, TracingSheet } from '../../../core/contract/screens.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { faultName } from '../../terms/terms.ts';

/** Suspects below this chance are not named as left over. */
const STILL_LEFT = 0.05;

/** Ends of the tracing that find no fault: it would not fail here, or looking further costs more than it is worth. */
export function SettleKeys({ sheet, tracing }: { readonly sheet: JobSheet; readonly tracing: TracingSheet }) {
  const { t, list, number, odds } = useWords();
  const { execute, problem, busy } = useExecute();
  const { job } = sheet;
  const { verdict, offer } = tracing;
  if (job.verdict?.is === 'not-reproduced' || job.verdict?.is === 'given-up') return <p>{t('bench.settle.next')}</p>;
  if (verdict.verdict === 'not-reproduced') {
    const runs = new Set(verdict.evidence.map(({ entry }) => entry));
    const watched = job.work
      .filter(({ run }) => runs.has(run))
      .reduce((sum, one) => sum + one.handsOn + one.waiting, 0);
    const hours = Math.round(watched / 6) / 10;
    const write = () =>
      execute('judge', {
        job: job.id,
        verdict: {
          is: 'not-reproduced',
          watchedHours: hours,
          hiddenChance: verdict.hiddenChance,
          left: [...verdict.left],
        },
      });
    return (
      <section className="bench-form" aria-label={t('bench.verdict')}>
        <p>
          <b>{t('bench.settle.not-reproduced')}</b>{' '}
          {t('bench.settle.watched', { hours: number(hours), chance: odds(verdict.hiddenChance) })}
        </p>
        <Key onPress={() => void (busy || write())}>{t('bench.settle.write-not-reproduced')}</Key>
        {problem && <Problem slim {...problem} />}
      </section>
    );
  }
  if (offer.stop?.stop !== 'hand-over' || job.verdict) return null;
  const left = tracing.suspects.filter(({ p }) => p >= STILL_LEFT).map(({ fault }) => fault);
  return (
    <section className="bench-form" aria-label={t('bench.verdict')}>
      <p>{t('bench.settle.left', { suspects: list(left.map(faultName)) })}</p>
      <Key onPress={() => void (busy || execute('judge', { job: job.id, verdict: { is: 'given-up', left } }))}>
        {t('bench.settle.give-up')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </section>
  );
}
