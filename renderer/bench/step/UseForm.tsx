import type { JobSheet } from '../../../core/contract/screens.ts';
import { takesKind } from '../../../core/custody/slot.ts';
import type { PartId } from '../../../core/ids.ts';
import type { StepHandling } from '../../../core/tracing/live/types.ts';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../kit/words.tsx';
import { placeWords } from '../inside/insideOf.ts';
import type { Chosen } from './useStep.ts';

/** Does this step ask which parts and slots? */
export const asksUse = (handling: StepHandling | undefined): boolean =>
  handling !== undefined && (handling.movesDimms || handling.intoSlotOf !== undefined);

export type UseFormProps = {
  readonly sheet: JobSheet;
  readonly handling: StepHandling;
  readonly chosen: Chosen;
  readonly onChoose: (chosen: Chosen) => void;
};

/** Which of the owner's parts are handled and which slots gone through, in the order pressed; nothing pressed is the usual. */
export function UseForm({ sheet, handling, chosen, onChoose }: UseFormProps) {
  const words = useWords();
  const { t } = words;
  const kind = handling.movesDimms ? 'dimm' : handling.intoSlotOf;
  if (kind === undefined) return null;
  const { machine } = sheet;
  const slots = machine.slots.filter((slot) => takesKind(slot.takes, kind));
  const parts = sheet.parts.filter((part) => part.belongs.to === 'owner' && part.kind === kind);
  const where = (id: PartId) => {
    const place = parts.find((part) => part.id === id)?.place;
    return place?.at === 'slot' ? place.slot : place ? placeWords(place, words) : '';
  };
  return (
    <fieldset className="bench-form">
      <legend>{t('bench.use')}</legend>
      {parts.length > 0 && (
        <ChoiceKeys
          label={t('bench.use-parts')}
          choices={parts.map((part) => ({ id: part.id, says: `${part.name}, ${where(part.id)}` }))}
          chosen={chosen.parts}
          onChoose={(ids) => onChoose({ ...chosen, parts: ids as readonly PartId[] })}
        />
      )}
      {slots.length > 0 && (
        <ChoiceKeys
          label={t('bench.use-slots')}
          choices={slots.map((slot) => ({ id: slot.id, says: slot.id }))}
          chosen={chosen.slots}
          onChoose={(ids) => onChoose({ ...chosen, slots: ids })}
        />
      )}
      <p className="k-small k-muted">
        {chosen.parts.length + chosen.slots.length === 0
          ? t('bench.use-usual')
          : t('bench.use-order', { what: words.list([...chosen.parts.map(where), ...chosen.slots]) })}
      </p>
    </fieldset>
  );
}
