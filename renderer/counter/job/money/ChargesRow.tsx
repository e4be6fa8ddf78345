import { useState } from 'react';
import type { ChargeLine } from '../../../../core/job/money/chargeLine.ts';
import { feeAgreed } from '../../../../core/job/money/charges.ts';
import { Key } from '../../../kit/keys/Key.tsx';
import { useWords, type Words } from '../../../kit/text/words.tsx';
import { useExecute } from '../../../link/useExecute.ts';
import { WithReason } from '../../fields/WithReason.tsx';
import { JobRow } from '../JobRow.tsx';
import type { OfJob } from '../sheetOf.ts';
import { BookCharge } from './BookCharge.tsx';
import { Payments } from './Payments.tsx';
import { overPaid, TakePayment } from './TakePayment.tsx';

/** What the job costs so far, line by line as the bill will say it, what is put on or taken off, and what was paid. */
export function ChargesRow({ sheet, settings }: OfJob) {
  const words = useWords();
  const { t } = words;
  const [open, setOpen] = useState<'book' | 'pay' | null>(null);
  const { job, charges } = sheet;
  const currency = job.terms?.currency ?? settings.currency;
  const money = (minor: number) => words.money({ minor, currency });
  const free = job.charging === 'free';
  const over = overPaid(sheet);
  const waiving = useExecute();
  const done = () => setOpen(null);
  return (
    <JobRow id="charges" state="known">
      <table className="counter-table">
        <caption className="k-heard">{t('counter.charges.title')}</caption>
        <tbody>
          {charges.lines.map((line, at) => (
            <tr key={`${line.is}${at}`}>
              <th scope="row">{lineSays(line, words, money)}</th>
              <td>{money(line.minor)}</td>
            </tr>
          ))}
          <tr>
            <th scope="row">{t(free ? 'counter.charges.would-cost' : 'counter.charges.total')}</th>
            <td>
              <b>{money(charges.totalMinor)}</b>
            </td>
          </tr>
        </tbody>
      </table>
      <p>
        {free
          ? t('counter.charges.free')
          : t(over > 0 ? 'counter.charges.back' : 'counter.charges.owed', {
              owed: money(Math.max(0, charges.owedMinor - charges.paidMinor)),
              amount: money(over),
              paid: money(charges.paidMinor),
            })}
      </p>
      <Payments job={job} currency={currency} />
      {job.feeWaived && (
        <p className="k-muted k-small">{t('counter.charges.fee-waived', { why: job.feeWaived.why })}</p>
      )}
      {job.leftUnpaid && (
        <p className="k-muted k-small">
          {t('counter.charges.left-unpaid', { amount: money(job.leftUnpaid.minor), why: job.leftUnpaid.why })}
        </p>
      )}
      {open === null && (
        <div className="counter-fields">
          {job.stage !== 'gone-home' && (
            <Key kind="link" onPress={() => setOpen('book')}>
              {t('counter.charges.book')}
            </Key>
          )}
          {job.stage !== 'gone-home' && !free && !job.feeWaived && feeAgreed(job) > 0 && (
            <WithReason
              opens={t('counter.charges.waive')}
              asks={t('counter.charges.waive-why')}
              does={t('counter.charges.waive-do')}
              doing={waiving}
              onDo={async (why) => (await waiving.execute('waiveFee', { job: job.id, why })) !== null}
            />
          )}
          {!free && (job.stage !== 'gone-home' || charges.owedMinor > charges.paidMinor) && (
            <Key kind="link" onPress={() => setOpen('pay')}>
              {t(over > 0 ? 'counter.charges.give-back' : 'counter.charges.pay')}
            </Key>
          )}
        </div>
      )}
      {open === 'book' && <BookCharge job={job} currency={currency} onDone={done} />}
      {open === 'pay' && <TakePayment sheet={sheet} currency={currency} onDone={done} />}
    </JobRow>
  );
}

function lineSays(line: ChargeLine, { t, number }: Words, money: (minor: number) => string): string {
  switch (line.is) {
    case 'labour':
      return t('counter.charges.labour', { n: number(line.handsOn, 0) });
    case 'item':
      return line.what;
    case 'finding-fee':
      return t(line.credited ? 'counter.charges.fee-credited' : 'counter.charges.fee');
    case 'old-part-back':
      return t('counter.charges.old-part-back');
    case 'given':
      return t('counter.charges.given', { what: line.what, worth: money(line.worthMinor) });
    case 'discount':
      return t('counter.charges.discount', { why: line.why });
    case 'storage':
      return t('counter.charges.storage', { n: line.days });
  }
}
