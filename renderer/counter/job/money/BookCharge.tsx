import { useState } from 'react';
import type { CommandRequest } from '../../../../core/commands/asked.ts';
import type { Job } from '../../../../core/job/job.ts';
import type { Currency } from '../../../../core/money/money.ts';
import { AmountField } from '../../../kit/fields/AmountField.tsx';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { Problem } from '../../../kit/keys/Problem.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { useExecute } from '../../../link/useExecute.ts';
import { OneOf } from '../../fields/OneOf.tsx';

const KINDS = ['small-part', 'given', 'discount'] as const;
type Charge = CommandRequest<'bookCharge'>['input']['charge'];

/** A small part within what was agreed at the counter, a thing given for nothing, or something off the price. */
export function BookCharge({
  job,
  currency,
  onDone,
}: {
  readonly job: Job;
  readonly currency: Currency;
  readonly onDone: () => void;
}) {
  const { t, money } = useWords();
  const { execute, problem } = useExecute();
  const [is, setIs] = useState<(typeof KINDS)[number] | null>(null);
  const [what, setWhat] = useState('');
  const [minor, setMinor] = useState<number | null>(null);
  const says = what.trim();
  const ready = is !== null && says !== '' && minor !== null && (minor > 0 || is === 'given');
  const book = async () => {
    if (!ready) return;
    const charge: Charge =
      is === 'discount'
        ? { is, why: says, minor }
        : is === 'given'
          ? { is, what: says, worthMinor: minor }
          : { is, what: says, priceMinor: minor };
    if (await execute('bookCharge', { job: job.id, charge })) onDone();
  };
  return (
    <div className="counter-block counter-stack">
      <OneOf asks={t('counter.charges.kind')} words="charges.kinds" ids={KINDS} chosen={is} onChoose={setIs} />
      {is === 'small-part' && (
        <p className="k-small">
          {t('counter.charges.up-to', { upTo: money({ minor: job.smallPartsUpToMinor, currency }) })}
        </p>
      )}
      {is !== null && (
        <>
          <TextField label={t(`counter.charges.what.${is}`)} labelled="above" value={what} onChange={setWhat} />
          <AmountField
            label={t(`counter.charges.amount.${is}`)}
            labelled="above"
            currency={currency}
            minor={minor}
            onChange={setMinor}
          />
        </>
      )}
      <div className="counter-fields">
        <Key onPress={() => void book()} {...(ready ? {} : { whyNot: t('counter.charges.needs') })}>
          {t('counter.charges.write')}
        </Key>
        <Key kind="link" onPress={onDone}>
          {t('counter.charges.leave')}
        </Key>
      </div>
      {problem && <Problem slim {...problem} />}
    </div>
  );
}
