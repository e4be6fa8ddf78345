import { useState } from 'react';
import { fromWall } from '../../../core/calendar.ts';
import { isLive, lineOf } from '../../../core/job/orders/order.ts';
import { AmountField } from '../../kit/fields/AmountField.tsx';
import { MomentField } from '../../kit/fields/DateField.tsx';
import { NumberField } from '../../kit/fields/NumberField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import type { OfJob } from '../job/sheetOf.ts';
import { coreInput, NO_CORE, OldPartFields } from './OldPartFields.tsx';

/** What is ordered, from whom, at what price; with it the days to give it back and what the old part is worth there. */
export function NewOrder({ sheet, settings, onDone }: OfJob & { readonly onDone: () => void }) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const { currency, zone } = settings;
  const [what, setWhat] = useState('');
  const [supplier, setSupplier] = useState('');
  const [priceMinor, setPrice] = useState<number | null>(null);
  const [due, setDue] = useState('');
  const [agreed, setAgreed] = useState<string | null>(null);
  const [returnDays, setReturnDays] = useState<number | null>(null);
  const [core, setCore] = useState(NO_CORE);
  const lines = sheet.job.agreedLines.filter(
    (one) => !one.fitted && !sheet.job.orders.some((made) => isLive(made) && lineOf(sheet.job, made) === one),
  );
  const line = lines.find((one) => one.what === agreed) ?? null;
  const order = async () => {
    const done = await execute('orderPart', {
      job: sheet.job.id,
      what: what.trim(),
      supplier: supplier.trim(),
      priceMinor: priceMinor ?? 0,
      due: due === '' ? null : fromWall(due, zone),
      ...(returnDays !== null && { returnDays }),
      ...(given && { core: given }),
      question: sheet.job.questions.find(({ id }) => id === line?.question)?.id ?? null,
    });
    if (done) onDone();
  };
  const given = coreInput(core);
  const ready = what.trim() && supplier.trim() && priceMinor !== null && given !== null;
  return (
    <div className="counter-block counter-fields">
      {lines.length > 0 && (
        <div className="counter-one-of">
          <span className="counter-asks" aria-hidden="true">
            {t('counter.order.agreed')}
          </span>
          <ChoiceKeys
            label={t('counter.order.agreed')}
            mode="one"
            choices={lines.map((one) => ({ id: one.what, says: one.what }))}
            chosen={agreed === null ? [] : [agreed]}
            onChoose={([id]) => {
              const chosen = lines.find((one) => one.what === id);
              setAgreed(id ?? null);
              if (chosen) {
                setWhat(chosen.what);
                setPrice(chosen.priceMinor);
              }
            }}
          />
        </div>
      )}
      <TextField label={t('counter.order.what')} labelled="above" value={what} onChange={setWhat} chars={28} />
      <TextField
        label={t('counter.order.supplier')}
        labelled="above"
        value={supplier}
        onChange={setSupplier}
        chars={22}
      />
      <AmountField
        label={t('counter.order.price')}
        labelled="above"
        currency={currency}
        minor={priceMinor}
        onChange={setPrice}
      />
      <MomentField label={t('counter.order.due')} value={due} onChange={setDue} />
      <NumberField
        label={t('counter.order.return-days')}
        labelled="above"
        least={0}
        most={3650}
        value={returnDays}
        onChange={setReturnDays}
      />
      <OldPartFields sheet={sheet} settings={settings} core={core} onCore={setCore} />
      <Key
        onPress={() => void order()}
        {...(ready ? {} : { whyNot: t(given === null ? 'counter.order.core-needs' : 'counter.order.needs') })}
      >
        {t('counter.order.send')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </div>
  );
}
