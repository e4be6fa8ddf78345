import { isSameNumber } from '../../../core/approval/sameNumber.ts';
import { fromWall, wallTime } from '../../../core/calendar.ts';
import type { CommandRequest } from '../../../core/commands/asked.ts';
import type { JobId } from '../../../core/ids.ts';
import { MomentField } from '../../kit/fields/DateField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { PaperView } from '../../kit/paper/PaperView.tsx';
import { useWords } from '../../kit/text/words.tsx';
import type { Preview } from '../../link/usePreview.ts';
import { LetterKey } from './LetterKey.tsx';
import { OneOf } from './OneOf.tsx';
import { SignUnder } from './SignUnder.tsx';
import { isSignedBy, type Signed, signedInput, toSign } from './signedInput.ts';

const ANSWERED_BY = ['counter', 'phone', 'writing'] as const;

/** How an answer was given, as it is being written down. */
export type HowSheet = {
  readonly by: (typeof ANSWERED_BY)[number] | null;
  readonly name: string;
  readonly at: string;
  readonly number: string;
  readonly readBack: string;
  /** The number that stands on the sheet, and why another one was theirs all the same. */
  readonly onSheet: string;
  readonly otherNumber: string;
  readonly words: string;
  /** What they wrote, kept under this name. */
  readonly file: string | null;
  readonly mark: Signed | null;
};

export const freshHow = (name: string, number: string, zone: string): HowSheet => ({
  by: null,
  name,
  at: wallTime(Date.now(), zone),
  number,
  readBack: '',
  onSheet: number,
  otherNumber: '',
  words: '',
  file: null,
  mark: null,
});

type HowInput = CommandRequest<'answer'>['input']['how'];

const isOtherNumber = ({ number, onSheet }: HowSheet): boolean =>
  number.trim() !== '' && !isSameNumber(number, onSheet);

/** As a command takes it; null while something of it is open. */
export function howInput(how: HowSheet, zone: string): HowInput | null {
  if (how.by === null || how.name.trim() === '') return null;
  if (how.by === 'counter')
    return isSignedBy(how.mark, how.name) ? { by: 'counter', signed: signedInput(how.mark, how.name) } : null;
  if (how.at === '') return null;
  const at = fromWall(how.at, zone);
  if (how.by === 'phone') {
    const [number, readBack] = [how.number.trim(), how.readBack.trim()];
    const other = isOtherNumber(how) ? how.otherNumber.trim() : null;
    if (!number || !readBack || other === '') return null;
    return { by: 'phone', at, number, readBack, ...(other !== null && { otherNumber: other }) };
  }
  const words = how.words.trim();
  return words ? { by: 'writing', at, file: how.file, words } : null;
}

/** An answer at the counter before it is signed: what the owner is shown is made with it; null for other ways. */
export const howToSign = (how: HowSheet): HowInput | null =>
  how.by === 'counter' && how.name.trim() !== '' ? { by: 'counter', signed: toSign(how.name) } : null;

/** By whom and how: at the counter with a signature, by phone with number and read back, or in writing. */
export function HowFields({
  how,
  job,
  preview,
  onChange,
}: {
  readonly how: HowSheet;
  readonly job: JobId;
  /** What an owner at the counter signs. */
  readonly preview: Preview;
  readonly onChange: (how: HowSheet) => void;
}) {
  const { t } = useWords();
  const change = (patch: Partial<HowSheet>) => onChange({ ...how, ...patch });
  return (
    <div className="counter-stack">
      <OneOf
        asks={t('counter.how.asks')}
        words="how"
        ids={ANSWERED_BY}
        chosen={how.by}
        onChoose={(by) => change({ by })}
      />
      <div className="counter-fields">
        <TextField
          label={t('counter.how.name')}
          labelled="above"
          value={how.name}
          onChange={(name) => change({ name })}
          chars={24}
        />
        {(how.by === 'phone' || how.by === 'writing') && (
          <MomentField label={t('counter.how.at')} value={how.at} onChange={(at) => change({ at })} />
        )}
        {how.by === 'phone' && (
          <TextField
            label={t('counter.how.number')}
            labelled="above"
            type="tel"
            value={how.number}
            onChange={(number) => change({ number })}
            chars={16}
          />
        )}
      </div>
      {how.by === 'phone' && isOtherNumber(how) && (
        <TextField
          label={t('counter.how.other-number')}
          labelled="above"
          value={how.otherNumber}
          onChange={(otherNumber) => change({ otherNumber })}
        />
      )}
      {how.by === 'phone' && (
        <TextField
          label={t('counter.how.read-back')}
          labelled="above"
          value={how.readBack}
          onChange={(readBack) => change({ readBack })}
          lines={2}
        />
      )}
      {how.by === 'writing' && (
        <>
          <TextField
            label={t('counter.how.words')}
            labelled="above"
            value={how.words}
            onChange={(words) => change({ words })}
            lines={2}
          />
          <LetterKey job={job} kept={how.file !== null} onKept={(file) => change({ file })} />
        </>
      )}
      {how.by === 'counter' && (
        <>
          {preview.shown?.papers.map((paper) => (
            <PaperView key={paper.kind} paper={paper} />
          ))}
          <SignUnder
            label={t('counter.how.sign', { name: how.name })}
            preview={preview}
            value={how.mark}
            onChange={(mark) => change({ mark })}
          />
        </>
      )}
    </div>
  );
}
