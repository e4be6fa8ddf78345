import { useState } from 'react';
import { returnBy } from '../../../core/job/orders/order.ts';
import { AmountField } from '../../kit/fields/AmountField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { OneOf } from '../fields/OneOf.tsx';
import { AnotherOrdered } from './AnotherOrdered.tsx';
import type { OfOrder } from './ofOrder.ts';

/** Back to the supplier: by whom it travels, by when it has to be there, whether another comes in its place. */
export function SendBack({ sheet, order }: OfOrder) {
  const { t, dayClock, zone } = useWords();
  const { execute, problem } = useExecute();
  const [carrier, setCarrier] = useState('');
  const [number, setNumber] = useState('');
  const [insured, setInsured] = useState<'yes' | 'no' | null>(null);
  const [says, setSays] = useState('');
  const [another, setAnother] = useState<'yes' | 'no' | null>(null);
  const until = returnBy(order, zone);
  const ready = carrier.trim() && number.trim() && insured !== null && another !== null;
  const send = () =>
    execute('sendBack', {
      job: sheet.job.id,
      order: order.order,
      carrier: carrier.trim(),
      number: number.trim(),
      insured: insured === 'yes',
      says: says.trim() || null,
      another: another === 'yes',
    });
  return (
    <>
      {until !== null && <p>{t('counter.order.back-by', { day: dayClock(until) })}</p>}
      <TextField label={t('counter.order.carrier')} labelled="above" value={carrier} onChange={setCarrier} />
      <TextField label={t('counter.order.number')} labelled="above" value={number} onChange={setNumber} />
      <OneOf
        asks={t('counter.order.insured')}
        words="order.yes-no"
        ids={['yes', 'no'] as const}
        chosen={insured}
        onChoose={setInsured}
      />
      <TextField label={t('counter.order.supplier-says')} labelled="above" value={says} onChange={setSays} />
      <AnotherOrdered chosen={another} onChoose={setAnother} />
      <Key onPress={() => void send()} {...(ready ? {} : { whyNot: t('counter.order.say-how') })}>
        {t('counter.order.write-back')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </>
  );
}

const SETTLED = ['refunded', 'replaced', 'refused'] as const;

/** What the supplier made of what went back. */
export function SettleReturn({ sheet, settings, order }: OfOrder) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const { currency } = settings;
  const [as, setAs] = useState<(typeof SETTLED)[number] | null>(null);
  const [minor, setMinor] = useState<number | null>(null);
  return (
    <>
      <OneOf asks={t('counter.order.settled-as')} words="order.settled" ids={SETTLED} chosen={as} onChoose={setAs} />
      {as === 'refunded' && (
        <AmountField
          label={t('counter.order.money-back')}
          labelled="above"
          currency={currency}
          minor={minor}
          onChange={setMinor}
        />
      )}
      {as !== null && (
        <Key
          onPress={() => void execute('settleReturn', { job: sheet.job.id, order: order.order, as, minor: minor ?? 0 })}
        >
          {t('counter.order.write-settled')}
        </Key>
      )}
      {problem && <Problem slim {...problem} />}
    </>
  );
}
