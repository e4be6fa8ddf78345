import type { JobSheet } from '../../../core/contract/screens.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/words.tsx';
import { useDoes } from '../../link/does.ts';

/** What keeps it from going home, and the key that says it is ready. */
export function MissingList({ sheet }: { readonly sheet: JobSheet }) {
  const { t } = useWords();
  const { does, problem } = useDoes();
  return (
    <section className="bench-part" aria-label={t('bench.before-ready')}>
      <h2>{t('bench.before-ready')}</h2>
      <ul className="bench-plain">
        {sheet.missing.map((one) => (
          <li key={JSON.stringify(one)}>
            {t(`bench.missing.${one.why}`, {
              name: 'name' in one ? one.name : '',
              slot: 'slot' in one ? one.slot : '',
              thing: 'thing' in one ? one.thing : '',
            })}
          </li>
        ))}
        {sheet.missing.length === 0 && <li>{t('bench.nothing-missing')}</li>}
      </ul>
      {sheet.job.stage === 'proving' && (
        <Key kind="filled" large onPress={() => void does('markReady', { job: sheet.job.id })}>
          {t('bench.ready')}
        </Key>
      )}
      {problem && <Problem slim {...problem} />}
    </section>
  );
}
