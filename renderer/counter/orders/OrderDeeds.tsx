import { useState } from 'react';
import { type OrderState, orderState } from '../../../core/job/orders/order.ts';
import type { IdOf } from '../../catalogue.ts';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { AskAboutOrder } from './AskAboutOrder.tsx';
import { CallOff, LateOrder } from './LateOrder.tsx';
import { OwnPart } from './OwnPart.tsx';
import type { OfOrder } from './ofOrder.ts';
import { ReceiveOrder } from './ReceiveOrder.tsx';
import { SendBack, SettleReturn } from './SendBack.tsx';

type Deed = IdOf<'counter.order.do'>;

const DEEDS = {
  'on-the-way': ['receive', 'late', 'own', 'call-off'],
  came: ['send-back'],
  'needs-word': ['ask', 'send-back'],
  'to-go-back': ['send-back'],
  'gone-back': ['settle'],
  settled: [],
  cancelled: [],
  'owners-own': [],
} as const satisfies Record<OrderState, readonly Deed[]>;

/** What can be done with an order as it stands; one thing at a time is open. */
export function OrderDeeds(of: OfOrder) {
  const { t } = useWords();
  const [deed, setDeed] = useState<Deed | null>(null);
  const state = orderState(of.order);
  const offered: readonly Deed[] = DEEDS[state];
  // A part for which nobody was asked needs a word, dear or not.
  const ids: readonly Deed[] =
    state === 'came' && of.order.question === null && of.order.agreedBy === null ? ['ask', ...offered] : offered;
  const open = deed !== null && ids.includes(deed) ? deed : null;
  return (
    <>
      <p>{t(`counter.order.state.${state}`)}</p>
      {ids.length > 0 && (
        <ChoiceKeys
          label={t('counter.order.what-now', { what: of.order.what })}
          mode="one"
          choices={ids.map((id) => ({ id, says: t(`counter.order.do.${id}`) }))}
          chosen={open === null ? [] : [open]}
          onChoose={([id]) => setDeed(ids.find((one) => one === id) ?? null)}
        />
      )}
      {open === 'receive' && <ReceiveOrder {...of} />}
      {open === 'late' && <LateOrder {...of} />}
      {open === 'own' && <OwnPart {...of} />}
      {open === 'call-off' && <CallOff {...of} />}
      {open === 'ask' && <AskAboutOrder {...of} />}
      {open === 'send-back' && <SendBack {...of} />}
      {open === 'settle' && <SettleReturn {...of} />}
    </>
  );
}
