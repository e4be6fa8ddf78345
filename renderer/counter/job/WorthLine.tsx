import { useState } from 'react';
import { AmountField } from '../../kit/fields/AmountField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import type { OfJob } from './sheetOf.ts';

/** What the machine is worth to its owner, told when they know it and put right when they think again. */
export function WorthLine({ sheet, settings }: OfJob) {
  const { t, moneyShort } = useWords();
  const { execute, problem, busy } = useExecute();
  const { job } = sheet;
  const currency = job.terms?.currency ?? settings.currency;
  const known = job.worthMinor ?? null;
  const [open, setOpen] = useState(false);
  const [worthMinor, setWorth] = useState(known);
  const write = async () => {
    if (!busy && (await execute('tellWorth', { job: job.id, worthMinor }))) setOpen(false);
  };
  return (
    <>
      <p>
        {known === null
          ? t('counter.worth.unknown')
          : t('counter.worth.known', { worth: moneyShort({ minor: known, currency }) })}
      </p>
      {open ? (
        <form
          className="counter-fields counter-block"
          aria-label={t('counter.worth.asks')}
          onSubmit={(event) => {
            event.preventDefault();
            void write();
          }}
        >
          <AmountField
            label={t('counter.worth.asks')}
            labelled="above"
            currency={currency}
            minor={worthMinor}
            onChange={setWorth}
          />
          <Key submit>{t('counter.worth.write')}</Key>
        </form>
      ) : (
        job.stage !== 'gone-home' && (
          <Key
            kind="link"
            onPress={() => {
              setWorth(known);
              setOpen(true);
            }}
          >
            {t(known === null ? 'counter.worth.ask' : 'counter.worth.change')}
          </Key>
        )
      )}
      {problem && <Problem slim {...problem} />}
    </>
  );
}
