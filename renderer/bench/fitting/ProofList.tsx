import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import { isDone } from '../../../core/job/work.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { PROOF_IDS, proofName } from '../../terms/terms.ts';
import { workCautions } from '../../terms/workCautions.ts';
import { OwnWord } from '../step/OwnWord.tsx';
import { ProofResult } from './ProofResult.tsx';
import { ReadingLines } from './ReadingLines.tsx';
import { useWork } from './useWork.ts';

/** Each proof with what it came to, its limit and where the limit comes from; one runs at a time. */
export function ProofList({ sheet, tray }: { readonly sheet: JobSheet; readonly tray: string }) {
  const { t } = useWords();
  const work = useWork(sheet, tray);
  const under = work.under?.kind === 'proof' ? work.under : null;
  const [held, setHeld] = useState<string | null>(null);
  const start = async (proof: string, ownWord: string | null = null) =>
    setHeld((await work.start('proof', proof, ownWord)) ? null : proof);
  return (
    <section className="bench-part" aria-label={t('bench.proofs')}>
      <h2>{t('bench.proofs')}</h2>
      {work.problem && <Problem slim {...work.problem} />}
      {held !== null && !under && <OwnWord onStart={(says) => void start(held, says)} />}
      <ul className="bench-list">
        {PROOF_IDS.map((id) => (
          <li key={id} className="bench-fit">
            <ProofSaid sheet={sheet} proof={id} />
            {under?.what === id ? (
              <ProofResult key={under.run} sheet={sheet} work={work} under={under} />
            ) : (
              <Key
                onPress={() => void start(id)}
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
  const last = sheet.job.work.findLast((one) => one.what === proof && isDone(one));
  return (
    <div>
      <b>{proofName(proof)}</b>
      <div className="k-small k-muted">
        {!last ? t('bench.not-proved') : t(last.passed ? 'bench.held' : 'bench.did-not-hold')}
      </div>
      {workCautions('proof', proof).map((text) => (
        <div key={text} className="k-small">
          {text}
        </div>
      ))}
      {last && <ReadingLines readings={last.readings} />}
    </div>
  );
}
