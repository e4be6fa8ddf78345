import { useState } from 'react';
import type { Reading } from '../../../core/job/work.ts';
import type { BenchTable } from '../../../core/tracing/live/types.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { outcomeName, stepName } from '../../terms/terms.ts';
import { CodeFields } from './CodeFields.tsx';
import type { Measured } from './measured.ts';
import { RailFields } from './RailFields.tsx';
import { StandbyFields } from './StandbyFields.tsx';
import { WattsFields } from './WattsFields.tsx';

/** Steps whose readings can be typed. */
const TYPED = ['meas-rails', 'meas-standby', 'wall-watts', 'read-code'];
export const isTyped = (step: string): boolean => TYPED.includes(step);

export type MeasuredFormProps = {
  readonly step: string;
  readonly table: BenchTable;
  /** The readings so far: kept with whatever outcome is pressed. */
  readonly onReadings: (readings: readonly Reading[]) => void;
  /** Ends the step with the outcome that the readings come to. */
  readonly onOutcome: (outcome: string) => void;
};

/** Readings typed at the bench: held against their limits as they are typed, and offered as the step's finding. */
export function MeasuredForm({ step, table, onReadings, onOutcome }: MeasuredFormProps) {
  const { t } = useWords();
  const [measured, setMeasured] = useState<Measured | null>(null);
  const onMeasured = (now: Measured) => {
    setMeasured(now);
    onReadings(now.readings);
  };
  return (
    <fieldset className="bench-form">
      <legend>{t('measured.form')}</legend>
      {step === 'meas-rails' && <RailFields onMeasured={onMeasured} />}
      {step === 'meas-standby' && <StandbyFields onMeasured={onMeasured} />}
      {step === 'wall-watts' && <WattsFields table={table} onMeasured={onMeasured} />}
      {step === 'read-code' && <CodeFields table={table} onMeasured={onMeasured} />}
      {measured && (
        <div role="status">
          {measured.says.map((says) => (
            <p key={says}>{says}</p>
          ))}
          {measured.finding.finding === 'none' && <p>{t(`measured.none.${measured.finding.because}`)}</p>}
          {measured.finding.finding === 'is' && measured.finding.step !== step && (
            <p>
              {t('measured.other-step', {
                step: stepName(measured.finding.step),
                outcome: outcomeName(measured.finding.outcome),
              })}
            </p>
          )}
        </div>
      )}
      {measured?.finding.finding === 'is' && measured.finding.step === step && (
        <Take outcome={measured.finding.outcome} onOutcome={onOutcome} />
      )}
    </fieldset>
  );
}

function Take({ outcome, onOutcome }: { readonly outcome: string; readonly onOutcome: (outcome: string) => void }) {
  const { t } = useWords();
  return <Key onPress={() => onOutcome(outcome)}>{t('measured.take', { outcome: outcomeName(outcome) })}</Key>;
}
