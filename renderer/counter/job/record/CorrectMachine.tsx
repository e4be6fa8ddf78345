import { useState } from 'react';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { useExecute } from '../../../link/useExecute.ts';
import { PutRightForm } from '../../fields/PutRightForm.tsx';
import type { OfJob } from '../sheetOf.ts';

/** What the machine is called and its serial number, to be put right. */
export function CorrectMachine({ sheet, onDone }: Pick<OfJob, 'sheet'> & { readonly onDone: () => void }) {
  const { t } = useWords();
  const { execute, problem, busy } = useExecute();
  const [called, setCalled] = useState(sheet.machine.called);
  const [serial, setSerial] = useState(sheet.machine.serial?.value ?? '');
  const write = async () => {
    const right = { called: called.trim(), serial: serial.trim() === '' ? null : serial.trim() };
    if (!busy && (await execute('correctMachine', { job: sheet.job.id, ...right }))) onDone();
  };
  return (
    <PutRightForm
      label={t('counter.record.machine')}
      submit={t('counter.record.write')}
      whyNot={called.trim() ? undefined : t('counter.record.needs-called')}
      problem={problem}
      onWrite={() => void write()}
      onDone={onDone}
    >
      <div className="counter-fields">
        <TextField
          label={t('counter.machine.called')}
          labelled="above"
          value={called}
          onChange={setCalled}
          chars={36}
          autoFocus
        />
        <TextField
          label={t('counter.machine.serial')}
          labelled="above"
          value={serial}
          onChange={setSerial}
          chars={18}
        />
      </div>
    </PutRightForm>
  );
}
