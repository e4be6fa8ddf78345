import stages from '../../../assets/words/en/stages.json';
import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Stage } from '../../../core/stage.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';

type Next = 'first-power-on' | 'tracing' | 'part-on-the-way' | 'fitting' | 'proving';
const WAYS: Readonly<Partial<Record<Stage, readonly Next[]>>> = {
  'taken-in': ['first-power-on'],
  'first-power-on': ['tracing'],
  tracing: ['fitting', 'part-on-the-way'],
  'part-on-the-way': ['fitting', 'tracing'],
  fitting: ['proving', 'tracing', 'part-on-the-way'],
  proving: ['fitting', 'tracing'],
  ready: ['proving'],
};

/** To the stage that comes next, or back to one that is needed again. */
export function GoOnKeys({ sheet }: { readonly sheet: JobSheet }) {
  const { t } = useWords();
  const { execute, problem, busy } = useExecute();
  const { job } = sheet;
  const ways: readonly Next[] = [
    ...(WAYS[job.stage] ?? []),
    ...(job.stage === 'taken-in' && job.tasks ? (['fitting'] as const) : []),
  ];
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
