import { useState } from 'react';
import type { JobSheet } from '../../../../core/contract/screens.ts';
import type { Currency } from '../../../../core/money/money.ts';
import { AmountField } from '../../../kit/fields/AmountField.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { Problem } from '../../../kit/keys/Problem.tsx';
import { useWords } from '../../../kit/words.tsx';
import { useDoes } from '../../../link/does.ts';
import { OneOf } from '../../fields/OneOf.tsx';
import { AT_THE_DOOR } from '../sheetOf.ts';

const HOW = ['cash', 'card', 'transfer'] as const;

/** Money taken: a deposit, with its receipt, until the machine stands at the door, from then on what is owed. */
export function TakePayment({
  sheet,
  currency,
  onDone,
}: {
  readonly sheet: JobSheet;
  readonly currency: Currency;
  readonly onDone: () => void;
}) {
  const { t } = useWords();
  const { does, problem } = useDoes();
  const { job, charges } = sheet;
  const atTheDoor = AT_THE_DOOR.has(job.stage);
  const owed = Math.max(0, charges.owedMinor - charges.paidMinor);
  const [minor, setMinor] = useState<number | null>(atTheDoor && owed > 0 ? owed : null);
  const [how, setHow] = useState<(typeof HOW)[number] | null>(null);
  const ready = minor !== null && minor > 0 && how !== null;
  const take = async () => {
    if (!ready) return;
    const paid = { job: job.id, minor, how, for: atTheDoor ? ('bill' as const) : ('deposit' as const) };
    if (await does('takePayment', paid)) onDone();
  };
  return (
    <div className="counter-block counter-stack">
      <AmountField
        label={t(atTheDoor ? 'counter.charges.paid-now' : 'counter.charges.deposit')}
        labelled="above"
        currency={currency}
        minor={minor}
        onChange={setMinor}
      />
      <OneOf asks={t('counter.charges.how')} words="charges.ways" ids={HOW} chosen={how} onChoose={setHow} />
      <div className="counter-fields">
        <Key onPress={() => void take()} {...(ready ? {} : { whyNot: t('counter.charges.pay-needs') })}>
          {t('counter.charges.took')}
        </Key>
        <Key kind="link" onPress={onDone}>
          {t('counter.charges.leave')}
        </Key>
      </div>
      {problem && <Problem slim {...problem} />}
    </div>
  );
}
