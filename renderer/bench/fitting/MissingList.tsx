import type { JobSheet } from '../../../core/contract/screens.ts';
import { isProved, notHeld } from '../../../core/job/home/proofs.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { proofName } from '../../terms/terms.ts';

/** What keeps it from going home, and the key that says it is ready. */
export function MissingList({ sheet }: { readonly sheet: JobSheet }) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const { job, missing } = sheet;
  const proving = job.stage === 'proving';
  const failed = proving ? notHeld(job) : [];
  const unproved = proving && !isProved(job);
  return (
    <section className="bench-part" aria-label={t('bench.before-ready')}>
      <h2>{t('bench.before-ready')}</h2>
      <ul className="bench-plain">
        {missing.map((one) => (
          <li key={JSON.stringify(one)}>
            {t(`bench.missing.${one.why}`, {
              name: 'name' in one ? one.name : '',
              slot: 'slot' in one ? one.slot : '',
              thing: 'thing' in one ? one.thing : '',
            })}
          </li>
        ))}
        {failed.map((proof) => (
          <li key={proof}>{t('bench.missing.proof-not-held', { proof: proofName(proof) })}</li>
        ))}
        {unproved && <li>{t('bench.missing.nothing-proved')}</li>}
        {missing.length + failed.length === 0 && !unproved && <li>{t('bench.nothing-missing')}</li>}
      </ul>
      {proving && (
        <Key kind="filled" large onPress={() => void execute('markReady', { job: job.id })}>
          {t('bench.ready')}
        </Key>
      )}
      {problem && <Problem slim {...problem} />}
    </section>
  );
}
