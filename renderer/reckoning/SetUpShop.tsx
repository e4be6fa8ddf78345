import { useState } from 'react';
import { type StaffId, staffId } from '../../core/ids.ts';
import { currencyOf } from '../../core/money/currencyOf.ts';
import { minorDigits } from '../../core/money/minorDigits.ts';
import { NumberField } from '../kit/fields/NumberField.tsx';
import { TextField } from '../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../kit/keys/ChoiceKeys.tsx';
import { Key } from '../kit/keys/Key.tsx';
import { Problem } from '../kit/keys/Problem.tsx';
import { useWords } from '../kit/text/words.tsx';
import { wordsOfRefusal } from '../link/refusalWords.ts';
import { useExecuteAs } from '../link/useExecute.ts';
import { firstSettings } from './firstSettings.ts';
import './SetUpShop.css';

/** The first thing a new shop does: its name, its people, its money. Everything else has a start and can be changed. */
export function SetUpShop() {
  const { t } = useWords();
  const [name, setName] = useState('');
  const [address, setAddress] = useState('');
  const [phone, setPhone] = useState('');
  const [people, setPeople] = useState('');
  const [currency, setCurrency] = useState('GBP');
  const [rate, setRate] = useState<number | null>(45);
  const [fee, setFee] = useState<number | null>(30);
  const [tax, setTax] = useState<number | null>(20);
  const [paper, setPaper] = useState<'A4' | 'Letter'>('A4');
  const staff = people
    .split(',')
    .map((one) => one.trim())
    .filter((one) => one !== '');
  const { execute, problem } = useExecuteAs(idOf(staff[0] ?? ''));
  const known = currencyOf(currency);
  const digits = typeof known === 'string' ? minorDigits(known) : 2;
  const unit = 10 ** digits;
  const open = async () => {
    if (typeof known !== 'string') return;
    await execute('openShop', {
      settings: {
        ...firstSettings(),
        name,
        address,
        phone,
        currency: known,
        paperSize: paper,
        tax: { permille: (tax ?? 0) * 10, inside: true },
        perMinuteMinor: ((rate ?? 0) * unit) / 60,
        findingFee: { minor: Math.round((fee ?? 0) * unit), credited: true, coversMinutes: 40 },
      },
      staff: staff.map((one) => ({ id: idOf(one), name: one, roles: ['desk', 'bench', 'keeper'] })),
    });
  };
  const wrong = typeof known === 'string' ? undefined : wordsOfRefusal(known);
  const ready = name && address && phone && staff.length > 0 && wrong === undefined;
  return (
    <main className="set-up">
      <h1>{t('app.set-up.title')}</h1>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void open();
        }}
      >
        <TextField label={t('app.set-up.name')} labelled="above" value={name} onChange={setName} autoFocus />
        <TextField label={t('app.set-up.address')} labelled="above" value={address} onChange={setAddress} />
        <TextField label={t('app.set-up.phone')} labelled="above" type="tel" value={phone} onChange={setPhone} />
        <TextField
          label={t('app.set-up.people')}
          labelled="above"
          value={people}
          onChange={setPeople}
          says={t('app.set-up.people-says')}
        />
        <TextField
          label={t('app.set-up.currency')}
          labelled="above"
          value={currency}
          onChange={(value) => setCurrency(value.toUpperCase())}
          chars={4}
          wrong={wrong?.says}
        />
        <NumberField
          label={t('app.set-up.rate')}
          labelled="above"
          value={rate}
          onChange={setRate}
          least={0}
          digits={digits}
        />
        <NumberField
          label={t('app.set-up.fee')}
          labelled="above"
          value={fee}
          onChange={setFee}
          least={0}
          digits={digits}
        />
        <NumberField
          label={t('app.set-up.tax')}
          labelled="above"
          value={tax}
          onChange={setTax}
          least={0}
          most={100}
          digits={1}
        />
        <ChoiceKeys
          label={t('app.set-up.paper')}
          mode="one"
          choices={[
            { id: 'A4', says: 'A4' },
            { id: 'Letter', says: 'Letter' },
          ]}
          chosen={[paper]}
          onChoose={([next]) => next && setPaper(next === 'Letter' ? 'Letter' : 'A4')}
        />
        <Key kind="filled" large submit {...(ready ? {} : { whyNot: t('app.set-up.needed') })}>
          {t('app.set-up.open')}
        </Key>
        {problem && <Problem {...problem} />}
      </form>
    </main>
  );
}

/** A short id for a person, made from the name they are called by. */
const idOf = (name: string): StaffId =>
  staffId(
    name
      .toLowerCase()
      .normalize('NFKD')
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '')
      .slice(0, 40) || 'first',
  );
