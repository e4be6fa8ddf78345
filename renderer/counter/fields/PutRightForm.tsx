import type { ReactNode } from 'react';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem, type ProblemProps } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';

export type PutRightFormProps = {
  readonly label: string;
  readonly submit: string;
  /** Why it cannot be written yet, in words. */
  readonly whyNot: string | undefined;
  readonly problem: ProblemProps | null;
  readonly onWrite: () => void;
  readonly onDone: () => void;
  readonly children: ReactNode;
};

/** Something written down is put right: its fields, then written or left as it was. */
export function PutRightForm({ label, submit, whyNot, problem, onWrite, onDone, children }: PutRightFormProps) {
  const { t } = useWords();
  return (
    <form
      className="counter-block counter-stack"
      aria-label={label}
      onSubmit={(event) => {
        event.preventDefault();
        onWrite();
      }}
    >
      {children}
      <div className="counter-fields">
        <Key submit whyNot={whyNot}>
          {submit}
        </Key>
        <Key kind="link" onPress={onDone}>
          {t('counter.leave')}
        </Key>
      </div>
      {problem && <Problem slim {...problem} />}
    </form>
  );
}
