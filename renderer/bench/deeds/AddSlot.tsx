import { useState } from 'react';
import type { ThingKind } from '../../../core/custody/part.ts';
import type { SlotEdits } from '../../../core/fit/slotPlan.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { kindName } from '../../terms/terms.ts';

/** What boards and cases have more of, or fewer, than is usual. */
const KINDS: readonly ThingKind[] = ['dimm', 'card', 'add-in', 'drive', 'optical-drive', 'fan', 'card-reader', 'riser'];

type AddSlotProps = { readonly onAdd: (slot: NonNullable<SlotEdits['add']>[number]) => boolean };

/** A slot that nobody knew of until somebody looked: its name as printed, and what goes into it. */
export function AddSlot({ onAdd }: AddSlotProps) {
  const { t } = useWords();
  const [id, setId] = useState('');
  const [takes, setTakes] = useState<ThingKind | null>(null);
  const add = () => {
    if (takes !== null && onAdd({ id, takes })) setId('');
  };
  return (
    <details>
      <summary>{t('bench.slots.more')}</summary>
      <div className="bench-plain">
        <TextField label={t('bench.slots.name')} labelled="above" value={id} onChange={setId} chars={14} />
        <ChoiceKeys
          label={t('bench.slots.takes')}
          mode="one"
          choices={KINDS.map((kind) => ({ id: kind, says: kindName(kind) }))}
          chosen={takes === null ? [] : [takes]}
          onChoose={([kind]) => setTakes(KINDS.find((one) => one === kind) ?? null)}
        />
        <Key onPress={add} {...(id.trim() && takes !== null ? {} : { whyNot: t('bench.slots.needs') })}>
          {t('bench.slots.add')}
        </Key>
      </div>
    </details>
  );
}
