import { SignaturePad } from '../../kit/paper/SignaturePad.tsx';
import { useWords } from '../../kit/text/words.tsx';
import type { Preview } from '../../link/usePreview.ts';
import { isPaperShown, type Signed } from './signedInput.ts';

/** A line to sign on, under what is shown: the signature keeps what that was. Nothing shown, nothing to sign. */
export function SignUnder({
  label,
  preview,
  value,
  onChange,
}: {
  readonly label: string;
  readonly preview: Preview;
  readonly value: Signed | null;
  readonly onChange: (signed: Signed | null) => void;
}) {
  const { t } = useWords();
  const { shown, settled } = preview;
  if (value === null && !isPaperShown(preview)) return <p className="k-muted">{t('counter.sign.waits')}</p>;
  return (
    <SignaturePad
      label={label}
      value={value?.mark ?? null}
      held={!settled && value === null}
      onChange={(mark) => onChange(mark && marked(mark, value?.under ?? shown))}
    />
  );
}

/** A mark belongs to what was shown when it was begun: a later stroke or letter does not bind it to something else. */
const marked = (mark: Signed['mark'], under: Signed['under'] | null): Signed | null => under && { mark, under };
