import { useState } from 'react';
import type { Currency } from '../../../../core/money/money.ts';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { TakePayment } from '../money/TakePayment.tsx';
import type { OfJob } from '../sheetOf.ts';

/** Something is still to be paid: it is paid here and now, or it is said why it goes home unpaid. */
export function StillToPay({
  sheet,
  currency,
  unpaid,
  onUnpaid,
}: Pick<OfJob, 'sheet'> & {
  readonly currency: Currency;
  readonly unpaid: string;
  readonly onUnpaid: (why: string) => void;
}) {
  const { t } = useWords();
  const [paying, setPaying] = useState(false);
  if (paying) return <TakePayment sheet={sheet} currency={currency} onDone={() => setPaying(false)} />;
  return (
    <div className="counter-fields">
      <Key onPress={() => setPaying(true)}>{t('counter.home.pay-now')}</Key>
      <TextField label={t('counter.home.unpaid')} labelled="above" value={unpaid} onChange={onUnpaid} chars={34} />
    </div>
  );
}
