import stages from '../../../assets/words/en/stages.json';
import type { JobSheet } from '../../../core/contract/screens.ts';
import { nextStages } from '../../../core/stage.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';

/** To the stage that comes next, or back to one that is needed again. */
export function GoOnKeys({ sheet }: { readonly sheet: JobSheet }) {
  const { t } = useWords();
  const { execute, problem, busy } = useExecute();
  const { job } = sheet;
  const ways = nextStages(job.stage, job.tasks !== null);
  if (ways.length === 0) return null;
  return (
    <section className="bench-keys" aria-label={t('bench.go-on')}>
      {ways.map((to) => (
        <Key key={to} onPress={() => void (busy || execute('goOn', { job: job.id, to }))}>
          {t('bench.go-to', { stage: stages[to] })}
        </Key>
      ))}
      {problem && <Problem slim {...problem} />}
    </section>
  );
}
