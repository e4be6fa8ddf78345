import { useState } from 'react';
import { fromWall } from '../../../core/job/wallTime.ts';
import { minorDigits } from '../../../core/money/minorDigits.ts';
import { AmountField } from '../../kit/fields/AmountField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/words.tsx';
import { useDoes } from '../../link/does.ts';
import { MomentField } from '../fields/MomentField.tsx';
import { OrderDeeds } from '../orders/OrderDeeds.tsx';
import { JobRow } from './JobRow.tsx';
import type { OfJob } from './sheetOf.ts';

const WHILE: ReadonlySet<string> = new Set(['tracing', 'fitting', 'part-on-the-way']);

/** Parts on the way: ordered within the owner's word, checked against the order when they come. */
export function OrderRow({ sheet, settings }: OfJob) {
  const { t, dayClock } = useWords();
  const [writing, setWriting] = useState(false);
  const { orders, stage } = sheet.job;
  if (!WHILE.has(stage) && orders.length === 0) return null;
  return (
    <JobRow id="orders" state={orders.some((one) => one.received === null) ? 'open' : 'known'}>
      {orders.map((order) => (
        <div key={order.order} className="counter-block counter-stack">
          <p>
            <b>{order.what}</b>{' '}
            {t('counter.order.from', { supplier: order.supplier, due: order.due === null ? '–' : dayClock(order.due) })}
          </p>
          <OrderDeeds sheet={sheet} settings={settings} order={order} />
        </div>
      ))}
      {WHILE.has(stage) &&
        (writing ? (
          <NewOrder sheet={sheet} settings={settings} onDone={() => setWriting(false)} />
        ) : (
          <Key kind="link" onPress={() => setWriting(true)}>
            {t('counter.order.new')}
          </Key>
        ))}
    </JobRow>
  );
}

function NewOrder({ sheet, settings, onDone }: OfJob & { readonly onDone: () => void }) {
  const { t } = useWords();
  const { does, problem } = useDoes();
  const { currency, zone } = settings;
  const [what, setWhat] = useState('');
  const [supplier, setSupplier] = useState('');
  const [priceMinor, setPrice] = useState<number | null>(null);
  const [due, setDue] = useState('');
  const order = async () => {
    const done = await does('orderPart', {
      job: sheet.job.id,
      what: what.trim(),
      supplier: supplier.trim(),
      priceMinor: priceMinor ?? 0,
      due: due === '' ? null : fromWall(due, zone),
      question: sheet.job.questions.findLast((one) => one.answer !== null && !one.withdrawn)?.id ?? null,
    });
    if (done) onDone();
  };
  const ready = what.trim() && supplier.trim() && priceMinor !== null;
  return (
    <div className="counter-block counter-fields">
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
        digits={minorDigits(currency)}
        value={priceMinor === null ? null : { minor: priceMinor, currency }}
        onChange={(money) => setPrice(money?.minor ?? null)}
      />
      <MomentField label={t('counter.order.due')} labelled="above" value={due} onChange={setDue} />
      <Key onPress={() => void order()} {...(ready ? {} : { whyNot: t('counter.order.needs') })}>
        {t('counter.order.send')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </div>
  );
}
