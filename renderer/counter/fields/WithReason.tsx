import { useState } from 'react';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import type { Execute } from '../../link/useExecute.ts';

/** What is not done by one press: it opens, asks why, and is then done or left. */
export function WithReason({
  opens,
  says,
  asks,
  does,
  doing,
  onDo,
}: {
  /** The key that opens it. */
  readonly opens: string;
  /** What comes of it, where the key does not say that. */
  readonly says?: string;
  readonly asks: string;
  /** The key that does it. */
  readonly does: string;
  readonly doing: Pick<Execute, 'problem' | 'busy' | 'forget'>;
  /** Answers whether it was done. */
  readonly onDo: (why: string) => Promise<boolean>;
}) {
  const { t } = useWords();
  const [open, setOpen] = useState(false);
  const [why, setWhy] = useState('');
  if (!open)
    return (
      <Key kind="link" onPress={() => setOpen(true)}>
        {opens}
      </Key>
    );
  const leave = () => {
    setOpen(false);
    doing.forget();
  };
  const send = async () => {
    if (doing.busy || why.trim() === '' || !(await onDo(why.trim()))) return;
    setWhy('');
    leave();
  };
  return (
    <form
      className="counter-block counter-stack"
      aria-label={opens}
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      {says !== undefined && <p>{says}</p>}
      <TextField label={asks} labelled="above" value={why} onChange={setWhy} autoFocus />
      <div className="counter-fields">
        <Key submit {...(why.trim() ? {} : { whyNot: t('counter.reason-needs') })}>
          {does}
        </Key>
        <Key kind="link" onPress={leave}>
          {t('counter.leave')}
        </Key>
      </div>
      {doing.problem && <Problem slim {...doing.problem} />}
    </form>
  );
}
