import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../kit/text/words.tsx';

const WHYS = ['wrong-slot-put-right', 'board-has-only-these', 'other'] as const;

/** Why a part goes into another slot than the one recorded for it; `other` in the words that are written. */
export type OtherSlotWhy = { readonly why: (typeof WHYS)[number] | null; readonly says: string };
export const NO_REASON: OtherSlotWhy = { why: null, says: '' };

/** Has a reason been given? */
export const isReason = ({ why, says }: OtherSlotWhy): boolean =>
  why !== null && (why !== 'other' || says.trim() !== '');

type OtherSlotProps = {
  readonly part: string;
  readonly recorded: string;
  readonly slot: string;
  readonly reason: OtherSlotWhy;
  readonly onReason: (reason: OtherSlotWhy) => void;
};

/** The question why a part goes elsewhere than it sat, with the usual answers and room for another. */
export function OtherSlot({ part, recorded, slot, reason, onReason }: OtherSlotProps) {
  const { t } = useWords();
  return (
    <div className="bench-other-slot">
      <p>{t('bench.sat-in', { part, recorded, slot })}</p>
      <ChoiceKeys
        label={t('bench.why-other-slot', { slot })}
        mode="one"
        choices={WHYS.map((id) => ({ id, says: t(`bench.other-slot.${id}`, { recorded, slot }) }))}
        chosen={reason.why === null ? [] : [reason.why]}
        onChoose={([id]) => onReason({ ...reason, why: WHYS.find((one) => one === id) ?? null })}
      />
      {reason.why === 'other' && (
        <TextField
          label={t('bench.other-slot-says')}
          labelled="above"
          value={reason.says}
          onChange={(says) => onReason({ ...reason, says })}
          autoFocus
        />
      )}
    </div>
  );
}
