import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { MinutesField } from '../MinutesField.tsx';
import type { Claim, Clocked } from './useStep.ts';

const ENDS = ['as-before', 'out', 'loaner-inside', 'last-slots'] as const;

export type ClaimFormProps = {
  readonly claim: Claim;
  readonly clocked: Clocked;
  /** Asks how the machine is left: the step leaves it open, or something of ours is in it. */
  readonly asksEnd: boolean;
  readonly onClaim: (claim: Claim) => void;
};

/** What is said of the step beside its outcome: its minutes when the clock is wrong, what was seen, how it is left. */
export function ClaimForm({ claim, clocked, asksEnd, onClaim }: ClaimFormProps) {
  const { t } = useWords();
  return (
    <fieldset className="bench-form bench-claim">
      <legend className="k-heard">{t('bench.claim')}</legend>
      {asksEnd && (
        <div>
          <p className="k-small">{t('bench.left-how')}</p>
          <ChoiceKeys
            label={t('bench.left-how')}
            mode="one"
            choices={ENDS.map((id) => ({ id, says: t(`bench.ends.${id}`) }))}
            chosen={claim.endsWith === null ? [] : [claim.endsWith]}
            onChoose={([id]) => onClaim({ ...claim, endsWith: ENDS.find((one) => one === id) ?? null })}
          />
        </div>
      )}
      {clocked.forgotten && claim.handsOn === null && (
        <p role="status">{t(`bench.forgotten.${clocked.forgotten}`, { n: clocked.handsOn })}</p>
      )}
      <div className="bench-row">
        <MinutesField
          label={t('bench.hands-on')}
          value={claim.handsOn ?? clocked.handsOn}
          onChange={(handsOn) => onClaim({ ...claim, handsOn })}
        />
        <MinutesField
          label={t('bench.waiting')}
          value={claim.waiting ?? clocked.waiting}
          onChange={(waiting) => onClaim({ ...claim, waiting })}
        />
      </div>
      <TextField
        label={t('bench.what-seen')}
        labelled="above"
        value={claim.note}
        onChange={(note) => onClaim({ ...claim, note })}
      />
    </fieldset>
  );
}
