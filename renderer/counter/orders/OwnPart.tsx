import { useState } from 'react';
import { PART_KINDS, type PartKind } from '../../../core/custody/part.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import type { OfOrder } from './ofOrder.ts';

/** The owner brought a part of their own: the order is off, theirs is proved before it is fitted. */
export function OwnPart({ sheet, order }: OfOrder) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [kind, setKind] = useState<PartKind | null>(null);
  const [name, setName] = useState('');
  const [tray, setTray] = useState('');
  const ready = kind !== null && name.trim() && tray.trim();
  return (
    <>
      <div className="counter-one-of">
        <span className="counter-asks" aria-hidden="true">
          {t('wall.kind')}
        </span>
        <ChoiceKeys
          label={t('wall.kind')}
          mode="one"
          choices={PART_KINDS.map((id) => ({ id, says: t(`wall.kinds.${id}`) }))}
          chosen={kind === null ? [] : [kind]}
          onChoose={([id]) => setKind(PART_KINDS.find((one) => one === id) ?? null)}
        />
      </div>
      <TextField label={t('wall.name')} labelled="above" value={name} onChange={setName} />
      <TextField label={t('counter.order.tray')} labelled="above" value={tray} onChange={setTray} />
      <Key
        onPress={() =>
          kind &&
          void execute('bringOwnPart', {
            job: sheet.job.id,
            order: order.order,
            kind,
            name: name.trim(),
            attributes: {},
            tray: tray.trim(),
          })
        }
        {...(ready ? {} : { whyNot: t('counter.order.own-needs') })}
      >
        {t('counter.order.write-own')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </>
  );
}
