import { useState } from 'react';
import { afterDays } from '../../../core/calendar.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { OneOf } from '../fields/OneOf.tsx';
import { KNOWN_TASKS, symptomSays, termsIn } from '../terms.ts';

const CAME = ['phone', 'mail', 'form'] as const;
/** How long an enquiry holds when nobody says otherwise: common practice, no source. */
const HOLDS_DAYS = 14;

/** Writes an enquiry down: who, how to reach them, what they told, and how it came. */
export function NewEnquiry({ onDone }: { readonly onDone: () => void }) {
  const { t, named, zone } = useWords();
  const { execute, problem } = useExecute();
  const [name, setName] = useState('');
  const [reach, setReach] = useState('');
  const [ownWords, setOwnWords] = useState('');
  const [symptoms, setSymptoms] = useState<readonly string[]>([]);
  const [tasks, setTasks] = useState<readonly string[]>([]);
  const [came, setCame] = useState<(typeof CAME)[number] | null>(null);
  const near = [...new Set([...symptoms, ...termsIn(ownWords, 6)])];
  const ready = name.trim() && reach.trim() && ownWords.trim() && came;
  const write = async () => {
    if (!came) return;
    const done = await execute('enquire', {
      name,
      reach,
      ownWords,
      symptoms: [...symptoms],
      ...(tasks.length > 0 && { tasks: [...tasks] }),
      came,
      wouldNeed: [],
      lapsesAt: afterDays(Date.now(), HOLDS_DAYS, zone),
    });
    if (done) onDone();
  };
  return (
    <form
      className="counter-stack counter-block"
      aria-label={t('counter.asked.new')}
      onSubmit={(event) => {
        event.preventDefault();
        void write();
      }}
    >
      <TextField label={t('counter.owner.name')} labelled="above" value={name} onChange={setName} />
      <TextField label={t('counter.asked.reach')} labelled="above" value={reach} onChange={setReach} />
      <TextField
        label={t('counter.told.own-words')}
        labelled="above"
        value={ownWords}
        onChange={setOwnWords}
        lines={2}
      />
      {near.length > 0 && (
        <ChoiceKeys
          label={t('counter.told.terms')}
          choices={near.map((id) => ({ id, says: symptomSays(id) }))}
          chosen={symptoms}
          onChoose={setSymptoms}
        />
      )}
      <ChoiceKeys
        label={t('counter.asked.known-work')}
        choices={KNOWN_TASKS.map((id) => ({ id, says: named('counter.tasks', id) }))}
        chosen={tasks}
        onChoose={setTasks}
      />
      <OneOf asks={t('counter.asked.how')} words="asked.ways" ids={CAME} chosen={came} onChoose={setCame} />
      <Key submit {...(ready ? {} : { whyNot: t('counter.asked.needs') })}>
        {t('counter.asked.write')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </form>
  );
}
