import { useState } from 'react';
import type { Place } from '../../core/custody/place.ts';
import { TextField } from '../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../kit/keys/ChoiceKeys.tsx';
import { Key } from '../kit/keys/Key.tsx';
import { useWords } from '../kit/text/words.tsx';
import './parts.css';

type SendFormProps = { readonly part: string; readonly onSend: (to: Place) => void };

/** A part goes on its way: to whom, by whom it travels, under which number, insured or not. */
export function SendForm({ part, onSend }: SendFormProps) {
  const { t } = useWords();
  const [to, setTo] = useState('');
  const [carrier, setCarrier] = useState('');
  const [number, setNumber] = useState('');
  const [insured, setInsured] = useState<string | null>(null);
  const ready = to.trim() && carrier.trim() && number.trim() && insured !== null;
  return (
    <fieldset className="parts-form">
      <legend>{t('wall.send.what', { part })}</legend>
      <TextField label={t('wall.send.to')} labelled="above" value={to} onChange={setTo} />
      <TextField label={t('wall.send.carrier')} labelled="above" value={carrier} onChange={setCarrier} />
      <TextField label={t('wall.send.number')} labelled="above" value={number} onChange={setNumber} />
      <ChoiceKeys
        label={t('wall.send.insured')}
        labelled="above"
        mode="one"
        choices={(['yes', 'no'] as const).map((id) => ({ id, says: t(`wall.send.is.${id}`) }))}
        chosen={insured === null ? [] : [insured]}
        onChoose={([id]) => setInsured(id ?? null)}
      />
      <Key
        onPress={() =>
          onSend({
            at: 'transit',
            carrier: carrier.trim(),
            number: number.trim(),
            insured: insured === 'yes',
            to: to.trim(),
          })
        }
        {...(ready ? {} : { whyNot: t('wall.send.needs') })}
      >
        {t('wall.send.do')}
      </Key>
    </fieldset>
  );
}

const KINDS = ['maker', 'laboratory', 'supplier'] as const;

/** What was on its way has come where it was sent. */
export function ArrivedKeys({ to, onArrived }: { readonly to: string; readonly onArrived: (at: Place) => void }) {
  const { t } = useWords();
  return (
    <ChoiceKeys
      label={t('wall.send.arrived', { to })}
      mode="one"
      choices={KINDS.map((id) => ({ id, says: t(`wall.send.arrived-at.${id}`, { to }) }))}
      chosen={[]}
      onChoose={([id]) => {
        const kind = KINDS.find((one) => one === id);
        if (kind) onArrived({ at: 'away', kind, name: to });
      }}
    />
  );
}
