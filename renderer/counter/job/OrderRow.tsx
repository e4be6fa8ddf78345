import { useState } from 'react';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { NewOrder } from '../orders/NewOrder.tsx';
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
            {order.due === null
              ? t('counter.order.from-no-day', { supplier: order.supplier })
              : t('counter.order.from', { supplier: order.supplier, due: dayClock(order.due) })}
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
