import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';

/** Takes leads off parts that stay in their place, and puts them on again. */
export function PlugForm({ sheet }: { readonly sheet: JobSheet }) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const { job, machine, parts } = sheet;
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const off = machine.unplugged.filter((slot) => machine.inside[slot]);
  const on = machine.slots.filter((slot) => machine.inside[slot.id] && !off.includes(slot.id));
  const name = (slot: string) => parts.find((part) => part.id === machine.inside[slot])?.name ?? slot;
  return (
    <section className="bench-form" aria-label={t('bench.plugs')}>
      <ChoiceKeys
        label={t('bench.unplug-which')}
        choices={on.map(({ id }) => ({ id, says: `${id}: ${name(id)}` }))}
        chosen={chosen}
        onChoose={setChosen}
      />
      <Key
        onPress={() =>
          void execute('unplug', { job: job.id, slots: [...chosen], out: [] }).then((done) => done && setChosen([]))
        }
        {...(chosen.length > 0 ? {} : { whyNot: t('bench.unplug-needs') })}
      >
        {t('bench.unplug')}
      </Key>
      <Key
        onPress={() => void execute('plugIn', { job: job.id, slots: [...machine.unplugged] })}
        {...(machine.unplugged.length > 0 ? {} : { whyNot: t('bench.nothing-unplugged') })}
      >
        {t('bench.plug-in')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </section>
  );
}
