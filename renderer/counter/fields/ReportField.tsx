import { type DragEvent, useState } from 'react';
import type { Said } from '../../../core/readings/said.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/words.tsx';
import { service } from '../../link/service.ts';
import { FileKey } from './FileKey.tsx';

export type ReportText = { readonly text: string; readonly taken: string };

/** What the machine says of itself, or said in an old copy: dropped, pasted, or chosen as a file, and read at once. */
export function ReportField({
  report,
  onChange,
}: {
  readonly report: ReportText | null;
  readonly onChange: (report: ReportText | null) => void;
}) {
  const { t } = useWords();
  const [said, setSaid] = useState<Said | null>(null);
  const [failed, setFailed] = useState(false);
  const take = (text: string) => {
    if (text.trim() === '') {
      setSaid(null);
      return onChange(null);
    }
    onChange({ text, taken: report?.taken ?? '' });
    service.readReport({ text }).then(
      (read) => {
        setSaid(read);
        setFailed(false);
      },
      () => setFailed(true),
    );
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    const [file] = event.dataTransfer.files;
    if (file) void file.text().then(take);
    else take(event.dataTransfer.getData('text'));
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping a file here is a shortcut for the key and the field inside
    <div className="counter-drop" onDragOver={(event) => event.preventDefault()} onDrop={drop}>
      <div className="counter-line">
        <FileKey
          label={t('counter.report.file')}
          accept=".txt,text/plain"
          onFiles={([file]) => void file?.text().then(take)}
        />
        {report && (
          <Key kind="link" onPress={() => take('')}>
            {t('counter.report.without')}
          </Key>
        )}
      </div>
      <TextField
        label={t('counter.report.paste')}
        labelled="heard"
        hint={t('counter.report.paste')}
        value={report?.text.slice(0, 400) ?? ''}
        onChange={take}
        lines={2}
      />
      {report && (
        <TextField
          label={t('counter.report.taken')}
          labelled="above"
          value={report.taken}
          onChange={(taken) => onChange({ ...report, taken })}
          chars={30}
        />
      )}
      <p role="status" className="k-small">
        {failed ? t('counter.report.failed') : said ? reportSays(said, t) : ''}
      </p>
    </div>
  );
}

/** In one sentence what a report names, and that it is told, not seen. */
function reportSays(said: Said, t: (key: string, facts?: Readonly<Record<string, string | number>>) => string): string {
  if (said.kinds.length === 0) return t('counter.report.nothing');
  const filled = said.memory.slots.filter((slot) => slot.sizeMiB !== null);
  return t('counter.report.says', {
    board: [said.board.vendor, said.board.name].filter(Boolean).join(' ') || '?',
    processor: said.processors[0]?.name ?? '?',
    slots: said.memory.slots.length,
    filled: filled.map((slot) => slot.locator ?? '?').join(', ') || '0',
  });
}
