import { type DragEvent, useState } from 'react';
import { decode, MOST_REPORT_CHARACTERS } from '../../../core/readings/decode.ts';
import { looksLikeInWords } from '../../../core/readings/readBytes.ts';
import { FileKey } from '../fields/FileKey.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useWords } from './words.tsx';
import './report.css';

export type ReportTextProps = {
  readonly text: string;
  readonly onText: (text: string) => void;
  /** What may be written here, said in the empty field. */
  readonly hint: string;
};

/**
 * What tools printed: dropped, chosen as files, pasted or typed. A file that is none says what it looks like and what is
 * accepted, and leaves nothing behind.
 */
export function ReportText({ text, onText, hint }: ReportTextProps) {
  const { t } = useWords();
  const [refused, setRefused] = useState<string | null>(null);
  const take = (taken: string) => {
    const fits = taken.length <= MOST_REPORT_CHARACTERS;
    setRefused(fits ? null : looksLikeInWords('too-large-text', MOST_REPORT_CHARACTERS));
    onText(fits ? taken : '');
  };
  const takeFiles = async (files: readonly File[]) => {
    const read = await Promise.all(files.map(readFile));
    const wrong = read.find((one) => 'refused' in one);
    if (!wrong) return take(read.flatMap((one) => ('text' in one ? one.text : [])).join('\n'));
    setRefused(t('kit.report.file-says', { file: wrong.file, says: wrong.refused }));
    onText('');
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    const files = [...event.dataTransfer.files];
    if (files.length > 0) void takeFiles(files);
    else take(event.dataTransfer.getData('text'));
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping a file here is a shortcut for the key and the field inside
    <div className="k-report-drop" onDragOver={(event) => event.preventDefault()} onDrop={drop}>
      <FileKey
        label={t('kit.report.file')}
        accept=".txt,.log,.json,text/plain,application/json"
        several
        onFiles={(files) => void takeFiles(files)}
      />
      <TextField label={hint} labelled="heard" hint={hint} value={text} onChange={take} lines={2} />
      <p role="status" className="k-small">
        {refused}
      </p>
    </div>
  );
}

type FileRead = { readonly text: string; readonly file: string } | { readonly refused: string; readonly file: string };

/** No more is taken from a file than a report may have; one byte over tells that it is too large. */
async function readFile(file: File): Promise<FileRead> {
  const bytes = new Uint8Array(await file.slice(0, MOST_REPORT_CHARACTERS + 1).arrayBuffer());
  const decoded = decode(bytes, MOST_REPORT_CHARACTERS);
  return 'text' in decoded
    ? { text: decoded.text, file: file.name }
    : { refused: looksLikeInWords(decoded.looksLike, MOST_REPORT_CHARACTERS), file: file.name };
}
