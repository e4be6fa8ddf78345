import { useState } from 'react';
import type { Connector, Rail } from '../../../core/tracing/live/readings/editions.ts';
import { railLines } from '../../../core/tracing/live/readings/lines.ts';
import { type PowerGood, railsFinding } from '../../../core/tracing/live/readings/rails.ts';
import { NumberField } from '../../kit/fields/NumberField.tsx';
import { YesNo, type YesNoAnswer } from '../../kit/keys/YesNo.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { EditionKeys } from './EditionKeys.tsx';
import { type MeasuredFields, readingInWords } from './measured.ts';

/** The places a probe goes to, in the order it is done. */
const PROBES: readonly (readonly [Rail, Connector])[] = [
  ['+12V', 'board'],
  ['+5V', 'board'],
  ['+3.3V', 'board'],
  ['-12V', 'board'],
  ['+5VSB', 'board'],
  ['+12V', 'processor'],
  ['+12V', 'pcie'],
  ['+12V', 'drive'],
];

type Typed = {
  readonly edition: string | null;
  readonly volts: readonly (number | null)[];
  readonly peak: YesNoAnswer;
  readonly came: YesNoAnswer;
  readonly delayMs: number | null;
};

/** Rails and power-good, measured while the machine is on. */
export function RailFields({ onMeasured }: MeasuredFields) {
  const words = useWords();
  const { t } = words;
  const [typed, setTyped] = useState<Typed>({
    edition: null,
    volts: PROBES.map(() => null),
    peak: null,
    came: null,
    delayMs: null,
  });
  const change = (now: Typed) => {
    setTyped(now);
    const readings = PROBES.flatMap(([rail, connector], at) => {
      const volts = now.volts[at] ?? null;
      return volts === null ? [] : [{ rail, connector, volts, atPeak: now.peak === 'yes' }];
    });
    const good: PowerGood | null =
      now.came === 'no' ? { delayMs: null } : now.delayMs === null ? null : { delayMs: now.delayMs };
    onMeasured({
      finding: railsFinding(now.edition, readings, good),
      readings: railLines(now.edition, readings, good).map((line) => readingInWords(line, words)),
      says: [],
    });
  };
  return (
    <>
      <EditionKeys edition={typed.edition} onEdition={(edition) => change({ ...typed, edition })} />
      <div className="bench-row">
        {PROBES.map(([rail, connector], at) => (
          <NumberField
            key={`${rail} ${connector}`}
            label={t('measured.rail', { rail, connector: t(`measured.connector.${connector}`) })}
            labelled="above"
            unit="V"
            digits={3}
            least={-20}
            most={20}
            value={typed.volts[at] ?? null}
            onChange={(volts) => change({ ...typed, volts: typed.volts.with(at, volts) })}
          />
        ))}
      </div>
      <YesNo asks={t('measured.peak')} answer={typed.peak} onAnswer={(peak) => change({ ...typed, peak })} />
      <YesNo asks={t('measured.power-good-came')} answer={typed.came} onAnswer={(came) => change({ ...typed, came })} />
      {typed.came !== 'no' && (
        <NumberField
          label={t('measured.power-good')}
          labelled="above"
          unit="ms"
          least={0}
          most={60_000}
          value={typed.delayMs}
          onChange={(delayMs) => change({ ...typed, delayMs })}
        />
      )}
    </>
  );
}
