import { useState } from 'react';
import type { Job } from '../../../../core/job/job.ts';
import type { Currency } from '../../../../core/money/money.ts';
import { AmountField } from '../../../kit/fields/AmountField.tsx';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { useExecute } from '../../../link/useExecute.ts';
import { OneOf } from '../../fields/OneOf.tsx';
import { PutRightForm } from '../../fields/PutRightForm.tsx';

const HOW = ['cash', 'card', 'transfer'] as const;

/** What was paid, each with the way to put it right; what was wrong stays to be read. */
export function Payments({ job, currency }: { readonly job: Job; readonly currency: Currency }) {
  const { t, dayClock, money } = useWords();
  const [open, setOpen] = useState<number | null>(null);
  if (job.paid.length === 0) return null;
  return (
    <ul className="counter-stack" aria-label={t('counter.payments.title')}>
      {job.paid.map((one, i) => (
        <li key={`${one.at}${i}`}>
          {one.struck ? <s>{money({ minor: one.minor, currency })}</s> : money({ minor: one.minor, currency })}{' '}
          {t(`counter.charges.ways.${one.how}`)}, {dayClock(one.at)}{' '}
          {one.struck ? (
            <span className="k-muted">{t('counter.payments.struck', { why: one.struck.why })}</span>
          ) : (
            open === null && (
              <Key
                kind="link"
                label={t('counter.payments.right-one', { amount: money({ minor: one.minor, currency }) })}
                onPress={() => setOpen(i)}
              >
                {t('counter.payments.right')}
              </Key>
            )
          )}
          {open === i && <PutRight job={job} nth={i + 1} currency={currency} onDone={() => setOpen(null)} />}
        </li>
      ))}
    </ul>
  );
}

/** A payment as it really was; no amount where there was none. */
function PutRight({
  job,
  nth,
  currency,
  onDone,
}: {
  readonly job: Job;
  readonly nth: number;
  readonly currency: Currency;
  readonly onDone: () => void;
}) {
  const { t } = useWords();
  const { execute, problem, busy } = useExecute();
  const wrong = job.paid[nth - 1];
  const [minor, setMinor] = useState<number | null>(Math.abs(wrong?.minor ?? 0));
  const [how, setHow] = useState<(typeof HOW)[number] | null>(wrong?.how ?? null);
  const [why, setWhy] = useState('');
  const none = minor === null || minor === 0;
  const write = async () => {
    const right = none || how === null ? null : { minor, how };
    if (!busy && (await execute('correctPayment', { job: job.id, nth, why: why.trim(), right }))) onDone();
  };
  return (
    <PutRightForm
      label={t('counter.payments.right')}
      submit={t(none ? 'counter.payments.take-out' : 'counter.payments.write')}
      whyNot={why.trim() && (none || how) ? undefined : t('counter.reason-needs')}
      problem={problem}
      onWrite={() => void write()}
      onDone={onDone}
    >
      <AmountField
        label={t('counter.payments.was')}
        labelled="above"
        currency={currency}
        minor={minor}
        onChange={setMinor}
      />
      {!none && <OneOf asks={t('counter.charges.how')} words="charges.ways" ids={HOW} chosen={how} onChoose={setHow} />}
      <TextField label={t('counter.payments.why')} labelled="above" value={why} onChange={setWhy} />
    </PutRightForm>
  );
}
