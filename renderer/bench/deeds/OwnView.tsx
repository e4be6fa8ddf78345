import { useState } from 'react';
import type { JobSheet, TracingSheet } from '../../../core/contract/screens.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Ask } from '../../kit/keys/Ask.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { faultName } from '../../terms/terms.ts';
import { NameForm } from './NameForm.tsx';

type Suspect = TracingSheet['suspects'][number];

/** What the technician says by themselves: "I think it is …", which the belief weighs, or a fault named by hand. */
export function OwnView({ sheet, tracing }: { readonly sheet: JobSheet; readonly tracing: TracingSheet }) {
  const { t, locale } = useWords();
  const { execute, problem, busy } = useExecute();
  const [open, setOpen] = useState(false);
  const [word, setWord] = useState('');
  const [naming, setNaming] = useState<Suspect | null>(null);
  const { verdict } = sheet.job;
  const thought = sheet.job.thoughts.at(-1)?.fault ?? null;
  const close = () => {
    setOpen(false);
    setNaming(null);
  };
  const think = async (fault: string | null) => {
    if (!busy && (await execute('thinkItIs', { job: sheet.job.id, fault }))) close();
  };
  const found = tracing.suspects
    .filter(({ fault }) => faultName(fault).toLowerCase().includes(word.trim().toLowerCase()))
    .toSorted((a, b) => faultName(a.fault).localeCompare(faultName(b.fault), locale));
  return (
    <div className="bench-keys">
      <Key kind="link" onPress={() => setOpen(true)}>
        {t('bench.own-view')}
      </Key>
      {thought !== null && <p>{t('bench.you-think', { fault: faultName(thought) })}</p>}
      {verdict?.is === 'named' && verdict.byHand && (
        <p>{t('bench.you-named', { fault: faultName(verdict.fault), why: verdict.byHand.why.value ?? '' })}</p>
      )}
      {open && (
        <Ask
          open
          title={t('bench.own-view')}
          onClose={close}
          width={820}
          keys={<Key onPress={close}>{t('kit.close')}</Key>}
        >
          {problem && <Problem slim {...problem} />}
          {naming ? (
            <NameForm sheet={sheet} suspect={naming} onDone={close} />
          ) : (
            <>
              <TextField label={t('bench.find-fault')} labelled="above" value={word} onChange={setWord} autoFocus />
              {thought !== null && <Key onPress={() => void think(null)}>{t('bench.think-no-more')}</Key>}
              {found.length === 0 && <p>{t('bench.no-such-fault')}</p>}
              <ul className="bench-list">
                {found.map((one) => (
                  <li key={one.fault}>
                    <span>{faultName(one.fault)}</span>
                    <span>
                      <Key
                        label={t('bench.think-it-is', { fault: faultName(one.fault) })}
                        onPress={() => void think(one.fault)}
                      >
                        {t('bench.think-short')}
                      </Key>{' '}
                      <Key
                        label={t('bench.name-fault', { fault: faultName(one.fault) })}
                        onPress={() => setNaming(one)}
                      >
                        {t('bench.name-short')}
                      </Key>
                    </span>
                  </li>
                ))}
              </ul>
            </>
          )}
        </Ask>
      )}
    </div>
  );
}
