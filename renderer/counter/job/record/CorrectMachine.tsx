import { useState } from 'react';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { Problem } from '../../../kit/keys/Problem.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { useExecute } from '../../../link/useExecute.ts';
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
    <form
      className="counter-block counter-stack"
      aria-label={t('counter.record.machine')}
      onSubmit={(event) => {
        event.preventDefault();
        void write();
      }}
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
      <div className="counter-fields">
        <Key submit {...(called.trim() ? {} : { whyNot: t('counter.record.needs-called') })}>
          {t('counter.record.write')}
        </Key>
        <Key kind="link" onPress={onDone}>
          {t('counter.leave')}
        </Key>
      </div>
      {problem && <Problem slim {...problem} />}
    </form>
  );
}
