import type { JobId } from '../../../core/ids.ts';
import { phaseOf, type Work } from '../../../core/job/work.ts';
import { epochMs } from '../../../core/time.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';

/** A clock that stopped with the screen: were hands on it all the while, or only again now? */
export function LockedClock({ job, work }: { readonly job: JobId; readonly work: Work }) {
  const { t, clock } = useWords();
  const { execute, problem, busy } = useExecute();
  const { to, at, because } = phaseOf(work);
  if (to !== 'paused' || because !== 'screen-locked') return null;
  const goOn = (from: number) => {
    if (!busy) void execute('turnWork', { job, run: work.run, to: 'hands-on', at: epochMs(from) });
  };
  return (
    <section className="bench-left" aria-label={t('bench.locked.title')}>
      <p role="status">{t('bench.locked.says', { at: clock(at) })}</p>
      <div className="bench-row">
        <Key onPress={() => goOn(Date.now())}>{t('bench.locked.now')}</Key>
        <Key onPress={() => goOn(at)}>{t('bench.locked.all-along')}</Key>
      </div>
      {problem && <Problem slim {...problem} />}
    </section>
  );
}
