import { useId } from 'react';
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { useWords } from '../text/words.tsx';
import './press.css';
import './choice.css';

export type YesNoAnswer = 'yes' | 'no' | null;
export type YesNoProps = {
  readonly asks: string;
  /** A muted half-sentence behind the question, such as "own signature; no answer is no". */
  readonly note?: string;
  /** `null` is unanswered, which counts as no wherever a consent is meant. */
  readonly answer: YesNoAnswer;
  readonly onAnswer: (answer: YesNoAnswer) => void;
  readonly disabled?: boolean;
};

/** A question with two equal keys, none chosen beforehand. Pressing the chosen one again takes the answer back. */
export function YesNo({ asks, note, answer, onAnswer, disabled = false }: YesNoProps) {
  const { t } = useWords();
  const question = useId();
  return (
    <div className="k-yes-no">
      <span className="k-yes-no-asks" id={question}>
        {asks} {note !== undefined && <span className="k-yes-no-note k-muted k-small">{note}</span>}
      </span>
      <ToggleButtonGroup
        className="k-yes-no-keys"
        selectionMode="single"
        aria-labelledby={question}
        isDisabled={disabled}
        selectedKeys={answer === null ? [] : [answer]}
        onSelectionChange={(keys) => onAnswer(keys.has('yes') ? 'yes' : keys.has('no') ? 'no' : null)}
      >
        <ToggleButton id="yes" className="k-choice">
          {t('kit.yes')}
        </ToggleButton>
        <ToggleButton id="no" className="k-choice">
          {t('kit.no')}
        </ToggleButton>
      </ToggleButtonGroup>
    </div>
  );
}
