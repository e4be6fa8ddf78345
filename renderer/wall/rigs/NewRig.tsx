import { useState } from 'react';
import { slotPlanForBoard } from '../../../core/fit/slotPlan.ts';
import { machineId } from '../../../core/ids.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';

const FORMS = ['atx', 'microatx', 'mini-itx'] as const;

/** A machine of our own in which owners' parts are tried: what it is called, and the slots a board of its size has. */
export function NewRig({ onDone }: { readonly onDone: () => void }) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [called, setCalled] = useState('');
  const [form, setForm] = useState<string | null>(null);
  const know = async () => {
    const slots = slotPlanForBoard({ 'form-factor': form ?? '' }).slots.map(({ id, takes, order }) => ({
      id,
      takes,
      order,
    }));
    if (await execute('knowRig', { rig: machineId(crypto.randomUUID()), called: called.trim(), slots })) onDone();
  };
  return (
    <form
      className="wall-deeds"
      aria-label={t('wall.rigs.new')}
      onSubmit={(event) => {
        event.preventDefault();
        void know();
      }}
    >
      <p>{t('wall.rigs.how')}</p>
      <TextField label={t('wall.rigs.called')} labelled="above" value={called} onChange={setCalled} />
      <ChoiceKeys
        label={t('bench.board-size')}
        labelled="above"
        mode="one"
        choices={FORMS.map((id) => ({ id, says: t(`bench.form.${id}`) }))}
        chosen={form === null ? [] : [form]}
        onChoose={([id]) => setForm(id ?? null)}
      />
      <Key submit {...(called.trim() && form !== null ? {} : { whyNot: t('wall.rigs.needs') })}>
        {t('wall.rigs.do')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </form>
  );
}
