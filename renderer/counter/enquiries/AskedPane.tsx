import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { EnquirySheet } from '../../../core/contract/screens.ts';
import type { ShopSettings } from '../../../core/job/shop.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { EstimateLine } from '../../kit/plot/EstimateLine.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { enquiriesRead } from '../../link/reads.ts';
import { driverWords } from '../driverWords.ts';
import { freshSheet } from '../taking-in/sheet.ts';
import { useTakingIn } from '../taking-in/sheetContext.tsx';
import { symptomSays } from '../terms.ts';
import { AnswerEnquiry } from './AnswerEnquiry.tsx';
import { NewEnquiry } from './NewEnquiry.tsx';

/** Machines that were offered before they come: what was told, our answer, and the way onto the sheet when one comes. */
export function AskedPane({ open, onOpen }: { readonly open: boolean; readonly onOpen: (open: boolean) => void }) {
  const { t, named } = useWords();
  const { write, settings } = useTakingIn();
  const enquiries = useQuery(enquiriesRead());
  const [writing, setWriting] = useState(false);
  const all = enquiries.data ?? [];
  const list = all.filter(({ stage }) => stage === 'asked');
  const ended = all.filter(({ stage }) => stage !== 'asked');
  const came = (enquiry: EnquirySheet) => {
    const reach = enquiry.reach.value ?? '';
    const { owner } = freshSheet();
    write({
      enquiry: enquiry.id,
      owner: {
        ...owner,
        name: enquiry.name.value ?? '',
        ...(reach.includes('@') ? { mail: reach } : { phone: reach }),
      },
      ownWords: enquiry.ownWords.value ?? '',
      symptoms: enquiry.symptoms,
      tasks: enquiry.tasks?.map((id) => ({ id, fixedMinor: null })) ?? null,
    });
    onOpen(false);
  };
  return (
    <section className="counter-asked" aria-label={t('counter.asked.title')}>
      <Key kind="link" onPress={() => onOpen(!open)}>
        {open ? t('counter.asked.back') : t('counter.asked.count', { n: list.length })}
      </Key>
      {open && (
        <>
          {list.length === 0 && <p>{t('counter.asked.none')}</p>}
          <ul className="counter-stack">
            {list.map((enquiry) => (
              <li key={enquiry.id} className="counter-block">
                <p>
                  <b>{enquiry.name.value ?? t('counter.erased')}</b>, {enquiry.reach.value ?? ''}
                </p>
                <p>“{enquiry.ownWords.value ?? ''}”</p>
                <p className="k-muted k-small">
                  {[
                    ...enquiry.symptoms.map(symptomSays),
                    ...(enquiry.tasks ?? []).map((id) => named('counter.tasks', id)),
                  ].join('; ')}
                </p>
                <Likely enquiry={enquiry} settings={settings} />
                <AnswerEnquiry enquiry={enquiry} />
                <Key onPress={() => came(enquiry)}>{t('counter.asked.came')}</Key>
              </li>
            ))}
          </ul>
          {ended.length > 0 && <Ended list={ended} />}
          {writing ? (
            <NewEnquiry onDone={() => setWriting(false)} />
          ) : (
            <Key onPress={() => setWriting(true)}>{t('counter.asked.new')}</Key>
          )}
        </>
      )}
    </section>
  );
}

/** What came to nothing stays to be read: turned down with what we said, or lapsed. */
function Ended({ list }: { readonly list: readonly EnquirySheet[] }) {
  const { t, date } = useWords();
  return (
    <section aria-label={t('counter.asked.ended')}>
      <p className="counter-asks">{t('counter.asked.ended')}</p>
      <ul className="counter-stack">
        {list.map(({ id, name, reach, stage, answer, at, lapsesAt }) => (
          <li key={id}>
            <b>{name.value ?? t('counter.erased')}</b>, {reach.value ?? ''}, {date(at)}.{' '}
            {stage === 'lapsed'
              ? t('counter.asked.lapsed', { at: date(lapsesAt) })
              : t('counter.asked.turned-down', { why: answer?.says === 'no' ? answer.why : '' })}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What it will likely take and cost, as it was reckoned from what they told. */
function Likely({ enquiry, settings }: { readonly enquiry: EnquirySheet; readonly settings: ShopSettings }) {
  const { t, moneyShort } = useWords();
  const { estimate } = enquiry;
  if (!estimate) return null;
  const money = (minor: number) => moneyShort({ minor: Math.round(minor), currency: settings.currency });
  const { p50, p90 } = estimate.price;
  return (
    <>
      <EstimateLine estimate={estimate} computing={null} />
      <p className="k-small">{t('counter.asked.likely', { p50: money(p50), p90: money(p90) })}</p>
      {estimate.drivers.length > 0 && (
        <p className="k-small">{t('counter.figures.hangs-on', { what: driverWords(estimate.drivers) })}</p>
      )}
    </>
  );
}
