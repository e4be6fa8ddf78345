import { useState } from 'react';
import { type WattsReading, wattsFinding } from '../../../core/tracing/live/readings/watts.ts';
import type { BenchTable } from '../../../core/tracing/live/types.ts';
import { NumberField } from '../../kit/fields/NumberField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { type MeasuredFields, plainReading } from './measured.ts';

const BEHAVES = ['swings', 'steady', 'lives'] as const;

/** Watts at the plug, before the start is pressed and after it. */
export function WattsFields({ table, onMeasured }: MeasuredFields & { readonly table: BenchTable }) {
  const words = useWords();
  const { t } = words;
  const [typed, setTyped] = useState<WattsReading>({ off: null, started: null, behaves: null });
  const change = (now: WattsReading) => {
    setTyped(now);
    const line = (name: string, watts: number | null) =>
      watts === null ? [] : [plainReading(name, t('measured.figure', { value: words.number(watts, 1), unit: 'W' }))];
    onMeasured({
      finding: wattsFinding(table, now),
      readings: [...line(t('measured.off'), now.off), ...line(t('measured.started'), now.started)],
      says: [],
    });
  };
  return (
    <>
      <div className="bench-row">
        {(['off', 'started'] as const).map((field) => (
          <NumberField
            key={field}
            label={t(`measured.${field}`)}
            labelled="above"
            unit="W"
            digits={1}
            least={0}
            most={4000}
            value={typed[field]}
            onChange={(watts) => change({ ...typed, [field]: watts })}
          />
        ))}
      </div>
      <p className="k-small">{t('measured.behaves')}</p>
      <ChoiceKeys
        label={t('measured.behaves')}
        mode="one"
        choices={BEHAVES.map((id) => ({ id, says: t(`measured.behaviour.${id}`) }))}
        chosen={typed.behaves === null ? [] : [typed.behaves]}
        onChoose={([id]) => change({ ...typed, behaves: BEHAVES.find((one) => one === id) ?? null })}
      />
    </>
  );
}
