import { useEffect, useRef, useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Reading, Work } from '../../../core/job/work.ts';
import { drivesBefore, provedBy } from '../../../core/readings/provedBy.ts';
import { MINUTE_MS } from '../../../core/time.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { ReportText } from '../../kit/text/ReportText.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useNow } from '../../kit/useNow.ts';
import { proofName } from '../../terms/terms.ts';
import { MinutesField } from '../MinutesField.tsx';
import { ReadingLines } from './ReadingLines.tsx';
import type { WorkDeeds } from './useWork.ts';

/** One piece of work keeps as many readings. */
const MOST_READINGS = 40;

export type ProofResultProps = { readonly sheet: JobSheet; readonly work: WorkDeeds; readonly under: Work };

/** What a proof came to: one figure with its limit, or what tools printed; drives are held against how they came. */
export function ProofResult({ sheet, work, under }: ProofResultProps) {
  const { t } = useWords();
  const form = useRef<HTMLFieldSetElement>(null);
  // The keys above say that it runs, and grow by it: the form is then no longer where the focus brought it.
  useEffect(() => {
    form.current?.scrollIntoView({ block: 'nearest' });
  }, []);
  const now = useNow(10_000);
  const clock = Math.max(0, Math.round((now - under.startedAt) / MINUTE_MS));
  const [value, setValue] = useState('');
  const [limit, setLimit] = useState('');
  const [source, setSource] = useState('');
  const [text, setText] = useState('');
  const [hands, setHands] = useState<number | null>(null);
  const [waiting, setWaiting] = useState<number | null>(null);
  const { report, driveSerials } = sheet.machine;
  const before = drivesBefore(report?.drives ?? [], driveSerials?.value ?? []);
  const proved = provedBy(text, before);
  const orNull = (written: string) => (written.trim() === '' ? null : written.trim());
  const end = (passed: boolean) => {
    const typed: readonly Reading[] =
      value.trim() === ''
        ? []
        : [
            {
              what: proofName(under.what),
              value: value.trim(),
              limit: orNull(limit),
              source: orNull(source),
              within: passed,
            },
          ];
    void work.end(under, {
      handsOn: hands ?? Math.min(2, clock),
      minutesBy: hands === null ? 'clock' : 'hand',
      waiting: waiting ?? Math.max(0, clock - (hands ?? 2)),
      readings: [...typed, ...proved.proofs].slice(0, MOST_READINGS),
      passed,
      note: null,
    });
  };
  const whyNot = value.trim() === '' && proved.proofs.length === 0 ? t('bench.result-needs') : undefined;
  const beyond = proved.proofs.filter(({ within }) => within === false).length;
  return (
    <fieldset className="bench-form" ref={form}>
      <legend className="k-small">{t('bench.runs-since', { n: clock })}</legend>
      <TextField label={t('bench.result')} labelled="above" value={value} onChange={setValue} autoFocus />
      <TextField label={t('bench.limit')} labelled="above" value={limit} onChange={setLimit} />
      <TextField label={t('bench.limit-from')} labelled="above" value={source} onChange={setSource} />
      <ReportText text={text} onText={setText} hint={t('bench.proved.paste')} />
      <div role="status" className="k-small">
        {proved.nothing}
        {proved.proofs.length > 0 && (
          <>
            {beyond > 0 && <p>{t('bench.proved.beyond', { n: beyond })}</p>}
            <ReadingLines readings={proved.proofs} label={t('bench.proved.read')} />
            {proved.proofs.length > MOST_READINGS && <p>{t('bench.proved.most', { n: MOST_READINGS })}</p>}
            {under.what === 'drives-own-health' && (
              <p className="k-muted">{t(before.length > 0 ? 'bench.proved.before' : 'bench.proved.no-before')}</p>
            )}
          </>
        )}
      </div>
      <div className="bench-row">
        <MinutesField label={t('bench.hands-on')} value={hands ?? Math.min(2, clock)} onChange={setHands} />
        <MinutesField
          label={t('bench.waiting')}
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
