import { useState } from 'react';
import { railLines } from '../../../core/tracing/live/readings/lines.ts';
import { type StandbyReading, standbyFinding } from '../../../core/tracing/live/readings/standby.ts';
import { NumberField } from '../../kit/fields/NumberField.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { EditionKeys } from './EditionKeys.tsx';
import { type MeasuredFields, plainReading, readingInWords } from './measured.ts';

const FIELDS = [
  ['standby', 'standby'],
  ['startAtRest', 'start-at-rest'],
  ['startPressed', 'start-pressed'],
] as const;

/** The standby rail, and the start line at rest and while the switch is pressed. */
export function StandbyFields({ onMeasured }: MeasuredFields) {
  const words = useWords();
  const { t } = words;
  const [edition, setEdition] = useState<string | null>(null);
  const [typed, setTyped] = useState<StandbyReading>({ standby: null, startAtRest: null, startPressed: null });
  const change = (now: StandbyReading, meant: string | null) => {
    setTyped(now);
    setEdition(meant);
    const rail = { rail: '+5VSB', connector: 'board', volts: now.standby, atPeak: false } as const;
    const lines = now.standby === null ? [] : railLines(meant, [rail], null);
    const line = (name: string, volts: number | null) =>
      volts === null ? [] : [plainReading(name, t('measured.figure', { value: words.number(volts, 2), unit: 'V' }))];
    onMeasured({
      finding: standbyFinding(meant, now),
      readings: [
        ...lines.map((one) => readingInWords(one, words)),
        ...line(t('measured.start-at-rest'), now.startAtRest),
        ...line(t('measured.start-pressed'), now.startPressed),
      ],
      says: [],
    });
  };
  return (
    <>
      <EditionKeys edition={edition} onEdition={(meant) => change(typed, meant)} />
      <div className="bench-row">
        {FIELDS.map(([field, name]) => (
          <NumberField
            key={field}
            label={t(`measured.${name}`)}
            labelled="above"
            unit="V"
            digits={2}
            least={0}
            most={20}
            value={typed[field]}
            onChange={(volts) => change({ ...typed, [field]: volts }, edition)}
          />
        ))}
      </div>
    </>
  );
}
