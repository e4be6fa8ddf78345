import { useState } from 'react';
import { type CodeReading, lookUpCode } from '../../../core/tracing/live/readings/codes.ts';
import type { BenchTable } from '../../../core/tracing/live/types.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { type MeasuredFields, plainReading } from './measured.ts';

const SHOWN = ['checkpoint', 'beeps'] as const;

/** Digits or beeps, with the firmware family they belong to; "family not known" is an answer. */
export function CodeFields({ table, onMeasured }: MeasuredFields & { readonly table: BenchTable }) {
  const { t, named } = useWords();
  const [typed, setTyped] = useState<CodeReading>({ shown: 'checkpoint', family: null, phase: null, code: '' });
  const rows = typed.shown === 'beeps' ? table.beeps : table.checkpoints;
  const families = table.families.filter(({ id }) => rows.some((row) => row.family === id));
  const nameOf = (id: string | null) =>
    table.families.find((one) => one.id === id)?.name ?? t('measured.family-unknown');
  const phases = [
    ...new Set(
      table.beeps
        .filter((row) => typed.shown === 'beeps' && row.family === typed.family)
        .flatMap((row) => row.phase ?? []),
    ),
  ];
  const change = (now: CodeReading) => {
    setTyped(now);
    const { finding, rows: hits } = lookUpCode(table, now);
    const what = now.family === null ? nameOf(null) : nameOf(now.family);
    onMeasured({
      finding,
      readings: now.code.trim() === '' ? [] : [plainReading(what, now.code.trim())],
      says: hits
        .filter((row) => row.says !== '')
        .map((row) => t('measured.means', { family: nameOf(row.family), says: row.says })),
    });
  };
  return (
    <>
      <ChoiceKeys
        label={t('measured.shown')}
        mode="one"
        choices={SHOWN.map((id) => ({ id, says: t(`measured.show.${id}`) }))}
        chosen={[typed.shown]}
        onChoose={([id]) =>
          change({ ...typed, shown: SHOWN.find((one) => one === id) ?? typed.shown, family: null, phase: null })
        }
      />
      <p className="k-small">{t('measured.family')}</p>
      <ChoiceKeys
        label={t('measured.family')}
        mode="one"
        choices={[
          ...families.map(({ id, name }) => ({ id, says: name })),
          { id: '', says: t('measured.family-unknown') },
        ]}
        chosen={[typed.family ?? '']}
        onChoose={([id]) => change({ ...typed, family: id === undefined || id === '' ? null : id, phase: null })}
      />
      {phases.length > 0 && (
        <ChoiceKeys
          label={t('measured.phase')}
          mode="one"
          choices={phases.map((id) => ({ id, says: named('measured.phases', id) }))}
          chosen={typed.phase === null ? [] : [typed.phase]}
          onChoose={([id]) => change({ ...typed, phase: id ?? null })}
        />
      )}
      <TextField
        label={t(typed.shown === 'beeps' ? 'measured.beeps' : 'measured.code')}
        labelled="above"
        value={typed.code}
        onChange={(code) => change({ ...typed, code })}
      />
    </>
  );
}
