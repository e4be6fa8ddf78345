import type { KeyboardEvent } from 'react';
import { Button } from 'react-aria-components';
import { useWords } from '../../kit/text/words.tsx';
import type { OutcomeShown } from './stepView.ts';
import './Outcomes.css';

export type OutcomesProps = {
  readonly outcomes: readonly OutcomeShown[];
  /** `also`: what else was found in the same look. */
  readonly onOutcome: (id: string, also?: readonly string[]) => void;
  /** Left out where nothing else may be done. */
  readonly onSomethingElse: (() => void) | undefined;
  /** Leave off while hands are in the case. */
  readonly showOdds: boolean;
  /** For reading from two metres and hitting with an elbow. */
  readonly far?: boolean;
  /** A further key in the last row: back to the last arrangement that worked, or to how it came. */
  readonly back?: { readonly says: string; readonly onPress: () => void };
};

/** What happened: equal keys, none filled. Digits press them only while the focus is among them; 0 is something else. */
export function Outcomes({ outcomes, onOutcome, onSomethingElse, showOdds, far = false, back }: OutcomesProps) {
  const { t, odds } = useWords();
  const byDigit = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.altKey || event.metaKey || event.repeat) return;
    if (event.key === '0') {
      event.preventDefault();
      return onSomethingElse?.();
    }
    const outcome = /^[1-9]$/.test(event.key) ? outcomes[Number(event.key) - 1] : undefined;
    if (outcome) {
      event.preventDefault();
      onOutcome(outcome.id);
    }
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset brings a legend and its own box; this groups keys
    <div
      className={far ? 'k-outcomes k-outcomes-far' : 'k-outcomes'}
      role="group"
      aria-label={t('kit.step.outcomes')}
      onKeyDown={byDigit}
    >
      {outcomes.map((outcome, i) => (
        <Button key={outcome.id} className="k-outcome" onPress={() => onOutcome(outcome.id)}>
          <span className="k-outcome-number" aria-hidden="true">
            {i + 1}
          </span>
          <span className="k-outcome-says">{outcome.says}</span>
          {showOdds && outcome.chance !== undefined && <span className="k-outcome-odds">{odds(outcome.chance)}</span>}
        </Button>
      ))}
      <div className="k-outcomes-else">
        {onSomethingElse && (
          <Button className="k-outcome-else" onPress={onSomethingElse}>
            <span aria-hidden="true">0</span> {t(far ? 'kit.step.other-short' : 'kit.step.something-else')}
          </Button>
        )}
        {back && (
          <Button className="k-outcome-else" onPress={back.onPress}>
            {back.says}
          </Button>
        )}
      </div>
    </div>
  );
}
