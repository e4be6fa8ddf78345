import { useState } from 'react';
import tracing from '../../../assets/words/en/tracing.json';
import type { JobSheet } from '../../../core/contract/screens.ts';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { taskName } from '../../terms/terms.ts';
import { workCautions } from '../../terms/workCautions.ts';
import { MinutesField } from '../MinutesField.tsx';
import { OwnWord } from '../step/OwnWord.tsx';
import { useWork } from './useWork.ts';

const CLEANING = 'filters-and-blades';
/** Fitting a part is written with the part; proving ours is the wall's, the key is the counter's. */
const ELSEWHERE: readonly string[] = ['fit-part', 'prove-loaners', 'key-entered-by-owner'];
const TASKS = Object.keys(tracing.tasks).filter((id) => !ELSEWHERE.includes(id));

/** Tasks of fitting and closing up, and cleaning, with their minutes; what is ours comes off. */
export function TaskForm({ sheet, tray }: { readonly sheet: JobSheet; readonly tray: string }) {
  const { t } = useWords();
  const work = useWork(sheet, tray);
  const { execute, problem } = useExecute();
  const [task, setTask] = useState<string | null>(null);
  const [hands, setHands] = useState<number | null>(null);
  const [held, setHeld] = useState(false);
  const log = async (ownWord: string | null = null) => {
    if (task === null || hands === null) return;
    const done = await work.log(task === CLEANING ? 'cleaning' : 'fitting', task, hands, ownWord);
    setHeld(!done);
    if (done) {
      setTask(null);
      setHands(null);
    }
  };
  const { job, machine } = sheet;
  return (
    <section className="bench-part" aria-label={t('bench.tasks')}>
      <h2>{t('bench.tasks')}</h2>
      <ChoiceKeys
        label={t('bench.tasks')}
        mode="one"
        choices={TASKS.map((id) => ({ id, says: taskName(id) }))}
        chosen={task === null ? [] : [task]}
        onChoose={([id]) => setTask(id ?? null)}
      />
      {task !== null &&
        workCautions(task === CLEANING ? 'cleaning' : 'fitting', task).map((text) => (
          <p key={text} className="k-small">
            {text}
          </p>
        ))}
      {held && <OwnWord onStart={(says) => void log(says)} />}
      <div className="bench-row">
        <MinutesField label={t('bench.task-minutes')} value={hands} onChange={setHands} />
        <Key onPress={() => void log()} {...(task !== null && hands !== null ? {} : { whyNot: t('bench.task-needs') })}>
          {t('bench.task-done')}
        </Key>
      </div>
      {machine.unplugged.length > 0 && (
        <Key onPress={() => void execute('plugIn', { job: job.id, slots: [...machine.unplugged] })}>
          {t('bench.plug-in')}
        </Key>
      )}
      {job.shopItemsOn.map(({ thing, count }) => (
        <Key key={thing} onPress={() => void execute('takeOursOff', { job: job.id, thing, count })}>
          {t('bench.ours-off', { thing, count })}
        </Key>
      ))}
      {(problem ?? work.problem) && <Problem slim {...(problem ?? work.problem ?? { says: '' })} />}
    </section>
  );
}
