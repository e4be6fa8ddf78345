import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Several } from '../../../core/tracing/live/model/fault.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../kit/text/words.tsx';

/** Which of several it is; null: left open; undefined: nobody said yet. */
export type SaidWhich = string | null | undefined;

const OPEN = 'open';
/** Slots whose number is printed on the board. */
const IN_SLOTS: readonly string[] = ['dimm', 'card', 'add-in'];

/** Asks which slot, channel, module, output, port or plug it is; it may be left open, and the papers then say so. */
export function WhichOne({
  sheet,
  of,
  which,
  onWhich,
}: {
  readonly sheet: JobSheet;
  readonly of: Several;
  readonly which: SaidWhich;
  readonly onWhich: (which: SaidWhich) => void;
}) {
  const { t } = useWords();
  const [typed, setTyped] = useState('');
  const slots = of === 'slot' ? (sheet.machine.slots ?? []).filter((slot) => IN_SLOTS.includes(slot.takes)) : [];
  const choose = (id: string | undefined) => {
    if (id === undefined || id === OPEN) setTyped('');
    onWhich(id === OPEN ? null : id);
  };
  return (
    <>
      {slots.length === 0 && (
        <TextField
          label={t(`bench.which-one.${of}`)}
          labelled="above"
          value={typed}
          onChange={(text) => {
            setTyped(text);
            onWhich(text.trim() === '' ? undefined : text.trim());
          }}
        />
      )}
      <ChoiceKeys
        label={t(`bench.which-one.${of}`)}
        mode="one"
        choices={[...slots.map(({ id }) => ({ id, says: id })), { id: OPEN, says: t('bench.which-open') }]}
        chosen={which === undefined ? [] : [which ?? OPEN]}
        onChoose={([id]) => choose(id)}
      />
    </>
  );
}
