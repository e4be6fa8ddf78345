import { useState } from 'react';
import { AmountField } from '../../kit/fields/AmountField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import type { OfOrder } from './ofOrder.ts';

/** Asks the owner about what came, at its price; a no sends it back. No answer is not a yes. */
export function AskAboutOrder({ sheet, settings, order }: OfOrder) {
  const { t, money } = useWords();
  const { execute, problem } = useExecute();
  const { currency } = settings;
  const [limitMinor, setLimit] = useState<number | null>(null);
  const price = money({ minor: order.cameMinor, currency });
  const agrees = { limitMinor: null, items: [], accepts: false, data: null, dead: null };
  const ask = () =>
    execute('ask', {
      job: sheet.job.id,
      kind: 'spend',
      says: t('counter.order.ask-says', { what: order.what, price }),
      options: [
        {
          id: 'yes',
          says: t('counter.order.ask-yes', { price }),
          agrees: {
            ...agrees,
            limitMinor,
            order: { order: order.order, priceMinor: order.cameMinor },
            goesTo: 'fitting',
          },
        },
        { id: 'no', says: t('counter.order.ask-no'), agrees: { ...agrees, goesTo: 'part-on-the-way' } },
      ],
      validUntil: null,
      offer: null,
      stops: true,
    });
  return (
    <>
      <AmountField
        label={t('counter.order.new-limit')}
        labelled="above"
        currency={currency}
        minor={limitMinor}
        onChange={setLimit}
      />
      <Key onPress={() => void ask()}>{t('counter.order.ask')}</Key>
      {problem && <Problem slim {...problem} />}
    </>
  );
}
