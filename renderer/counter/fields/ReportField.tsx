import { useMemo, useState } from 'react';
import type { MachineReading } from '../../../core/readings/reading.ts';
import { readMachineReport } from '../../../core/readings/readMachineReport.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { YesNo, type YesNoAnswer } from '../../kit/keys/YesNo.tsx';
import { ReportText } from '../../kit/text/ReportText.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { ReportSays } from './ReportSays.tsx';

/** A report that was read; what identifies is kept only after a yes. */
export type TakenReport = { readonly text: string; readonly taken: string; readonly keepSerials: YesNoAnswer };

/** What the machine says of itself, or said in an old copy: dropped, pasted, or chosen as files, and read at once. */
export function ReportField({
  report,
  onChange,
}: {
  readonly report: TakenReport | null;
  readonly onChange: (report: TakenReport | null) => void;
}) {
  const { t } = useWords();
  const [written, setWritten] = useState(report?.text ?? '');
  const reading = useMemo<MachineReading | null>(
    () => (written.trim() === '' ? null : readMachineReport(written)),
    [written],
  );
  const take = (text: string) => {
    setWritten(text);
    const isReport = text.trim() !== '' && readMachineReport(text).tools.length > 0;
    onChange(isReport ? { text, taken: report?.taken ?? '', keepSerials: report?.keepSerials ?? null } : null);
  };
  return (
    <div className="counter-stack">
      <ReportText text={written} onText={take} hint={t('counter.report.paste')} />
      {written !== '' && (
        <Key kind="link" onPress={() => take('')}>
          {t('counter.report.without')}
        </Key>
      )}
      <div role="status">{reading && <ReportSays reading={reading} />}</div>
      {report && (
        <>
          <TextField
            label={t('counter.report.taken')}
            labelled="above"
            value={report.taken}
            onChange={(taken) => onChange({ ...report, taken })}
            chars={30}
          />
          <YesNo
            asks={t('counter.report.keep-serials')}
            note={t('counter.report.keep-serials-note')}
            answer={report.keepSerials}
            onAnswer={(keepSerials) => onChange({ ...report, keepSerials })}
          />
        </>
      )}
    </div>
  );
}
