import { useState } from 'react';
import type { JobSheet, TracingSheet } from '../../../core/contract/screens.ts';
import type { PartId } from '../../../core/ids.ts';
import { WRITTEN_AS } from '../../../core/job/confirmedBy.ts';
import { wayBelieved } from '../../../core/tracing/live/wayBelieved.ts';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { faultName, kindName, stepName } from '../../terms/terms.ts';
import { CensusKey } from './CensusKey.tsx';
import { type SaidWhich, WhichOne } from './WhichOne.tsx';

/** Writes down what the log allows to be said: named, confirmed or cured. The runs that show it go with it. */
export function JudgeKeys({ sheet, tracing }: { readonly sheet: JobSheet; readonly tracing: TracingSheet }) {
  const { t, list, number, odds } = useWords();
  const { execute, problem, busy } = useExecute();
  const [picked, setPicked] = useState<PartId | null>(null);
  const [which, setWhich] = useState<SaidWhich>(undefined);
  const { job, parts } = sheet;
  const { verdict } = tracing;
  if (verdict.verdict === 'tracing' || verdict.verdict === 'not-reproduced') return null;
  const same = job.verdict?.is === verdict.verdict && 'fault' in job.verdict && job.verdict.fault === verdict.fault;
  if (same) return null;
  const watched = verdict.verdict === 'cured' ? verdict.watched : undefined;
  const blamed = verdict.verdict === 'cured' ? null : verdict.part;
  const candidates = parts.filter((part) => part.belongs.to === 'owner' && part.kind === blamed);
  const part = picked ?? (candidates.length === 1 ? (candidates[0]?.id ?? null) : null);
  const oneOf = tracing.suspects.find((one) => one.fault === verdict.fault)?.oneOf ?? null;
  const asksWhich = verdict.verdict !== 'cured' && oneOf !== null && !(oneOf === 'module' && part !== null);
  const said = asksWhich && which !== undefined ? { which } : {};
  const wayOpen = verdict.verdict !== 'cured' && !wayBelieved(verdict);
  const fault =
    verdict.fault === null
      ? t('bench.sweep-cured')
      : wayOpen && blamed !== null
        ? t('bench.way-open', { part: kindName(blamed) })
        : faultName(verdict.fault);
  const also = verdict.verdict === 'cured' ? [] : verdict.also;
  const judge = () => {
    if (verdict.verdict === 'cured')
      return execute('judge', {
        job: job.id,
        verdict: { is: 'cured', by: verdict.by, fault: verdict.fault, watched: verdict.watched },
      });
    if (verdict.verdict === 'named')
      return execute('judge', { job: job.id, verdict: { is: 'named', fault: verdict.fault, part, ...said } });
    if (part === null) return null;
    return execute('judge', {
      job: job.id,
      verdict: {
        is: 'confirmed',
        fault: verdict.fault,
        part,
        way: WRITTEN_AS[verdict.way],
        evidence: [...new Set(verdict.evidence.map((one) => one.entry))],
        readings: [],
        ...said,
      },
    });
  };
  const whyNot =
    verdict.verdict === 'confirmed' && part === null
      ? t('bench.which-part')
      : asksWhich && which === undefined
        ? t('bench.which-needs')
        : undefined;
  return (
    <section className="bench-form" aria-label={t('bench.verdict')}>
      <p>
        <b>{t(`bench.is.${verdict.verdict}`, { fault })}</b>
        {verdict.verdict === 'cured' && <> {t(`bench.cured-by.${verdict.by}`)}</>}
      </p>
      {also.length > 0 && <p>{t('bench.also-wrong', { parts: list(also.map((one) => kindName(one.part))) })}</p>}
      {watched && (
        <p>
          {t('bench.watched-since', {
            hours: number(Math.round(watched.hours * 10) / 10),
            chance: odds(watched.hiddenChance),
          })}
        </p>
      )}
      <p className="k-small">
        {t('bench.evidence', { steps: list(verdict.evidence.map((one) => stepName(one.step))) })}
      </p>
      {verdict.verdict === 'confirmed' && blamed !== null && candidates.length === 0 && (
        <>
          <p role="status">{t('bench.no-part-known', { part: kindName(blamed) })}</p>
          <CensusKey sheet={sheet} />
        </>
      )}
      {candidates.length > 1 && (
        <ChoiceKeys
          label={t('bench.which-part')}
          mode="one"
          choices={candidates.map((one) => ({
            id: one.id,
            says: one.place.at === 'slot' ? `${one.name}, ${one.place.slot}` : one.name,
          }))}
          chosen={part === null ? [] : [part]}
          onChoose={([id]) => setPicked(candidates.find((one) => one.id === id)?.id ?? null)}
        />
      )}
      {asksWhich && <WhichOne sheet={sheet} of={oneOf} which={which} onWhich={setWhich} />}
      <Key onPress={() => void (busy || judge())} whyNot={whyNot}>
        {t(`bench.judge.${verdict.verdict}`)}
      </Key>
      {problem && <Problem slim {...problem} />}
    </section>
  );
}
