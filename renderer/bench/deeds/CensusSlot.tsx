import { useState } from 'react';
import type { Slot } from '../../../core/custody/slot.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { kindName } from '../../terms/terms.ts';

type CensusSlotProps = {
  readonly slot: Slot;
  readonly name: string;
  readonly onName: (name: string) => void;
  /** Something is there, and what it is cannot be read. */
  readonly onUnread: () => void;
  /** What the machine's own report says sits in it. */
  readonly told: string | null;
  /** True when the slot has that name now; null where something of the machine's is recorded under the old one. */
  readonly onRename: ((to: string) => boolean) | null;
  /** The slot is not there after all; null while something sits in it. */
  readonly onGone: (() => void) | null;
};

/** One slot of the census: what sits in it, and whether the slot is there and called so. */
export function CensusSlot({ slot, name, onName, onUnread, told, onRename, onGone }: CensusSlotProps) {
  const { t } = useWords();
  const [naming, setNaming] = useState<string | null>(null);
  const differs = told !== null && told !== name;
  return (
    <li>
      <TextField
        label={t('bench.in-slot', { slot: slot.id, kind: kindName(slot.takes) })}
        value={name}
        onChange={onName}
        {...(differs && { says: t('bench.against.says', { name: told }) })}
      />
      <div className="bench-census-keys">
        {differs && (
          <Key label={t('bench.against.as-it-says-in', { slot: slot.id })} onPress={() => onName(told)}>
            {t('bench.against.as-it-says')}
          </Key>
        )}
        <Key label={t('bench.there-unknown-in', { slot: slot.id })} onPress={onUnread}>
          {t('bench.there-unknown')}
        </Key>
        {onRename && (
          <Key
            label={t('bench.slots.rename-of', { slot: slot.id })}
            onPress={() => setNaming(naming === null ? slot.id : null)}
          >
            {t('bench.slots.rename')}
          </Key>
        )}
        {onGone && (
          <Key label={t('bench.no-such-slot-in', { slot: slot.id })} onPress={onGone}>
            {t('bench.no-such-slot')}
          </Key>
        )}
      </div>
      {onRename && naming !== null && (
        <div className="bench-census-keys">
          <TextField label={t('bench.slots.name')} labelled="above" value={naming} onChange={setNaming} chars={14} />
          <Key onPress={() => onRename(naming) && setNaming(null)}>{t('bench.slots.rename-do')}</Key>
        </div>
      )}
    </li>
  );
}
