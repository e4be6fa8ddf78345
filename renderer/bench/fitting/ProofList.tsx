import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Work } from '../../../core/job/work.ts';
import { NumberField } from '../../kit/fields/NumberField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useNow } from '../../kit/useNow.ts';
import { useWords } from '../../kit/words.tsx';
import { PROOF_IDS, proofName } from '../terms/terms.ts';
import { type DoesWork, useWork } from './useWork.ts';

const MINUTE = 60_000;

/** Each proof with what it came to, its limit and where the limit comes from; one runs at a time. */
export function ProofList({ sheet, tray }: { readonly sheet: JobSheet; readonly tray: string }) {
  const { t } = useWords();
  const work = useWork(sheet, tray);
  const under = work.under?.kind === 'proof' ? work.under : null;
  return (
    <section className="bench-part" aria-label={t('bench.proofs')}>
      <h2>{t('bench.proofs')}</h2>
      {work.problem && <Problem slim {...work.problem} />}
      <ul className="bench-list">
        {PROOF_IDS.map((id) => (
          <li key={id} className="bench-fit">
            <ProofSaid sheet={sheet} proof={id} />
            {under?.what === id ? (
              <ProofResult key={under.run} work={work} under={under} />
            ) : (
              <Key
                onPress={() => void work.start('proof', id)}
                {...(under ? { whyNot: t('bench.another-runs', { what: proofName(under.what) }) } : {})}
              >
                {t('bench.start-proof', { proof: proofName(id) })}
              </Key>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The last result of a proof, as a sentence. */
function ProofSaid({ sheet, proof }: { readonly sheet: JobSheet; readonly proof: string }) {
  const { t } = useWords();
  const last = sheet.job.work.findLast((one) => one.what === proof && one.endedAt !== null && !one.struck);
  const reading = last?.readings[0];
  return (
    <div>
      <b>{proofName(proof)}</b>
      <div className="k-small k-muted">
        {!last
          ? t('bench.not-proved')
          : [
              t(last.passed ? 'bench.held' : 'bench.did-not-hold'),
              reading?.value,
              reading?.limit && t('bench.limit-says', { limit: reading.limit }),
              reading?.source,
            ]
              .filter(Boolean)
              .join(', ')}
      </div>
    </div>
  );
}

function ProofResult({ work, under }: { readonly work: DoesWork; readonly under: Work }) {
  const { t } = useWords();
  const now = useNow(10_000);
  const clock = Math.max(0, Math.round((now - under.startedAt) / MINUTE));
  const [value, setValue] = useState('');
  const [limit, setLimit] = useState('');
  const [source, setSource] = useState('');
  const [hands, setHands] = useState<number | null>(null);
  const [waiting, setWaiting] = useState<number | null>(null);
  const orNull = (text: string) => (text.trim() === '' ? null : text.trim());
  const end = (passed: boolean) => {
    const what = proofName(under.what);
    void work.end(under, {
      handsOn: hands ?? Math.min(2, clock),
      waiting: waiting ?? Math.max(0, clock - (hands ?? 2)),
      readings: [{ what, value: value.trim(), limit: orNull(limit), source: orNull(source), within: passed }],
      passed,
      note: null,
    });
  };
  const whyNot = value.trim() === '' ? t('bench.result-needs') : undefined;
  return (
    <fieldset className="bench-form">
      <legend className="k-small">{t('bench.runs-since', { n: clock })}</legend>
      <TextField label={t('bench.result')} labelled="above" value={value} onChange={setValue} autoFocus />
      <TextField label={t('bench.limit')} labelled="above" value={limit} onChange={setLimit} />
      <TextField label={t('bench.limit-from')} labelled="above" value={source} onChange={setSource} />
      <div className="bench-row">
        <NumberField
          label={t('bench.hands-on')}
          labelled="above"
          unit={t('bench.min')}
          least={0}
          value={hands ?? Math.min(2, clock)}
          onChange={setHands}
        />
        <NumberField
          label={t('bench.waiting')}
          labelled="above"
          unit={t('bench.min')}
          least={0}
          value={waiting ?? Math.max(0, clock - (hands ?? 2))}
          onChange={setWaiting}
        />
      </div>
      <div className="bench-keys">
        <Key onPress={() => end(true)} whyNot={whyNot}>
          {t('bench.passed')}
        </Key>
        <Key onPress={() => end(false)} whyNot={whyNot}>
          {t('bench.proof-failed')}
        </Key>
      </div>
    </fieldset>
  );
}
