import { useState } from 'react';
import { type CodeReading, lookUpCode } from '../../../core/tracing/live/readings/codes.ts';
import { found } from '../../../core/tracing/live/readings/finding.ts';
import type { BenchTable } from '../../../core/tracing/live/types.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { outcomeName } from '../../terms/terms.ts';
import { type MeasuredFields, plainReading } from './measured.ts';

const SHOWN = ['checkpoint', 'beeps'] as const;
/** Where a board can stand, as the technician reads it in its own manual. */
const STANDS = ['memory', 'processor', 'card', 'boot-device', 'keyboard', 'handing-over', 'other', 'none'] as const;

/**
 * Where it stands, picked by the board's own manual; or digits or beeps with the family of the shop's table that they
 * belong to, where "family not known" is an answer.
 */
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
  const [stands, setStands] = useState<string | null>(null);
  const change = (now: CodeReading) => {
    setTyped(now);
    setStands(null);
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
  const pick = (outcome: string | undefined) => {
    setStands(outcome ?? null);
    if (outcome === undefined) return change(typed);
    const readings = typed.code.trim() === '' ? [] : [plainReading(t('measured.stands'), typed.code.trim())];
    onMeasured({ finding: found('read-code', outcome), readings, says: [] });
  };
  return (
    <>
      <p className="k-small">{t('measured.stands')}</p>
      <ChoiceKeys
        label={t('measured.stands')}
        mode="one"
        choices={STANDS.map((id) => ({ id, says: outcomeName(id) }))}
        chosen={stands === null ? [] : [stands]}
        onChoose={([id]) => pick(id)}
      />
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
